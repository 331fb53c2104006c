import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Dimension, FACTS, UNITS } from '../../src/quantity/dimension.js';
import { parseQuantity } from '../../src/quantity/parse.js';
import { formatInterval, formatValue } from '../../src/quantity/print.js';
import { closed, type Quantity } from '../../src/quantity/quantity.js';

const quantity = (text: string, dimension: Dimension): Quantity => {
  const parsed = parseQuantity(text, dimension);
  if ('problem' in parsed) throw new Error(`${text}: ${parsed.problem}`);
  return parsed.quantity;
};

const dimensions = Object.keys(FACTS) as Dimension[];
const measured = fc.constantFrom(...dimensions.filter((dimension) => dimension !== 'gauge'));
/** From a millionth to a thousand, so that every prefix comes up, and no dimension is out of its range. */
const size = fc.double({ min: -6, max: 2.4, noNaN: true }).map((exponent) => 10 ** exponent);

/** An area is printed in mm² only, so it is taken small enough for that. */
const fitting = (value: number, dimension: Dimension): number => (dimension === 'area' ? value * 1e-6 : value);

/** Half the last digit of a printed number: 0.05 for '71.4'. */
const halfDigit = (digits: string): number => 0.5 * 10 ** -(digits.split('.')[1]?.length ?? 0);

describe('printing and reading', () => {
  it('come back to the value within half of the third digit', () => {
    fc.assert(
      fc.property(measured, size, (dimension, any) => {
        const value = fitting(any, dimension);
        const text = formatValue(value, dimension);
        const [digits = '', unit = ''] = text.split(' ');
        const { typ = NaN } = quantity(text, dimension);
        const { typ: one = NaN } = quantity(`1 ${unit}`, dimension);
        expect(digits.replace('.', '').replace(/^0+/, '')).toHaveLength(3);
        expect(Math.abs(typ - value) / one).toBeLessThanOrEqual(halfDigit(digits) * (1 + 1e-9));
      }),
      { numRuns: 1000 },
    );
  });

  it('come back to a value that has only three digits exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 999 }), fc.integer({ min: -8, max: 0 }), (digits, power) => {
        const value = Number(`${digits}e${power}`);
        expect(quantity(formatValue(value, 'voltage'), 'voltage').typ).toBe(value);
      }),
    );
  });

  it('come back to both ends of an interval', () => {
    fc.assert(
      fc.property(measured, size, size, (dimension, a, b) => {
        const [min, max] = [Math.min(a, b), Math.max(a, b)];
        const back = closed(quantity(formatInterval({ min, max }, dimension), dimension));
        expect(Math.abs(back.min / min - 1)).toBeLessThanOrEqual(0.0101);
        expect(Math.abs(back.max / max - 1)).toBeLessThanOrEqual(0.0051);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('reading', () => {
  it('puts the ends of a tolerance as far apart as it says, about the value', () => {
    const tenths = (max: number) => fc.integer({ min: 1, max }).map((n) => n / 10);
    fc.assert(
      fc.property(tenths(9999), tenths(999), (value, percent) => {
        const { min = NaN, typ, max = NaN, exact } = quantity(`${value} Ω ±${percent} %`, 'resistance');
        expect(typ).toBe(value);
        expect(exact).toBe(false);
        expect((min + max) / 2).toBeCloseTo(value, 8);
        expect((max - min) / (2 * value)).toBeCloseTo(percent / 100, 8);
      }),
    );
  });

  it('never lets a wider tolerance lose what a narrower one holds', () => {
    const percent = fc.integer({ min: 0, max: 100 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), percent, percent, (value, a, b) => {
        const narrow = closed(quantity(`${value} mA ±${Math.min(a, b)} %`, 'current'));
        const wide = closed(quantity(`${value} mA ±${Math.max(a, b)} %`, 'current'));
        expect(wide.min).toBeLessThanOrEqual(narrow.min);
        expect(wide.max).toBeGreaterThanOrEqual(narrow.max);
      }),
    );
  });

  it('answers any text at all with bounds in order or with a problem, and never throws', () => {
    const symbols = UNITS.flatMap((unit) => unit.symbols);
    const signs = '5 -40 4.7 1e3 to typ min max / ± +/- +10 -5 % 4k7 R47 AC DC k M , ² - \u2126 \u2212'.split(' ');
    const words = fc.constantFrom(' ', ...signs, ...symbols);
    const text = fc.oneof(
      fc.string(),
      fc.array(words, { maxLength: 8 }).map((list) => list.join(' ')),
      fc.array(words, { maxLength: 8 }).map((list) => list.join('')),
    );
    fc.assert(
      fc.property(text, fc.constantFrom(...dimensions), (any, dimension) => {
        const parsed = parseQuantity(any, dimension);
        if ('problem' in parsed) {
          expect(parsed.problem).not.toBe('');
          expect(parsed.expected).not.toBe('');
          return;
        }
        const { min, typ, max } = closed(parsed.quantity);
        expect(min).toBeLessThanOrEqual(typ);
        expect(typ).toBeLessThanOrEqual(max);
        expect(parsed.quantity.stated).toBe(any);
      }),
      { numRuns: 5000 },
    );
  });

  it('reads the example that it gives for every dimension, in every unit it knows', () => {
    for (const dimension of dimensions) {
      const { example, usual } = FACTS[dimension];
      expect(quantity(example, dimension).exact).toBe(true);
      for (const unit of usual) expect(quantity(`5 ${unit}`, dimension).exact).toBe(true);
    }
    for (const { symbols, dimension } of UNITS) {
      for (const symbol of symbols) expect(quantity(`1 ${symbol}`, dimension).exact).toBe(true);
    }
  });

  it('takes no symbol for two things within one dimension', () => {
    const seen = new Map<string, number>();
    for (const { symbols, prefixes, dimension } of UNITS) {
      for (const symbol of symbols.flatMap((s) => ['', ...prefixes].map((prefix) => prefix + s))) {
        const key = `${dimension}: ${symbol}`;
        seen.set(key, (seen.get(key) ?? 0) + 1);
      }
    }
    expect([...seen].filter(([, times]) => times > 1)).toEqual([]);
  });
});
