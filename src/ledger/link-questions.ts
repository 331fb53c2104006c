/** What is asked of a link of the supply tree: its current, its heat, the voltage that it gets and needs. */
import { HEAT_NO_LIMIT, allowedByHeat, linearLoss } from '../circuit/regulator.js';
import type { LimitPlan } from '../loads/account-plan.js';
import { meanOf, rmsOf, rmsSteps } from '../loads/pulses.js';
import type { Project } from '../project/project.js';
import type { Link } from '../project/tree-plan.js';
import type { Shares } from './bookings.js';
import { booksOf } from './bookings.js';
import { figureOf } from './builds.js';
import { rmsShares } from './phases.js';
import type { TreeQuestion } from './question.js';
import type { Solution } from './solution.js';
import type { Solver } from './solver.js';
import { cableSteps, heatSteps, sumSteps } from './working.js';

const KINDS = {
  cable: 'wire',
  fuse: 'fuse',
  limiter: 'series',
  switch: 'series',
  diode: 'series',
  'linear-regulator': 'regulator',
  'switching-regulator': 'regulator',
} as const;

export function linkQuestions(solver: Solver, link: Link): TreeQuestion[] {
  if (link.kind === 'wire' || link.inner) return [];
  if (link.divides) return [sag(link)];
  const number = solver.circuitry.linkIndex.get(link)!;
  const shares = (s: Solution): Shares => booksOf(s).links.get(link.id)!;
  const amps = (s: Solution): number => s.linkCurrents[number]!;
  // What heats slowly answers to the root mean square of pulses.
  const slow = link.kind === 'fuse' || link.kind === 'cable';
  const carries = (s: Solution): number => (slow ? rmsOf(s, amps) : amps(s));
  const current: TreeQuestion = {
    id: link.id,
    kind: KINDS[link.kind],
    title: link.title,
    quantity: 'current',
    direction: 'at-most',
    path: link.path,
    limits: link.heat ? [...link.limits, ...heatLimit(link, amps)] : link.limits,
    ...(link.missing && { missing: link.missing }),
    read: carries,
    shares: slow ? rmsShares(shares) : shares,
    at: link.to,
    steps: (s) => [
      ...sumSteps(link.title, shares(s), undefined, s),
      ...(slow ? rmsSteps(s, 'I_rms', 'its root mean square over a period of the pulses', 'A', amps) : []),
      ...(link.kind === 'cable' ? cableSteps(link, s, amps(s)) : []),
    ],
  };
  return [
    current,
    ...(link.heat ? [heat(link, number, link.heat.limit)] : []),
    ...(link.input ? [input(link, 'at-most', [link.input])] : []),
    ...leastInput(solver.circuitry.project, link),
  ];
}

/** What a regulator's heat lets it give, at the input and the ambient of each corner: it may be far less than its rating. */
function heatLimit({ id, from, to, heat, quiescent }: Link, amps: (s: Solution) => number): LimitPlan[] {
  // The range of an assumed temperature is in degrees, and says nothing of amperes.
  const { range: _, ...limit } = heat!.limit;
  const { value: hottest, asks } = limit;
  // What was only tried allows nothing, and forbids nothing.
  if (typeof hottest !== 'number' || asks !== undefined) return [];
  return [
    {
      ...limit,
      margin: 'current',
      value: (s) => {
        // Heat sees what is sustained, not its peaks.
        if (s.peak) return HEAT_NO_LIMIT;
        const end = s.typical ? 'typ' : 'max';
        const drop = s.voltage(from) - s.voltage(to);
        const own = s.voltage(from) * (quiescent?.[end] ?? 0);
        // It is held against the pulses' top, and allows their mean so much.
        return allowedByHeat(s.ambient, hottest, heat!.thermal[end], drop, own) * overMean(s as Solution, amps);
      },
      stated: `what keeps the junction of ${id} at ${limit.stated}`,
      condition: 'by its heat at this input and ambient',
      sameAs: 'regulator-heat',
    },
  ];
}

/** How many times its mean over a period a current is at its top. */
function overMean(s: Solution, amps: (s: Solution) => number): number {
  const mean = meanOf(s, amps);
  return s.phases.length === 1 || mean <= 0 ? 1 : amps(s) / mean;
}

/** Junction temperature of a regulator: ambient plus thermal resistance times what it loses. */
function heat(link: Link, number: number, limit: LimitPlan): TreeQuestion {
  const ends = link.heat!.thermal;
  const thermal = (s: Solution): number =>
    s.taken(ends, figureOf(link.id, 'thermal'), s.typical ? 'typ' : s.corner.load === 'low' ? 'low' : 'high');
  const loss = (s: Solution): number =>
    linearLoss(s.voltage(link.from), s.voltage(link.to), s.linkCurrents[number]!, s.ownCurrent(link));
  return {
    id: link.id,
    kind: 'regulator',
    title: `${link.title}, junction`,
    quantity: 'temperature',
    direction: 'at-most',
    path: link.path,
    limits: [limit],
    read: (s) => s.ambient + thermal(s) * meanOf(s, loss),
    at: link.to,
    heated: link,
    warmedBy: (s, amps) => thermal(s) * linearLoss(s.voltage(link.from), s.voltage(link.to), amps, 0),
    steps: (s) => heatSteps(link, thermal(s), s, number, loss),
  };
}

