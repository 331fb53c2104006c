/** Clamps across coils and motors: what they carry when the switch opens, and the voltage they bear while it is closed. */
import type { ClampAction, ClampType } from '../circuit/clamp.js';
import { clampAction } from '../circuit/clamp.js';
import { junctionAt, junctionVoltage } from '../circuit/junction.js';
import { formatInterval } from '../quantity/print.js';
import type { Interval } from '../quantity/interval.js';
import { releaseSteps } from './clamp-working.js';
import type { Winding } from './clamp-working.js';
import { clampHeat } from './clamp-heat.js';
import { junctionSpread } from './laws.js';
import { branchSteps } from './branch-working.js';
import { rating } from './limits.js';
import type { LoadInput } from './lowering.js';
import type { Figures } from './figures.js';
import type { AccountPlan, LimitPlan, Reading, Step } from './account-plan.js';
import type { JunctionSpread } from './branch-plan.js';
import type { Pulses, Wiring } from './circuit-plan.js';
import { pauseOf } from './pulses.js';

/** Forward voltages that are taken when nobody states them, volts. */
const USUAL_FORWARD: { readonly [S in 'silicon' | 'schottky']: Interval } = {
  silicon: { min: 0.5, typ: 0.8, max: 1.5 },
  schottky: { min: 0.2, typ: 0.4, max: 0.8 },
};

export interface Clamp {
  readonly wiring: Pick<Wiring, 'clamp' | 'clampActs' | 'clampForward'>;
  readonly accounts: readonly AccountPlan[];
  /** Most volts that stand across it when it takes over so many amperes; 0 where a figure for that is missing. */
  readonly keeps: (amps: number, s: Reading) => number;
  /** The same accounts of a driver, with what the clamp throws at it when it switches off. */
  readonly atSwitchingOff: (accounts: readonly AccountPlan[]) => readonly AccountPlan[];
}

/** What a clamp hangs across. */
export interface ClampSetting {
  readonly circuit: string;
  /** Part that carries the winding's current. */
  readonly part: string;
  /** Node that feeds it, where the other end is switched to ground. */
  readonly supply?: string;
  /** What the winding stores, and when it lets go, where that is known. */
  readonly winding?: Winding;
  /** How often it is switched off, where that is many times a second. */
  readonly pulses?: Pulses;
  /** The same where it is counted by the day, on and off as two. */
  readonly perDay?: number;
  /** Node that the clamp leads to, where that is not the winding's own supply: an array's common pin. */
  readonly clampedTo?: string;
}

/** How often a day it is switched, on and off counted as two. */
export const operationsOf = (figures: Figures): Pick<ClampSetting, 'perDay'> => {
  const perDay = figures.interval('operations', 'times-per-day')?.max;
  return perDay === undefined ? {} : { perDay };
};

/** What a clamp's figures are called: by themselves, and among those of an array. */
const OWN = { current: 'current', peak: 'peak-current', forward: 'forward-voltage' };
const OF_ARRAY: typeof OWN = { current: 'clamp-current', peak: 'clamp-current', forward: 'clamp-forward-voltage' };

/** The clamp of a load, if the file names one. */
export function clampOf(input: LoadInput, setting: ClampSetting): Clamp | undefined {
  const { entry, bench, path } = input;
  if (entry['clamp'] === undefined) return undefined;
  const at = [...path, 'clamp'];
  const found = bench.part('clamp', entry['clamp'], at, `${setting.circuit}.clamp`);
  if (found === undefined)
    return { wiring: { clamp: 'fitted' }, accounts: [], keeps: () => 0, atSwitchingOff: (a) => a };
  return clampFrom(found.figures, found.type, setting, at);
}

/** The accounts of the clamp that an array has in each of its channels. */
export const clampInArray = (
  figures: Figures,
  setting: ClampSetting,
  path: AccountPlan['path'],
): readonly AccountPlan[] => clampFrom(figures, 'diode', setting, path, OF_ARRAY).accounts;

/** A clamp from its figures: of a load, or fitted on a board. */
export function clampFrom(
  figures: Figures,
  type: string,
  setting: ClampSetting,
  path: readonly (string | number)[],
  keys = OWN,
): Clamp {
  const action = clampAction(type as ClampType, figures.word('fitted') === 'reversed');
  const law = lawOf(figures, type as ClampType, action, keys.forward);
  const acts = action.acts;
  return {
    wiring: {
      clamp: acts === 'clamps' ? 'fitted' : 'reversed',
      ...(acts !== 'clamps' && { clampActs: acts }),
      ...(law.junction && !action.breakdown && { clampForward: law.junction }),
    },
    accounts: [
      ...accountsOf(figures, action, law, setting, path, keys),
      ...(type === 'diode' ? recovery(figures, setting, path) : []),
    ],
    keeps: (amps, s) => law.volts(amps, s) ?? 0,
    atSwitchingOff: (accounts) =>
      acts === 'clamps'
        ? accounts.map((a) => (isOffVoltage(a, setting.circuit) ? thrown(a, law, setting) : a))
        : accounts,
  };
}

