import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/quantity/dimension.js';
import { parseQuantity } from '../../src/quantity/parse.js';

const slip = (text: string | number, dimension: Dimension): string => {
  const parsed = parseQuantity(text, dimension);
  if ('quantity' in parsed) throw new Error(`${text} was read as a quantity: ${JSON.stringify(parsed.quantity)}`);
  return `${parsed.problem} | ${parsed.expected}`;
};

type Cases = readonly (readonly [string | number, Dimension, string])[];
const says = (cases: Cases): void => {
  it.each(cases)('%j as %s', (text, dimension, message) => {
    expect(slip(text, dimension)).toBe(message);
  });
};

describe('a number without its unit is answered with the number and the unit', () => {
  says([
    [330, 'resistance', '`330` has a figure without a unit | a resistance with its unit: write `330 Ω`'],
    ['330', 'resistance', '`330` has a figure without a unit | a resistance with its unit: write `330 Ω`'],
    [0.02, 'current', '`0.02` has a figure without a unit | a current with its unit: write `0.02 mA` or `0.02 A`'],
    [24, 'gauge', '`24` has a figure without a unit | a wire gauge with its unit: write `AWG 24`'],
    [6, 'time-per-day', '`6` has a figure without a unit | a time per day with its unit: write `6 h/day`'],
    [
      '10 to 40',
      'temperature',
      '`10 to 40` has a figure without a unit | a temperature with its unit: write `10 to 40 °C`',
    ],
    ['5 ±5 %', 'voltage', '`5 ±5 %` has a figure without a unit | a voltage, such as `5 V`'],
    [
      '330 / 4k7 / 10 kΩ',
      'resistance',
      '`330 / 4k7 / 10 kΩ` has a figure without a unit | a resistance, such as `330 Ω`',
    ],
    ['330 to 4k7', 'resistance', '`330 to 4k7` has a figure without a unit | a resistance, such as `330 Ω`'],
  ]);
});

describe('a unit of another dimension is named, and what was wanted', () => {
  says([
    ['5 mA', 'voltage', '`5 mA` is a current | a voltage, such as `5 V`'],
    ['5 V', 'resistance', '`5 V` is a voltage | a resistance, such as `330 Ω`'],
    ['6 h', 'time-per-day', '`6 h` is a time | a time per day, such as `6 h/day`'],
    ['0.25 mm²', 'gauge', '`0.25 mm²` is an area | a wire gauge, such as `AWG 24`'],
    ['AWG 24', 'area', '`AWG 24` is a wire gauge | an area, such as `0.25 mm²`'],
    ['5 Ω DC', 'voltage', '`5 Ω DC` is a resistance | a voltage, such as `5 V`'],
    ['5 mA', 'ratio', '`5 mA` is a current | a ratio, such as `20 %`'],
    ['max 5 mA', 'voltage', '`5 mA` is a current | a voltage, such as `5 V`'],
    ['20 % DC', 'ratio', '`20 % DC`: DC goes with volts and amperes only | a ratio, such as `20 %`'],
  ]);
});

describe('a unit in the wrong case, or without its letter, is answered with the one that was meant', () => {
  says([
    ['70 MA', 'current', '`70 MA`: `MA` is no unit of current | a current; did you mean `70 mA`?'],
    ['20 ma', 'current', '`20 ma`: `ma` is no unit of current | a current; did you mean `20 mA`?'],
    ['5 v', 'voltage', '`5 v`: `v` is no unit of voltage | a voltage; did you mean `5 V`?'],
    ['5 MW', 'power', '`5 MW`: `MW` is no unit of power | a power; did you mean `5 mW`?'],
    ['16 mhz', 'frequency', '`16 mhz`: `mhz` is no unit of frequency | a frequency; did you mean `16 MHz`?'],
    ['16 mHz', 'frequency', '`16 mHz`: `mHz` is no unit of frequency | a frequency; did you mean `16 MHz`?'],
    ['10 KΩ', 'resistance', '`10 KΩ`: `KΩ` is no unit of resistance | a resistance; did you mean `10 kΩ`?'],
    ['10 k', 'resistance', '`10 k`: `k` is no unit of resistance | a resistance; did you mean `10 kΩ`?'],
    ['10 K', 'resistance', '`10 K` is a temperature difference | a resistance; did you mean `10 kΩ`?'],
    ['100 m', 'resistance', '`100 m` is a length | a resistance; did you mean `100 mΩ`?'],
    ['5 H', 'time', '`5 H` is an inductance | a time; did you mean `5 h`?'],
    ['10 uf', 'capacitance', '`10 uf`: `uf` is no unit of capacitance | a capacitance; did you mean `10 uF`?'],
    ['AWG 5 V', 'voltage', '`AWG 5 V`: `AWGV` is no unit of voltage | a voltage, such as `5 V`, in V'],
    ['5 furlong', 'length', '`5 furlong`: `furlong` is no unit of length | a length, such as `2 m`, in m, cm, ft'],
  ]);
});

