/**
 * The state from a reset until firmware runs: what each load does then, and what that comes to on supplies and pins. A pin
 * that the chip drives is at its level; whether one that is pulled or floats moves its load is asked of the same accounts
 * that prove the load on and off when firmware drives it.
 */
import type { AccountPlan, Reading } from '../loads/account-plan.js';
import type { BootState, CircuitPlan } from '../loads/circuit-plan.js';
import type { InterlockPlan, ModePlan, Project } from '../project/project.js';
import type { Account } from './account.js';
import { marginOf } from './account.js';
import { sharesLeft } from './badness.js';
import { allowed, rulesOf } from './interlock-rules.js';
import { kept } from './kept.js';
import type { Listening } from './listening.js';
import { listeningIn } from './listening.js';
import { settleAccount } from './settle.js';
import { likenessOf } from './likeness.js';
import { loadQuestions } from './load-questions.js';
import type { ModeSearch } from './moments.js';
import { BOOT } from './moments.js';
import { pinQuestions } from './pin-questions.js';
import type { Asks, Question } from './question.js';
import type { Solver } from './solver.js';
import { solver } from './solver.js';
import { isLoose } from '../project/loose-pins.js';
import { treeQuestions } from './tree-questions.js';

/** What a circuit does before firmware runs. */
export interface AtBoot {
  readonly circuit: string;
  /** `open`: nothing promises either; `pulses`: it is on and off in turns. */
  readonly does: 'on' | 'off' | 'pulses' | 'open';
  /** What its pins do, by account. */
  readonly pins: readonly { readonly pin: string; readonly state: BootState }[];
  /** The stated mode that says it is on. */
  readonly stated?: string;
  /** The account that it fails to be proved off by. */
  readonly account?: Account;
}

export interface BootBooks {
  readonly circuits: readonly AtBoot[];
  /** Loads that listen to a line that nothing holds, or that pulses: what they make of it nobody knows. */
  readonly listening: readonly Listening[];
  /** What is drawn then, as far as it is asked: beside other modes only what some policy might find fault with. */
  readonly accounts: readonly Account[];
  /** What solves it; absent where nothing is asked. */
  readonly bench?: Solver;
}

const NOTHING: BootBooks = { circuits: [], listening: [], accounts: [] };

/** @param only the name of the one mode to look at @param asks the accounts that are wanted */
export function bootBooks(project: Project, only?: string, asks: Asks = () => true): BootBooks {
  const stated = project.modes.filter((m) => m.during === 'boot');
  const modes = stated.length > 0 ? stated.filter((m) => only === undefined || m.name === only) : [undefined];
  if (modes.length === 0 || (only !== undefined && stated.length === 0 && only !== BOOT)) return NOTHING;
  const driven = project.circuits.flatMap((c): AtBoot[] => {
    if (c.always || c.signal || c.listens) return [];
    const pins = [...pinsOf(project, c.id), ...channelsOf(project, c)];
    return pins.length === 0 ? [] : [{ circuit: c.id, does: drivenTo(pins), pins }];
  });
  const loose = new Set(driven.flatMap((d) => (d.does === 'open' ? [d.circuit] : [])));
  const bench = solver(bootProject(project, loose));
  const circuits = loose.size === 0 ? driven : settleLoose(bench, driven);
  return {
    circuits: circuits.map((c) => statedOn(c, stated)),
    listening: listeningIn(project),
    accounts: modes.flatMap((mode) => booked(bench, circuits, mode, { all: only !== undefined, asks })),
    bench,
  };
}

/** A circuit that a mode of the file says is on at boot. */
function statedOn(c: AtBoot, stated: readonly ModePlan[]): AtBoot {
  const mode = stated.find((m) => m.active.has(c.circuit));
  return mode === undefined || c.does === 'on' ? c : { ...c, does: 'on', stated: mode.name };
}

interface PinAt {
  readonly pin: string;
  readonly state: BootState;
  readonly active: 'high' | 'low';
}

function pinsOf(project: Project, circuit: string): PinAt[] {
  return project.uses.flatMap((u): PinAt[] => {
    const boot = u.by === circuit && u.as === 'output' ? project.boot.pins.get(u.pin) : undefined;
    return boot === undefined ? [] : [{ pin: u.pin, state: boot.state, active: u.active ?? 'high' }];
  });
}

