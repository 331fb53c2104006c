/**
 * A second reading: documentation of DriveCapacity in ra-hal (docs.rs), after Renesas R01AN5988, 10.2.3. The electrical tables of the
 * RA4M1 Group Datasheet (Renesas, R01DS0355EJ0100, 2019) could not be seen; what is of them here is from memory.
 */
import { expect, test } from 'vitest';
import { at, bounds, levels, limits, pinsInOrder, sums, value } from '../catalogue-figures.js';

const id = 'ra4m1';

test('R01AN5988, 10.2.3: 4 mA with low drive, 8 mA with middle drive, 60 mA of all output pins', () => {
  for (const direction of ['source', 'sink']) {
    expect(limits(id, 'each-pin', direction, 'operating')).toEqual([
      [0.004, { drive: '4 mA' }],
      [0.008, { drive: '8 mA' }],
    ]);
    expect(limits(id, 'all-pins', direction, 'operating')).toEqual([[0.06, {}]]);
  }
  expect(value(at(id, 'drive', 'default'), 'current')).toBe(0.004);
});

test('from memory: P408 and P409 give 20 mA with middle drive from 3 V on, port 0 30 mA together', () => {
  expect(limits(id, { each: ['P408', 'P409'] }, 'sink', 'operating')).toEqual([
    [0.02, { supply: '3 to 5.5 V', drive: '8 mA' }],
  ]);
  for (const direction of ['source', 'sink'])
    expect(sums(id, direction)).toEqual([[pinsInOrder(['P000..P008', 'P010..P015']), 0.03]]);
});

test('from memory: 0.8 V lost at half the rated current at 5 V, 0.5 V at a quarter of it at 3.3 V, both ways', () => {
  const rows = levels(id, 'output-low');
  expect(rows).toEqual([
    [5, 0.004, 0.002, { max: 0.8 }],
    [5, 0.008, 0.004, { max: 0.8 }],
    [3.3, 0.004, 0.001, { max: 0.5 }],
    [3.3, 0.008, 0.002, { max: 0.5 }],
  ]);
  for (const [i, [supply, , , { min }]] of levels(id, 'output-high').entries())
    expect(supply! - min!).toBeCloseTo(rows[i]![3].max!, 6);
});

/** R01DS0355EJ0110, Table 2.4, as a public repository quotes it: 4.0 V and 1.0 V at 5 V. */
test('Table 2.4: reads 0.2 and 0.8 of its supply', () => {
  expect(bounds(at(id, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.2 });
  expect(bounds(at(id, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.8 });
});

test('what nobody could look up says so', () => {
  for (const name of ['leakage', 'pull-up']) expect(at(id, name, 'cite', 0)).toBe('memory');
  for (const name of ['operating', 'absolute']) expect(at(id, 'supply', name, 'cite', 0)).toBe('memory');
  expect(bounds(at(id, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 1.6, max: 5.5 });
});
