/** Starts, bursts and pulses of several loads on one supply, each with its sum by hand. */
import { describe, expect, it } from 'vitest';
import { onChip, onSupplies } from '../checks/cases/case.js';
import { findingsOf, judged } from '../checks/judged.js';
import { accountsOf } from './read-account.js';

const wire = (to: string): string => `wires: [{ from: bench, to: [${to}], resistance: 1 mΩ, rating: 1.5 A, name: w }]`;
const most = (text: string, id: string, quantity = 'current'): number =>
  accountsOf(text)(id, 'at-most', quantity).draw!.max;

describe('two motors that start together', () => {
  const motor = (stall: string, time: string): string =>
    `type: dc-motor, run: 200 mA, stall: ${stall}, stall-time: ${time}, supply: bench`;
  const text = onSupplies(
    'bench: { voltage: 12 V, current: 10 A }',
    `a: { ${motor('1 A', '300 ms')} }\nb: { ${motor('2 A', '100 ms')} }`,
    { more: wire('a, b') },
  );

  it('ask their supply for both stalls, and heat their wire with both root mean squares', () => {
    expect(most(text, 'bench')).toBeCloseTo(3, 9);
    // √(1² · 0.3 + 0.2² · 0.7) + √(2² · 0.1 + 0.2² · 0.9): as much as they ever come to, whenever each starts.
    expect(most(text, 'w')).toBeCloseTo(Math.sqrt(0.3 + 0.04 * 0.7) + Math.sqrt(4 * 0.1 + 0.04 * 0.9), 9);
  });
});

describe('two servos on a regulator, of which one may stall for over a second', () => {
  const servo = (time: string, pin: string): string =>
    `type: servo, idle: 8 mA, run: 200 mA, stall: 700 mA, stall-time: ${time}, pin: ${pin}, supply: reg`;
  const text = onChip(`a: { ${servo('1 s', 'PB1')} }\nb: { ${servo('1.2 s', 'PB2')} }`).replace(
    'supplies: { ',
    'supplies: { high: { voltage: 7 V, current: 5 A }, reg: { from: high, type: linear-regulator, voltage: 5 V, current: 2 A, dropout: 1 V, quiescent: 0 mA, thermal-resistance: 10 K/W, maximum-junction: 125 °C }, ',
  );

  it('take 1.4 A in all, and heat it with 0.2 A and 0.7 A', () => {
    expect(most(text, 'reg')).toBeCloseTo(1.4, 9);
    // 25 °C + 10 K/W · 2 V · 0.9 A.
    expect(most(text, 'reg', 'temperature')).toBeCloseTo(43, 9);
  });
});

describe('a radio that sends while a relay is on', () => {
  /** 1 Ω in the supply; a coil of 50 Ω and next to nothing in its driver. */
  const text = onChip(
    `k: { type: coil, voltage: 5 V, resistance: 50 Ω, supply: soft, driver: { type: nmos, threshold: 1 V, on-resistance: { value: 1 mΩ, at: 4.5 V }, maximum-current: 1 A, maximum-voltage: 30 V, pin: PB1, pull-down: 100 kΩ }, clamp: { part: diode-1n4148 } }
     w: { type: module, active: 20 mA, idle: 1 mA, peak: 300 mA, peak-time: 5 ms, peak-every: 100 ms, supply: soft, supply-voltage: 3 to 5.5 V, maximum-dip: 0.2 V }`,
    {
      ambient: '20 °C',
      more: 'modes: { both: { active: [k, w], share: 10 % }, radio: { active: [w], share: 20 % }, sleep: { active: [], share: 70 % } }',
    },
  ).replace('supplies: { ', 'supplies: { soft: { voltage: 5 V, current: 5 A, resistance: 1 Ω }, ');

  it('leaves itself (5 V − 0.3 V) · 50 / 51, and dips by 280 mA · 1 Ω where the coil is off', () => {
    expect(accountsOf(text)('w', 'at-least', 'voltage').draw!.min).toBeCloseTo((4.7 * 50.001) / 51.001, 9);
    expect(most(text, 'w.input', 'voltage')).toBeCloseTo(0.28, 9);
    expect(most(text, 'soft')).toBeCloseTo(0.3 + 4.7 / 51.001, 9);
  });

  it('counts on average with its bursts, a twentieth of the time', () => {
    const sends = 0.02 + 0.05 * 0.28;
    const mean = 0.1 * ((5 - 0.02) / 51.001 + sends) + 0.2 * sends + 0.7 * 0.001;
    expect(judged(text).ledger.energy.find((e) => e.supply === 'soft')!.amps).toBeCloseTo(mean, 5);
  });
});

it('bursts come as often as they may: every 50 to 100 ms, 10 ms of 300 mA are √(0.3² · 0.2 + 0.02² · 0.8)', () => {
  const text = onSupplies(
    'bench: { voltage: 12 V, current: 10 A }',
    'a: { type: module, active: 20 mA, peak: 300 mA, peak-time: 10 ms, peak-every: 50 to 100 ms, supply: bench }',
    { more: wire('a') },
  );
  expect(most(text, 'w')).toBeCloseTo(Math.sqrt(0.09 * 0.2 + 0.0004 * 0.8), 9);
});

it('of two that firmware keeps apart and pulses, a wire carries √0.5 · 1 A, and 2 A when it hangs', () => {
  const heater = (pin: string): string =>
    `{ type: resistor, resistance: 12 Ω, power: 50 W, supply: bench, driver: { type: nmos, threshold: 1 V, on-resistance: { value: 1 mΩ, at: 4.5 V }, maximum-current: 10 A, maximum-voltage: 30 V, pin: ${pin}, gate-resistor: 100 Ω, pull-down: 100 kΩ, thermal-resistance: 50 K/W }, pwm: { frequency: 1 kHz, duty: 50 % } }`;
  const text = onChip(`a: ${heater('PB1')}\nb: ${heater('PB2')}`, {
    more: `interlocks: [{ at-most: 1, of: [a, b], by: firmware }]\n${wire('a, b')}`,
  })
    .replace(
      'supplies: { bench: { voltage: 5 V',
      'supplies: { five: { voltage: 5 V, current: 1 A }, bench: { voltage: 12 V',
    )
    .replace('chip: atmega328p, supply: bench', 'chip: atmega328p, supply: five');
  expect(most(text, 'w')).toBeCloseTo(Math.SQRT1_2, 3);
  const [finding] = findingsOf(text, 'wire-current');
  expect([finding?.verdict, finding?.runaway]).toEqual(['note', true]);
  expect(finding?.account?.draw?.max).toBeCloseTo(2, 2);
});