describe('temperatures and their differences are kept apart', () => {
  says([
    ['300 K', 'temperature', '`300 K`: K is for differences of temperature | a temperature in °C: 0 °C is 273.15 K'],
    [
      '25 °C',
      'temperature-difference',
      '`25 °C` is a temperature, not a difference of two | a temperature difference in K, such as `25 K`',
    ],
    [
      '25 °C ±10 %',
      'temperature',
      'a per cent of a temperature means nothing | a tolerance in K, such as `25 °C ±3 K`',
    ],
    ['-300 °C', 'temperature', '`-300 °C`: a temperature is never below -273 °C | a temperature, such as `40 °C`'],
  ]);
});

describe('a comma is explained', () => {
  const rule = 'a comma ends a value inside { }, so a figure has none';
  says([
    ['4,7 kΩ', 'resistance', `${rule}: \`4,7 kΩ\` | a decimal point: \`4.7 kΩ\``],
    ['1,5 mA', 'current', `${rule}: \`1,5 mA\` | a decimal point: \`1.5 mA\``],
    [
      '1,000 Ω',
      'resistance',
      `${rule}: \`1,000 Ω\` | no mark between thousands: \`1000 Ω\`, or \`1.000 Ω\` if the comma was a decimal point`,
    ],
    ['1,000,000 Ω', 'resistance', `${rule}: \`1,000,000 Ω\` | no mark between thousands: \`1000000 Ω\``],
    ['5 V, 2 A', 'voltage', `${rule}: \`5 V, 2 A\` | a voltage, such as \`5 V\``],
  ]);
});

describe('a form that is nearly right is answered with the right one', () => {
  const tolerance = 'a tolerance on a single figure, such as `5 V ±5 %` or `5 V +10/-5 %`';
  const slashes = 'three figures, min / typ / max; a fraction is written as `0.25`';
  says([
    ['4.75-5.25 V', 'voltage', '`-5.25 V` cannot follow `4.75` | a range with `to`: `4.75 to 5.25 V`'],
    ['4.75..5.25 V', 'voltage', '`..5.25 V` cannot follow `4.75` | a range with `to`: `4.75 to 5.25 V`'],
    ['4.75 – 5.25 V', 'voltage', '`– 5.25 V` cannot follow `4.75` | a range with `to`: `4.75 to 5.25 V`'],
    ['5 V -5 %', 'voltage', `\`-5 %\` cannot follow \`5 V\` | ${tolerance}`],
    ['5 V ±', 'voltage', `\`±\` cannot follow \`5 V\` | ${tolerance}`],
    ['5 V ±-5 %', 'voltage', `\`±-5 %\` cannot follow \`5 V\` | ${tolerance}`],
    ['5 V +5 % +5 %', 'voltage', `\`+5 % +5 %\` cannot follow \`5 V\` | ${tolerance}`],
    ['typ 20 mA ±5 %', 'current', `\`±5 %\` cannot follow \`typ 20 mA\` | ${tolerance}`],
    ['4 to 5 V ±5 %', 'voltage', `\`±5 %\` cannot follow \`4 to 5 V\` | ${tolerance}`],
    ['25 mA max', 'current', '`max` cannot follow `25 mA` | `max` before its figure: `max 20 mA`'],
    ['5 to 6 V typ', 'voltage', '`typ` cannot follow `5 to 6 V` | `typ` before its figure: `typ 5 V`'],
    ['4.7k5', 'resistance', '`5` cannot follow `4.7k` | a resistance, such as `330 Ω`'],
    ['18 / 25 mA', 'current', `\`/ 25 mA\` cannot follow \`18\` | ${slashes}`],
    ['1/4 W', 'power', `\`/4 W\` cannot follow \`1\` | ${slashes}`],
    ['5 to V', 'voltage', '`to V` cannot follow `5` | a voltage, such as `5 V`'],
    ['5 min 30 s', 'time', '`30 s` cannot follow `5 min` | a time, such as `150 ms`'],
    ['1 000 Ω', 'resistance', '`000 Ω` cannot follow `1` | a resistance, such as `330 Ω`'],
    ['5 V ±5 mA', 'voltage', '`5 mA` is no tolerance for a voltage | a tolerance in % or V'],
    ['5 V ±5', 'voltage', '`5` is no tolerance for a voltage | a tolerance in % or V'],
    ['50 % ±5', 'ratio', '`5` is no tolerance for a ratio | a tolerance in %'],
    ['4m7', 'resistance', '`7` cannot follow `4m` | `4M7`, or `4.7 mΩ` where the small m was meant'],
    ['4K7J ±5 %', 'resistance', '`4K7J` has a tolerance letter already | a resistance, such as `330 Ω`'],
    [
      '4K7J to 5K1',
      'resistance',
      '`4K7J to 5K1` has a range and a tolerance letter as well | a resistance, such as `330 Ω`',
    ],
    ['typ 5 V typ 6 V', 'voltage', '`typ 5 V typ 6 V` has two figures for `typ` | a voltage, such as `5 V`'],
  ]);
});

