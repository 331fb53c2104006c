/** Small fuses against the data sheets of two series of 5 x 20 mm fast glass fuses. */
import { expect, it } from 'vitest';
import { SMALL_FUSES, fuseFor } from '../../src/circuit/small-fuse.js';

it.each([
  // 617 Series, Littelfuse, revised 06/18/15, nominal cold resistance.
  [0.5, 0.2065],
  [1, 0.0964],
  [3.15, 0.0224],
  [6.3, 0.0095],
  // S500 Series, Cooper Bussmann, typical DC cold resistance.
  [0.5, 0.27],
  [1, 0.13],
  [3.15, 0.026],
  [6.3, 0.01],
])('a fuse of %d A has %d Ω among others', (amps, ohms) => {
  const fuse = SMALL_FUSES.find((f) => f.amps === amps)!;
  expect(fuse.ohms.min).toBeLessThanOrEqual(ohms);
  expect(fuse.ohms.max).toBeGreaterThanOrEqual(ohms);
});

it.each([
  // 75 % of the rating at 25 °C (Fuseology application guide, Littelfuse).
  [0.375, 0.5],
  [0.376, 0.63],
  [1.5, 2],
  [4.725, 6.3],
  [4.8, undefined],
])('%d A want a fuse of %s A', (amps, rating) => {
  expect(fuseFor(amps)?.amps).toBe(rating);
});
