import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endOfLifeShare } from '../../src/circuit/coupler.js';

describe('what is left of a transfer ratio at the end of life', () => {
  test.each([
    ['at the stated current', 5e-3, 0.5],
    ['above it', 20e-3, 0.5],
    ['at a tenth of it', 0.5e-3, 0.85],
    ['below a tenth of it', 1e-6, 0.85],
    ['halfway between on a logarithmic scale', 5e-3 / Math.sqrt(10), 0.675],
    ['at half of it', 2.5e-3, 0.85 - 0.35 * (1 + Math.log10(0.5))],
  ])('%s', (_, current, share) => {
    expect(endOfLifeShare(current, 5e-3)).toBeCloseTo(share, 12);
  });

  test('never rises with the current, and does not jump', () => {
    const exponent = fc.double({ min: -6, max: -1, noNaN: true });
    fc.assert(
      fc.property(exponent, (e) => {
        const here = endOfLifeShare(10 ** e, 5e-3);
        const further = endOfLifeShare(10 ** e * 1.001, 5e-3);
        expect(further).toBeLessThanOrEqual(here);
        expect(here - further).toBeLessThan(2e-4);
      }),
    );
  });
});
