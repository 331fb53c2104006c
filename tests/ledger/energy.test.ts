/** What supplies give on average, worked by hand, and that the parts add up. */
import { expect, test } from 'vitest';
import { judge } from '../../src/checks/judge.js';
import { builtIn, read } from '../../src/index.js';

const file = `ampledger: 1
title: Means
ambient: 25 °C
supplies:
  brick: { voltage: 12 V, current: 5 A }
  logic: { from: brick, type: linear-regulator, voltage: 5 V, current: 1 A, dropout: 1 V, quiescent: 6 mA, thermal-resistance: 5 K/W }
controllers:
  main: { chip: atmega328p, supply: logic, draws: { active: 10 mA } }
loads:
  heater: { type: resistor, resistance: 12 Ω, power: 50 W, supply: brick, driver: { part: nmos-ao3400a, pin: PB1, pull-down: 1 MΩ }, pwm: { frequency: 1 kHz, duty: 25 % } }
  beacon: { type: module, idle: 1 mA, active: 20 mA, peak: 120 mA, peak-time: 10 ms, peak-every: 1 s, supply: logic, switched: elsewhere }
modes:
  busy: { active: [heater, beacon], share: 40 % }
  still: { active: [], share: 60 % }
`;

const energy = () => {
  const { document } = read(file, 'means.yaml');
  const judged = judge(document!.data, 'means.yaml', { catalogue: builtIn });
  if ('problems' in judged) throw new Error(JSON.stringify(judged.problems));
  return judged.ledger.energy;
};

test('a supply gives the mean over modes, pulses and bursts, and what hangs behind a regulator stands at its input', () => {
  const [brick] = energy();
  const taken = new Map(brick!.takes.map((t) => [t.circuit, t.watts]));
  // 12 V/(12 Ω + 32 mΩ and less) is 1 A: a quarter of it, for two fifths of the time, on 12 V.
  expect(taken.get('heater')).toBeCloseTo(12 * 1 * 0.25 * 0.4, 1);
  // Busy 20 mA and 100 mA more for a hundredth of the time, else 1 mA; all of it at 12 V.
  expect(taken.get('beacon')).toBeCloseTo(12 * (0.4 * (0.02 + 0.001) + 0.6 * 0.001), 6);
  expect(taken.get('main.chip')).toBeCloseTo(12 * 0.01, 6);
  expect(taken.get('logic')).toBeCloseTo(12 * 0.006, 6);
  expect(brick!.watts).toBeCloseTo(
    [...taken.values()].reduce((sum, watts) => sum + watts, 0),
    9,
  );
  expect(brick!.amps * 12).toBeCloseTo(brick!.watts, 9);
});

test('those who take most come first', () => {
  for (const { takes } of energy())
    expect(takes.map((t) => t.watts)).toEqual(takes.map((t) => t.watts).sort((a, b) => b - a));
});
