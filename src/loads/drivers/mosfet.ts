/**
 * A MOSFET as a stage: N-channel to ground, P-channel to its supply. A voltage is what counts: where its resistance is
 * specified, where it only begins to conduct, and whether it is below that when it should be off.
 */
import { warmChannel } from '../../circuit/mosfet.js';
import type { Interval } from '../../quantity/interval.js';
import { interpolate } from '../../quantity/points.js';
import type { Curve, Figures } from '../figures.js';
import { rating } from '../limits.js';
import { rmsOf } from '../pulses.js';
import type { AccountPlan, LimitPlan, Reading, Step } from '../account-plan.js';
import type { Gate } from './gate.js';
import { gateOf } from './gate.js';
import { anywhereSteps, heatAnywhere } from './half-driven.js';
import { heatAccount, heatOf } from './junction-heat.js';
import { carriedCurrent, carriesOf, offVoltage } from './ratings.js';
import type { Stage, StageAccount, StageSetting, StageType } from './stage.js';
import { stageAccount } from './stage.js';
import { gateEdges, switchingOf } from './switching.js';

/** How much a kelvin adds to the resistance when nobody says so: half as much again to twice as much at 125 °C, typically 1.6 times. */
const USUAL_SLOPE: Interval = { min: 0.005, typ: 0.006, max: 0.01 };

const stage =
  (side: 'low' | 'high') =>
  (setting: StageSetting): Stage => {
    const { circuit, prefix, id, title, supply, figures, conducts } = setting;
    const gate = gateOf(setting, side);
    const resistance = figures.curve('on-resistance', 'resistance', 'voltage', { min: () => 0 });
    const threshold = thresholdOf(figures, title);
    const isStated = figures.says('threshold');
    const ohms = resistance ? channelOhms(resistance, fullOn(setting, side)) : { min: 0, typ: 0, max: 0 };
    const slope = slopeOf(figures, title);
    const base = stageAccount(setting);
    const heat = heatOf(figures, id);
    const heating = (s: Reading): number => rmsOf(s, (at) => at.current(id));
    const switching = switchingOf(setting, id, gateEdges(setting, gate.volts));
    const warm = (s: Reading) => {
      // What it loses while it switches warms it as well as what it loses while it conducts.
      const around = s.ambient + heat.thermal * (switching?.watts(s) ?? 0);
      return s.typical
        ? warmChannel(heating(s), ohms.typ, slope.typ, heat.thermal, around)
        : warmChannel(heating(s), ohms.max, slope.max, heat.thermal, around);
    };
    // Between its lowest and its highest threshold a gate may leave the channel anywhere between open and closed.
    const asksLeast = (s: Reading): boolean => !s.typical && ohms.min < ohms.max && s.ohms(id) >= ohms.max;
    const half = (s: Reading): boolean =>
      isStated && !asksLeast(s) && gate.volts(s) > 0 && gate.volts(s) < (s.typical ? threshold.typ : threshold.max);
    const lost = (at: Reading, whole: Reading): number =>
      half(at) ? heatAnywhere(at, id, id) : at.current(id) ** 2 * Math.min(warm(whole).ohms, RUNAWAY * ohms.max);
    const most = rating(figures, 'gate-maximum', 'voltage', { margin: 'none' });
    const bears = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
    const recipes: AccountPlan['recipes'] = [
      'draw-most',
      'draw-least',
      ...(isStated && NEAR * fullOn(setting, side).min < threshold.max ? (['drive-worst'] as const) : []),
    ];
    const junction = heatAccount({ ...base, title: `${title}, junction` }, heat, lost, recipes, switching);
    const rest = conducts === 'on' ? ('off' as const) : ('on' as const);
    // Above its lowest threshold it may let through all that there is; a gate that floats may stand anywhere.
    const conductsStill = (s: Reading): boolean =>
      gate.floats(rest) || gate.rest(s) > (s.typical ? threshold.typ : threshold.min);
    return {
      members: [{ kind: 'resistance', part: id, ohms, ...(resistance && { origin: resistance.origin }) }],
      networks: gate.networks,
      accounts: [
        opens(setting, base, gate, resistance),
        ...(most ? [gateMost({ ...base, id: `${prefix}.gate` }, title, gate, most)] : []),
        carriedCurrent(base, circuit, id, carriesOf(figures), title),
        ...(bears ? [offVoltage(base, circuit, supply, bears, title)] : []),
        ...(resistance ? [{ ...junction, steps: (s: Reading) => [...warmSteps(s), ...junction.steps(s)] }] : []),
      ],
      unlimited: [],
      steps: gate.steps,
      shortfall: (s) =>
        s.current(id) * Math.max(Math.min(warm(s).ohms, RUNAWAY * ohms.max) - (s.typical ? ohms.typ : ohms.max), 0),
      leak: (s) => (conductsStill(s) ? Infinity : 0),
      leakSteps: gate.restSteps,
    };

    function warmSteps(s: Reading): Step[] {
      if (half(s)) return [...gate.steps(s), ...anywhereSteps(s, id, id)];
      const { ohms: hot } = warm(s);
      if (!(hot < RUNAWAY * ohms.max)) return [];
      return [
        {
          name: 'P',
          says: 'its loss, with the resistance that it has when its own loss has heated it',
          formula: 'I^2 * R_hot',
          with: { I: [s.current(id), 'A'], R_hot: [hot, 'Ω'] },
          gives: [s.current(id) ** 2 * hot, 'W'],
        },
      ];
    }
  };

