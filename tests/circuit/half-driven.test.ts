import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { branchFlow } from '../../src/circuit/branch.js';
import { keptAt, mostHeat } from '../../src/circuit/half-driven.js';
import { fitJunction } from '../../src/circuit/junction.js';

/** 100 Ω on 12 V behind a transistor of 0.2 V: 118 mA. */
const asked = { whole: 12, kept: 0.2, amps: 0.118 };

describe('a transistor that cannot carry its load’s current', () => {
  test('keeps what the load leaves at the current it can carry: 6 V at 60 mA', () => {
    expect(keptAt(asked, 0.06)).toBeCloseTo(6, 12);
    expect(keptAt(asked, 0.118)).toBe(0.2);
    expect(keptAt(asked, 1)).toBe(0.2);
    expect(keptAt(asked, 0)).toBe(12);
  });

  test('is hottest where it keeps half of the supply: U²/4R, 360 mW', () => {
    expect(mostHeat(asked, 12)).toBeCloseTo(144 / 400, 12);
    expect(mostHeat(asked, 6)).toBeCloseTo(0.36, 12);
    expect(mostHeat(asked, 2)).toBeCloseTo(2 * 0.1, 12);
    expect(mostHeat(asked, 0.2)).toBeCloseTo(0.2 * 0.118, 12);
  });

  test('is no hotter anywhere between, and as hot somewhere', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (upTo, share) => {
          const volts = 0.2 + share * (upTo - 0.2);
          const watts = (volts * (12 - volts)) / 100;
          expect(watts).toBeLessThanOrEqual(mostHeat(asked, upTo) + 1e-12);
        },
      ),
    );
  });

  test('is no hotter with an LED in the way, which carries less at every voltage', () => {
    const led = fitJunction([{ current: 0.02, voltage: 3.2 }]);
    const branch = { resistance: 100, drop: 0, junctions: [led] };
    const full = { whole: 12, kept: 0.2, amps: branchFlow(branch, 11.8).current };
    for (let volts = 0.2; volts < 12; volts += 0.1)
      expect(volts * branchFlow(branch, 12 - volts).current).toBeLessThanOrEqual(mostHeat(full, volts) + 1e-12);
  });
});
