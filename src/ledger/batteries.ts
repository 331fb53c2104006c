/**
 * How long batteries last: charge over the mean of what they give, by the modes' shares of the time. They see what is
 * sustained, and bursts by their share of the time where it is stated how often they come. Where the file does not say how
 * its time is shared, the hungriest state is taken for all of it: what lasts then lasts surely, and the rest is unproven.
 */
import { capacityAt, lastsFor, meanCurrent } from '../circuit/battery.js';
import type { LimitPlan, Step } from '../loads/account-plan.js';
import { meanOf } from '../loads/pulses.js';
import type { BatteryPlan, TreeNode } from '../project/tree-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Account, LimitMet } from './account.js';
import { marginOf } from './account.js';
import { flowsOf, total } from './bookings.js';
import { inBursts } from './bursts.js';
import type { Corner, Lean } from './corner.js';
import { TYPICAL } from './corner.js';
import type { Moment } from './moment.js';
import type { ModeSearch } from './moments.js';
import { heaviest } from './moments.js';
import type { Solution } from './solution.js';
import type { Solver } from './solver.js';

type End = 'min' | 'typ' | 'max';

/** What a battery gives in one of the modes, amperes, over the corners. */
interface Drain {
  readonly mode: string;
  readonly share: number;
  readonly min: number;
  readonly typ: number;
  readonly max: number;
  readonly most: Solution;
  readonly typical: Solution;
}

/** Less than any cell loses by itself: nothing lasts for ever. */
const LEAST = 1e-9;

/** Supplies at either end, since what hangs behind a switching regulator draws the more the lower they are. */
const leaning = (lean: Lean): Corner[] =>
  (['low', 'high'] as const).flatMap((sources) =>
    (['cold', 'hot'] as const).map((ambient) => ({
      ambient,
      sources,
      outputs: lean === 'low' ? ('low' as const) : ('high' as const),
      losses: sources === 'low' ? ('high' as const) : ('low' as const),
      load: lean,
      control: lean,
      rest: lean,
    })),
  );

/** @param modes those that are judged @param whole whether they are all that the file has */
export function batteryAccounts(solver: Solver, modes: readonly ModeSearch[], whole: boolean): Account[] {
  const { nodes } = solver.circuitry.project;
  // One mode by itself tells nothing of the whole time.
  if (!whole) return [];
  return nodes.flatMap((node) => (node.battery?.isTold ? lifeOf(solver, modes, node, node.battery) : []));
}

function lifeOf(solver: Solver, modes: readonly ModeSearch[], node: TreeNode, battery: BatteryPlan): Account[] {
  const base = {
    id: node.id,
    kind: 'battery' as const,
    title: `battery ${node.id}, life`,
    quantity: 'time' as const,
    direction: 'at-least' as const,
    path: node.path,
    moment: [],
    bound: false,
    entries: [],
    sampling: () => undefined,
    solutions: () => ({}),
  };
  const { capacity, wanted, asks } = battery;
  if (capacity === undefined)
    return [
      { ...base, mode: modes[0]!.name, limits: [], missing: { figure: 'capacity', asks: asks! }, steps: () => [] },
    ];
  const { drains, known } = drainsOf(solver, modes, node.id);
  if (wanted === undefined && !known) return [];
  const mean = (end: End): number =>
    Math.max(meanCurrent(drains.map((d) => ({ share: d.share, amps: d[end] }))), LEAST);
  const charge = (end: End, amps: number): number => capacityAt(capacity, amps)[end];
  const lost = (end: End): number => lossOf(battery.loses, end);
  const life = {
    min: lastsFor(charge('min', mean('max')), mean('max'), lost('max')),
    typ: lastsFor(charge('typ', mean('typ')), mean('typ'), lost('typ')),
    max: lastsFor(charge('max', mean('min')), mean('min'), lost('min')),
  };
  const hungriest = drains.reduce((a, b) => (b.share * b.max > a.share * a.max ? b : a));
  return [
    {
      ...base,
      mode: hungriest.mode,
      draw: life,
      limits: wanted ? [metBy(life, hungriest, known ? wanted : bounded(wanted, node.id))] : [],
      steps: () => lifeSteps(node.id, drains, charge('min', mean('max')), battery),
    },
  ];
}

/** How long it lasts against how long it is wanted to. */
function metBy(life: Interval, { most, typical }: Drain, limit: LimitPlan): LimitMet {
  const value = (s: Solution): number => (typeof limit.value === 'number' ? limit.value : limit.value(s));
  return {
    limit,
    value: value(most),
    draw: life.min,
    ambient: most.ambient,
    left: marginOf('at-least', 'time', life.min, value(most), most.ambient),
    typical: { value: value(typical), draw: life.typ },
    solution: most,
  };
}

