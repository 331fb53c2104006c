import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { junctionTemperature, linearLoss } from '../../src/circuit/regulator.js';
import { switcherInput } from '../../src/circuit/switcher.js';

const volts = fc.double({ min: 1, max: 24, noNaN: true });
const amps = fc.double({ min: 0, max: 2, noNaN: true });

test('a linear regulator turns what goes in and does not come out into heat', () => {
  fc.assert(
    fc.property(volts, volts, amps, amps, (input, output, current, own) => {
      const taken = input * (current + own);
      expect(linearLoss(input, output, current, own)).toBeCloseTo(taken - output * current, 9);
    }),
  );
});

test('a part without heat is as warm as its surroundings', () => {
  expect(junctionTemperature(40, 250, 0)).toBe(40);
});

describe('a switching regulator', () => {
  test('takes its output power over its efficiency, and its own current', () => {
    expect(switcherInput(5, 1, 0.9, 12, 0.002)).toBeCloseTo(5 / 10.8 + 0.002, 12);
  });

  test('takes more power than it gives', () => {
    const efficiency = fc.double({ min: 0.5, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(volts, amps, efficiency, volts, (output, current, share, input) => {
        expect(input * switcherInput(output, current, share, input, 0) * share).toBeCloseTo(output * current, 9);
      }),
    );
  });

  test('takes more current from a lower voltage', () => {
    expect(switcherInput(5, 1, 0.9, 6, 0)).toBeCloseTo(2 * switcherInput(5, 1, 0.9, 12, 0), 12);
  });
});
