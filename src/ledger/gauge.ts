/** A meter at a place of the circuit: what it shows in a solution, and between which bounds it must stand. */
import { branchSteps } from '../loads/branch-working.js';
import type { AccountPlan, Recipe, Step } from '../loads/account-plan.js';
import { linearLoss } from '../circuit/regulator.js';
import type { ReadingPlan } from '../project/project.js';
import type { Interval } from '../quantity/interval.js';
import { flowsOf } from './bookings.js';
import type { Corner, End } from './corner.js';
import { TYPICAL, cornersOf, isLineRecipe } from './corner.js';
import type { Around, Asked } from './around.js';
import { aroundOf } from './around.js';
import type { ModeSearch } from './moments.js';
import { heaviest } from './moments.js';
import type { Moment } from './moment.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';

/** A meter: how it is read, and the circuits it looks at; none, where it looks at the supply tree. */
export interface Gauge extends Asked {
  readonly recipes: readonly Recipe[];
  readonly steps: (s: Solution) => readonly Step[];
}

/** Bounds of a reading in a mode, with the solution of each end. */
export interface GaugeBounds {
  readonly draw: Interval;
  readonly least: Candidate;
  readonly most: Candidate;
  readonly typical: Candidate;
}

/** All of them that leave the circuits on. */
const ON: readonly Recipe[] = [
  'draw-most',
  'draw-least',
  'starved',
  'flooded',
  'drive-worst',
  'drive-best',
  'hottest',
  'lightest',
];

const NO_APART = { pins: [], control: [], both: [] };

/** The meters of a reading: one, or one a state of a line, which may have been high or low. */
export function gaugesOf(solver: Solver, { of, quantity }: ReadingPlan): readonly Gauge[] {
  const { accounts } = solver.circuitry.project;
  const { id } = of;
  const plans = accounts.filter((a) => a.id === id && a.quantity === quantity);
  // What loads reckon beyond the branch: warmth, and the volts that an undriven transistor does not leave to a coil.
  if (quantity === 'temperature' && of.sort !== 'link') return plans.slice(0, 1);
  if (of.sort === 'account') return plans;
  const coil = quantity === 'voltage' ? plans.filter((a) => a.kind === 'coil' && !letsGo(a)) : [];
  if (coil.length > 0) return coil;
  // What a transistor keeps lies between its lowest saturation and what it costs to drive it badly.
  return of.sort === 'part' && quantity !== 'current'
    ? [gaugeAt(solver, of, quantity, 'least'), gaugeAt(solver, of, quantity, 'most')]
    : [gaugeAt(solver, of, quantity, 'least')];
}

/** A meter held to a place of the solved circuit. */
function gaugeAt(
  solver: Solver,
  of: ReadingPlan['of'],
  quantity: ReadingPlan['quantity'],
  keeps: 'least' | 'most',
): Gauge {
  const { id } = of;
  const base = { id, quantity, direction: 'at-most' as const };
  switch (of.sort) {
    case 'part':
    case 'account': {
      const read = (s: Solution): number =>
        quantity === 'current'
          ? Math.abs(s.current(id))
          : quantity === 'voltage'
            ? voltsAcross(solver, s, id, keeps)
            : Math.abs(s.current(id)) * voltsAcross(solver, s, id, keeps);
      return {
        ...base,
        read,
        circuits: circuitsOf(solver, id),
        recipes: ON,
        steps: (s) => branchSteps(s.branch(id), id),
      };
    }
    case 'pin':
      return {
        ...base,
        read: (s) => (quantity === 'current' ? Math.abs(s.current(id)) : pinVolts(s, id)),
        circuits: circuitsOf(solver, id),
        recipes: ON,
        steps: (s) => branchSteps(s.branch(id), id),
      };
    case 'node': {
      const amps = (s: Solution): number => flowsOf(s).get(id) ?? 0;
      const read = (s: Solution): number =>
        quantity === 'current' ? amps(s) : quantity === 'voltage' ? s.voltage(id) : amps(s) * s.voltage(id);
      return { ...base, read, circuits: [], recipes: [], steps: () => [] };
    }
    case 'link': {
      const number = solver.circuitry.links.findIndex((l) => l.link.id === id);
      const { link } = solver.circuitry.links[number]!;
      const amps = (s: Solution): number => s.linkCurrents[number]!;
      const read = (s: Solution): number => {
        if (quantity === 'current') return amps(s);
        if (quantity === 'voltage') return s.voltage(link.from) - s.voltage(link.to);
        const thermal = s.typical ? link.heat!.thermal.typ : link.heat!.thermal.max;
        return s.ambient + thermal * linearLoss(s.voltage(link.from), s.voltage(link.to), amps(s), s.ownCurrent(link));
      };
      return { ...base, read, circuits: [], recipes: [], steps: () => [] };
    }
    default:
      return of.sort satisfies never;
  }
}

