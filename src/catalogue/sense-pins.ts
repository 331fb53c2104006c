/** Chips and expanders: does what they say of their pins name pins that exist? */
import type { Path, Problem } from '../source/place.js';
import { pinsIn } from './pin-range.js';
import type { Profile } from './profile.js';
import { isFields } from './profile.js';
import { senseLevels } from './sense-levels.js';
import { senseLimits } from './sense-limits.js';
import { fault, fieldsOf, listOf, rowsOf, textOf } from './stated.js';

/** Says which of some pins the chip has not. */
export type Missing = (names: readonly unknown[], path: Path) => readonly Problem[];

/** What is wrong with the pins of a chip or expander. */
export function sensePins(profile: Profile): readonly Problem[] {
  const pins = new Set(listOf(profile['pins']).map(textOf));
  const missing: Missing = (names, path) => {
    const found = pinsIn(names);
    const absent = found.filter((pin) => !pins.has(pin));
    if (found.length === 0) return [fault(path, `\`${names.map(textOf).join(', ')}\` names no pins`)];
    return absent.length === 0 ? [] : [fault(path, `there is no such pin: ${absent.join(', ')}`)];
  };
  const keysOf = (name: string): readonly string[] => Object.keys(fieldsOf(profile[name]));
  const boot = keysOf('at-boot').filter((key) => key !== 'otherwise' && key !== 'cite' && key !== 'note');
  const rowPins = (['output-high', 'output-low', 'thresholds'] as const).flatMap((name) =>
    rowsOf(profile[name]).flatMap((row, i) =>
      row['pins'] === undefined ? [] : missing(listOf(row['pins']), [name, i, 'pins']),
    ),
  );
  return [
    ...(pins.size === listOf(profile['pins']).length ? [] : [fault(['pins'], 'a pin is listed twice')]),
    ...(profile['input-only'] === undefined ? [] : missing(listOf(profile['input-only']), ['input-only'])),
    ...['reserved', 'strapping'].flatMap((name) => keysOf(name).flatMap((pin) => missing([pin], [name, pin]))),
    ...boot.flatMap((pin) => missing([pin], ['at-boot', pin])),
    ...rowPins,
    ...senseLimits(profile, missing),
    ...senseDrive(profile),
    ...senseLevels(profile),
  ];
}

/** The defaults are of the settings, and of pins that are there, and every row names a setting. */
function senseDrive(profile: Profile): readonly Problem[] {
  const drive = profile['drive'];
  const rows = (['output-high', 'output-low'] as const).flatMap((name) =>
    rowsOf(profile[name]).map((row, i) => ({ setting: row['drive'], path: [name, i] })),
  );
  if (!isFields(drive)) {
    return rows.flatMap(({ setting, path }) =>
      setting === undefined ? [] : [fault(path, 'the row names a drive setting, and the chip has none')],
    );
  }
  const settings = listOf(drive['settings']);
  const pins = listOf(profile['pins']).map(String);
  return [
    ...(settings.includes(drive['default'])
      ? []
      : [fault(['drive', 'default'], 'the default is none of the settings')]),
    ...Object.entries(isFields(drive['defaults']) ? drive['defaults'] : {}).flatMap(([pin, setting]) => [
      ...(pins.includes(pin) ? [] : [fault(['drive', 'defaults', pin], `there is no such pin: ${pin}`)]),
      ...(settings.includes(setting)
        ? []
        : [fault(['drive', 'defaults', pin], 'the default of the pin is none of the settings')]),
    ]),
    ...rows.flatMap(({ setting, path }) =>
      settings.includes(setting) ? [] : [fault(path, 'the row names no drive setting that the chip has')],
    ),
  ];
}
