/**
 * Pins put into the networks: whatever hangs on one pin shares its voltage. A pin with one branch becomes a member of that
 * branch; a pin with several becomes a node they meet at.
 */
import type { BoundPin, Hook, NetworkSketch } from '../loads/lowering.js';
import { USUAL_PIN } from '../loads/lowering.js';
import type { BranchPlan, Member, NetworkPlan } from '../loads/branch-plan.js';
import { GROUND } from '../loads/branch-plan.js';

/** How what hangs on a pin is put into a network: by firmware that drives it, or by what the pin does without. */
export interface Hanging {
  /** Whether the pin becomes a node of its own. */
  readonly asNode: (hooks: readonly Hook[]) => boolean;
  /** Branches of one pin in a state of its circuits; `first` is the number the first of them will have. */
  readonly branches: (hooks: readonly Hook[], on: boolean, first: number) => readonly BranchPlan[];
}

/** Networks with their pins put in; sketches that share a pin become one. */
export function assemble(sketches: readonly NetworkSketch[], hanging: Hanging = DRIVEN): NetworkPlan[] {
  const groups: NetworkSketch[][] = [];
  const groupOf = new Map<string, NetworkSketch[]>();
  for (const sketch of sketches) {
    if (sketch.alone) {
      groups.push([sketch]);
      continue;
    }
    const pins = [
      ...sketch.hooks.flatMap((h) => accountsOf(h.pin)),
      ...(sketch.along === undefined ? [] : [sketch.along]),
    ];
    const joined = [...new Set(pins.flatMap((p) => groupOf.get(p) ?? []))];
    const group = groups.find((g) => g.some((s) => joined.includes(s)));
    if (group) group.push(sketch);
    else groups.push([sketch]);
    for (const p of pins) groupOf.set(p, group ?? groups.at(-1)!);
  }
  return groups.map((group) => network(group, hanging));
}

function network(group: readonly NetworkSketch[], hanging: Hanging): NetworkPlan {
  const all = group.flatMap((s) => s.hooks);
  // What hangs on one of several joined pins hangs on all of them; the first one that joins them stands for all.
  const first = new Map<string, BoundPin>();
  for (const { pin } of all)
    if (pin.joined) for (const account of accountsOf(pin)) if (!first.has(account)) first.set(account, pin);
  const hooks = new Map<string, Hook[]>();
  for (const hook of all) {
    const pin = first.get(hook.pin.account) ?? hook.pin;
    hooks.set(pin.account, [...(hooks.get(pin.account) ?? []), { ...hook, pin }]);
  }
  const nodes = [...hooks].filter(([, of]) => hanging.asNode(of)).map(([pin]) => nodeOf(pin));
  const state = (on: boolean): BranchPlan[] => {
    const branches = group.flatMap((s) => (on ? s.on : s.off));
    for (const of of hooks.values()) branches.push(...hanging.branches(of, on, branches.length));
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
    ...(group.every((s) => s.contact) && { contact: true as const }),
    ...(group.some((s) => s.whenDead) && { whenDead: group.flatMap((s) => s.whenDead ?? []) }),
  };
}

/** A pin and those joined with it. */
const accountsOf = (pin: BoundPin): string[] => [pin, ...(pin.joined ?? [])].map((p) => p.account);

export const nodeOf = (pin: string): string => `${pin}:pin`;
/** The pin that a node of a network is; of any other node nothing that is the name of a pin. */
export const pinOf = (node: string): string => node.replace(/:pin$/, '');

/** A pin with one branch is a member of that; one with several, or one of several that are joined, is a node. */
const severalAt = (hooks: readonly Hook[]): boolean => hooks.length > 1 || hooks[0]!.pin.joined !== undefined;

/** Firmware drives the pin to the level of the state. */
export const DRIVEN: Hanging = { asNode: severalAt, branches: hung };

function hung(hooks: readonly Hook[], on: boolean, first: number): BranchPlan[] {
  const { pin, active, open } = hooks[0]!;
  const level = on === (active === 'high') ? 'high' : 'low';
  const membersOf = (hook: Hook): readonly Member[] => (on ? hook.members : (hook.off ?? hook.members));
  const letGo = open === true && level !== active;
  if (!severalAt(hooks)) {
    if (letGo) return [];
    const side = level === 'high' ? pin.rail : GROUND;
    const own = pinMember(pin, level);
    const { flows, to, circuit } = hooks[0]!;
    const members = membersOf(hooks[0]!);
    return flows === 'out'
      ? [{ from: side, to, members: [own, ...members], circuit, pin: { pin: pin.account, level, outward: 1 } }]
      : [{ from: to, to: side, members: [...members, own], circuit, pin: { pin: pin.account, level, outward: -1 } }];
  }
  const node = nodeOf(pin.account);
  const hanging = hooks.map((hook) => hangingAt(node, hook, membersOf(hook)));
  return letGo ? hanging : [...throughPins(hooks[0]!, level, first, hanging, pinMember), ...hanging];
}

/** What hangs on a pin that is a node. */
export const hangingAt = (node: string, { flows, to, circuit }: Hook, members: readonly Member[]): BranchPlan =>
  flows === 'out' ? { from: node, to, members, circuit } : { from: to, to: node, members, circuit };

/** The branches through a pin that is a node, and through those that are joined with it. @param member what each puts in the way */
export function throughPins(
  { pin, circuit }: Hook,
  level: 'high' | 'low',
  first: number,
  hanging: readonly BranchPlan[],
  member: (pin: BoundPin, level: 'high' | 'low') => Member,
): BranchPlan[] {
  const node = nodeOf(pin.account);
  const pins = [pin, ...(pin.joined ?? [])];
  const carries = hanging.map((_, k) => first + pins.length + k);
  const joined = pins.length > 1 ? { joined: pins.map((p) => p.account) } : {};
  return pins.map((p): BranchPlan => {
    const members = [member(p, level)];
    return level === 'high'
      ? { from: p.rail, to: node, members, circuit, pin: { pin: p.account, level, outward: 1, ...joined }, carries }
      : { from: node, to: GROUND, members, circuit, pin: { pin: p.account, level, outward: -1, ...joined }, carries };
  });
}

const pinMember = (pin: BoundPin, level: 'high' | 'low'): Member => ({
  kind: 'pin',
  part: pin.account,
  ohms: pin[level]?.ohms ?? USUAL_PIN,
  ...(pin.origin && { origin: pin.origin }),
});
