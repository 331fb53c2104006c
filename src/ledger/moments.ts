/**
 * Worst moments: which circuits are on together. A stated mode is one moment. Without modes, and in the runaway state, the
 * moment is searched for: the allowed state that weighs most, by branch and bound over the interlocks.
 */
import type { InterlockPlan, ModePlan, Project } from '../project/project.js';
import { allowed, rulesOf } from './interlock-rules.js';
import { heaviestStates } from './interlocked.js';
import type { Moment } from './moment.js';
import type { Solver } from './solver.js';

/** One mode to judge, stated or searched. */
export interface ModeSearch {
  readonly name: string;
  /** Which of the turns that its circuits take, where a stated mode is several moments. */
  readonly turn?: number;
  /** A stated mode's circuits. */
  readonly on?: Uint8Array;
  /** The interlocks that hold in a searched one. */
  readonly interlocks?: readonly InterlockPlan[];
  /** Where some supplies are dead in it: what solves the project without them. */
  readonly bench?: Solver;
}

/** Tells one mode, in one of its turns, from all others. */
export const keyOf = ({ name, turn = 0 }: ModeSearch): string => `${name}/${turn}`;

/** Name of the state in which firmware promises nothing. */
export const RUNAWAY = 'runaway';
/** Name of the state from a reset until firmware runs. */
export const BOOT = 'boot';
/** Name of the state that stands for all when no modes are given. */
export const FREE = 'free';

/**
 * Circuits that are on together, whoever switches them, by circuit: what hangs on one pin has one level there.
 * A circuit of its own is together with itself alone.
 */
export function together(project: Project): readonly (readonly number[])[] {
  const known = unions.get(project);
  if (known) return known;
  const index = new Map(project.circuits.map((c, k) => [c.id, k]));
  const sets = project.circuits.map((_, k) => [k]);
  for (const { circuits } of project.networks) {
    if (circuits.length < 2) continue;
    const whole = [...new Set(circuits.flatMap((id) => sets[index.get(id)!]!))].sort((a, b) => a - b);
    for (const k of whole) sets[k] = whole;
  }
  unions.set(project, sets);
  return sets;
}

const unions = new WeakMap<Project, readonly (readonly number[])[]>();

/** Whether firmware ends pulses that would last for good without it. */
export const pulsesEnd = ({ circuits }: Project): boolean =>
  circuits.some(({ pulses }) => pulses !== undefined && pulses.slow !== true && pulses.duty.max < 1);

/** The same project with nobody there to end a pulse: what pulses stays on. */
export const withoutPulses = (project: Project): Project => ({
  ...project,
  circuits: project.circuits.map((circuit) => {
    const { pulses, ...steady } = circuit;
    return pulses === undefined ? circuit : steady;
  }),
});

/**
 * The modes of a project, the runaway state last where it can differ from the others.
 *
 * @param reserves some source feeds only when another one is dead: that belongs to the runaway state
 */
export function modesOf(project: Project, only?: string, reserves = false): ModeSearch[] {
  const wiring = project.interlocks.filter((i) => i.by === 'wiring');
  const runaway: ModeSearch = { name: RUNAWAY, interlocks: wiring };
  // What is so until firmware runs, or while a supply is dead, is reckoned by itself.
  const modes = project.modes.filter((m) => m.during === undefined && m.without.length === 0);
  if (modes.length === 0) {
    const free: ModeSearch = { name: FREE, interlocks: project.interlocks };
    if (only !== undefined) return [];
    return wiring.length === project.interlocks.length && !reserves && !pulsesEnd(project) ? [free] : [free, runaway];
  }
  const stated = statesOf(project, modes);
  if (only !== undefined) return stated.filter((m) => m.name === only);
  const switched = project.circuits.some((c) => !c.always);
  return switched || reserves ? [...stated, runaway] : stated;
}

/** The moments that stated modes are. */
export function statesOf(project: Project, modes: readonly ModePlan[]): ModeSearch[] {
  const named = new Set(project.modes.flatMap((m) => [...m.active]));
  const sets = together(project);
  return modes.flatMap((mode): ModeSearch[] => {
    const asleep = new Set(mode.asleep.map((id) => `${id}.awake`));
    const on = project.circuits.map(
      (c) => (c.always && !asleep.has(c.id)) || (!c.always && !named.has(c.id)) || mode.active.has(c.id),
    );
    // A signal that shares its pin with a load is as the load is.
    const leading = sets.map((set) => {
      const loads = set.filter((k) => !project.circuits[k]!.signal);
      return loads.length > 0 ? loads : set;
    });
    const whole = Uint8Array.from(leading, (set) => (set.some((k) => on[k]) ? 1 : 0));
    return inTurns(project, whole).map((on, turn) => ({ name: mode.name, turn, on }));
  });
}