/** Channels of arrays that are set over control lines: nothing drives them to anything until they are first set. */
const channelsOf = ({ serial }: Project, { wiring }: CircuitPlan): PinAt[] =>
  (wiring.channels ?? []).flatMap((channel): PinAt[] => {
    const array = channel.slice(0, channel.lastIndexOf('.'));
    const heldOff = serial.get(array);
    return heldOff === undefined ? [] : [{ pin: channel, state: heldOff ? 'low' : 'any', active: 'high' }];
  });

/** What pins that the chip drives make of a circuit; `open` where one of them is not driven. */
function drivenTo(pins: readonly PinAt[]): AtBoot['does'] {
  if (pins.some(({ state }) => isLoose({ state }))) return 'open';
  if (pins.some(({ state }) => state === 'pulses' || state === 'any')) return 'pulses';
  return pins.some(({ state, active }) => state === active) ? 'on' : 'off';
}

/** The project as its pins stand then, and of its accounts those that prove a loose circuit on or off. */
function bootProject(project: Project, loose: ReadonlySet<string>): Project {
  return { ...project, networks: project.boot.networks, accounts: proofsOf(project, loose) };
}

/** The accounts that prove some circuits on or off, whether firmware drives them or not. */
export const proofsOf = (project: Project, circuits: ReadonlySet<string>): readonly AccountPlan[] =>
  [...project.accounts, ...project.boot.accounts].filter(
    (a) => a.circuits.some((c) => circuits.has(c)) && (provesOff(a) || provesOn(a)),
  );

const isFunction = (a: AccountPlan): boolean => a.limits.some((l) => l.isFunction && l.mild !== true);
/** It tells whether a circuit is off when it should be, or whether a stage holds the next one off. */
const provesOff = (a: AccountPlan): boolean =>
  isFunction(a) &&
  (a.direction === 'at-most' ? a.recipes.includes('let-go-worst') : a.direction === 'at-least' && a.off === true);
/** It tells whether what switches a circuit conducts. */
const provesOn = (a: AccountPlan): boolean =>
  isFunction(a) &&
  a.direction === 'at-least' &&
  a.off !== true &&
  (a.kind === 'driver' || a.kind === 'array' || a.kind === 'input');

/** What stands in a question is left of its tightest function, over all its corners. */
function leftOf(bench: Solver, q: Question, mode: ModeSearch): number {
  let least = Infinity;
  for (const candidate of q.candidates(mode)) {
    const s = bench.solve(candidate);
    const draw = q.read(s);
    if (draw === undefined) continue;
    for (const limit of q.limits) {
      if (!limit.isFunction || limit.mild) continue;
      const value = typeof limit.value === 'number' ? limit.value : limit.value(s as Reading);
      least = Math.min(least, marginOf(q.direction, q.quantity, draw, value, s.ambient));
    }
  }
  return least;
}

/** A margin of nothing is rounding. */
const DUST = 1e-9;

/** What circuits do whose pins nobody drives. @param bench solves a project whose accounts are their proofs */
export function settleLoose(bench: Solver, circuits: readonly AtBoot[]): readonly AtBoot[] {
  const { project, circuitIndex } = bench.circuitry;
  const likeness = likenessOf(bench.circuitry, []);
  const questions = loadQuestions(bench, likeness);
  const plans = project.accounts;
  const known = new Map<string, Pick<AtBoot, 'does' | 'account'>>();
  const settle = (circuit: string): Pick<AtBoot, 'does' | 'account'> => {
    const on = Uint8Array.from(bench.resting);
    on[circuitIndex.get(circuit)!] = 1;
    const mode: ModeSearch = { name: BOOT, on };
    const mine = (proves: (plan: AccountPlan) => boolean): Question[] =>
      questions.filter((_, k) => plans[k]!.circuits.includes(circuit) && proves(plans[k]!));
    const failing = mine(provesOff).find((q) => leftOf(bench, q, mode) < -DUST);
    if (failing === undefined) return { does: 'off' };
    const does = mine(provesOn).every((q) => leftOf(bench, q, mode) >= -DUST) ? 'on' : 'open';
    // An account that is asked at boot only is none that a report tells.
    const atBoot = project.boot.accounts.some((a) => a.id === failing.id && a.direction === failing.direction);
    const account = atBoot ? undefined : settleAccount(bench, failing, [mode], false);
    return { does, ...(account && { account }) };
  };
  return circuits.map((c) => {
    if (c.does !== 'open') return c;
    const key = likeness(circuitIndex.get(c.circuit)!);
    const found = known.get(key) ?? settle(c.circuit);
    known.set(key, found);
    return { ...c, ...found };
  });
}

