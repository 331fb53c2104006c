/** What the accounts of some circuits share: who is in question, which supplies can pull apart, the moments to try. */
import type { AccountPlan, Recipe } from '../loads/account-plan.js';
import { isFalling } from '../loads/branch-plan.js';
import { placeOf } from '../project/places.js';
import type { Project } from '../project/project.js';
import type { Apart, Corner } from './corner.js';
import { TYPICAL, cornersOf, isLineRecipe, lineCornersOf, pushing, wantsCrowd } from './corner.js';
import { kept } from './kept.js';
import type { Focus, Moment } from './moment.js';
import type { ModeSearch } from './moments.js';
import { betweenPulses, heaviest, keyOf, together } from './moments.js';
import { crossed, endsOf, isMixed, partedBy, pullingApart, tornBy, upstream } from './pulling-apart.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';

/** So much more than any crowd the circuits in question weigh. */
const OUTWEIGHS = 1e3;

/** What the accounts of one circuit share: who is in question, which supplies can pull apart, the moments to try. */
export interface Around {
  /** The recipes of an account, and those that are its extremes besides where a load draws more as its voltage falls. */
  recipes(plan: Pick<AccountPlan, 'recipes' | 'circuits'>): readonly Recipe[];
  /** The candidates of a recipe in a mode; the same for all accounts of the circuits. */
  asked(plan: Asked, recipe: Recipe): (mode: ModeSearch) => readonly Candidate[];
}

/** What of an account its candidates depend on. */
export type Asked = Pick<AccountPlan, 'id' | 'quantity' | 'direction' | 'circuits'> &
  Omit<Partial<AccountPlan>, 'read' | 'steps'> & { readonly read: (s: Solution) => number | undefined };

/** The place whose ambient an account reads: that of its circuits; an array stands apart from what it switches. */
function placeOfAccount(
  project: Project,
  { kind, id, circuits }: Pick<Asked, 'kind' | 'id' | 'circuits'>,
): string | undefined {
  if (project.places.size === 0) return undefined;
  const names = kind === 'array' || circuits.length === 0 ? [id] : circuits;
  const [place, ...others] = new Set(names.map((name) => placeOf(project, name)));
  return others.length === 0 ? place : undefined;
}

interface Concerned {
  readonly focus: Focus;
  readonly numbers: readonly number[];
  readonly apart: Apart;
  /** Something fed otherwise hangs on their pins beside them. */
  readonly mixed: boolean;
}

/** What is asked of the moments of some circuits. */
interface Asks {
  /** How much each of them weighs, where several are in question. */
  readonly worth: readonly number[] | undefined;
  /** Whether they let go. */
  readonly letGo: boolean;
  /** Many others pull the rails down; else few leave them high. */
  readonly crowd: boolean;
  /** What carries is a normally closed contact. */
  readonly whileOff: boolean;
}