/** What lasts in the hungriest state lasts; what does not is unproven until the file says how its time is shared. */
function bounded({ value, stated, grade, margin, origin }: LimitPlan, id: string): LimitPlan {
  return {
    value,
    stated,
    grade,
    margin,
    ...(origin && { origin }),
    asks: `what share of the time does each mode take (their \`share\`), so that what ${id} gives has a mean?`,
  };
}

/** Share of its charge that a battery loses a second. */
const lossOf = (loses: BatteryPlan['loses'], end: End): number => (loses ? loses.share[end] / loses.over : 0);

function lifeSteps(id: string, drains: readonly Drain[], charge: number, { origin, loses }: BatteryPlan): Step[] {
  const mean = meanCurrent(drains.map((d) => ({ share: d.share, amps: d.max })));
  const self = charge * lossOf(loses, 'max');
  const values = Object.fromEntries(
    drains.flatMap((d, k) => [
      [`x_${k + 1}`, [d.share, ''] as const],
      [`I_${k + 1}`, [d.max, 'A'] as const],
    ]),
  );
  return [
    {
      name: 'I_mean',
      says: `what it gives on average: ${drains.map((d) => d.mode).join(', ')}`,
      formula: drains.map((_, k) => `x_${k + 1} * I_${k + 1}`).join(' + '),
      with: values,
      gives: [mean, 'A'],
    },
    ...(loses
      ? [
          {
            name: 'I_self',
            says: 'what it loses by itself',
            formula: 'Q * x / t_lost',
            with: { Q: [charge, 'C'], x: [loses.share.max, ''], t_lost: [loses.over, 's'] },
            gives: [self, 'A'],
          } satisfies Step,
        ]
      : []),
    {
      name: 't',
      says: 'how long its charge lasts at that',
      formula: loses ? 'Q / (I_mean + I_self)' : 'Q / I_mean',
      with: {
        Q: [charge, 'C'],
        I_mean: [Math.max(mean, LEAST), 'A'],
        ...(loses && { I_self: [self, 'A'] as const }),
      },
      gives: [lastsFor(charge, Math.max(mean, LEAST), lossOf(loses, 'max')), 's'],
      ...(origin && { sources: [`${id}: ${origin.document}${origin.where === undefined ? '' : `, ${origin.where}`}`] }),
    },
  ];
}

/** What a battery gives in each mode with its share of the time; `known` where these are the whole of it. */
function drainsOf(solver: Solver, modes: readonly ModeSearch[], supply: string) {
  const { project } = solver.circuitry;
  const shareOf = (name: string): number | undefined => project.modes.find((m) => m.name === name)?.share;
  const shared = modes.filter((m) => m.on && shareOf(m.name) !== undefined);
  const names = [...new Set(shared.map((m) => m.name))];
  const sum = names.reduce((all, name) => all + shareOf(name)!, 0);
  const heaviestOf = (of: readonly Drain[]): Drain => of.reduce((a, b) => (b.max > a.max ? b : a));
  if (names.length > 0 && Math.abs(sum - 1) < 1e-6) {
    // Where circuits take turns, a mode is so many moments, and counts by the one that takes most.
    const drains = names.map((name) =>
      heaviestOf(
        shared
          .filter((m) => m.name === name)
          .map((m) => drainOf(m.bench ?? solver, momentOf(solver, m), supply, shareOf(name)!)),
      ),
    );
    return { drains, known: true };
  }
  const all = modes.map((m) => drainOf(m.bench ?? solver, momentOf(solver, m), supply, 1));
  // Where nothing is ever switched, the one state is the whole of the time.
  const known = modes.length === 1 && project.circuits.every((c) => c.always);
  return { drains: [heaviestOf(all)], known };
}

const momentOf = (solver: Solver, mode: ModeSearch): Moment =>
  mode.on
    ? { mode: mode.name, on: mode.on }
    : heaviest(
        solver.circuitry.project,
        mode,
        solver.circuitry.project.circuits.map(() => 1),
        new Set(),
      )[0]!;

function drainOf(solver: Solver, moment: Moment, supply: string, share: number): Drain {
  const solve = (corner: Corner): Solution => solver.solve({ moment, corner, focus: solver.nobody });
  const amps = (s: Solution): number => meanOf(s, (at) => flowsOf(at).get(supply) ?? 0) + total(inBursts(s, supply));
  const high = leaning('high').map(solve);
  const most = high.reduce((a, b) => (amps(b) > amps(a) ? b : a));
  const typical = solve(TYPICAL);
  const typ = amps(typical);
  const low = Math.min(...leaning('low').map((corner) => amps(solve(corner))));
  return { mode: moment.mode, share, min: Math.min(low, typ), typ, max: Math.max(amps(most), typ), most, typical };
}