/** A regulator's input voltage against the highest it bears, or the least it works from. */
const input = (link: Link, direction: 'at-most' | 'at-least', limits: readonly LimitPlan[]): TreeQuestion => ({
  id: link.id,
  kind: 'regulator',
  title: `${link.title}, input`,
  quantity: 'voltage',
  direction,
  path: link.path,
  limits,
  read: (s) => s.voltage(link.from),
  isVoltage: true,
  at: link.from,
  steps: (s) => [
    {
      name: 'V_in',
      says: 'voltage at its input',
      formula: 'V',
      with: { V: [s.voltage(link.from), 'V'] },
      gives: [s.voltage(link.from), 'V'],
    },
  ],
});

/**
 * What a switching regulator needs at its input: the least it works from, and half of what its source stands at with nothing
 * drawn. Below that the source gives the less the more is asked of it: the power that the loads want is not to be had.
 */
function leastInput(project: Project, link: Link): TreeQuestion[] {
  if (link.kind !== 'switching-regulator') return [];
  const stated = link.leastInput ? [link.leastInput] : [];
  const source = sourceOf(project, link.from);
  const collapse = source
    ? [
        {
          value: source.volts.min / 2,
          stated: `half of the ${source.volts.min} V that ${source.id} stands at`,
          grade: 'operating' as const,
          isFunction: true as const,
          margin: 'none' as const,
          condition: 'below it the source collapses: more power is asked of it than it can give',
        },
      ]
    : [];
  // One that steps down needs its dropout besides.
  const most = Math.max(0, ...(link.dropout ?? []).map((p) => p.value.max));
  const regulation =
    link.step === 'down' && link.dropout
      ? [
          {
            value: link.volts!.min + most,
            stated: 'lower bound of its output and its dropout',
            grade: 'operating' as const,
            isFunction: true as const,
            margin: 'window' as const,
          },
        ]
      : [];
  const limits = [...stated, ...regulation, ...collapse];
  return limits.length === 0 ? [] : [input(link, 'at-least', limits)];
}

/** The source that a node hangs on over some resistance; none where nothing lies between, or a regulator does. */
function sourceOf({ links, nodes }: Project, node: string) {
  let lossy = false;
  let head = node;
  for (let link = links.find((l) => l.to === head); link; link = links.find((l) => l.to === head)) {
    if (link.volts !== undefined) return undefined;
    lossy ||= link.ohms !== undefined && link.ohms.max > 0;
    head = link.from;
  }
  const volts = nodes.find((n) => n.id === head)?.volts;
  return lossy && volts ? { id: head.replace(/:inside$/, ''), volts } : undefined;
}

/** Share of its open voltage that a divider has to keep with what hangs on it to count as a supply. */
const DIVIDER_KEEPS = 0.95;

/** A divider's voltage with what hangs on it, against the one that its resistors alone would give. */
function sag({ id, title, from, to, path, ohms, divides }: Link): TreeQuestion {
  const open = (s: Pick<Solution, 'voltage' | 'typical'>): number => {
    const [lower, upper] = s.typical ? [divides!.typ, ohms!.typ] : [divides!.min, ohms!.max];
    return (s.voltage(from) * lower) / (lower + upper);
  };
  return {
    // The windows of what hangs on it are accounts of the node itself.
    id: `${id}.divider`,
    kind: 'series',
    title: `${title}, with what hangs on it`,
    quantity: 'voltage',
    direction: 'at-least',
    path,
    limits: [
      {
        value: (s) => DIVIDER_KEEPS * open(s),
        stated: '95 % of what it gives with nothing on it',
        grade: 'practice',
        isFunction: true,
        margin: 'none',
        origin: { document: 'common practice, no source', basis: 'practice' },
      },
    ],
    read: (s) => s.voltage(to),
    isVoltage: true,
    at: to,
    steps: (s) => [
      {
        name: 'V_open',
        says: 'what it would give with nothing on it',
        formula: 'V * R_lower / (R_lower + R_upper)',
        with: {
          V: [s.voltage(from), 'V'],
          R_lower: [s.typical ? divides!.typ : divides!.min, 'Ω'],
          R_upper: [s.typical ? ohms!.typ : ohms!.max, 'Ω'],
        },
        gives: [open(s), 'V'],
      },
      {
        name: 'V_loaded',
        says: 'what is left of it',
        formula: 'V',
        with: { V: [s.voltage(to), 'V'] },
        gives: [s.voltage(to), 'V'],
      },
    ],
  };
}
