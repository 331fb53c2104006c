import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse.js';

const ohms = (text: string): readonly (number | undefined)[] => {
  const parsed = parseQuantity(text, 'resistance');
  if ('problem' in parsed) throw new Error(parsed.problem);
  const { min, typ, max } = parsed.quantity;
  return [min, typ, max];
};

/*
 * The letter and digit code of IEC 60062:2016 + A1:2019, "Marking codes for resistors and capacitors", International
 * Electrotechnical Commission. The standard itself was not at hand; the examples are those of "RKM code", Wikipedia,
 * table "Examples of resistance values".
 */
describe('IEC 60062, published examples', () => {
  it.each([
    ['R47', 0.47],
    ['4R7', 4.7],
    ['470R', 470],
    ['4K7', 4700],
    ['47K', 47_000],
    ['47K3', 47_300],
    ['470K', 470_000],
    ['4M7', 4_700_000],
  ])('%s is %d Ω', (code, value) => {
    expect(ohms(code)).toEqual([value, value, value]);
  });
});

describe('IEC 60062, the same rule on other values (derived)', () => {
  it.each([
    ['2M2', 2_200_000],
    ['1R0', 1],
    ['100R', 100],
    ['0R1', 0.1],
    ['4k7', 4700],
    ['10k', 10_000],
    ['1k', 1000],
    ['4r7', 4.7],
    ['4.7k', 4700],
  ])('%s is %d Ω', (code, value) => {
    expect(ohms(code)).toEqual([value, value, value]);
  });

  it('an M alone is the multiplier, not a tolerance', () => {
    expect(ohms('470M')).toEqual([470e6, 470e6, 470e6]);
  });

  it('a G is 10^9 (from memory)', () => {
    expect(ohms('1G')).toEqual([1e9, 1e9, 1e9]);
  });
});

describe('IEC 60062, the tolerance letter behind the value (from memory)', () => {
  it.each([
    ['1K0B', 999, 1001],
    ['1K0C', 997.5, 1002.5],
    ['1K0D', 995, 1005],
    ['1K0F', 990, 1010],
    ['1K0G', 980, 1020],
    ['1K0J', 950, 1050],
    ['1K0K', 900, 1100],
    ['1K0M', 800, 1200],
  ])('%s lies between %d and %d Ω', (code, min, max) => {
    expect(ohms(code)).toEqual([min, 1000, max]);
  });

  it('of two letters K the first multiplies and the second is ±10 %', () => {
    expect(ohms('4K7K')).toEqual([4230, 4700, 5170]);
    expect(ohms('10KK')).toEqual([9000, 10_000, 11_000]);
  });

  it('a value with a tolerance letter is not exact', () => {
    expect(parseQuantity('4K7J', 'resistance')).toMatchObject({ quantity: { exact: false } });
    expect(parseQuantity('4K7', 'resistance')).toMatchObject({ quantity: { exact: true } });
  });
});

describe('what only looks like a code is none', () => {
  it.each(['4m7', '4.7k5', 'R', 'K7K7', '4K7Z', '4k7k', '47K.5', '-4k7'])('%s', (text) => {
    expect(parseQuantity(text, 'resistance')).toHaveProperty('problem');
  });

  it('a unit behind the letter makes it a prefix', () => {
    expect(ohms('10kΩ')).toEqual([10_000, 10_000, 10_000]);
    expect(ohms('10Mohm')).toEqual([10e6, 10e6, 10e6]);
  });
});
