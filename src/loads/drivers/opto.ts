/**
 * A coupler as a stage: its LED hangs on what drives it, from the high level to ground or from the supply to the low one;
 * its output, of collector or emitter, carries what the LED's current times the transfer ratio allows.
 */
import { collectorVoltage } from '../../circuit/bipolar.js';
import { keptAt } from '../../circuit/half-driven.js';
import { closed } from '../../quantity/quantity.js';
import { branchSteps } from '../branch-working.js';
import { rating } from '../limits.js';
import type { Reading, Step } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import type { Coupler } from './coupler.js';
import { couplerOf, ledAccounts, ledMember, outputMember, passedOn, passedOnSteps, saturationAt } from './coupler.js';
import { askedOf, heatBy } from './half-driven.js';
import { heatAccount, heatOf } from './junction-heat.js';
import { carriedCurrent, carriesOf, offVoltage } from './ratings.js';
import { passesOn } from './passes-on.js';
import type { Stage, StageSetting, StageType } from './stage.js';
import { stageAccount } from './stage.js';

/**
 * The output keeps its published saturation voltage up to this ratio (20 mA in the LED and 1 mA at the output, as the sheets of
 * common couplers state it), and this voltage at its whole ratio. Common practice, no source.
 */
const FORCED_RATIO = 0.05;
const RATIO_VOLTAGE = 1;

function lower(setting: StageSetting): Stage | undefined {
  const { circuit, prefix, id, path, title, supply, drive, figures, conducts } = setting;
  const coupler = couplerOf(figures);
  if (coupler === undefined) {
    figures.problem('led-drop', `the coupler that is the ${title} needs the drop of its LED`, '`led-drop: 1.2 V`');
    return undefined;
  }
  if (figures.says('pull-up')) {
    figures.problem(
      'pull-up',
      'a pull-up at the output of the last stage would lie across its load',
      '`pull-up` at a stage behind the coupler',
    );
    return undefined;
  }
  const led = `${prefix}.input`;
  const series = figures.figure('series', 'resistance');
  const chain: Member[] = [
    ...(series
      ? [
          {
            kind: 'resistance' as const,
            part: `${prefix}.input-series`,
            ohms: closed(series.quantity),
            origin: series.origin,
          },
        ]
      : []),
    ledMember(coupler, led),
  ];
  const lit = drive.level(conducts);
  const tied = drive.tie(
    lit === 'low'
      ? { circuit, to: drive.rail, flows: 'in', members: chain }
      : { circuit, to: GROUND, flows: 'out', members: chain },
  );
  const base = stageAccount(setting);
  const able = (s: Reading, aged = false): number =>
    passedOn(coupler, led, s) * (aged ? (coupler.transfer?.left(s.current(led), s) ?? 1) : 1);
  const kept = (s: Reading): number => voltsKept(coupler, s, id, led, able(s));
  const bears = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  const dark = figures.interval('leakage', 'current')?.max ?? 0;
  const leak = (s: Reading): number =>
    (coupler.transfer ? coupler.transfer.most(s.current(led), s) * s.current(led) : 0) + (s.typical ? 0 : dark);
  const warm = heatAccount(
    { ...base, title: `${title}, junction` },
    heatOf(figures, title),
    (s) => s.current(led) * s.across(led) + Math.max(kept(s) * s.current(id), heatBy(s, id, id, able(s))),
    ['hottest', 'draw-most', 'drive-worst', 'draw-least'],
  );
  return {
    members: [outputMember(coupler, id)],
    networks: [{ id: `${id}`, circuits: [circuit], side: 'control', inner: [], ...tied }],
    accounts: [
      ...ledAccounts(coupler, { led, circuit, path, ...(base.off && { off: base.off }) }),
      ...(coupler.transfer ? [passesOn({ ...base, title }, coupler, led, able)] : []),
      carriedCurrent(base, circuit, id, carriesOf(figures), title),
      ...(bears ? [offVoltage(base, circuit, supply, bears, title)] : []),
      warm,
    ],
    unlimited: series ? [] : [{ part: led, ...(drive.bare && { pin: drive.bare }) }],
    most: able,
    ages: true,
    steps: (s) => [
      ...branchSteps(s.branch(led), 'current through the coupler’s LED'),
      ...passedOnSteps(coupler, led, s),
    ],
    // The highest saturation stands in the branch already.
    shortfall: (s) => Math.max(kept(s) - saturationAt(coupler, s), 0),
    leak,
    leakSteps: (s) => offSteps(coupler, led, leak(s), s.typical ? 0 : dark, s),
  };
}

/** Volts across the output as driven: published while the load asks little of it, more towards its ratio, the rest beyond. */
function voltsKept(coupler: Coupler, s: Reading, id: string, led: string, able: number): number {
  const asked = askedOf(s, id, id);
  if (coupler.transfer === undefined || asked.amps <= 0) return asked.kept;
  if (asked.amps > able) return Math.max(keptAt(asked, able), Math.min(RATIO_VOLTAGE, asked.whole));
  const current = s.current(led);
  return collectorVoltage(
    asked.amps,
    current,
    saturationAt(coupler, s),
    FORCED_RATIO,
    able / Math.max(current, 1e-15),
    RATIO_VOLTAGE,
  );
}

function offSteps(coupler: Coupler, led: string, amps: number, dark: number, s: Reading): Step[] {
  if (coupler.transfer === undefined) return [];
  return [
    ...branchSteps(s.branch(led), 'current that the coupler’s LED keeps'),
    {
      name: 'I_off',
      says: 'what the output makes of it at most, and what it lets through in the dark',
      formula: 'ratio * I + I_dark',
      with: {
        ratio: [coupler.transfer.most(s.current(led), s), ''],
        I: [s.current(led), 'A'],
        I_dark: [dark, 'A'],
      },
      gives: [amps, 'A'],
    },
  ];
}

export const opto: StageType = {
  // The LED hangs towards the level that its driver stands at to light it.
  conducts: (level, _, lit) => level !== 'open' && level === (lit ?? level),
  gives: (conducts, figures) => (!conducts ? 'open' : figures.word('output') === 'emitter' ? 'high' : 'low'),
  lower,
};