/** Volts across a clamp that carries the winding's current. */
interface ClampLaw {
  /** Highest in the corner, typically typical; undefined when a figure for it is missing. */
  readonly volts: (amps: number, s: Reading) => number | undefined;
  /** Lowest, at which the current takes longest to fall. */
  readonly least: (amps: number, s: Reading) => number;
  readonly breakdown?: Interval;
  readonly junction?: JunctionSpread;
  /** What clamps has a breakdown that nobody states. */
  readonly unknown: boolean;
  /** Takes note that a usual forward voltage stands in, once that is used. */
  readonly used: () => void;
}

function lawOf(figures: Figures, type: ClampType, action: ClampAction, key: string): ClampLaw {
  const curve = action.forward ? figures.curve(key, 'voltage', 'current') : undefined;
  const junction: JunctionSpread | undefined = curve && junctionSpread(curve);
  const usual = USUAL_FORWARD[type === 'schottky' ? 'schottky' : 'silicon'];
  const breakdown = action.breakdown || action.breaksDownOn ? figures.interval('zener-voltage', 'voltage') : undefined;
  const forward = (amps: number, end: keyof Interval, s: Reading): number => {
    if (!action.forward) return 0;
    return junction === undefined ? usual[end] : junctionVoltage(junctionAt(junction[end], s.ambient), amps);
  };
  const at = (amps: number, end: keyof Interval, s: Reading): number =>
    forward(amps, end, s) + (action.breakdown ? (breakdown?.[end] ?? 0) : 0);
  return {
    volts: (amps, s) =>
      action.breakdown && breakdown === undefined ? undefined : at(amps, s.typical ? 'typ' : 'max', s),
    least: (amps, s) => at(amps, s.typical ? 'typ' : 'min', s),
    ...(breakdown && { breakdown }),
    ...(junction && { junction }),
    unknown: action.breakdown && breakdown === undefined,
    used: () => {
      if (action.forward && junction === undefined)
        figures.assume(`its forward voltage: ${formatInterval(usual, 'voltage')}, since nobody states it`);
    },
  };
}

function accountsOf(
  figures: Figures,
  action: ClampAction,
  law: ClampLaw,
  setting: ClampSetting,
  path: readonly (string | number)[],
  keys: typeof OWN,
): AccountPlan[] {
  const { circuit, part, supply, winding, pulses, perDay, clampedTo } = setting;
  const base = {
    id: `${circuit}.clamp`,
    kind: 'clamp' as const,
    direction: 'at-most' as const,
    circuits: [circuit],
    path,
  };
  const lasting = rating(figures, keys.current, 'current');
  const peak = rating(figures, keys.peak, 'current') ?? lasting;
  const current: AccountPlan = {
    ...base,
    title: `clamp of ${circuit}`,
    quantity: 'current',
    recipes: ['draw-most', 'draw-least'],
    peaks: true,
    read: (s) => s.current(part),
    limits: [...(peak ? [peak] : []), ...(pulses && lasting ? [meanLimit(lasting, pulses)] : [])],
    books: [{ circuit, part }],
    ...(!peak && {
      missing: { figure: 'current', asks: `what current may the clamp of ${circuit} carry (its \`current\`)?` },
    }),
    steps: (s) => [
      ...branchSteps(s.branch(part), 'at switching off the clamp takes over what the winding carries', 'I_clamp'),
      ...(winding && action.acts === 'clamps' && !law.unknown
        ? releaseSteps(winding, part, s, {
            ...dropOf(law, s.current(part), s),
            ...(perDay !== undefined && { perDay }),
            ...(clampedTo !== undefined &&
              supply !== undefined && { above: [s.voltage(clampedTo), s.voltage(supply)] }),
          })
        : []),
    ],
  };
  const heat =
    (action.breakdown || figures.says('power')) && action.acts === 'clamps' && !law.unknown
      ? clampHeat(figures, { ...base, title: `clamp of ${circuit}` }, setting, law.volts)
      : [];
  const blocks = supply === undefined ? undefined : blocking(figures, action, law, circuit);
  return [current, ...(blocks === undefined ? [] : [withstands(base, blocks, supply!, circuit)]), ...heat];
}

/** Under pulses a clamp carries the winding's current in every pause: what it may carry for ever holds for the mean of that. */
const meanLimit = (limit: LimitPlan, pulses: Pulses): LimitPlan => {
  const share = pauseOf(pulses).max;
  return {
    ...limit,
    value: (s) => (typeof limit.value === 'number' ? limit.value : limit.value(s)) / share,
    stated: `${limit.stated} for ever, as the mean of pauses that last ${Math.round(share * 1000) / 10} % of a period`,
    condition: 'pulses: it carries the current in each pause',
  };
};

const dropOf = (law: ClampLaw, amps: number, s: Reading) => ({
  most: law.volts(amps, s) ?? 0,
  least: law.least(amps, s),
});

/** Share of a period in which a clamp that is slow to block again may let the next pulse through it. Common practice, no source. */
const SLOW = 0.01;
/** Recovery of a rectifier of which nobody states it is tried at so many seconds: it holds, or is unproven. Common practice, no source. */
const TRIED_RECOVERY = 5e-6;