/**
 * A state in the moment between pulses: what pulses is off, but for some circuits. How pulses of several pins lie to one another
 * nobody knows, so that each of them may be over while another one lasts.
 *
 * @param but numbers of circuits that stay as they are @returns the state itself where nothing else pulses
 */
export function betweenPulses(project: Project, on: Uint8Array, but: readonly number[] = []): Uint8Array {
  const sets = together(project);
  const kept = new Set(but.flatMap((c) => sets[c]!));
  const over = project.circuits.flatMap(({ pulses }, c) => (pulses && on[c] === 1 && !kept.has(c) ? sets[c]! : []));
  if (over.length === 0) return on;
  const between = on.slice();
  for (const c of over) between[c] = 0;
  return between;
}

/** More turns than this are not gone through for every combination: displays then step together. */
const MOST_TURNS = 64;

/** The moments that a state stands for, where circuits of a load take turns: so many neighbours of them at a time. */
function inTurns(project: Project, whole: Uint8Array): Uint8Array[] {
  const index = new Map(project.circuits.map((c, k) => [c.id, k]));
  return project.interlocks.reduce<Uint8Array[]>(
    (states, { turns, most = 0, of }) => {
      const on = of.map((id) => index.get(id)!).filter((k) => whole[k] === 1);
      if (!turns || on.length <= most) return states;
      const turn = (state: Uint8Array, first: number): Uint8Array => {
        const next = state.slice();
        on.forEach((k, place) => (next[k] = (place - first + on.length) % on.length < most ? 1 : 0));
        return next;
      };
      if (states.length * on.length > MOST_TURNS) return states.map((state, k) => turn(state, k % on.length));
      return states.flatMap((state) => on.map((_, first) => turn(state, first)));
    },
    [whole],
  );
}

/** States that weigh within this share of the best are all tried: a shared rail's droop may turn their order. */
const NEAR = 0.05;
const MOST_NEAR = 24;

/**
 * The allowed states that weigh most.
 *
 * @param weights one a circuit; a circuit of negative weight is left off unless an interlock needs it
 * @param must circuits that have to be on
 * @returns the best and those near it, best first; a single state marked as a bound when the search was cut short
 */
export function heaviest(
  project: Project,
  search: ModeSearch,
  weights: ArrayLike<number>,
  must: ReadonlySet<number>,
): Moment[] {
  const { name } = search;
  const sets = together(project);
  // What is on together is decided once, under the first of its numbers.
  const weight = sets.map((set) => set.reduce((sum, k) => sum + weights[k]!, 0));
  const fixed = sets.map((set) => set.some((k) => project.circuits[k]!.always || must.has(k)));
  const start = Uint8Array.from(sets, (_, k) => (fixed[k] || weight[k]! > 0 ? 1 : 0));
  const rules = rulesOf(project, search.interlocks ?? []);
  if (allowed(start, rules)) return [{ mode: name, on: start }];
  // Only circuits that an interlock names can be in dispute; heavy ones are decided first.
  const disputed = [...new Set(rules.flatMap((r) => [...r.of, ...r.when]).map((k) => sets[k]![0]!))]
    .filter((k) => !fixed[k])
    .sort((a, b) => Math.abs(weight[b]!) - Math.abs(weight[a]!));
  const off = start.slice();
  for (const k of disputed) for (const c of sets[k]!) off[c] = 0;
  const settled = sets.reduce((sum, [k], c) => sum + (k === c && off[c] ? weight[c]! : 0), 0);
  const found = heaviestStates(
    { disputed, weight, sets, rules, off },
    (heaviest) => NEAR * Math.abs(settled + heaviest),
    MOST_NEAR,
  )?.filter(({ on }) => allowed(on, rules));
  // Every allowed state is part of the one with all on, so it bounds whatever grows with load; so it does for what is
  // always on and keeps no interlock.
  if (found === undefined || (found.length === 0 && must.size === 0)) return [{ mode: name, on: start, bound: true }];
  return found.map(({ on }) => ({ mode: name, on }));
}

/** A moment with one circuit, and what hangs on its pin, turned over; undefined where that is not allowed. */
export function turnedOver(project: Project, search: ModeSearch, moment: Moment, circuit: number): Moment | undefined {
  const set = together(project)[circuit]!;
  if (set.some((k) => project.circuits[k]!.always)) return undefined;
  const on = moment.on.slice();
  for (const k of set) on[k] = 1 - moment.on[circuit]!;
  return allowed(on, rulesOf(project, search.interlocks ?? [])) ? { ...moment, on } : undefined;
}
