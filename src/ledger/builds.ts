/**
 * Builds: the uncertain figures of a project by name, one value of each. A figure that several things share (the ambient, a
 * rail's voltage, the output resistance of a chip's pins) is one figure with one value.
 */
import type { HeldCurrent, JunctionSpread, Member, PinPassage } from '../loads/branch-plan.js';
import type { Project } from '../project/project.js';
import type { Link } from '../project/tree-plan.js';
import type { Interval } from '../quantity/interval.js';

/** Where in its range each figure of one build lies, by name: 0 the lowest, a half the typical, 1 the highest. */
export interface Build {
  readonly share: (figure: string) => number;
}

/** Name of an ambient among the figures: the project's, or that of a place of its own. */
export const ambientFigure = (place?: string): string => (place === undefined ? 'ambient' : `ambient of ${place}`);

/** The figures of a link that may be uncertain. */
const LINK_FIGURES = ['ohms', 'contact', 'law', 'drop', 'volts', 'dropout', 'quiescent', 'efficiency'] as const;

/** Of links and supplies: 'main.regulator-5v dropout', 'laptop volts'. */
export const figureOf = (
  owner: string,
  what: (typeof LINK_FIGURES)[number] | 'thermal' | 'capacitance' | 'duty',
): string => `${owner} ${what}`;

/** What a board draws itself, and the chip's part of it: one figure, since the rest of the board is what the chip leaves. */
const OWN_DRAW = /\.(board|chip)$/;

/** A member's figure: its part's own, but one output resistance a level for all pins of a chip. */
export function memberFigure(member: Member, pin: PinPassage | undefined): string {
  if (member.kind === 'pin' && pin) return `${member.part.slice(0, member.part.indexOf('.'))} pins ${pin.level}`;
  return member.kind === 'current' ? member.part.replace(OWN_DRAW, ' draws') : member.part;
}

/** The value at a share of an interval: the lower half of the shares lies below the typical value, the upper one above. */
export function within({ min, typ, max }: Interval, share: number): number {
  return share < 0.5 ? min + 2 * share * (typ - min) : typ + (2 * share - 1) * (max - typ);
}

const isUncertain = ({ min, max }: Interval): boolean => max > min;

/** The names of all figures of a project that have a range. */
export function uncertainFigures(project: Project): readonly string[] {
  const names = new Set<string>();
  const note = (name: string, interval: Interval | undefined): void => {
    if (interval && isUncertain(interval)) names.add(name);
  };
  note(ambientFigure(), project.ambient);
  for (const [place, ambient] of project.places) note(ambientFigure(place), ambient);
  for (const node of project.nodes) note(figureOf(node.id, 'volts'), node.volts);
  for (const { id, pulses } of project.circuits) note(figureOf(id, 'duty'), pulses?.duty);
  for (const { about, farads } of project.capacitances) note(figureOf(about, 'capacitance'), farads);
  for (const link of project.links) {
    for (const key of LINK_FIGURES) for (const figure of linkFigures(link, key)) note(figureOf(link.id, key), figure);
    note(figureOf(link.id, 'thermal'), link.heat?.thermal);
  }
  for (const { on, off } of project.networks)
    for (const { members, pin } of [...on, ...off])
      for (const member of members) {
        const name = memberFigure(member, pin);
        if (member.kind !== 'power' || member.held === undefined)
          for (const figure of figuresOf(member)) note(name, figure);
        else for (const [what, figure] of heldFigures(member.held)) note(heldFigure(member, what), figure);
      }
  return [...names];
}

/** The figures of what a chopper holds, each of which moves by itself. */
export type HeldPart = 'current' | 'winding' | 'rise' | 'bridge' | 'shaft';

const heldFigures = ({ amps, ohms, rise, bridge, shaft }: HeldCurrent): readonly (readonly [HeldPart, Interval])[] => [
  ['current', amps],
  ['winding', ohms],
  ['rise', rise],
  ['bridge', bridge],
  ['shaft', shaft],
];

/** Name of one of them: 'axis.windings current'. */
export const heldFigure = (member: Member, what: HeldPart | undefined): string =>
  what === undefined ? memberFigure(member, undefined) : `${member.part} ${what}`;

/** A member's figures that may be uncertain; a junction's law and a curve's points move as one. */
function figuresOf(member: Member): readonly Interval[] {
  switch (member.kind) {
    case 'resistance':
    case 'pin':
      return [member.ohms];
    case 'drop':
      return [member.volts];
    case 'current':
    case 'filament':
      return [member.amps];
    case 'power':
      return [member.watts];
    case 'curve':
      return member.points.map((point) => point.volts);
    case 'junction':
      return lawFigures(member.law);
    default:
      return member satisfies never;
  }
}

/** A link's ranges under one name: a curve's points and a junction's law move as one. */
function linkFigures(link: Link, key: (typeof LINK_FIGURES)[number]): readonly (Interval | undefined)[] {
  if (key === 'law') return lawFigures(link.law);
  if (key === 'dropout' || key === 'efficiency') return link[key]?.map((point) => point.value) ?? [];
  return [link[key]];
}

function lawFigures(law: JunctionSpread | undefined): readonly Interval[] {
  if (law === undefined) return [];
  return (['slope', 'logSaturation', 'series'] as const).map((key) => {
    const values = [law.min[key], law.typ[key], law.max[key]];
    return { min: Math.min(...values), typ: law.typ[key], max: Math.max(...values) };
  });
}

/** The same build for a share of every figure: 0.5 is the typical one. */
export const evenly = (share: number): Build => ({ share: () => share });

/**
 * Builds at random, each figure with equal chance anywhere below and above its typical value, whatever the others do. A
 * figure's draws depend on the seed and its name alone, so that another load beside it changes nothing about it.
 *
 * @param seed any whole number
 */
export function* drawnBuilds(figures: readonly string[], builds: number, seed: number): Generator<Build> {
  const draws = new Map(figures.map((name) => [name, dice(seed, name)]));
  for (let k = 0; k < builds; k++) {
    const shares = new Map<string, number>();
    for (const [name, draw] of draws) shares.set(name, draw());
    yield { share: (figure) => shares.get(figure) ?? 0.5 };
  }
}

/** Numbers from 0 to 1 (mulberry32 by T. Ettinger, from memory; started from the FNV-1a hash of seed and name). */
function dice(seed: number, name: string): () => number {
  let state = 0x811c9dc5;
  for (const character of `${seed} ${name}`) state = Math.imul(state ^ character.codePointAt(0)!, 0x01000193);
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
