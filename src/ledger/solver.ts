/**
 * Solutions of a project, each solved once and kept. Whole solutions are few: one a state of all circuits and corner in
 * which everything leans one way. A question about a few circuits stands on one of them.
 */
import type { Member } from '../loads/branch-plan.js';
import { isFalling, isStarting } from '../loads/branch-plan.js';
import type { Project } from '../project/project.js';
import type { Circuitry } from './circuitry.js';
import { circuitry } from './circuitry.js';
import type { Corner } from './corner.js';
import { TYPICAL, calmed, cornerKey, cornersIn } from './corner.js';
import { cornersFed, feedsToTry } from './feeds.js';
import type { Focus, Moment } from './moment.js';
import { asksBefore } from './reservoirs.js';
import { Solution } from './solution.js';
import { unloaded } from './unloaded.js';

/** One solution asked for: a moment, a corner, and the circuits the corner is about. */
export interface Candidate {
  readonly moment: Moment;
  readonly corner: Corner;
  /** The circuits in question; nobody: the corner leans everything like `rest`. */
  readonly focus: Focus;
}

export interface Solver {
  readonly circuitry: Circuitry;
  /** No circuit in question. */
  readonly nobody: Focus;
  /**
   * Circuits in question, by number, and networks besides that belong to none: a chip's own draw.
   *
   * @param contacts what hangs on their contacts, in place of what switches these
   */
  focus(circuits: readonly number[], besides?: readonly number[], contacts?: boolean): Focus;
  /** Parts in question, by name: the other networks of their circuits are solved anew with theirs, but lean like the rest. */
  focusOn(circuits: readonly number[], parts: readonly string[]): Focus;
  /** The same question with some networks, by name, on the load's side. */
  loadedBy(focus: Focus, networks: readonly string[]): Focus;
  /** A whole solution in which all but some networks, and some regulators, are in question. */
  wholeBut(networks: readonly number[], regulators?: ReadonlySet<string>): Focus;
  /** Corners for an account in a place: as they are, where no place has an ambient of its own. */
  corners(corners: readonly Corner[], place: string | undefined): readonly Corner[];
  /** Candidates with each source in turn that may feed a node which several are joined at; @param dead even if only when others are dead */
  fed(candidates: readonly Candidate[], dead: boolean): readonly Candidate[];
  /** The typical corner, as an account in a place reads it. */
  typical(place: string | undefined): Corner;
  /** The state in which only what is always on is on. */
  readonly resting: Uint8Array;
  solve(candidate: Candidate): Solution;
  /** The whole solution that a candidate's stands on; itself where it is whole. */
  under(candidate: Candidate): Solution;
  /** One build in a moment; not kept, as there are many of them. */
  solveBuild(moment: Moment, corner: Corner): Solution;
}

