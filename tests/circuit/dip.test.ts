import { describe, expect, it } from 'vitest';
import { capacitorDip, sourceShare } from '../../src/circuit/dip.js';

describe('what a source gives of a peak', () => {
  it('is 63 % after one time constant and 95 % after three', () => {
    expect(sourceShare(1e-3, 1, 1e-3)).toBeCloseTo(0.632, 3);
    expect(sourceShare(3e-3, 1, 1e-3)).toBeCloseTo(0.95, 3);
  });

  it('is all of it where the source has no resistance, or nothing stands beside it', () => {
    expect(sourceShare(1e-3, 0, 1)).toBe(1);
    expect(sourceShare(1e-3, 1, 0)).toBe(1);
    expect(sourceShare(Infinity, 1, 1)).toBe(1);
  });

  it('dips no lower than the capacitor alone would, and as much when the peak is short', () => {
    const dip = (lasts: number): number => 0.5 * 2 * sourceShare(lasts, 2, 470e-6);
    for (const lasts of [1e-6, 1e-4, 1e-3, 1e-2, 1])
      expect(dip(lasts)).toBeLessThanOrEqual(capacitorDip(0.5, lasts, 470e-6));
    expect(dip(1e-6) / capacitorDip(0.5, 1e-6, 470e-6)).toBeCloseTo(1, 2);
  });
});
