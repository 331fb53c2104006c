import { expect, it } from 'vitest';
import { exactly } from '../../src/quantity/interval.js';
import { closed, type Quantity } from '../../src/quantity/quantity.js';

const quantity = (bounds: Partial<Quantity>): Quantity => ({
  dimension: 'current',
  exact: false,
  stated: 'as written',
  ...bounds,
});

it('keeps bounds that were stated', () => {
  expect(closed(quantity({ min: 1, typ: 3, max: 4 }))).toEqual({ min: 1, typ: 3, max: 4 });
});

it('takes the middle of a range as typical when none was stated', () => {
  expect(closed(quantity({ min: 1, max: 4 }))).toEqual({ min: 1, typ: 2.5, max: 4 });
});

it('closes an open end to the nearest bound that was stated', () => {
  expect(closed(quantity({ typ: 3, max: 4 }))).toEqual({ min: 3, typ: 3, max: 4 });
  expect(closed(quantity({ min: 1, typ: 3 }))).toEqual({ min: 1, typ: 3, max: 3 });
});

it.each(['min', 'typ', 'max'])('closes a lone %s to that value', (bound) => {
  expect(closed(quantity({ [bound]: 7 }))).toEqual(exactly(7));
});

it('closes an open end as a law says', () => {
  const half = (x: number): number => x / 2;
  const more = (x: number): number => x * 1.5;
  expect(closed(quantity({ typ: 20 }), { max: more })).toEqual({ min: 20, typ: 20, max: 30 });
  expect(closed(quantity({ typ: 20, max: 25 }), { min: half, max: more })).toEqual({ min: 10, typ: 20, max: 25 });
  expect(closed(quantity({ max: 40 }), { min: half })).toEqual({ min: 20, typ: 30, max: 40 });
  expect(closed(quantity({ min: 40 }), { max: more })).toEqual({ min: 40, typ: 50, max: 60 });
});

it('throws for a quantity without any bound, which no text can give', () => {
  expect(() => closed(quantity({}))).toThrow(RangeError);
});
