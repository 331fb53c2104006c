/**
 * Which contact a load should hang on: what its relay takes a day either way, what the load does when the coil loses its power,
 * and which of the two goes first. A safe state goes before energy; what is on all day without being asked for is saved where
 * no safe state stands against it.
 */
import { TYPICAL } from '../../ledger/corner.js';
import type { Ledger } from '../../ledger/ledger.js';
import type { Solution } from '../../ledger/solution.js';
import type { Step } from '../../loads/account-plan.js';
import type { CircuitPlan, ContactPlan, Purpose } from '../../loads/circuit-plan.js';
import type { Path } from '../../source/place.js';

export type Side = ContactPlan['wired'];

/** Seconds of a day, days of a year. */
export const DAY = 86_400;
export const YEAR = 365.25;

/** A latching relay of the same coil takes pulses of this length, seconds, as its makers ask for (HF115F-L: 50 ms). */
const PULSE = 50e-3;
/** It is set and reset once a day at least. */
const PULSES = 2;

/** What a coil takes with its contact wired one way. */
export interface Taken {
  /** Seconds a day that the coil is on. */
  readonly energised: number;
  /** Joules a day. */
  readonly energy: number;
}

export interface Choice {
  readonly circuit: string;
  readonly owner: string;
  readonly path: Path;
  /** Absent: no relay, the circuit is its own load. */
  readonly wired?: Side;
  /** Its contact cannot be had the other way round: it is electronics, or its relay has no other. */
  readonly fixed?: 'solid-state' | 'one-sided';
  readonly safeWhen?: Purpose['safeWhen'];
  /** Seconds a day that the load runs. */
  readonly daily?: number;
  /** Watts while it is on, its driver and its input counted, and those in the coil itself; typical. */
  readonly power: number;
  readonly coilPower?: number;
  readonly now?: Taken;
  readonly otherwise?: Taken;
  /** What a latching relay of the same coil would take. */
  readonly latching?: { readonly pulses: number; readonly pulse: number; readonly energy: number };
  /** What the load does when the coil has no power. */
  readonly atPowerLoss: 'load-stopped' | 'load-running' | 'stays';
  /** Whether that is the safe state; absent where no state is called safe. */
  readonly keepsSafe?: boolean;
  /** The supply whose loss stops the load as well, whatever its contact does. */
  readonly diesWith?: string;
  /** What the safe state wants, and what takes least; absent where it is all the same. */
  readonly safeSide?: Side;
  readonly frugalSide?: Side;
  readonly steps: readonly Step[];
}

/** One for each circuit of whose purpose the file says something, in the order of the file. */
export function choicesOf(ledger: Ledger): readonly Choice[] {
  const known = made.get(ledger);
  if (known) return known;
  const found = ledger.project.circuits.flatMap((circuit, k) =>
    circuit.purpose !== undefined &&
    (circuit.purpose.daily !== undefined || (circuit.purpose.contact && circuit.purpose.safeWhen !== undefined))
      ? [choiceOf(ledger, circuit, circuit.purpose, k)]
      : [],
  );
  made.set(ledger, found);
  return found;
}

const made = new WeakMap<Ledger, readonly Choice[]>();