/**
 * Under pulses a diode is still full of charge when the next one begins: until it blocks again it shorts the supply through the
 * switch. Schottky diodes store none.
 */
function recovery(figures: Figures, { circuit, pulses }: ClampSetting, path: Base['path']): AccountPlan[] {
  if (pulses === undefined) return [];
  const stated = figures.interval('recovery-time', 'time')?.max;
  if (stated === undefined) figures.assume('its recovery: tried at 5 µs, since nobody states it');
  const lasts = stated ?? TRIED_RECOVERY;
  const allowed = SLOW / pulses.frequency.max;
  return [
    {
      id: `${circuit}.clamp`,
      kind: 'clamp',
      title: `clamp of ${circuit}, recovery`,
      quantity: 'time',
      direction: 'at-most',
      circuits: [circuit],
      path,
      recipes: ['draw-most'],
      read: () => lasts,
      limits: [
        {
          value: allowed,
          stated: `${100 * SLOW} % of a period of its pulses`,
          grade: 'practice',
          margin: 'none',
          origin: { document: 'common practice, no source', basis: 'practice' },
          ...(stated === undefined && {
            asks: `how long does the clamp of ${circuit} take to block again (its \`recovery-time\`)?`,
          }),
        },
      ],
      steps: () => [
        {
          name: 'x',
          says: 'share of a period in which it does not block yet',
          formula: 't_recovery * f',
          with: { t_recovery: [lasts, 's'], f: [pulses.frequency.max, 'Hz'] },
          gives: [lasts * pulses.frequency.max, ''],
        },
      ],
    },
  ];
}

type Base = Pick<AccountPlan, 'id' | 'kind' | 'direction' | 'circuits' | 'path'>;

/** What it has to keep back while the switch is closed: below its breakdown, or below the voltage it is rated to block. */
function blocking(
  figures: Figures,
  action: ClampAction,
  law: ClampLaw,
  circuit: string,
): Pick<AccountPlan, 'limits' | 'missing'> | undefined {
  const rated = rating(figures, 'reverse-voltage', 'voltage', { margin: 'none' });
  if (!action.breaksDownOn) return rated && { limits: [rated] };
  const figure = figures.figure('zener-voltage', 'voltage');
  if (law.breakdown === undefined || figure === undefined)
    return {
      limits: [],
      missing: {
        figure: 'zener-voltage',
        asks: `at what voltage does the clamp of ${circuit} break down (its \`zener-voltage\`)?`,
      },
    };
  const breaksDown: LimitPlan = {
    value: law.breakdown.min,
    stated: figure.quantity.stated,
    grade: 'operating',
    margin: 'none',
    origin: figure.origin,
    condition: 'beyond it it conducts as long as the load is on',
  };
  return { limits: [breaksDown, ...(rated ? [rated] : [])] };
}

const withstands = (
  base: Base,
  judged: Pick<AccountPlan, 'limits' | 'missing'>,
  supply: string,
  circuit: string,
): AccountPlan => ({
  ...base,
  ...judged,
  title: `clamp of ${circuit}, reverse voltage`,
  quantity: 'voltage',
  recipes: ['lightest', 'starved'],
  read: (s) => (judged.missing ? undefined : s.voltage(supply)),
  steps: (s) => [
    {
      name: 'V_reverse',
      says: 'the supply stands across the clamp',
      formula: 'V',
      with: { V: [s.voltage(supply), 'V'] },
      gives: [s.voltage(supply), 'V'],
    },
  ],
});

/** What a driver bears when it is off. */
const isOffVoltage = (a: AccountPlan, circuit: string): boolean =>
  a.id === `${circuit}.driver` && a.quantity === 'voltage' && a.direction === 'at-most';

/** At switching off a driver bears its supply and, on top of it, what the clamp drops. */
function thrown(account: AccountPlan, law: ClampLaw, { circuit, part }: ClampSetting): AccountPlan {
  law.used();
  const clamp = (s: Reading): number | undefined => law.volts(s.current(part), s);
  const steps = (s: Reading): readonly Step[] => {
    const [off, on] = [account.read(s) ?? 0, clamp(s) ?? 0];
    return [
      {
        name: 'V_peak',
        says: 'at switching off it bears the supply and what the clamp drops while it carries the winding’s current',
        formula: 'V_supply + V_clamp',
        with: { V_supply: [off, 'V'], V_clamp: [on, 'V'] },
        gives: [off + on, 'V'],
      },
    ];
  };
  const missing = {
    figure: 'zener-voltage',
    asks: `at what voltage does the clamp of ${circuit} break down (its \`zener-voltage\`)?`,
  };
  return {
    ...account,
    title: `driver of ${circuit}, voltage at switching off`,
    // The clamp drops most at the most current, the supply stands highest at the least; and the other way round.
    recipes: [...account.recipes, 'draw-most', 'draw-least'],
    read: (s) => {
      const [off, on] = [account.read(s), clamp(s)];
      return off === undefined || on === undefined ? undefined : off + on;
    },
    steps,
    ...(law.unknown && { limits: [], missing }),
  };
}