export function solver(project: Project): Solver {
  const built = circuitry(project);
  const bases = new Map<number, Solution>();
  const questions = new Map<number, Solution>();
  const states = numbering<Uint8Array>((a) => String.fromCharCode(...a));
  const corners = numbering<Corner>(cornerKey);
  const focuses = new Map<string, Focus>();
  const focusNumbers = numbering<Focus>(
    (f) =>
      `${f.networks.join()}|${[...(f.among ?? [])].join()}|${f.leans?.join('') ?? ''}|${[...(f.loads ?? [])].join()}|${[...(f.besides ?? [])].join()}`,
  );
  const resting = Uint8Array.from(project.circuits, (c) => (c.always ? 1 : 0));
  const formers = new Map<number, Solution>();
  // A supply that collapsed in one state may hold up in the next: that one is looked for from above.
  const collapsible = project.networks.some((n) => n.on.some(isFalling));

  const isContact = (n: number): boolean => built.networks[n]!.plan.contact === true;

  const focus = (circuits: readonly number[], besides: readonly number[] = [], contacts = false): Focus => {
    const key = `${circuits.join()}|${besides.join()}|${contacts}`;
    let known = focuses.get(key);
    if (known === undefined) {
      const own = circuits.flatMap((c) => built.networksOf[c]!.filter((n) => isContact(n) === contacts));
      const networks = [...new Set([...own, ...besides])].sort((a, b) => a - b);
      const has = new Uint8Array(built.networks.length);
      for (const n of networks) has[n] = 1;
      const shared =
        circuits.length > 0 &&
        networks.some(
          (n) => built.networks[n]!.foreign || built.networks[n]!.circuits.some((c) => !circuits.includes(c)),
        );
      known = { has, networks, ...(shared && { among: new Set(circuits.map((c) => project.circuits[c]!.id)) }) };
      focuses.set(key, known);
    }
    return known;
  };
  const nobody = focus([]);
  const focusOn = (circuits: readonly number[], parts: readonly string[]): Focus => {
    const whole = focus(circuits, [], parts.length > 0 && parts.every((p) => isContact(built.parts.get(p)!.network)));
    const own = new Set(parts.map((part) => built.parts.get(part)!.network));
    if (whole.networks.every((n) => own.has(n))) return whole;
    const key = `${circuits.join()}|on ${[...own].join()}`;
    const leans = new Uint8Array(built.networks.length);
    for (const n of own) leans[n] = 1;
    const known = focuses.get(key) ?? { ...whole, leans };
    focuses.set(key, known);
    return known;
  };
  const loadedBy = (of: Focus, ids: readonly string[]): Focus => {
    const loads = new Set(of.networks.filter((n) => ids.includes(built.networks[n]!.plan.id)));
    const key = `${focusNumbers(of)} loaded by ${[...loads].join()}`;
    const known = focuses.get(key) ?? { ...of, loads };
    focuses.set(key, known);
    return known;
  };
  const wholeBut = (others: readonly number[], regulators?: ReadonlySet<string>): Focus => {
    const besides = regulators && regulators.size > 0 ? { besides: regulators } : {};
    const key = `but ${others.join()} ${[...(regulators ?? [])].join()}`;
    const leans = new Uint8Array(built.networks.length).fill(1);
    for (const n of others) leans[n] = 0;
    const known = focuses.get(key) ?? { ...nobody, leans, ...besides };
    focuses.set(key, known);
    return known;
  };

  /** Lets a solution in which peaks flow find the one just before them. */
  const answering = asksBefore(project);
  const lasting = project.networks.some((n) => n.on.some((b) => b.members.some(isLasting)));
  const starters = project.dips.length > 0 ? startersOf(built) : new Set<number>();
  /** A moment with what starts in it off; undefined where nothing does. */
  const unstarted = ({ on, ...moment }: Moment): Moment | undefined =>
    on.some((is, c) => is === 1 && starters.has(c))
      ? { ...moment, on: on.map((is, c) => (starters.has(c) ? 0 : is)) }
      : undefined;
  const remember = (s: Solution): void => {
    const calm = answering ? calmed(s.corner, lasting) : s.corner;
    if (calm !== s.corner) {
      s.before = () => solve({ moment: s.moment, corner: calm, focus: s.focus });
      const moment = unstarted(s.moment);
      if (moment) s.unstarted = () => solve({ moment, corner: calm, focus: s.focus });
    }
    if (built.pulsing.length > 0)
      s.during = (on) => solve({ moment: { ...s.moment, on }, corner: s.corner, focus: s.focus });
  };

  /** Equal corners are one, by number, so that the figures kept for it are. */
  const evens: Corner[] = [];
  const base = (moment: Moment, corner: Corner): Solution => {
    const number = corners(evened(corner));
    const even = (evens[number] ??= evened(corner));
    const name = states(moment.on) * 65536 + number;
    let solution = bases.get(name);
    if (solution === undefined) {
      // What one state came to is nearly right for the next.
      const former = collapsible ? undefined : formers.get(number);
      const start = former?.volts ?? unloaded(built, even);
      solution = new Solution(built, moment, even, nobody, start, undefined, false, former);
      formers.set(number, solution);
      bases.set(name, solution);
      remember(solution);
    }
    return solution;
  };

  /** The state to stand on: that of the others alone where none of them is on, so that all such questions share it. */
  const stand = ({ moment, corner, focus: { has } }: Candidate): Solution => {
    const others = moment.on.some((on, c) => on !== resting[c] && !built.networksOf[c]!.every((n) => has[n] === 1));
    return base(others ? moment : { mode: moment.mode, on: resting }, corner);
  };

  const places = placesIn(built);
  const placed = new Map<string, WeakMap<readonly Corner[], readonly Corner[]>>();
  const cornersFor = (corners: readonly Corner[], place: string | undefined): readonly Corner[] => {
    if (project.places.size === 0) return corners;
    const known = placed.get(place ?? '') ?? new WeakMap<readonly Corner[], readonly Corner[]>();
    placed.set(place ?? '', known);
    const found = known.get(corners) ?? cornersIn(corners, place, places);
    known.set(corners, found);
    return found;
  };
  const typicals = new Map<string | undefined, Corner>([[undefined, TYPICAL]]);
  const typical = (place: string | undefined): Corner => {
    const corner = typicals.get(place) ?? { ...TYPICAL, ...(place !== undefined && { place }) };
    typicals.set(place, corner);
    return corner;
  };

  const choices = { promised: feedsToTry(built, false), dead: feedsToTry(built, true) };
  const fed = (candidates: readonly Candidate[], dead: boolean): readonly Candidate[] => {
    const feeds = dead ? choices.dead : choices.promised;
    if (feeds.length === 0) return candidates;
    return candidates.flatMap((c) => cornersFed(c.corner, feeds).map((corner): Candidate => ({ ...c, corner })));
  };

  const answered = new Map<Candidate, Solution>();
  function solve(candidate: Candidate): Solution {
    let solution = answered.get(candidate);
    if (solution === undefined) {
      solution = find(candidate);
      answered.set(candidate, solution);
    }
    return solution;
  }
  const find = (candidate: Candidate): Solution => {
    const { moment, corner } = candidate;
    if (candidate.focus === nobody) return base(moment, corner);
    // Three small numbers in one: fewer than 2^16 states and corners are ever asked for.
    const name = (states(moment.on) * 65536 + corners(corner)) * 65536 + focusNumbers(candidate.focus);
    let solution = questions.get(name);
    if (solution === undefined) {
      const under = candidate.focus.networks.length === 0 ? undefined : stand(candidate);
      const start = under ?? base(moment, corner);
      solution = new Solution(built, moment, corner, candidate.focus, start.volts, under);
      questions.set(name, solution);
      remember(solution);
    }
    return solution;
  };
  const solveBuild = (moment: Moment, corner: Corner): Solution => {
    const s = new Solution(built, moment, corner, nobody, unloaded(built, corner));
    const calm = answering ? calmed(corner, lasting) : corner;
    let [before, rest]: (Solution | undefined)[] = [];
    const off = unstarted(moment);
    if (calm !== corner) s.before = () => (before ??= solveBuild(moment, calm));
    if (calm !== corner && off) s.unstarted = () => (rest ??= solveBuild(off, calm));
    if (built.pulsing.length > 0) s.during = (on) => solveBuild({ ...moment, on }, corner);
    return s;
  };
  return {
    circuitry: built,
    nobody,
    focus,
    focusOn,
    loadedBy,
    wholeBut,
    corners: cornersFor,
    fed,
    typical,
    resting,
    solve,
    under: (candidate) => (candidate.focus.networks.length === 0 ? solve(candidate) : stand(candidate)),
    solveBuild,
  };
}

