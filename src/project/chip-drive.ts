/** How strongly a chip's pins drive: the setting that was chosen, and the output resistance it gives them. */
import { pinsIn } from '../catalogue/pin-range.js';
import type { LevelRow, PinResistance } from '../circuit/pin.js';
import { pinResistance } from '../circuit/pin.js';
import { isMapping } from '../loads/figures.js';
import type { Dimension } from '../quantity/dimension.js';
import { parseQuantity } from '../quantity/parse.js';
import { formatValue } from '../quantity/print.js';
import { closed } from '../quantity/quantity.js';
import type { ChipPin, ChipSetting, Raw } from './chip-setting.js';
import { list, mapping } from './chip-setting.js';
import type { PinAccountPlan } from './pin-plan.js';

/** The drive strength of a pin: the project's choice, or what the chip starts with: at this pin, or at all. */
export function driveOf(setting: ChipSetting, pin: ChipPin): string | undefined {
  const drive = setting.figures.within('drive');
  return chosenDrive(setting, pin) ?? drive.within('defaults').word(pin.chipPin) ?? drive.word('default');
}

/** The drive strength that the project chose for a pin. */
function chosenDrive(setting: ChipSetting, pin: ChipPin): string | undefined {
  const pins = setting.figures.within('pins');
  for (const name of [pin.label, pin.chipPin]) {
    const chosen = pins.within(name).word('drive');
    if (chosen !== undefined) return chosen;
  }
  return undefined;
}

/** A drive setting in amperes; undefined where there is none. */
export function amperesOf(text: unknown): number | undefined {
  const parsed = typeof text === 'string' || typeof text === 'number' ? parseQuantity(text, 'current') : undefined;
  return parsed && 'quantity' in parsed ? closed(parsed.quantity).typ : undefined;
}

/** A setting below the highest, amperes: beyond it nothing is characterised, and nothing breaks (rule 13 of the format). */
export function lowerDrive(setting: ChipSetting, pin: ChipPin): Pick<PinAccountPlan, 'drive'> {
  const stated = chosenDrive(setting, pin);
  const settings = list(mapping(setting.profile['drive'])['settings']).map(String);
  const [own, highest] = [amperesOf(stated), amperesOf(settings.at(-1))];
  return stated !== undefined && own !== undefined && own < (highest ?? 0) ? { drive: { amps: own, stated } } : {};
}

/** The VOL or VOH rows that hold for a pin: those that name it, or else those that name none. */
export function rowsOf({ profile }: ChipSetting, level: 'high' | 'low', pin: ChipPin): readonly Raw[] {
  const rows = list(profile[level === 'high' ? 'output-high' : 'output-low']).filter(isMapping);
  const names = (row: Raw): boolean =>
    pinsIn(list(row['pins'])).some((name) => name.toLowerCase() === pin.chipPin.toLowerCase());
  const named = rows.filter(names);
  return named.length > 0 ? named : rows.filter((row) => row['pins'] === undefined);
}

/** Output resistance of a pin by its rows and its drive strength. */
export function resistanceOf(
  setting: ChipSetting,
  level: 'high' | 'low',
  published: readonly Raw[],
  drive: string | undefined,
): PinResistance | undefined {
  const { figures, window, remarks, owner } = setting;
  const own = figures.within('pin-resistance');
  const direction = level === 'high' ? 'source' : 'sink';
  const stated = own.figure(direction, 'resistance');
  if (stated?.path) {
    const ohms = closed(stated.quantity, { min: (x) => x / 2 });
    return { ohms };
  }
  const rows = published.flatMap((raw) => levelRow(raw, level, drive));
  // A typical resistance beside the table is that of an ordinary pin.
  const ordinary = published.every((row) => row['pins'] === undefined);
  const found = pinResistance(rows, ordinary && stated ? closed(stated.quantity).typ : undefined, window);
  if (found?.assumed !== undefined)
    remarks.assume(
      owner,
      `output resistance of a pin that is ${level}: ${formatValue(found.ohms.min, 'resistance')} / ${formatValue(found.ohms.typ, 'resistance')} / ${formatValue(found.ohms.max, 'resistance')}, ${found.assumed}`,
    );
  return found;
}

function levelRow(raw: Raw, level: 'high' | 'low', drive: string | undefined): LevelRow[] {
  const read = (value: unknown, dimension: Dimension) => {
    const parsed = parseQuantity(value as string, dimension);
    return 'quantity' in parsed ? parsed.quantity : undefined;
  };
  if (drive !== undefined && raw['drive'] !== undefined) {
    const [a, b] = [read(raw['drive'], 'current'), read(drive, 'current')];
    if (a?.typ !== b?.typ) return [];
  }
  const [volts, at, supply] = [
    read(raw['value'], 'voltage'),
    read(raw['at'], 'current'),
    read(raw['supply'], 'voltage'),
  ];
  if (volts === undefined || at === undefined || supply === undefined) return [];
  const rail = closed(supply).typ;
  const lost = (v: number | undefined): number | undefined =>
    v === undefined ? undefined : level === 'high' ? rail - v : v;
  const typ = volts.exact ? undefined : lost(volts.typ);
  const max = lost(level === 'high' ? volts.min : volts.max);
  return [
    {
      supply: rail,
      current: closed(at).typ,
      lost: { ...(typ !== undefined && { typ }), ...(max !== undefined && { max }) },
    },
  ];
}
