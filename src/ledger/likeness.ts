/**
 * Circuits that are alike but for their names and pins: the channels of a board, the LEDs of a row. What one of them comes
 * to, the others come to as well, so that it is reckoned once.
 */
import type { BranchPlan, HeldCurrent, Member, NetworkPlan } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Circuitry } from './circuitry.js';
import type { InterlockPlan } from '../project/project.js';
import type { ModeSearch } from './moments.js';

/** Circuits of one likeness are alike in all that their accounts depend on. */
export type Likeness = (circuit: number) => string;

export function likenessOf(circuitry: Circuitry, modes: readonly ModeSearch[]): Likeness {
  const { project } = circuitry;
  const interlocks = [...new Set(modes.flatMap((m) => m.interlocks ?? []))];
  // Who takes turns has neighbours.
  const inTurns = new Set(interlocks.flatMap((i) => (i.turns ? i.of : [])));
  const bound = bindingOf(interlocks);
  const known = new Map<number, string>();
  const make = (c: number): string => {
    const circuit = project.circuits[c]!;
    // Another circuit on its pin singles a circuit out.
    const networks = circuitry.networksOf[c]!.map((n) => circuitry.networks[n]!);
    if (inTurns.has(circuit.id) || networks.some((n) => n.circuits.length > 1)) return circuit.id;
    const inModes = modes.map((m) => m.on?.[c] ?? 2).join('');
    return `${circuit.sort ?? circuit.owner}|${inModes}|${bound.get(circuit.id) ?? ''}|${networks.map((n) => n.written).join('|')}`;
  };
  return (c) => {
    const likeness = known.get(c) ?? make(c);
    known.set(c, likeness);
    return likeness;
  };
}

/** Where each circuit stands in the interlocks: those that stand in the same places may change places with each other. */
function bindingOf(interlocks: readonly InterlockPlan[]): ReadonlyMap<string, string> {
  const bound = new Map<string, string>();
  interlocks.forEach(({ of, when = [] }, k) => {
    for (const [role, ids] of [
      ['of', of],
      ['when', when],
    ] as const)
      for (const id of new Set(ids)) bound.set(id, `${bound.get(id) ?? ''} ${role} ${k}`);
  });
  return bound;
}

/** A network without its names: two that read alike are alike in all that is reckoned with. */
export const writtenOut = ({ side, on, off, inner }: NetworkPlan): string =>
  `${side}${state(on, inner)}/${state(off, inner)}`;

const state = (branches: readonly BranchPlan[], inner: readonly string[]): string => {
  const node = (id: string): string => (inner.includes(id) ? `#${inner.indexOf(id)}` : id);
  return branches
    .map(
      (b) =>
        `${node(b.from)}>${node(b.to)}${b.pin?.level ?? ''}${b.pin?.outward ?? ''}:${b.members.map(written).join(';')}`,
    )
    .join(',');
};

const heldEnds = ({ windings, copper, amps, ohms, rise, bridge, shaft }: HeldCurrent): string =>
  `${windings} ${copper} ${[amps, ohms, rise, bridge, shaft].map(ends).join()}`;

const ends = (i: Interval): string => `${i.min} ${i.typ} ${i.max}`;

function written(member: Member): string {
  switch (member.kind) {
    case 'resistance':
      return `r${ends(member.ohms)}${member.copper ?? ''}${member.load ? 'l' : ''}${member.bypass ? `b${member.bypass.acting} ${member.bypass.second}` : ''}`;
    case 'pin':
      return `p${ends(member.ohms)}`;
    case 'drop':
      return `d${ends(member.volts)}${member.load ? 'l' : ''}`;
    case 'junction':
      return `j${[member.law.min, member.law.typ, member.law.max].map((j) => `${j.slope} ${j.logSaturation} ${j.series} ${j.perKelvin} ${j.referenceCurrent}`).join()}${member.load ? 'l' : ''}`;
    case 'curve':
      return `c${member.points.map((p) => `${p.amps} ${ends(p.volts)}`).join()}`;
    case 'current':
      return `i${ends(member.amps)} ${[member.peak, member.second, member.lasts, member.every, member.before].join(' ')}${member.starts ? 's' : ''}`;
    case 'filament':
      return `f${member.volts} ${ends(member.amps)} ${member.cold?.peak ?? ''} ${member.cold?.second ?? ''} ${member.cold?.lasts ?? ''}`;
    case 'power':
      return `w${ends(member.watts)}${member.held ? `h${heldEnds(member.held)}` : ''}`;
    default:
      return member satisfies never;
  }
}
