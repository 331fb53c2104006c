/**
 * Pins put into the networks: whatever hangs on one pin shares its voltage. A pin with one branch becomes a member of that
 * branch; a pin with several becomes a node they meet at.
 */
import type { BoundPin, Hook, NetworkSketch } from '../loads/lowering.js';
import type { BranchPlan, Member, NetworkPlan } from '../loads/plan.js';
import { GROUND } from '../loads/plan.js';

/** What is taken when no data sheet tells a pin's resistance, ohms; it is listed. */
export const USUAL_PIN = { min: 12.5, typ: 25, max: 50 };

/** Networks with their pins put in; sketches that share a pin become one. */
export function assemble(sketches: readonly NetworkSketch[]): NetworkPlan[] {
  const groups: NetworkSketch[][] = [];
  const groupOf = new Map<string, NetworkSketch[]>();
  for (const sketch of sketches) {
    if (sketch.alone) {
      groups.push([sketch]);
      continue;
    }
    const pins = [...sketch.hooks.map((h) => h.pin.account), ...(sketch.along === undefined ? [] : [sketch.along])];
    const joined = [...new Set(pins.flatMap((p) => groupOf.get(p) ?? []))];
    const group = groups.find((g) => g.some((s) => joined.includes(s)));
    if (group) group.push(sketch);
    else groups.push([sketch]);
    for (const p of pins) groupOf.set(p, group ?? groups.at(-1)!);
  }
  return groups.map(network);
}

function network(group: readonly NetworkSketch[]): NetworkPlan {
  const hooks = new Map<string, Hook[]>();
  for (const hook of group.flatMap((s) => s.hooks))
    hooks.set(hook.pin.account, [...(hooks.get(hook.pin.account) ?? []), hook]);
  const nodes = [...hooks].filter(([, of]) => of.length > 1).map(([pin]) => nodeOf(pin));
  const state = (on: boolean): BranchPlan[] => {
    const branches = group.flatMap((s) => (on ? s.on : s.off));
    for (const of of hooks.values()) branches.push(...hung(of, on, branches.length));
    return branches;
  };
  const controls = group.filter((s) => s.side === 'control');
  return {
    id: group[0]!.id,
    circuits: [...new Set(group.flatMap((s) => s.circuits))],
    side: controls.length < group.length ? 'load' : 'control',
    ...(controls.length > 0 &&
      controls.length < group.length && { controls: new Set(controls.flatMap((s) => s.circuits)) }),
    inner: [...nodes, ...group.flatMap((s) => s.inner)],
    on: state(true),
    off: state(false),
  };
}

const nodeOf = (pin: string): string => `${pin}:pin`;

/** Branches of one pin in a state; `first` is the number the first of them will have. */
function hung(hooks: readonly Hook[], on: boolean, first: number): BranchPlan[] {
  const { pin, active } = hooks[0]!;
  const level = on === (active === 'high') ? 'high' : 'low';
  const side = level === 'high' ? pin.rail : GROUND;
  const own = pinMember(pin, level);
  if (hooks.length === 1) {
    const { flows, to, members, circuit } = hooks[0]!;
    return flows === 'out'
      ? [{ from: side, to, members: [own, ...members], circuit, pin: { pin: pin.account, level, outward: 1 } }]
      : [{ from: to, to: side, members: [...members, own], circuit, pin: { pin: pin.account, level, outward: -1 } }];
  }
  const node = nodeOf(pin.account);
  const hanging = hooks.map(({ flows, to, members, circuit }): BranchPlan =>
    flows === 'out' ? { from: node, to, members, circuit } : { from: to, to: node, members, circuit },
  );
  const carries = hanging.map((_, k) => first + 1 + k);
  const through: BranchPlan =
    level === 'high'
      ? {
          from: side,
          to: node,
          members: [own],
          circuit: hooks[0]!.circuit,
          pin: { pin: pin.account, level, outward: 1 },
          carries,
        }
      : {
          from: node,
          to: side,
          members: [own],
          circuit: hooks[0]!.circuit,
          pin: { pin: pin.account, level, outward: -1 },
          carries,
        };
  return [through, ...hanging];
}

const pinMember = (pin: BoundPin, level: 'high' | 'low'): Member => ({
  kind: 'pin',
  part: pin.account,
  ohms: pin[level]?.ohms ?? USUAL_PIN,
  ...(pin.origin && { origin: pin.origin }),
});