/** Where a gate begins to conduct when nobody says so, volts: for whether it lets go. Common practice, no source. */
const USUAL_THRESHOLD: Interval = { min: 0.4, typ: 1, max: 2 };

function thresholdOf(figures: Figures, title: string): Interval {
  const stated = figures.interval('threshold', 'voltage');
  if (stated === undefined)
    figures.assume(`gate threshold of the ${title}: at least ${USUAL_THRESHOLD.min} V, since nobody states it`);
  return stated ?? USUAL_THRESHOLD;
}

/** Share of its drive's stated voltage that a gate gets at the least, about: what is lost on the way is not known yet. */
const NEAR = 0.8;

/** A channel that heats itself without end is reckoned with so many times its stated resistance: it is far too hot by then. */
const RUNAWAY = 10;

/** Volts from source to gate with the drive at its level, less what a resistor on the way and the pull beside the gate take. */
function fullOn({ input, drive, supply, figures }: StageSetting, side: 'low' | 'high'): Interval {
  const rail = input.bench.window(side === 'low' ? drive.rail : supply);
  const before = figures.interval('gate-resistor', 'resistance');
  const pull = figures.interval(side === 'low' ? 'pull-down' : 'pull-up', 'resistance');
  if (before === undefined || pull === undefined) return rail;
  const left = (r: number, p: number): number => p / (p + r);
  return {
    min: rail.min * left(before.max, pull.min),
    typ: rail.typ * left(before.typ, pull.typ),
    max: rail.max * left(before.min, pull.max),
  };
}

/** Resistance from the best gate voltage to the worst; below the lowest point that is specified, as at that point. */
function channelOhms({ points }: Curve, rail: Interval): Interval {
  const lowest = points[0]!.at;
  const at = (volts: number): Interval => interpolate(points, Math.max(volts, lowest)).value;
  const [min, typ, max] = [Math.max(at(rail.max).min, 0), at(rail.typ).typ, at(rail.min).max];
  return { min: Math.min(min, typ), typ, max: Math.max(typ, max) };
}

/** Share of its resistance at 25 °C that each kelvin adds: from the ratio published for a hot junction, or what is usual. */
function slopeOf(figures: Figures, title: string): Interval {
  const curve = figures.curve('hot-ratio', 'ratio', 'temperature');
  const point = curve?.points.at(-1);
  if (point !== undefined && point.at > 25) {
    const per = (ratio: number): number => Math.max(ratio - 1, 0) / (point.at - 25);
    return { min: per(point.value.min), typ: per(point.value.typ), max: per(point.value.max) };
  }
  figures.assume(
    `resistance of the ${title} when hot: 1.5 to 2 times as much at a junction of 125 °C as at 25 °C, since nobody states it`,
  );
  return USUAL_SLOPE;
}

/** Below its highest threshold a gate fails; below the lowest voltage its resistance is specified at, nothing is promised. */
function opens(setting: StageSetting, base: StageAccount, gate: Gate, resistance: Curve | undefined): AccountPlan {
  const { figures, title } = setting;
  const threshold = figures.figure('threshold', 'voltage');
  const volts = figures.interval('threshold', 'voltage');
  const lowest = resistance?.points[0]!.at;
  const limits: LimitPlan[] = [
    ...(resistance && lowest !== undefined
      ? [
          {
            value: lowest,
            stated: `${lowest} V, the lowest gate voltage at which its resistance is specified`,
            grade: 'characterised' as const,
            margin: 'none' as const,
            origin: resistance.origin,
          },
        ]
      : []),
    ...(resistance && threshold && volts
      ? [
          {
            value: (s: Reading) => (s.typical ? volts.typ : volts.max),
            stated: threshold.quantity.stated,
            grade: 'operating' as const,
            isFunction: true as const,
            margin: 'function-voltage' as const,
            origin: threshold.origin,
            condition: 'gate threshold, where it only begins to conduct',
          },
        ]
      : []),
  ];
  return {
    ...base,
    title: `${title}, gate voltage`,
    quantity: 'voltage',
    direction: 'at-least',
    recipes: ['drive-worst', 'drive-best'],
    read: gate.volts,
    limits,
    ...(!resistance && {
      missing: {
        figure: 'on-resistance',
        asks: `at which gate voltages is the on-resistance of the MOSFET that is the ${title} specified (its \`on-resistance\`)?`,
      },
    }),
    steps: gate.steps,
  };
}

/** A gate's oxide breaks down above its rating. */
const gateMost = (base: StageAccount, title: string, gate: Gate, limit: LimitPlan): AccountPlan => ({
  ...base,
  title: `${title}, highest gate voltage`,
  quantity: 'voltage',
  direction: 'at-most',
  recipes: ['drive-best', 'drive-worst'],
  read: gate.volts,
  limits: [limit],
  steps: gate.steps,
});

export const nmos: StageType = {
  conducts: (level) => level === 'high',
  gives: (conducts) => (conducts ? 'low' : 'open'),
  lower: stage('low'),
};
export const pmos: StageType = {
  conducts: (level) => level === 'low',
  gives: (conducts) => (conducts ? 'high' : 'open'),
  lower: stage('high'),
};
