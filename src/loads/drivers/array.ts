/** A channel of a Darlington array: the array's own resistor and two base-emitter paths at its input, its drop at its output. */
import { gainAt } from '../../circuit/bipolar.js';
import { branchSteps } from '../branch-working.js';
import type { Curve, Figures } from '../figures.js';
import { closed } from '../../quantity/quantity.js';
import type { Interval } from '../../quantity/interval.js';
import type { ArrayChannel, LoadInput } from '../lowering.js';
import { rating } from '../limits.js';
import type { AccountPlan, Member, Reading } from '../plan.js';
import { GROUND } from '../plan.js';
import type { Driver, DriverSetting } from './driver.js';
import { heatAccount, heatOf } from './junction-heat.js';

/** Two base-emitter paths in series, volts, when nobody states them. */
const USUAL_INPUT_DROP: Interval = { min: 1.2, typ: 1.35, max: 1.5 };

export function arrayDriver(input: LoadInput, setting: DriverSetting, name: unknown): Driver | undefined {
  const { circuit, path, supply, load } = setting;
  const channel = input.bench.channel(name, [...path, 'array']);
  const pin = input.bench.outputPin(setting.pin.name, setting.pin.path, circuit, setting.active);
  if (channel === undefined || pin === undefined) return undefined;
  const { figures, array } = channel;
  const id = `${array}.${channel.channel}`;
  const resistance = figures.figure('input-resistance', 'resistance');
  const drop = figures.interval('input-drop', 'voltage') ?? USUAL_INPUT_DROP;
  const inputPart = `${circuit}.array-input`;
  input.bench.use({ array, channel: channel.channel, circuit, part: load, saturation: `${circuit}.driver` });
  const members: Member[] = [
    ...(resistance
      ? [{ kind: 'resistance' as const, part: inputPart, ohms: closed(resistance.quantity), origin: resistance.origin }]
      : []),
    { kind: 'drop', part: `${circuit}.array-bases`, volts: drop },
  ];
  const drive = driveAccount(figures, id, setting, resistance ? inputPart : undefined);
  return {
    by: 'array',
    pin: pin.account,
    side: 'low',
    members: saturationMembers(figures.curve('saturation', 'voltage', 'current'), circuit),
    networks: [
      {
        id: `${circuit}.driver`,
        circuits: [circuit],
        side: 'control',
        inner: [],
        hooks: [{ pin, active: setting.active, flows: 'out', to: GROUND, members, circuit }],
        on: [],
        off: [],
      },
    ],
    accounts: drive ? [drive] : [],
    clamps: figures.flag('clamps') && channel.common === supply,
    unlimited: resistance ? [] : [{ part: `${circuit}.array-bases`, pin: pin.account }],
  };
}

/** The output's drop as a straight line through its two points of least current: a threshold and a slope. */
function saturationMembers(curve: Curve | undefined, circuit: string): Member[] {
  const [a, b] = curve?.points ?? [];
  if (a === undefined) return [];
  const lowest = (p: typeof a): Interval => ({ ...p.value, min: p.quantity.min ?? p.value.typ });
  if (b === undefined || b.at === a.at) return [{ kind: 'drop', part: `${circuit}.driver`, volts: lowest(a) }];
  const slope = (end: keyof Interval): number => Math.max((lowest(b)[end] - lowest(a)[end]) / (b.at - a.at), 0);
  const foot = (end: keyof Interval): number => Math.max(lowest(a)[end] - slope(end) * a.at, 0);
  return [
    {
      kind: 'drop',
      part: `${circuit}.driver`,
      volts: { min: foot('min'), typ: foot('typ'), max: foot('max') },
      origin: curve!.origin,
    },
    {
      kind: 'resistance',
      part: `${circuit}.driver-slope`,
      ohms: { min: slope('min'), typ: slope('typ'), max: slope('max') },
      origin: curve!.origin,
    },
  ];
}

