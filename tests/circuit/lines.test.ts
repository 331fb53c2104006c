import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { branchFlow } from '../../src/circuit/branch.js';
import { fitJunction, junctionVoltage } from '../../src/circuit/junction.js';
import { type LinePoint, lineVoltage, withLines } from '../../src/circuit/lines.js';

const point = (amps: number, volts: number): LinePoint => ({ amps, volts });

/** An output that keeps 0.7 V at nothing, 0.9 V at 100 mA, 1.1 V at 200 mA, 1.3 V at 350 mA. */
const SATURATION = [point(0, 0.7), point(0.1, 0.9), point(0.2, 1.1), point(0.35, 1.3)];

describe('a line through points', () => {
  test('meets its points, halves the way between them and goes on as it ended', () => {
    for (const { amps, volts } of SATURATION) expect(lineVoltage(SATURATION, amps)).toBeCloseTo(volts, 12);
    expect(lineVoltage(SATURATION, 0.15)).toBeCloseTo(1, 12);
    expect(lineVoltage(SATURATION, 0.5)).toBeCloseTo(1.5, 12);
  });

  test('of one point is level', () => {
    expect(lineVoltage([point(0, 0.3)], 2)).toBe(0.3);
  });

  test('never falls', () => {
    expect(lineVoltage([point(0, 1), point(0.1, 0.5)], 0.1)).toBeCloseTo(1, 6);
  });
});

describe('a branch with such an output in series', () => {
  const loaded = (ohms: number) => withLines({ resistance: ohms, drop: 0, junctions: [] }, [SATURATION]);

  test('carries what leaves the output its voltage: 100 mA where 12 V less 0.9 V stand across 111 Ω', () => {
    expect(branchFlow(loaded(111), 12).current).toBeCloseTo(0.1, 12);
    expect(branchFlow(loaded(53.5), 12).current).toBeCloseTo((12 - 2.5 / 3) / (53.5 + 4 / 3), 12);
    expect(branchFlow(loaded(10.7 / 0.35), 12).current).toBeCloseTo(0.35, 12);
  });

  test('carries nothing below its foot', () => {
    expect(branchFlow(loaded(100), 0.69)).toEqual({ current: 0, conductance: 0 });
    expect(branchFlow(loaded(100), 0.71).current).toBeCloseTo(0.01 / 102, 12);
  });

  test('answers every voltage with one current, whatever the points, with a junction beside it or not', () => {
    const led = fitJunction([{ current: 0.02, voltage: 2 }]);
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 0.3, noNaN: true }), fc.double({ min: 0.001, max: 1, noNaN: true })),
      {
        minLength: 1,
        maxLength: 4,
      },
    );
    fc.assert(
      fc.property(steps, fc.boolean(), fc.double({ min: -4, max: 0.3, noNaN: true }), (ways, lit, exponent) => {
        let [amps, volts] = [0, 0.2];
        const points = [point(amps, volts)];
        for (const [di, dv] of ways) points.push(point((amps += di), (volts += dv)));
        const branch = withLines({ resistance: 1, drop: 0.1, junctions: lit ? [led] : [] }, [points]);
        const i = 10 ** exponent;
        const across = i + 0.1 + lineVoltage(points, i) + (lit ? junctionVoltage(led, i) : 0);
        expect(branchFlow(branch, across).current / i).toBeCloseTo(1, 9);
      }),
    );
  });

  test('has the slope of the line that it is on', () => {
    const step = 1e-6;
    const branch = loaded(50);
    for (const volts of [3, 8, 14, 25]) {
      const slope = (branchFlow(branch, volts + step).current - branchFlow(branch, volts - step).current) / (2 * step);
      expect(branchFlow(branch, volts).conductance / slope).toBeCloseTo(1, 6);
    }
  });
});