/**
 * What flows in supplies and pins with everything on that may be.
 *
 * @param all what keeps ample margins, too @param asks the accounts that are wanted
 */
function booked(
  bench: Solver,
  circuits: readonly AtBoot[],
  stated: ModePlan | undefined,
  { all, asks }: { readonly all: boolean; readonly asks: Asks },
): readonly Account[] {
  const mode = momentOf(bench, circuits, stated);
  const tree = treeQuestions(bench);
  // With nothing switched on the state is part of every other, but for what holds in it alone.
  const asked = isIdle(bench, mode)
    ? tree.filter((q) => q.limits.some(({ holdsIn }) => holdsIn?.(mode.name) === true))
    : [...tree, ...pinQuestions(bench, likenessOf(bench.circuitry, [mode]))];
  // What keeps its limits amply then is no news beside the other modes; circuits that are alike keep them alike.
  const ample = kept((q: Question) => isAmple(bench, q, mode));
  const first = new Map<string, Question>();
  const isNews = (q: Question): boolean => {
    const alike = (q.twin === undefined ? undefined : first.get(q.twin)) ?? q;
    if (q.twin !== undefined) first.set(q.twin, alike);
    return !ample(alike);
  };
  return asked
    .filter((q) => q.limits.length > 0 && asks(q) && (all || isNews(q)))
    .flatMap((q) => settleAccount(bench, q, [mode], false) ?? [])
    .filter((a) => a.limits.length > 0);
}

/** The state with everything on that may be: as much of it as interlocks by wiring allow, which hold before firmware runs, too. */
function momentOf(bench: Solver, circuits: readonly AtBoot[], stated: ModePlan | undefined): ModeSearch {
  const { circuitIndex, project } = bench.circuitry;
  const name = stated?.name ?? BOOT;
  const on = Uint8Array.from(bench.resting);
  for (const { circuit, does } of circuits)
    if (does !== 'off' || stated?.active.has(circuit)) on[circuitIndex.get(circuit)!] = 1;
  const wiring = project.interlocks.filter((i) => i.by === 'wiring');
  // A stated mode is judged as it is stated.
  if (stated !== undefined || allowed(on, rulesOf(project, wiring))) return { name, on };
  const others = project.circuits.flatMap((c, k) => (on[k] === 0 ? [c.id] : []));
  const resting: InterlockPlan = { kind: 'at-most', most: 0, of: others, by: 'wiring', path: [] };
  return { name, interlocks: [...wiring, resting] };
}

/** Whether nothing is on in a state but what always is. */
const isIdle = ({ resting }: Solver, { on }: ModeSearch): boolean =>
  on?.every((state, k) => state === resting[k]) === true;

/** Share of a limit that the probes of an account may have more in hand than its worst corner. */
const NEARLY = 0.05;

/** Whether so much is left of all limits that every policy would call it sound. */
function isAmple(bench: Solver, q: Question, mode: ModeSearch): boolean {
  const { kinds, name: _, ...shares } = bench.circuitry.project.policy;
  const { temperatureBelow, temperatureAtMost, ...own } = kinds.get(q.kind) ?? {};
  // How warm a thing may become is told in degrees, not in shares.
  if (temperatureBelow !== undefined || temperatureAtMost !== undefined) return false;
  const enough = Math.max(...Object.values(shares), ...Object.values(own)) + NEARLY;
  return bench.fed(q.probes(mode), false).every((candidate) => {
    const s = bench.solve(candidate);
    const draw = q.read(s);
    return draw === undefined || sharesLeft(q, draw, s).every((left) => left > enough);
  });
}