function driveAccount(
  figures: Figures,
  id: string,
  setting: DriverSetting,
  inputPart: string | undefined,
): AccountPlan | undefined {
  const { circuit, path, load } = setting;
  const part = inputPart ?? `${circuit}.array-bases`;
  const gain = figures.figure('gain', 'ratio');
  const least = gain && closed(gain.quantity).min;
  const gainIn = (s: Reading): number => (s.typical ? 2 * least! : gainAt(least!, s.ambient));
  return {
    id,
    kind: 'array',
    title: `array channel ${id}, input current`,
    quantity: 'current',
    direction: 'at-least',
    circuits: [circuit],
    path,
    recipes: ['drive-worst', 'drive-best'],
    read: (s) => s.current(part),
    limits: gain
      ? [
          {
            value: (s) => s.current(load) / gainIn(s),
            stated: `gain of ${gain.quantity.stated}`,
            grade: 'operating',
            isFunction: true,
            margin: 'drive',
            origin: gain.origin,
            condition: 'channel current over the gain',
          },
        ]
      : [],
    ...(!gain && { missing: { figure: 'gain', asks: `what is the least gain of array ${id} (its \`gain\`)?` } }),
    steps: (s) => branchSteps(s.branch(part), 'current into the array’s input'),
  };
}

/** The accounts of the array itself: each channel, the package's current and its heat, from the channels in use. */
export function arrayAccounts(
  array: string,
  figures: Figures,
  path: readonly (string | number)[],
  used: readonly ArrayChannel[],
): AccountPlan[] {
  const channels = [...new Set(used.map((u) => u.channel))].sort((a, b) => a - b);
  const channelLimit = rating(figures, 'channel-current', 'current');
  const packageLimit = rating(figures, 'package-current', 'current');
  const sum =
    (of: readonly ArrayChannel[]) =>
    (s: Reading): number =>
      of.reduce((amps, u) => amps + s.current(u.part), 0);
  const current = (
    id: string,
    title: string,
    of: readonly ArrayChannel[],
    limit: typeof channelLimit,
    figure: string,
  ): AccountPlan => ({
    id,
    kind: 'array',
    title,
    quantity: 'current',
    direction: 'at-most',
    circuits: [...new Set(of.map((u) => u.circuit))],
    path,
    recipes: ['draw-most', 'draw-least'],
    peaks: true,
    read: sum(of),
    limits: limit ? [limit] : [],
    books: of.map(({ circuit, part }) => ({ circuit, part })),
    ...(!limit && { missing: { figure, asks: `what current may ${title} carry (its \`${figure}\`)?` } }),
    steps: (s) => [
      {
        name: 'I',
        says: 'the loads that hang on it',
        formula: of.map((_, k) => `I_${k + 1}`).join(' + '),
        with: Object.fromEntries(of.map((u, k) => [`I_${k + 1}`, [s.current(u.part), 'A']] as const)),
        gives: [sum(of)(s), 'A'],
      },
    ],
  });
  const loss = (s: Reading): number =>
    used.reduce((watts, u) => {
      const slope = s.branch(u.part)?.members.find((m) => m.member.part === `${u.circuit}.driver-slope`)?.volts ?? 0;
      return watts + s.current(u.part) * (s.across(u.saturation) + slope);
    }, 0);
  const heat = heatOf(figures, array);
  return [
    ...channels.map((n) =>
      current(
        `${array}.${n}`,
        `array channel ${array}.${n}`,
        used.filter((u) => u.channel === n),
        channelLimit,
        'channel-current',
      ),
    ),
    ...(packageLimit
      ? [current(`${array}.package`, `array ${array}, all channels`, used, packageLimit, 'package-current')]
      : []),
    heatAccount(
      {
        id: `${array}.package`,
        kind: 'array',
        circuits: [...new Set(used.map((u) => u.circuit))],
        path,
        title: `array ${array}, junction`,
      },
      heat,
      loss,
      ['hottest', 'draw-least'],
    ),
  ];
}
