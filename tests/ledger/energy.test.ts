/** What supplies give on average, worked by hand, and that the parts add up. */
import { expect, test } from 'vitest';
import { judge } from '../../src/checks/judge.js';
import { builtIn, read } from '../../src/index.js';
import { judged } from '../checks/judged.js';

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
  const judgement = judge(document!.data, 'means.yaml', { catalogue: builtIn });
  if ('problems' in judgement) throw new Error(JSON.stringify(judgement.problems));
  return judgement.ledger.energy;
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

test('how long a battery lasts is told, whether somebody wants so much of it or not: 3.6 kC over 2.02 mA and 5 % of them in 30 days', () => {
  const told = (more: string, shares: readonly [string, string]) => {
    const text = `ampledger: 1
title: Cell
ambient: 20 °C
supplies: { cell: { voltage: 3 V, current: 1 A, capacity: 1000 mAh, self-discharge: { value: 5 %, at: 30 days }${more} } }
loads:
  radio: { type: constant-current, current: 40 mA, supply: cell, switched: elsewhere }
  rest: { type: constant-current, current: 20 µA, supply: cell }
modes: { awake: { active: [radio]${shares[0]} }, asleep: { active: []${shares[1]} } }
`;
    const { accounts, findings } = judged(text);
    const life = accounts.find((j) => j.account.kind === 'battery' && j.account.quantity === 'time');
    return life && { ...life, names: findings.find((f) => f.rule === 'battery-life')?.names };
  };
  const known = [', share: 5 %', ', share: 95 %'] as const;
  const wanted = told(', wanted-life: 30 days', known)!;
  const lasts = 3600 / (0.00202 + (3600 * 0.05) / (30 * 86_400));
  expect(wanted.account.draw!.min).toBeCloseTo(lasts, 3);
  expect(wanted.verdict).toBe('breach');
  // 2 mA of the 2.02 mA.
  expect(wanted.names).toEqual({ most: 'radio', share: '99 %' });
  const plain = told('', known)!;
  expect(plain.account.draw).toEqual(wanted.account.draw);
  expect(plain.verdict).toBe('sound');
  // Without shares nothing has a mean.
  expect(told('', ['', ''])).toBeUndefined();
});
