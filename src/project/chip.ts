/** A chip in the project, on a board or bare: its pins by all their names, and what each of them is bound to. */
import type { PinResistance } from '../circuit/pin.js';
import { pinsIn } from '../catalogue/pin-range.js';
import type { InputPin, Pull } from '../loads/lines/line.js';
import type { BoundPin } from '../loads/lowering.js';
import type { BootState } from '../loads/circuit-plan.js';
import type { Path } from '../source/place.js';
import { chipAccounts } from './chip-accounts.js';
import { driveOf, resistanceOf, rowsOf } from './chip-drive.js';
import { leakageOf, pullsOf, thresholdsOf } from './chip-inputs.js';
import { covers, limitRows, sumId } from './chip-limits.js';
import type { ChipPin, ChipSetting } from './chip-setting.js';
import { list, mapping } from './chip-setting.js';
import type { OutputsOff } from './held-off.js';
import { outputsOff } from './held-off.js';
import { pinAtBoot, statedAtBoot } from './pin-at-boot.js';
import type { PinAccountPlan } from './pin-plan.js';

export interface Chip {
  readonly owner: string;
  readonly rail: string;
  readonly path: Path;
  /** By lower-case header and chip name. */
  readonly pins: ReadonlyMap<string, ChipPin>;
  bind(pin: ChipPin): BoundPin;
  /** Accounts of the sums that a pin's current counts in: pins with the same ones are as good as each other. */
  sumsOf(pin: ChipPin): readonly string[];
  /** What a pin does until firmware runs. */
  bootState(pin: ChipPin): BootState;
  /** The line that holds its outputs off, where it has one. */
  readonly outputsOff?: OutputsOff;
  /** The resistors fitted at a pin, outside the chip. */
  fitted(pin: ChipPin): readonly Pull[];
  /** A pin as one that reads; also a line that steers the chip, by its role. */
  input(pin: ChipPin | string): InputPin;
  /** Accounts of the pins in use, of the sums they belong to, and of the chip's totals. */
  accounts(
    used: ReadonlyMap<string, ReadonlySet<'source' | 'sink'>>,
    own: PinAccountPlan['own'],
  ): readonly PinAccountPlan[];
}

const isLevel = (word: string | undefined): word is 'high' | 'low' => word === 'high' || word === 'low';

export function chipOf(setting: ChipSetting): Chip {
  const { owner, profile, headers } = setting;
  const names = new Map<string, ChipPin>();
  const inputOnly = new Set([...pinsIn(list(profile['input-only'])), ...setting.inputOnly].map((n) => n.toLowerCase()));
  const reserved = new Map(
    [...Object.entries(mapping(profile['reserved'])), ...Object.entries(setting.reserved)].map(([k, v]) => [
      k.toLowerCase(),
      String(v),
    ]),
  );
  const straps = setting.figures.within('strapping');
  const settings = setting.figures.within('pins');
  /** The level that a pin has to have at a reset: as the file says, or its profile. */
  const strapOf = (label: string, chipPin: string): ChipPin['strap'] => {
    const own = [label, chipPin].map((name) => settings.within(name).word('strap')).find(isLevel);
    const told = [label, chipPin].map((name) => straps.within(name)).find((f) => f.says('level'));
    const level = own ?? told?.word('level');
    return isLevel(level)
      ? { level, ...(own === undefined && told?.says('says') && { says: told.word('says')! }) }
      : undefined;
  };
  const add = (label: string, chipPin: string, reachable: boolean): void => {
    const why = reserved.get(label.toLowerCase()) ?? reserved.get(chipPin.toLowerCase());
    const strap = strapOf(label, chipPin);
    const pin: ChipPin = {
      account: `${owner}.${label}`,
      label,
      told: setting.alone ? label : `${owner}.${label}`,
      chipPin,
      inputOnly: inputOnly.has(label.toLowerCase()) || inputOnly.has(chipPin.toLowerCase()),
      reachable,
      ...(why !== undefined && { reserved: why }),
      ...(strap && { strap }),
    };
    names.set(label.toLowerCase(), pin);
    if (!names.has(chipPin.toLowerCase())) names.set(chipPin.toLowerCase(), pin);
  };
  for (const [label, chipPin] of Object.entries(headers ?? {})) add(label, String(chipPin), true);
  // A pin that no header carries answers to its chip name.
  for (const chipPin of pinsIn(list(profile['pins'])))
    if (!names.has(chipPin.toLowerCase())) add(chipPin, chipPin, headers === undefined);

  const rows = limitRows(setting);
  const resistances = new Map<string, PinResistance | undefined>();
  const resistance = (level: 'high' | 'low', pin: ChipPin): PinResistance | undefined => {
    const [drive, published] = [driveOf(setting, pin), rowsOf(setting, level, pin)];
    const key = `${level} ${drive ?? ''} ${published[0]?.['pins'] === undefined ? '' : pin.chipPin}`;
    if (!resistances.has(key)) resistances.set(key, resistanceOf(setting, level, published, drive));
    return resistances.get(key);
  };
  const injectedAt = (pin: ChipPin) => {
    const pushed = rows.filter((r) => r.direction === 'injected' && r.scope === 'each' && covers(setting, r, pin));
    const narrow = pushed.some((r) => r.pins.size > 0) ? pushed.filter((r) => r.pins.size > 0) : pushed;
    return { limits: narrow.map((r) => r.limit), clamped: !narrow.some((r) => r.clamp === false) };
  };
  const off = outputsOff(setting.figures);
  return {
    owner,
    rail: setting.rail,
    path: setting.path,
    pins: names,
    ...(off && { outputsOff: off }),
    bind(pin) {
      const limits = rows.filter((r) => r.scope === 'each' && covers(setting, r, pin) && r.grade === 'characterised');
      const least = (d: 'source' | 'sink'): number | undefined =>
        limits.find((r) => r.direction === d)?.limit.value as number | undefined;
      const [source, sink] = [least('source'), least('sink')];
      return {
        account: pin.account,
        label: pin.label,
        owner,
        rail: setting.rail,
        high: resistance('high', pin),
        low: resistance('low', pin),
        boot: pinAtBoot(setting, pin, injectedAt(pin).clamped),
        characterised: { ...(source !== undefined && { source }), ...(sink !== undefined && { sink }) },
      };
    },
    sumsOf: (pin) => [
      ...new Set(rows.filter((r) => r.scope === 'sum' && covers(setting, r, pin)).map((r) => sumId(owner, r.name))),
    ],
    bootState: (pin) => statedAtBoot(setting, pin) ?? 'floating',
    fitted: (pin) => pullsOf(setting.figures, pin.account, pin).filter((p) => !p.inside),
    input(asked) {
      const pin = typeof asked === 'string' ? steering(owner, asked) : asked;
      const { limits, clamped } = injectedAt(pin);
      const thresholds = thresholdsOf(profile, pin, setting.window.typ);
      return {
        account: pin.account,
        label: pin.told,
        owner,
        rail: setting.rail,
        ...(thresholds && { thresholds }),
        injected: limits,
        clamped,
        pulls: pullsOf(setting.figures, pin.account, pin),
        leakage: leakageOf(setting.figures),
      };
    },
    accounts: (used, own) => chipAccounts(setting, names, rows, used, own),
  };
}

/** A line that steers an expander, by its role. */
const steering = (owner: string, role: string): ChipPin => ({
  ...{
    account: `${owner}.${role}`,
    label: role,
    told: `${owner}.${role}`,
    chipPin: role,
    inputOnly: true,
    reachable: true,
  },
});