const letsGo = (plan: AccountPlan): boolean => plan.off === true || plan.recipes.some((r) => r.startsWith('let-go'));

/**
 * Volts across a part. Between a coil and its driver they go as the coil reckons them, where the driver keeps the most; across
 * a driver that is off stands the supply.
 */
function voltsAcross({ circuitry: { project } }: Solver, s: Solution, part: string, keeps: 'least' | 'most'): number {
  const coilVolts = (coil: string): number =>
    (keeps === 'most'
      ? project.accounts.find((a) => a.id === coil && a.kind === 'coil' && a.direction === 'at-least')?.read(s)
      : undefined) ?? Math.abs(s.across(coil));
  const circuit = project.circuits.find((c) => part === `${c.id}.driver`);
  const coil = circuit?.wiring.coil;
  if (circuit === undefined || coil === undefined) return coilVolts(part);
  const branch = s.branch(part);
  if (branch === undefined) return circuit.wiring.supply === undefined ? 0 : s.voltage(circuit.wiring.supply);
  const others = branch.members.filter(({ member }) => member.part !== part && member.part !== coil);
  return branch.from.volts - branch.to.volts - coilVolts(coil) - others.reduce((sum, m) => sum + m.volts, 0);
}

/** Volts of a pin against ground. */
function pinVolts(s: Solution, pin: string): number | undefined {
  const branch = s.branch(pin);
  if (branch === undefined) return undefined;
  const own = branch.members.findIndex(({ member }) => member.part === pin);
  const { volts } = branch.members[own]!;
  return own === 0 ? branch.from.volts - volts : branch.to.volts + volts;
}

const circuitsOf = ({ circuitry }: Solver, part: string): readonly string[] =>
  circuitry.networks[circuitry.parts.get(part)!.network]!.plan.circuits;

/** Everything at either end: for what the supply tree shows. */
const ENDS: readonly End[] = ['low', 'high'];
const TREE_CORNERS: readonly Corner[] = ENDS.flatMap((sources) =>
  ENDS.flatMap((outputs) =>
    ENDS.flatMap((losses) =>
      (['low', 'high'] as const).flatMap((lean) =>
        (['cold', 'hot'] as const).map((ambient) => ({
          ambient,
          sources,
          outputs,
          losses,
          load: lean,
          control: lean,
          rest: lean,
        })),
      ),
    ),
  ),
);

const arounds = new WeakMap<Solver, Around>();

/** The bounds between which a meter stands in a mode; undefined where nothing can be reckoned. */
export function boundsOf(solver: Solver, gauge: Gauge, mode: ModeSearch): GaugeBounds | undefined {
  const { circuitry, nobody } = solver;
  const numbers = gauge.circuits.map((id) => circuitry.circuitIndex.get(id)!);
  const focus = numbers.length === 0 ? nobody : solver.focus(numbers);
  const moments = momentsOf(solver, mode, numbers);
  const around = arounds.get(solver) ?? aroundOf(solver);
  arounds.set(solver, around);
  const asked = around.recipes(gauge).flatMap((r) => around.asked(gauge, r)(mode));
  // Switched off in this mode, it is looked at as it is then.
  const corners =
    numbers.length === 0
      ? TREE_CORNERS
      : gauge.recipes.flatMap((r) => (isLineRecipe(r) ? [] : cornersOf(r, NO_APART, false)));
  const candidates =
    asked.length > 0 ? asked : moments.flatMap((moment) => corners.map((corner) => ({ moment, corner, focus })));
  const read = candidates.flatMap((candidate) => {
    const value = gauge.read(solver.solve(candidate));
    return value === undefined ? [] : [{ candidate, value }];
  });
  if (read.length === 0) return undefined;
  const least = read.reduce((a, b) => (b.value < a.value ? b : a));
  const most = read.reduce((a, b) => (b.value > a.value ? b : a));
  const typical: Candidate = { moment: least.candidate.moment, corner: TYPICAL, focus };
  const middle = gauge.read(solver.solve(typical)) ?? least.value;
  return {
    draw: { min: least.value, typ: Math.min(Math.max(middle, least.value), most.value), max: most.value },
    least: least.candidate,
    most: most.candidate,
    typical,
  };
}

/** The moments in which a reading may have been taken: the mode itself, or the most and the least that may be on with it. */
function momentsOf(solver: Solver, mode: ModeSearch, numbers: readonly number[]): readonly Moment[] {
  if (mode.on) return [{ mode: mode.name, on: mode.on }];
  const { project } = solver.circuitry;
  return [1, -1].flatMap((weight) =>
    heaviest(
      project,
      mode,
      project.circuits.map(() => weight),
      new Set(numbers),
    ),
  );
}
