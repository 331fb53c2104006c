/**
 * Channels of an array: the array's own resistor and base-emitter paths at each input, its drop at the output, its clamps
 * to the common pin. Channels joined for one load share its current.
 */
import { closed } from '../../quantity/quantity.js';
import type { Interval } from '../../quantity/interval.js';
import type { Figures } from '../figures.js';
import type { Hook, LoadInput } from '../lowering.js';
import type { AccountPlan, Reading } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import { channelAtBoot, thresholdAtBoot } from '../at-boot.js';
import { ableAmps } from './array-drive.js';
import { clampMember } from './array-clamp.js';
import type { Driver, DriverSetting } from './driver.js';
import { keptMore } from './half-driven.js';
import { saturationMembers } from './saturation.js';

/** Two base-emitter paths in series, volts, when nobody states them. */
const USUAL_INPUT_DROP: Interval = { min: 1.2, typ: 1.35, max: 1.5 };
/** What one of them keeps at the most, volts. */
const ONE_JUNCTION = 1.1;
/** A clamp whose common pin stands less than this below the load's supply carries next to nothing, volts. */
const KNEE = 0.4;

type Channel = NonNullable<ReturnType<LoadInput['bench']['channel']>>;

export function arrayDriver(
  input: LoadInput,
  setting: Omit<DriverSetting, 'pin'> & Partial<Pick<DriverSetting, 'pin'>>,
  named: unknown,
): Driver | undefined {
  const { circuit, supply, load } = setting;
  const channels = joinedChannels(input, setting.path, named);
  const [first] = channels ?? [];
  if (channels === undefined || first === undefined) return undefined;
  const { figures, array, common } = first;
  const driver = `${circuit}.driver`;
  const saturation = saturationMembers(figures.curve('saturation', 'voltage', 'current'), driver, channels.length);
  const serial = figures.flag('serial');
  if (serial !== (setting.pin === undefined)) {
    input.bench.problem({
      path: setting.path,
      on: 'key',
      says: serial
        ? `the channels of \`${array}\` are set over its control lines, and have no pins of their own`
        : `no pin switches the channel of \`${input.id}\``,
      expected: serial ? 'the `array` alone' : '`pin:` in the driver, as in `driver: { array: sink.1, pin: D8 }`',
    });
    return undefined;
  }
  const pin = setting.pin && input.bench.outputPin(setting.pin.name, setting.pin.path, circuit, setting.active);
  if (setting.pin && pin === undefined) return undefined;
  const members = pin ? inputMembers(figures, circuit, channels.length) : [];
  // Two loads on one channel have one input between them.
  const other = input.bench.usersOf(array, first.channel).find((u) => u.pin === pin?.account);
  const parts = other?.input ?? members.map((m) => m.part);
  for (const { channel } of channels)
    input.bench.use({
      array,
      channel,
      circuit,
      part: load,
      ...(saturation.length > 0 && { saturation: driver }),
      ...(pin && { pin: pin.account }),
      input: parts,
      joined: channels.length,
      supply,
      ...(setting.inductive && { inductive: true }),
    });
  const hooks: Hook[] =
    other || !pin ? [] : [{ pin, active: setting.active, flows: 'out', to: GROUND, members, circuit }];
  const inside = figures.says('avalanche');
  const clamps = inside || (figures.flag('clamps') && common !== undefined);
  const below = clamps && common !== undefined ? belowSupply(input, common, supply) : undefined;
  const [resistor] = parts;
  const able = resistor === undefined ? undefined : ableAmps(figures, resistor);
  return {
    by: 'array',
    ...(pin && { pin: pin.account }),
    side: 'low',
    members: saturation,
    networks: [
      {
        id: driver,
        circuits: [circuit],
        side: 'control',
        inner: [],
        hooks,
        on: [],
        off: [],
        ...(other && pin && { along: pin.account }),
      },
    ],
    accounts: resistor === undefined ? [] : atBoot(figures, setting, resistor, able),
    clamps,
    // Joined channels' clamps share, by nobody's promise.
    ...(clamps && channels.length === 1 && figures.says('clamp-current') && { clampFigures: figures }),
    unlimited: hooks.flatMap(({ members }) =>
      members.some((m) => m.kind === 'resistance')
        ? []
        : [{ part: members[0]!.part, ...(pin && { pin: pin.account }) }],
    ),
    ...(able && { shortfall: keptMore(load, driver, able) }),
    ...(resistor !== undefined && isDarlington(figures) && parts.length > 1 && { darlington: { after: resistor } }),
    ...(clamps &&
      below === undefined &&
      common !== undefined &&
      common !== supply && { clampsTo: { to: common, members: [clampMember(figures, circuit)] } }),
    ...(below !== undefined && {
      off: { to: common!, members: [clampMember(figures, circuit)] },
      leak: (s) => s.current(load),
    }),
    wiring: {
      channels: channels.map((c) => `${array}.${c.channel}`),
      ...(clamps && common !== undefined && common !== supply && { clampedTo: { array, common } }),
      ...(below !== undefined && { clampedBelow: { array, common: common!, surely: below } }),
    },
  };
}

