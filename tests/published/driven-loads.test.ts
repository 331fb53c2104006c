/** Arrays, couplers and bridges in whole projects, against published worked examples and rows of data sheets. */
import { describe, expect, test } from 'vitest';
import type { Account } from '../../src/ledger/account.js';
import { judged } from '../checks/judged.js';

/** The account of a project by id and quantity. */
function account(text: string, id: string, quantity = 'current', direction?: string): Account {
  const found = judged(text).ledger.accounts.find(
    (a) => a.id === id && a.quantity === quantity && (direction === undefined || a.direction === direction),
  );
  if (found === undefined) throw new Error(`no account ${id}`);
  return found;
}

const chip = (ambient: string, supplies: string, arrays: string, loads: readonly string[]): string => `ampledger: 1
title: Published
ambient: ${ambient}
supplies: { bench: { voltage: 5 V, current: 5 A }, ${supplies} }
controllers:
  main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA } }
${arrays}
loads:
${loads.map((l) => `  ${l}`).join('\n')}
`;

const channels = (count: number, ohms: string): string[] =>
  Array.from(
    { length: count },
    (_, k) =>
      `a${k + 1}: { type: resistor, resistance: ${ohms}, power: 50 W, supply: high, driver: { array: sink.${k + 1}, pin: PB${k} } }`,
  );

/**
 * "Checking my calculations", All About Circuits forum, 88868 (ULN2003A in DIP-16, STMicroelectronics): 360 Ω on 12 V, 4 of 7 on,
 * 0.9 V, 70 K/W, 70 °C, 150 °C. It prints 33.3 mA without the drop; 30.83 mA and 111 mW with it, so 77.8 °C, are derived.
 */
describe('four channels of 360 Ω on 12 V at 70 °C', () => {
  const text = chip(
    '70 °C',
    'high: { voltage: 12 V, current: 5 A }',
    // An input of next to nothing, so that the outputs alone are compared.
    'arrays: { sink: { saturation: 0.9 V, input-resistance: 1 MΩ, gain: 1000000, thermal-resistance: 70 K/W, channel-current: 500 mA } }',
    channels(4, '360 Ω'),
  );

  test('carry 30.83 mA each and bring the junction to 77.8 °C', () => {
    expect(1000 * account(text, 'sink.1', 'current', 'at-most').draw!.max).toBeCloseTo(30.83, 2);
    expect(account(text, 'sink.package', 'temperature').draw!.max).toBeCloseTo(77.8, 1);
  });
});

/** P = Σ VOL·I: ULN2803A, Texas Instruments, SLRS049G, p. 12, section 10.2.2; 73 K/W: SLRS027M, p. 4; the answers are derived. */
describe('seven channels of 100 mA at 1.1 V in 50 °C', () => {
  test('bring the junction to 106.2 °C, and six of them to 98.2 °C', () => {
    const at = (count: number): number =>
      account(
        chip(
          '50 °C',
          'high: { voltage: 12 V, current: 5 A }',
          'arrays: { sink: { saturation: 1.1 V, input-resistance: 1 MΩ, gain: 1000000, thermal-resistance: 73 K/W, channel-current: 500 mA } }',
          channels(count, '109 Ω'),
        ),
        'sink.package',
        'temperature',
      ).draw!.max;
    expect(at(7)).toBeCloseTo(106.2, 1);
    expect(at(6)).toBeCloseTo(98.2, 1);
  });
});

/** DRV8803 Quad Low-Side Driver IC, Texas Instruments, SLVSAW5C, recommended operating conditions, SOIC: 1.5 A with one channel on, 0.8 A with four. */
describe('channels that conduct together', () => {
  const text = (count: number, ohms: string): string =>
    chip(
      '25 °C',
      'high: { voltage: 12 V, current: 9 A }',
      'arrays: { sink: { part: open-drain-array-4, common: high } }',
      channels(count, ohms),
    );

  test('may carry 1.5 A alone and 0.8 A each when four conduct', () => {
    const [alone] = account(text(1, '10 Ω'), 'sink.channels').limits;
    expect(alone!.value).toBe(1.5);
    const [four] = account(text(4, '14 Ω'), 'sink.channels').limits;
    expect(four!.value).toBe(0.8);
    expect(four!.left).toBeLessThan(0);
    // Between the two rows that of four holds.
    expect(account(text(2, '14 Ω'), 'sink.channels').limits[0]!.value).toBe(0.8);
  });
});

const coupled = (series: string, drop: string, ratio: string, load: string, volts: string): string =>
  chip('25 °C', `high: { voltage: ${volts}, current: 1 A }`, '', [
    `a: { type: resistor, resistance: ${load}, power: 5 W, supply: high, driver: { type: opto, pin: PB1, series: ${series}, led-drop: ${drop}, transfer-ratio: ${ratio}, saturation: 0 V, led-maximum-current: 60 mA, maximum-current: 50 mA, maximum-voltage: 50 V } }`,
  ]);

