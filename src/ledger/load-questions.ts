/** The accounts that loads, drivers and clamps open for themselves. */
import type { AccountPlan, BranchPlan, LineEnds, NetworkPlan, Recipe } from '../loads/plan.js';
import { isFalling } from '../loads/plan.js';
import { placeOf } from '../project/places.js';
import type { Project } from '../project/project.js';
import type { Shares } from './bookings.js';
import type { Circuitry } from './circuitry.js';
import type { Apart, Corner, End, Ends } from './corner.js';
import { TYPICAL, cornersOf, isLineRecipe, lineCornersOf, opposite, pushing, wantsCrowd } from './corner.js';
import type { Likeness } from './likeness.js';
import type { ModeSearch } from './moments.js';
import { heaviest, together, keyOf } from './moments.js';
import type { Question } from './question.js';
import type { Focus, Moment } from './moment.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import { turningPoints } from './turning.js';
import { kept } from './kept.js';
import { worstMoments } from './worst-moments.js';

export function loadQuestions(solver: Solver, likeness: Likeness): Question[] {
  const around = aroundOf(solver);
  return solver.circuitry.project.accounts.map((plan) => ({
    ...question(solver, plan, around),
    ...twinOf(solver, plan, likeness),
  }));
}

/** The account of one circuit is like that of its likes: same place in the circuit, same limits. */
function twinOf({ circuitry }: Solver, plan: AccountPlan, likeness: Likeness): Pick<Question, 'twin' | 'circuit'> {
  const [circuit] = plan.circuits;
  if (circuit === undefined || plan.circuits.length > 1 || !plan.id.startsWith(circuit)) return {};
  const limits = plan.limits.map((l) => `${l.stated}${typeof l.value === 'number' ? l.value : ''}`).join();
  const part = plan.id.slice(circuit.length);
  return {
    circuit,
    twin: `${likeness(circuitry.circuitIndex.get(circuit)!)}|${part} ${plan.quantity} ${plan.direction} ${limits}`,
  };
}

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
  const search = (
    mode: ModeSearch,
    numbers: readonly number[],
    worth: readonly number[] | undefined,
    letGo: boolean,
    crowd: boolean,
    whileOff: boolean,
  ): readonly Moment[] => {
    if (whileOff) return offMoments(circuitry.project, mode, numbers, crowd ? hefts : []);
    // Whether one lets go hardly depends on the others; with none of them on its rails stand highest.
    if (letGo) return [{ mode: mode.name, on: solver.resting }];
    if (mode.on) return numbers.some((c) => mode.on![c] === 1) ? [{ mode: mode.name, on: mode.on }] : [];
    // Few others leave the rails high, many pull them down.
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
  const momentsOf = (
    mode: ModeSearch,
    numbers: readonly number[],
    worth: readonly number[] | undefined,
    letGo: boolean,
    crowd: boolean,
    whileOff: boolean,
  ): readonly Moment[] => {
    const key = `${keyOf(mode)}|${numbers.join()}|${worth?.join() ?? ''}|${letGo}|${mode.on === undefined && crowd}|${whileOff}`;
    const known = moments.get(key) ?? search(mode, numbers, worth, letGo, crowd, whileOff);
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
                momentsOf(mode, numbers, worth, letGo, crowd, whileOff).map((moment) => ({ moment, corner, focus })),
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

/** For each node of the supply tree the supplies and regulators that feed it. */
type Feeds = ReadonlyMap<string, ReadonlySet<string>>;

function upstream({ project }: Circuitry): Feeds {
  const feeds = new Map<string, Set<string>>();
  for (const node of project.nodes) feeds.set(node.id, new Set(node.volts ? [node.id] : []));
  // Wires have nothing of their own that could pull anywhere.
  for (const link of project.links)
    feeds.set(link.to, new Set([...(feeds.get(link.from) ?? []), ...(link.kind === 'wire' ? [] : [link.id])]));
  return feeds;
}

/** What feeds one end of a line and not the other. */
function endsOf({ from, at, below }: LineEnds, feeds: Feeds): Ends {
  const pushing = new Set(from.flatMap((node) => [...feeds.get(node)!]));
  const receiving = feeds.get(at)!;
  return {
    from: [...pushing].filter((id) => !receiving.has(id)),
    at: [...receiving].filter((id) => !pushing.has(id)),
    below: below === true,
  };
}

function question(solver: Solver, plan: AccountPlan, around: Around): Question {
  const asked = around.recipes(plan).map((recipe) => around.asked(plan, recipe));
  const { turns } = plan;
  const worst = kept((mode: ModeSearch) => worstMoments(solver, plan, mode, asked[0]!(mode)));
  const candidates = (mode: ModeSearch): readonly Candidate[] => {
    const others = asked.slice(1).flatMap((ask) => ask(mode));
    const leaning = [...worst(mode), ...worstMoments(solver, plan, mode, others, worst(mode))];
    if (turns === undefined) return leaning;
    const [most, least] = plan.recipes.map((recipe) => around.asked(plan, recipe)(mode));
    return [...leaning, ...turningPoints(solver, turns, plan.read, most!, least!)];
  };

  const shares = (s: Solution): Shares => {
    const sum = new Map<string, number>();
    for (const { circuit, part, share } of plan.books ?? [])
      sum.set(circuit, (sum.get(circuit) ?? 0) + s.current(part) * (share?.(s) ?? 1));
    return sum;
  };
  return { ...plan, candidates, probes: worst, ...(plan.books && { shares }) };
}

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

const isControl = (plan: NetworkPlan, { circuit }: BranchPlan): boolean =>
  plan.controls ? plan.controls.has(circuit) : plan.side === 'control';

/** Whether something hangs in a circuit's networks beside it that another supply or regulator feeds. */
function isMixed({ networks, networksOf, project }: Circuitry, circuits: readonly number[], feeds: Feeds): boolean {
  const own = new Set(circuits.map((c) => project.circuits[c]!.id));
  const fedBy = (branches: readonly BranchPlan[]): Set<string> =>
    new Set(branches.flatMap(({ from, to }) => [...(feeds.get(from) ?? []), ...(feeds.get(to) ?? [])]));
  return circuits.some((c) =>
    networksOf[c]!.some((n) => {
      const { on, off, circuits: switching } = networks[n]!;
      if (switching.length < 2) return false;
      const branches = [...on.plans, ...off.plans].filter((b) => b.pin === undefined);
      const ours = fedBy(branches.filter((b) => own.has(b.circuit)));
      const theirs = fedBy(branches.filter((b) => !own.has(b.circuit)));
      return ours.size !== theirs.size || [...ours].some((id) => !theirs.has(id));
    }),
  );
}

/** A corner, and those in which regulators' outputs stand at one end and what feeds them at the other. */
function crossed({ links }: Project, corner: Corner): readonly Corner[] {
  const regulated = (end: End): ReadonlyMap<string, End> =>
    new Map([...links.flatMap((l) => (l.volts ? [[l.id, end] as const] : [])), ...(corner.apart ?? [])]);
  const other = opposite(corner.sources);
  return [
    corner,
    { ...corner, apart: regulated(other) },
    {
      ...corner,
      sources: other,
      losses: opposite(corner.losses),
      rest: corner.rest === 'low' ? 'high' : 'low',
      apart: regulated(corner.sources),
    },
  ];
}

/** Supplies and regulators before the rails alone that some networks feed backwards. */
function tornBy(
  { feeders, networks, project }: Circuitry,
  numbers: readonly number[],
  feeds: Feeds,
): readonly string[] {
  if (feeders.size === 0) return [];
  const own = numbers.flatMap((n) => [...networks[n]!.plan.on, ...networks[n]!.plan.off].filter((b) => feeders.has(b)));
  // Losses are tried at either end anyhow.
  const losses = new Set(project.links.flatMap((l) => (l.volts === undefined ? [l.id] : [])));
  return own.flatMap(({ from, to }) =>
    [...feeds.get(to)!].filter((id) => !feeds.get(from)!.has(id) && !losses.has(id)),
  );
}

/** A corner in which these stand at the other end than all else. */
const partedBy = (ids: readonly string[], corner: Corner): Corner => ({
  ...corner,
  follows: true,
  apart: new Map([...(corner.apart ?? []), ...ids.map((id) => [id, opposite(corner.sources)] as const)]),
});

/** Supplies and regulators that feed a circuit's pins alone, or its control side alone. */
function pullingApart(circuitry: Circuitry, circuits: readonly number[], feeds: Feeds, contacts: boolean): Apart {
  const [pins, control, load] = [new Set<string>(), new Set<string>(), new Set<string>()];
  const own = new Set(circuits.map((c) => circuitry.project.circuits[c]!.id));
  for (const c of circuits)
    for (const n of circuitry.networksOf[c]!) {
      const { on, off, plan } = circuitry.networks[n]!;
      if ((plan.contact === true) !== contacts) continue;
      const branches = [...on.plans, ...off.plans];
      const railOf = (b: BranchPlan): string | undefined => b.pin && (b.pin.outward === 1 ? b.from : b.to);
      const rails = new Set(branches.map(railOf));
      for (const branch of branches) {
        const rail = railOf(branch);
        // What else hangs on the pin is none of theirs.
        if (rail === undefined && !own.has(branch.circuit)) continue;
        // A pull-up belongs to its pin: it ends where the pin's own rail does.
        if (
          feeds.has(branch.from) &&
          rails.has(branch.from) &&
          branch.members.every((m) => m.kind === 'resistance' && (!m.load || isControl(plan, branch)))
        ) {
          pins.add(branch.from);
          continue;
        }
        for (const node of [branch.from, branch.to])
          if (feeds.has(node)) (node === rail ? pins : isControl(plan, branch) ? control : load).add(node);
      }
    }
  const fed = (nodes: Iterable<string>): string[] => [...new Set([...nodes].flatMap((node) => [...feeds.get(node)!]))];
  const less = (ids: readonly string[], others: readonly string[]): string[] =>
    ids.filter((id) => !others.includes(id));
  return {
    pins: less(fed(pins), fed([...control, ...load])),
    control: less(fed(control), fed([...pins, ...load])),
    both: less(fed(pins), fed(load)).filter((id) => fed(control).includes(id)),
  };
}
