/** Output levels of chips: do they lie where an output can stand, and is the resistance they imply one that a pin has? */
import { formatValue } from '../quantity/print.js';
import type { Problem } from '../source/place.js';
import { pinsIn } from './pin-range.js';
import { field, type Fields, type Profile } from './profile.js';
import { overlap } from './sense-limits.js';
import { fault, highest, listOf, lowest, middle, quantityOf, rowsOf, textOf } from './stated.js';

/**
 * Between the rows of one output: the resistance of a switch falls as its supply rises and rises a little with its current,
 * never by more than this. Beyond it, a row holds for another drive setting or has a slip in it.
 */
const LIKE = 12;

const OUTPUTS = ['output-high', 'output-low'] as const;

/** A row with what it implies. */
interface Level {
  readonly path: readonly (string | number)[];
  readonly row: Fields;
  readonly amps: number;
  readonly ohms: number;
}

/** What is wrong with the rows of output voltages. */
export function senseLevels(profile: Profile): readonly Problem[] {
  return OUTPUTS.flatMap((name) => {
    const rows = rowsOf(profile[name]);
    const levels = rows.map((row, i) => levelOf(name, row, i));
    const sound = levels.flatMap((each) => ('row' in each ? [each] : []));
    return [
      ...levels.flatMap((each) => ('row' in each ? [] : [each])),
      ...sound.flatMap((level) => beyondDamage(name, level, profile)),
      ...unlike(sound),
    ];
  });
}

/** A high output stands in the upper half of its supply, a low one in the lower, and neither beyond the rails. */
function levelOf(name: (typeof OUTPUTS)[number], row: Fields, i: number): Level | Problem {
  const path = [name, i];
  const supply = middle(quantityOf(row['supply'], 'voltage'));
  const value = quantityOf(row['value'], 'voltage');
  const amps = highest(quantityOf(row['at'], 'current'));
  if (supply === undefined) return fault(path, 'the row does not say at which supply voltage it holds');
  if (amps === undefined || !(amps > 0)) return fault(path, 'the row does not say at which current it holds');
  if (value === undefined) return fault(path, `${textOf(row['value'])} is no voltage`);
  const [low, high] = [lowest(value)!, highest(value)!];
  const right = name === 'output-high' ? low > supply / 2 && high < supply : low > 0 && high < supply / 2;
  const half = name === 'output-high' ? 'upper' : 'lower';
  if (!right)
    return fault(
      path,
      `${textOf(row['value'])} is no such level: it has to lie in the ${half} half of ${textOf(row['supply'])}`,
    );
  return { path, row, amps, ohms: (name === 'output-high' ? supply - low : high) / amps };
}

/** A maker promises no level at a current that does damage. */
function beyondDamage(name: string, { path, row, amps }: Level, profile: Profile): readonly Problem[] {
  const direction = name === 'output-high' ? 'source' : 'sink';
  const pins = row['pins'] === undefined ? undefined : pinsIn(listOf(row['pins']));
  const damage = rowsOf(profile['limits']).flatMap((limit) => {
    const each = field(limit['applies-to'], 'each');
    const about = limit['applies-to'] === 'each-pin' ? 'all' : Array.isArray(each) ? pinsIn(each) : [];
    // A row that names no pins holds for whatever bears it.
    const concerns = pins === undefined || about === 'all' || pins.some((pin) => about.includes(pin));
    const value = highest(quantityOf(limit[direction] ?? limit['either'], 'current'));
    const holds = overlap({ supply: row['supply'], drive: row['drive'] }, limit['when']);
    return limit['grade'] === 'absolute' && about.length > 0 && concerns && holds && value !== undefined ? [value] : [];
  });
  const most = pins === undefined ? Math.max(...damage, -Infinity) : Math.min(...damage, Infinity);
  return damage.length === 0 || amps <= most
    ? []
    : [
        fault(
          path,
          `the row promises a level at ${formatValue(amps, 'current')}, where ${formatValue(most, 'current')} does damage`,
        ),
      ];
}

/** Rows of one output and drive setting imply resistances of like size. */
function unlike(levels: readonly Level[]): readonly Problem[] {
  return levels.flatMap((level, i) => {
    const first = levels.slice(0, i).find(({ row }) => sameOutput(row, level.row));
    if (first === undefined) return [];
    const ratio = level.ohms / first.ohms;
    return ratio <= LIKE && ratio >= 1 / LIKE
      ? []
      : [
          fault(
            level.path,
            `the row implies ${formatValue(level.ohms, 'resistance')} of the pin, and one above it ${formatValue(first.ohms, 'resistance')}`,
          ),
        ];
  });
}

const sameOutput = (a: Fields, b: Fields): boolean =>
  a['drive'] === b['drive'] && JSON.stringify(a['pins']) === JSON.stringify(b['pins']);