describe('bounds that cannot be are refused', () => {
  const order = 'the smaller figure first: min, typ, max';
  says([
    ['5.25 to 4.75 V', 'voltage', `\`5.25 to 4.75 V\` is not in order | ${order}`],
    ['25 / 20 / 18 mA', 'current', `\`25 / 20 / 18 mA\` is not in order | ${order}`],
    ['3 to 4 V typ 5 V', 'voltage', `\`3 to 4 V typ 5 V\` is not in order | ${order}`],
    ['typ 20 mA max 15 mA', 'current', `\`typ 20 mA max 15 mA\` is not in order | ${order}`],
    ['min 20 mA typ 15 mA', 'current', `\`min 20 mA typ 15 mA\` is not in order | ${order}`],
    ['500 to 1.2 A', 'current', `\`500 to 1.2 A\` is not in order | ${order}`],
    ['100 Ω ±150 %', 'resistance', '`100 Ω ±150 %`: a resistance is never below 0 Ω | a resistance, such as `330 Ω`'],
    ['max -5 Ω', 'resistance', '`max -5 Ω`: a resistance is never below 0 Ω | a resistance, such as `330 Ω`'],
    ['-5 %', 'ratio', '`-5 %`: a ratio is never below 0 % | a ratio, such as `20 %`'],
    [
      '25 h/day',
      'time-per-day',
      '`25 h/day`: a time per day is never above 24.0 h/day | a time per day, such as `6 h/day`',
    ],
    ['AWG 24.5', 'gauge', '`AWG 24.5` is no whole number | a wire gauge, such as `AWG 24`'],
    ['1e999 V', 'voltage', '`1e999 V` is beyond all measure | a voltage, such as `5 V`'],
  ]);
});

describe('what is no figure at all is said to be none', () => {
  says([
    ['', 'voltage', 'there is no figure here | a voltage, such as `5 V`'],
    ['   ', 'voltage', 'there is no figure here | a voltage, such as `5 V`'],
    ['unknown', 'voltage', '`unknown` is no quantity | a voltage, such as `5 V`'],
    ['about 5 V', 'voltage', '`about 5 V` is no quantity | a voltage, such as `5 V`'],
    ['typ', 'voltage', '`typ` is no quantity | a voltage, such as `5 V`'],
    ['R', 'resistance', '`R` is no quantity | a resistance, such as `330 Ω`'],
    ['10² V', 'voltage', '`² V` cannot follow `10` | a voltage, such as `5 V`'],
    ['5 V five', 'voltage', '`five` cannot follow `5 V` | a voltage, such as `5 V`'],
    [NaN, 'ratio', '`NaN` is no quantity | a ratio, such as `20 %`'],
    [Infinity, 'ratio', '`Infinity` is no quantity | a ratio, such as `20 %`'],
  ]);

  it('quotes a long text only as far as a sentence bears', () => {
    expect(slip('x'.repeat(1000), 'voltage')).toBe(
      `\`${'x'.repeat(59)}…\` is no quantity | a voltage, such as \`5 V\``,
    );
  });
});

it('reads a resistance code for a resistance only', () => {
  expect(slip('4k7', 'voltage')).toContain('cannot follow');
  expect(slip('10k', 'current')).toContain('is no unit of current');
});
