/** The simulator itself, on circuits whose sums anybody can do, and on netlists that it reads only in part. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Simulator } from './simulator.js';
import { THERMAL, simulator } from './simulator.js';

let engine: Simulator;
beforeAll(async () => {
  engine = await simulator();
});

describe('the simulator', () => {
  test('divides a voltage, and gives the current out of a source as positive', async () => {
    const point = await engine.solve(['v1 a 0 5', 'v2 a b 0', 'r1 b c 1000', 'r2 c 0 3000']);
    expect(point.volts('c')).toBeCloseTo(3.75, 6);
    expect(point.amps('v2')).toBeCloseTo(1.25e-3, 9);
    expect(point.volts('0')).toBe(0);
  });

  test('solves a diode behind a resistance as its law has it', async () => {
    const point = await engine.solve(['v1 a 0 3', 'v2 a b 0', 'r1 b c 1000', '.model m1 D(IS=1e-14 N=1)', 'd1 c 0 m1']);
    const amps = point.amps('v2');
    expect(THERMAL * Math.log1p(amps / 1e-14)).toBeCloseTo(point.volts('c'), 5);
    expect(1000 * amps + point.volts('c')).toBeCloseTo(3, 5);
  });

  test('solves an LED whose saturation current is far below what it takes for the least', async () => {
    const point = await engine.solve([
      'v1 a 0 5',
      'v2 a b 0',
      'r1 b c 100',
      '.model m1 D(IS=1e-60 N=1 RS=10)',
      'd1 c 0 m1',
    ]);
    const amps = point.amps('v2');
    expect(THERMAL * (Math.log(amps) + 60 * Math.LN10) + 110 * amps).toBeCloseTo(5, 4);
  });

  test.each([
    ['an element without a value', 'r2 b 0'],
    ['an element of an unknown kind', '? b 0 5'],
    ['a value that is none', 'r2 b 0 five'],
    ['a diode of an unknown model', 'd1 b 0 nobody'],
    ['a current without a value', 'i1 b 0 NaN'],
    ['two sources that disagree', 'v2 a 0 4'],
  ])('does not pass over %s', async (_, line) => {
    await expect(engine.solve(['v1 a 0 5', 'r1 a b 1000', 'r3 b 0 1000', line])).rejects.toThrow(/simulator/);
    const again = await engine.solve(['v1 a 0 5', 'r1 a b 1000', 'r2 b 0 1000']);
    expect(again.volts('b')).toBeCloseTo(2.5, 6);
  });
});