/** A question about TLP621-4 in the collection Nemotron-CC-Math: 5 mA through 760 Ω, 6 mA at a ratio of 120 %. The pin's 25 Ω are taken off. */
test('a coupler of 120 % passes on 6 mA of 5 mA', () => {
  const text = coupled('735 Ω', '{ value: 1.2 V, at: 5 mA }', '120 %', '1 kΩ', '5 V');
  expect(1000 * account(text, 'a.input').draw!.max).toBeCloseTo(5, 6);
  expect(1000 * account(text, 'a.driver', 'current', 'at-least').draw!.max).toBeCloseTo(6, 6);
});

/**
 * Answer about the input resistors of an FOD053L, electronics question 83725: 15 % of 22 mA hold down 1 kΩ on 3.3 V. The LED
 * has 1.7 V and is fed from 5 V here, by 150 Ω with the pin.
 */
test('a coupler of 15 % needs 22 mA to hold down 1 kΩ on 3.3 V', () => {
  const at = (series: string) =>
    account(coupled(series, '{ value: 1.7 V, at: 22 mA }', '15 %', '1 kΩ', '3.3 V'), 'a.driver', 'current', 'at-least');
  expect(at('120 Ω').limits[0]!.left).toBeGreaterThan(0);
  expect(at('130 Ω').limits[0]!.left).toBeLessThan(0);
});

/** Common practice, no source: half of the ratio is left at the end of life at the current at which it is stated. */
test('an old coupler passes on half', () => {
  const text = coupled('735 Ω', '{ value: 1.2 V, at: 5 mA }', '{ value: 120 %, at: 5 mA }', '1 kΩ', '5 V');
  const [, aged] = account(text, 'a.driver', 'current', 'at-least').limits;
  expect(1000 * aged!.value).toBeCloseTo(10, 6);
});

/** DRV8870, Texas Instruments, electrical characteristics: 307 and 258 mΩ typically. The heat is derived: 1 A² · 565 mΩ. */
test('a bridge of 565 mΩ keeps 565 mW at 1 A, typically', () => {
  const text = chip('25 °C', 'high: { voltage: 12 V, current: 5 A }', '', [
    'a: { type: dc-motor, supply: high, run: 1 A, stall: 2 A, driver: { part: h-bridge-3a6, pins: [PB1, PB2] } }',
  ]);
  expect(account(text, 'a.driver', 'temperature').draw!.typ).toBeCloseTo(25 + 41.1 * 0.565, 6);
  // Its inputs take 33 µA at 3.3 V, as 100 kΩ to ground do: 50 µA at 5 V, less what the pin's own 25 Ω keep.
  expect(1e6 * account(text, 'main.PB1', 'current', 'source').draw!.typ).toBeCloseTo((33 * 5) / 3.3, 1);
});

/**
 * STMicroelectronics, A5973D data sheet, p. 26, equations 25 to 27: 2 A at 12 V for 0.3 of the time through 0.4 Ω, edges of 70 ns
 * on average, 250 kHz: 0.48 W while it conducts and 0.42 W while it switches, which with 30 mW of the chip's own are 0.93 W; at
 * 42 K/W over 70 °C a junction of 110 °C. Its 0.4 Ω are those of
 * a hot switch. Here a MOSFET, whose gate takes ln 9 · 100 Ω · 1.593 nC / 5 V = 70 ns for an edge.
 */
describe('a switch of 0.4 Ω that pulses 2 A at 12 V with 250 kHz', () => {
  const heat = account(
    chip('70 °C', 'high: { voltage: 12 V, current: 5 A }', '', [
      'a: { type: resistor, resistance: 5.6 Ω, power: 50 W, supply: high, driver: { type: nmos, pin: PB1, threshold: 1 V, on-resistance: { value: 0.4 Ω, at: 4.5 V }, hot-ratio: { value: 1, at: 150 °C }, gate-resistor: 75 Ω, gate-charge: 1.593 nC, thermal-resistance: 42 K/W, maximum-current: 5 A, maximum-voltage: 30 V }, pwm: { frequency: 250 kHz, duty: 30 % } }',
    ]),
    'a.driver',
    'temperature',
  );
  const [conducts, switches] = ['P_mean', 'P_switch'].map(
    (name) => heat.steps().find((s) => s.name === name)!.gives[0],
  );

  test('turns 0.48 W to heat while it conducts, and 0.42 W while it switches', () => {
    expect(conducts).toBeCloseTo(0.48, 9);
    expect(switches).toBeCloseTo(0.42, 4);
  });

  test('comes to 110 °C with the 30 mW besides that are no switch’s', () => {
    expect(heat.draw!.max + 42 * 0.03).toBeCloseTo(70 + 42 * 0.93, 2);
  });
});