/** Whether a peak is so long that it is the most of the draw itself. */
const isLasting = (m: Member): boolean => m.kind === 'current' && m.before !== undefined;

/** Circuits that are switched on, by number, and peak when they are. */
function startersOf({ project, networksOf, networks }: Circuitry): Set<number> {
  const starts = (c: number): boolean =>
    networksOf[c]!.some((n) => networks[n]!.plan.on.some((b) => b.members.some(isStarting)));
  return new Set(project.circuits.flatMap(({ always }, c) => (!always && starts(c) ? [c] : [])));
}

/** The places that anything stands in whose figures move with the temperature; the project's own surroundings are ''. */
function placesIn({ networks, links }: Circuitry): string[] {
  const places = new Set<string>();
  for (const { place, places: several } of networks)
    if (several) for (const each of several.values()) places.add(each ?? '');
    else places.add(place ?? '');
  for (const { link } of links) if (link.kind === 'cable' || link.kind === 'diode') places.add(link.place ?? '');
  return [...places];
}

/** Numbers for things that are equal when their texts are; each object's text is made once. */
function numbering<T extends object>(text: (item: T) => string): (item: T) => number {
  const byText = new Map<string, number>();
  const known = new Map<T, number>();
  return (item) => {
    let number = known.get(item);
    if (number === undefined) {
      const name = text(item);
      number = byText.get(name) ?? byText.size;
      byText.set(name, number);
      known.set(item, number);
    }
    return number;
  };
}

const evenCorners = new WeakMap<Corner, Corner>();

/** A corner in which the circuits in question lean like all the others. */
function evened(corner: Corner): Corner {
  let even = evenCorners.get(corner);
  if (even === undefined) {
    const { tuned: _, ...others } = corner;
    even = { ...others, load: corner.rest, control: corner.rest };
    evenCorners.set(corner, even);
  }
  return even;
}