/** The most gain a channel has, in multiples of the least: typically twice, at the most twice that. Common practice, no source. */
const MOST_GAIN = 4;
/**
 * Amperes that the resistors from an array's bases to ground take before anything of it conducts: 0.6 V at 7.2 kΩ and more, at
 * the least so many. Common practice, no source.
 */
const SHUNTED = 20e-6;
/** Share of the voltage that a logic input surely reads as high which it surely reads as low, as of TTL levels (0.8 V of 2 V). */
const SURELY_LOW = 0.4;

/** Whether a channel stays off while nothing drives its input. @param part the input @param able what it carries at the least gain */
function atBoot(
  figures: Figures,
  { circuit, path, expected }: Pick<DriverSetting, 'circuit' | 'path' | 'expected'>,
  part: string,
  able: ((s: Reading) => number) | undefined,
): AccountPlan[] {
  const threshold = figures.figure('input-threshold', 'voltage');
  if (threshold) return thresholdAtBoot(circuit, path, part, SURELY_LOW * closed(threshold.quantity).min);
  if (able === undefined) return [];
  const carries = (s: Reading): number => {
    const input = s.current(part);
    return input > SHUNTED ? MOST_GAIN * able(s) * (1 - SHUNTED / input) : 0;
  };
  return channelAtBoot(circuit, path, part, carries, expected);
}

/** Whether two base-emitter paths lie behind an input, as where nobody states it. */
const isDarlington = (figures: Figures): boolean =>
  (figures.interval('input-drop', 'voltage') ?? USUAL_INPUT_DROP).typ > ONE_JUNCTION;

/** The channels a load hangs on: one, or several of one array. */
function joinedChannels(
  input: LoadInput,
  path: readonly (string | number)[],
  named: unknown,
): readonly Channel[] | undefined {
  const { bench } = input;
  const names: readonly unknown[] = Array.isArray(named) ? named : [named];
  const channels = names.map((name, k) =>
    bench.channel(name, [...path, 'array', ...(Array.isArray(named) ? [k] : [])]),
  );
  const found = channels.filter((c) => c !== undefined);
  if (found.length < names.length) return undefined;
  const odd = found.findIndex(
    (c, k) => c.array !== found[0]!.array || found.findIndex((o) => o.channel === c.channel) !== k,
  );
  if (odd < 0) return found;
  bench.problem({
    path: [...path, 'array', odd],
    on: 'value',
    says:
      found[odd]!.array === found[0]!.array
        ? `\`${String(names[odd])}\` is named twice`
        : `\`${String(names[0])}\` and \`${String(names[odd])}\` are of two arrays, which share no current evenly`,
    expected: 'different channels of one array, as in `array: [sink.1, sink.2]`',
  });
  return undefined;
}

/** An input: its resistor, and the base-emitter paths behind it. Those of joined channels, of one die and so alike, lie in parallel. */
function inputMembers(figures: Figures, circuit: string, joined: number): Member[] {
  const resistance = figures.figure('input-resistance', 'resistance');
  const volts = figures.interval('input-drop', 'voltage') ?? USUAL_INPUT_DROP;
  const bases: Member = { kind: 'drop', part: `${circuit}.array-bases`, volts };
  if (resistance === undefined) return [bases];
  const { min, typ, max } = closed(resistance.quantity);
  const ohms = { min: min / joined, typ: typ / joined, max: max / joined };
  const part = `${circuit}.array-input`;
  // At a logic input the voltage across its pull-down is what counts.
  if (figures.says('input-threshold'))
    return [{ kind: 'resistance', part, ohms, load: true, origin: resistance.origin }];
  return [{ kind: 'resistance', part, ohms, origin: resistance.origin }, bases];
}

/** Whether the common pin stands below the load's supply, so that the clamps conduct: surely, perhaps, or not at all. */
function belowSupply({ bench }: LoadInput, common: string, supply: string): boolean | undefined {
  const [low, high] = [bench.window(common), bench.window(supply)];
  if (high.max - low.min <= KNEE || common === supply) return undefined;
  return high.typ - low.typ > KNEE;
}