function choiceOf(ledger: Ledger, circuit: CircuitPlan, purpose: Purpose, number: number): Choice {
  const { safeWhen, daily: hours, runs, contact } = purpose;
  const { power, coilPower } = choicePower(ledger, circuit, number);
  const solid = circuit.type === 'solid-state-relay';
  const wired: Side | undefined = contact ? (runs === 'on' ? 'normally-open' : 'normally-closed') : undefined;
  const daily = hours === undefined ? undefined : Math.min(hours.typ, DAY);
  const latches = circuit.latching;
  const atPowerLoss = latches ? 'stays' : runs === 'on' ? 'load-stopped' : 'load-running';
  const taken = (energised: number): Taken => ({ energised, energy: power * energised });
  const isRelay = wired !== undefined && !solid && !latches;
  const open = daily === undefined ? undefined : taken(daily);
  const closed = daily === undefined ? undefined : taken(DAY - daily);
  const pulsed = latches && taken(latches.pulse * (latches.perDay ?? 0));
  const [now, otherwise] = pulsed ? [pulsed, undefined] : runs === 'on' ? [open, closed] : [closed, open];
  const diesWith = safeWhen === 'load-running' && contact ? sharedSupply(ledger, circuit) : undefined;
  return {
    circuit: circuit.id,
    owner: circuit.owner,
    path: purpose.path,
    ...(wired && { wired }),
    ...((solid || purpose.oneSided) && { fixed: solid ? ('solid-state' as const) : ('one-sided' as const) }),
    ...(safeWhen && { safeWhen }),
    ...(daily !== undefined && { daily }),
    power,
    ...(coilPower !== undefined && { coilPower }),
    ...(now && { now }),
    ...(otherwise && isRelay && { otherwise }),
    ...(isRelay &&
      daily !== undefined && { latching: { pulses: PULSES, pulse: PULSE, energy: PULSES * PULSE * power } }),
    atPowerLoss,
    ...(safeWhen && contact && { keepsSafe: safeWhen === atPowerLoss && diesWith === undefined }),
    ...(diesWith !== undefined && { diesWith }),
    ...(safeWhen && isRelay && { safeSide: safeWhen === 'load-running' ? 'normally-closed' : 'normally-open' }),
    ...(daily !== undefined &&
      isRelay &&
      daily * 2 !== DAY && { frugalSide: daily * 2 > DAY ? 'normally-closed' : 'normally-open' }),
    steps: now ? stepsOf(power, now, isRelay ? otherwise : undefined) : [],
  };
}

/** Watts that a circuit takes more when it is on than when it is off, what hangs on its contact left out; typical. */
export function choicePower({ solver, project }: Ledger, circuit: CircuitPlan, number: number) {
  const on = Uint8Array.from(solver.resting);
  on[number] = 1;
  const s = solver.solve({ moment: { mode: 'resting', on }, corner: TYPICAL, focus: solver.nobody });
  const { networksOf, networks } = solver.circuitry;
  const drawn = (n: number, state: boolean): number =>
    s.drawOf(n, state).reduce((sum, { node, amps }) => sum + amps * voltsOf(s, node), 0);
  const power = networksOf[number]!.filter((n) => networks[n]!.plan.contact === undefined).reduce(
    (sum, n) => sum + drawn(n, true) - drawn(n, false),
    0,
  );
  const { coil } = circuit.wiring;
  const winding =
    circuit.purpose?.contact === true &&
    coil !== undefined &&
    project.networks.some((n) => n.on.some((b) => b.members.some((m) => m.part === coil)));
  return { power, coilPower: winding ? Math.abs(s.current(coil) * s.across(coil)) : undefined };
}

const voltsOf = (s: Solution, node: string): number => (s.circuitry.nodeIndex.has(node) ? s.voltage(node) : 0);

/** A supply that feeds the load behind the contact and its coil alike: when it dies both do. */
function sharedSupply({ project }: Ledger, { contact, wiring }: CircuitPlan): string | undefined {
  if (contact?.supply === undefined) return undefined;
  const coil = wiring.board ? (wiring.board.coil ?? wiring.board.logic) : wiring.supply;
  const [load, switching] = [sourcesOf(project, contact.supply), coil === undefined ? [] : sourcesOf(project, coil)];
  // One of several that are joined is not missed.
  return load.length === 1 ? load.find((id) => switching.includes(id)) : undefined;
}

function sourcesOf(project: Ledger['project'], node: string): readonly string[] {
  const links = project.links.filter((l) => l.to === node);
  return links.length === 0 ? [node] : [...new Set(links.flatMap((l) => sourcesOf(project, l.from)))];
}

function stepsOf(power: number, now: Taken, otherwise: Taken | undefined): Step[] {
  const step = (name: string, says: string, { energised, energy }: Taken): Step => ({
    name,
    says,
    formula: 'P * t',
    with: { P: [power, 'W'], t: [energised, 's'] },
    gives: [energy, 'J'],
  });
  return [
    step('E_day', 'what it takes a day, as it is wired', now),
    ...(otherwise ? [step('E_other', 'what it would take a day on its other contact', otherwise)] : []),
  ];
}