export function aroundOf(solver: Solver): Around {
  const { circuitry } = solver;
  const feeds = upstream(circuitry);
  const sets = together(circuitry.project);
  const hefts = circuitry.project.circuits.map((_, k) => heft(solver, k));

  /** What each circuit alone brings an account that several have a part in; typical figures are enough to tell who weighs most. */
  const worths = (plan: Asked, numbers: readonly number[]): readonly number[] => {
    const worth = (circuits: readonly number[]): number => {
      const on = Uint8Array.from(solver.resting);
      for (const k of circuits) on[k] = 1;
      return plan.read(solver.solve({ moment: { mode: '', on }, corner: TYPICAL, focus: solver.nobody })) ?? 0;
    };
    const none = worth([]);
    const all = numbers.map((c) => Math.max(worth(sets[c]!) - none, 0));
    const most = Math.max(...all);
    // They outweigh any crowd beside them.
    return all.map((w) => (most > 0 ? (OUTWEIGHS * w) / most : OUTWEIGHS));
  };
  const search = (mode: ModeSearch, numbers: readonly number[], asks: Asks): readonly Moment[] => {
    const { worth, letGo, crowd, whileOff } = asks;
    if (whileOff) return offMoments(circuitry.project, mode, numbers, crowd ? hefts : []);
    // Whether one lets go hardly depends on the others; with none of them on its rails stand highest.
    if (letGo) return [{ mode: mode.name, on: solver.resting }];
    // Few others leave the rails high, many pull them down.
    if (mode.on) {
      const on = crowd ? mode.on : betweenPulses(circuitry.project, mode.on, numbers);
      return numbers.some((c) => on[c] === 1) ? [{ mode: mode.name, on }] : [];
    }
    const weights = Float64Array.from(hefts, (h) => (crowd ? h : -1));
    // What hangs on its pin comes with it.
    for (const c of numbers) for (const k of sets[c]!) weights[k] = 0;
    numbers.forEach((c, k) => (weights[sets[c]![0]!] = Math.max(weights[sets[c]![0]!]!, worth?.[k] ?? 1)));
    return heaviest(circuitry.project, mode, weights, new Set(numbers.length > 1 ? [] : numbers));
  };
  const concerns = (contacts: boolean) =>
    kept((names: string): Concerned => {
      const numbers = names === '' ? [] : names.split(',').map((id) => circuitry.circuitIndex.get(id)!);
      return {
        focus: solver.focus(numbers, [], contacts),
        numbers,
        apart: pullingApart(circuitry, numbers, feeds, contacts),
        mixed: isMixed(circuitry, numbers, feeds),
      };
    });
  const concerned = { coils: concerns(false), contacts: concerns(true) };
  const moments = new Map<string, readonly Moment[]>();
  const candidates = new Map<string, (mode: ModeSearch) => readonly Candidate[]>();
  const pulses = circuitry.project.circuits.some((c) => c.pulses);
  const momentsOf = (mode: ModeSearch, numbers: readonly number[], asks: Asks): readonly Moment[] => {
    const { worth, letGo, crowd, whileOff } = asks;
    const key = `${keyOf(mode)}|${numbers.join()}|${worth?.join() ?? ''}|${letGo}|${(mode.on === undefined || pulses) && crowd}|${whileOff}`;
    const known = moments.get(key) ?? search(mode, numbers, asks);
    moments.set(key, known);
    return known;
  };
  const falling = new Set(circuitry.project.networks.flatMap((n) => (n.on.some(isFalling) ? n.circuits : [])));
  return {
    recipes: ({ recipes, circuits }) =>
      circuits.some((c) => falling.has(c))
        ? [...new Set(recipes.flatMap((r) => [r, ...(OPPOSITE[r] ?? [])]))]
        : recipes,
    asked(plan, recipe) {
      const { circuits, books, peaks = false, off = false, whileOff = false, loads = [], line } = plan;
      const place = placeOfAccount(circuitry.project, plan);
      // A sum of currents leans by its own parts: what else a circuit draws only pulls at the rails.
      const booked = books && recipe.startsWith('draw-') ? books.map(({ part }) => part) : undefined;
      const many = circuits.length > 1 ? `${plan.id} ${plan.quantity} ${plan.direction}` : '';
      const ends = line ? `${line.from.join()} ${line.at} ${line.below}` : '';
      const key = `${place ?? ''}|${circuits.join()}|${recipe}|${peaks}|${booked?.join() ?? ''}|${off}|${whileOff}|${plan.kind === 'contact'}|${loads.join()}|${many}|${ends}`;
      let ask = candidates.get(key);
      if (ask === undefined) {
        const {
          focus: whole,
          numbers,
          apart,
          mixed,
        } = concerned[plan.kind === 'contact' ? 'contacts' : 'coils'](circuits.join());
        const asking = booked ? solver.focusOn(numbers, booked) : whole;
        const focus = loads.length > 0 ? solver.loadedBy(asking, loads) : asking;
        const asks = isLineRecipe(recipe)
          ? lineCornersOf(recipe, endsOf(line!, feeds))
          : cornersOf(recipe, apart, peaks);
        const stood = mixed ? asks.flatMap((c) => crossed(circuitry.project, c)) : asks;
        const torn = tornBy(circuitry, whole.networks, feeds);
        const parted = torn.length > 0 ? stood.flatMap((c) => [c, partedBy(torn, c)]) : stood;
        const corners = solver.corners(circuitry.feeders.size > 0 ? parted.flatMap(pushing) : parted, place);
        const letGo = off || recipe.startsWith('let-go');
        const worth = numbers.length > 1 ? worths(plan, numbers) : undefined;
        const byMode = new Map<ModeSearch, readonly Candidate[]>();
        ask = (mode) => {
          let known = byMode.get(mode);
          if (known === undefined) {
            known = corners.flatMap((corner: Corner) =>
              (mixed && mode.on === undefined ? [true, false] : [wantsCrowd(corner)]).flatMap((crowd) =>
                momentsOf(mode, numbers, { worth, letGo, crowd, whileOff }).map((moment) => ({
                  moment,
                  corner,
                  focus,
                })),
              ),
            );
            byMode.set(mode, known);
          }
          return known;
        };
        candidates.set(key, ask);
      }
      return ask;
    },
  };
}

/**
 * The moments in which some circuits are off, so that their normally closed contacts carry: with as many of the others as
 * there may be, or as few.
 *
 * @param hefts how much each circuit weighs; none: the others are to be few
 */
function offMoments(
  project: Project,
  mode: ModeSearch,
  numbers: readonly number[],
  hefts: readonly number[],
): readonly Moment[] {
  const sets = together(project);
  const own = new Set(numbers.flatMap((c) => sets[c]!));
  const isOff = ({ on }: Moment): boolean => [...own].every((k) => on[k] === 0);
  if (mode.on) return [{ mode: mode.name, on: mode.on }].filter(isOff);
  const weights = Float64Array.from(project.circuits, (_, k) => (own.has(k) ? -OUTWEIGHS : (hefts[k] ?? -1)));
  return heaviest(project, mode, weights, new Set()).filter(isOff);
}

/** Where a load draws more as its voltage falls, it draws the most when starved and the least when flooded. */
const OPPOSITE: { readonly [R in Recipe]?: readonly Recipe[] } = {
  'draw-most': ['starved'],
  'draw-least': ['flooded'],
  hottest: ['starved'],
  lightest: ['flooded'],
};

/** Volts at which a constant power is weighed. */
const HEFT_VOLTS = 5;

/** How much a circuit weighs on its rails: the highest current of its branches, for choosing the crowd only. */
function heft(solver: Solver, circuit: number): number {
  const { networksOf, networks } = solver.circuitry;
  let most = 1e-9;
  for (const n of networksOf[circuit]!)
    for (const plan of networks[n]!.on.plans)
      for (const m of plan.members) {
        if (m.kind === 'current' || m.kind === 'filament') most += m.amps.max;
        else if (m.kind === 'power') most += m.watts.max / HEFT_VOLTS;
        else if (m.kind === 'resistance' && m.load) most += 1 / m.ohms.min;
        else if (m.kind === 'junction') most += 0.01;
      }
  return most;
}
