import { describe, expect, it } from 'vitest';
import { rmsOverSecond } from '../../src/circuit/pulse.js';

describe('the root mean square over the worst second', () => {
  it('of 20 mA for a quarter of the time is 10 mA', () => {
    expect(rmsOverSecond(0, 0.02, 0.25, Infinity)).toBeCloseTo(0.01, 12);
    expect(rmsOverSecond(0, 0.02, 2.5e-3, 10e-3)).toBeCloseTo(0.01, 12);
  });

  it('of a stall of half a second: 0.8 A and 0.18 A come to 0.580 A', () => {
    expect(rmsOverSecond(0.18, 0.8, 0.5)).toBeCloseTo(Math.sqrt((0.64 + 0.0324) / 2), 12);
  });

  it('of a burst that comes every ten seconds is that of the second it falls in', () => {
    expect(rmsOverSecond(0.08, 0.4, 0.01, 10)).toBe(rmsOverSecond(0.08, 0.4, 0.01));
  });

  it('of what lasts a second or longer is the peak itself', () => {
    expect(rmsOverSecond(0.1, 0.9, 3)).toBeCloseTo(0.9, 12);
    expect(rmsOverSecond(0.1, 0.9, 0.5, 0.5)).toBeCloseTo(0.9, 12);
  });
});
