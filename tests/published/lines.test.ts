/** Signal lines against what makers and the bus specification publish. */
import { describe, expect, test } from 'vitest';
import type { Account } from '../../src/ledger/account.js';
import { judged } from '../checks/judged.js';

const account = (text: string, id: string, quantity: string, direction: string): Account => {
  const found = judged(text).accounts.find(
    ({ account: a }) => a.id === id && a.quantity === quantity && a.direction === direction,
  );
  if (found === undefined) throw new Error(`no account ${id}, ${quantity}, ${direction}`);
  return found.account;
};

/** A chip on a supply of exactly so many volts, with something at its pins. */
const chip = (name: string, volts: string, more: string): string => `ampledger: 1
title: Published
ambient: 25 °C
policy: classroom
supplies: { bench: { voltage: ${volts}, current: 5 A } }
controllers: { main: { chip: ${name}, supply: bench, draws: { active: 20 mA } } }
${more}`;

const line = (pin: string): string =>
  `incoming: { line: { voltage: 1 V, resistance: 1 kΩ, pin: ${pin}, pull-up: 1 MΩ } }`;
const level = (name: string, volts: string, pin: string, direction: 'at-least' | 'at-most'): number =>
  account(chip(name, volts, line(pin)), 'line', 'voltage', direction).limits[0]!.value;

describe('input levels', () => {
  // Atmel, ATmega48A/PA/88A/PA/168A/PA/328/P data sheet 8271H, 2014, Table 29-1, p. 300: VIL 0.3 VCC and VIH 0.6 VCC from
  // 2.4 to 5.5 V; 0.2 VCC and 0.7 VCC from 1.8 to 2.4 V.
  test.each([
    ['5 V', 1.5, 3.0],
    ['3.3 V', 0.99, 1.98],
    ['2 V', 0.4, 1.4],
  ])('of the ATmega328P at %s', (volts, low, high) => {
    expect(level('atmega328p', volts, 'PB1', 'at-most')).toBeCloseTo(low, 9);
    expect(level('atmega328p', volts, 'PB1', 'at-least')).toBeCloseTo(high, 9);
  });

  // Raspberry Pi Ltd, RP2040 Datasheet, Table 625: VIL 0.8 V and VIH 2.0 V at 3.3 V; 0.7 V and 1.7 V at 2.5 V; 0.35 and 0.65
  // of 1.8 V.
  test.each([
    ['3.3 V', 0.8, 2.0],
    ['2.5 V', 0.7, 1.7],
    ['1.8 V', 0.63, 1.17],
  ])('of the RP2040 at %s', (volts, low, high) => {
    expect(level('rp2040', volts, 'GPIO3', 'at-most')).toBeCloseTo(low, 9);
    expect(level('rp2040', volts, 'GPIO3', 'at-least')).toBeCloseTo(high, 9);
  });

  // Espressif, ESP32 Series Datasheet v4.5, Table 4-3: VIL 0.25 VDD, VIH 0.75 VDD.
  test('of the ESP32 at 3.3 V', () => {
    expect(level('esp32', '3.3 V', 'GPIO4', 'at-most')).toBeCloseTo(0.825, 9);
    expect(level('esp32', '3.3 V', 'GPIO4', 'at-least')).toBeCloseTo(2.475, 9);
  });

  // NXP, 74HC595; 74HCT595 product data sheet, rev. 6, 2011, Table 6: VIH 1.5, 3.15 and 4.2 V at 2, 4.5 and 6 V; VIL 0.5, 1.35
  // and 1.8 V. Between them a straight line: 3.5 V at 5 V, which 3.3 V do not reach.
  test.each([
    ['4.5 V', 1.35, 3.15],
    ['5 V', 1.5, 3.5],
    ['6 V', 1.8, 4.2],
  ])('of the 74HC595 at %s', (volts, low, high) => {
    const text = `ampledger: 1
title: Published
ambient: 25 °C
supplies: { bench: { voltage: ${volts}, current: 1 A }, low: { voltage: 3.3 V, current: 1 A } }
controllers: { main: { chip: esp32, supply: low, draws: { active: 100 mA } } }
expanders: { bar: { chip: 74hc595, supply: bench, control: { data: GPIO4 } } }`;
    expect(account(text, 'bar.data', 'voltage', 'at-most').limits[0]!.value).toBeCloseTo(low, 9);
    expect(account(text, 'bar.data', 'voltage', 'at-least').limits[0]!.value).toBeCloseTo(high, 9);
  });
});

describe('pull-ups of a two-wire bus', () => {
  const bus = (volts: string, pullUp: string, modules = 1): string =>
    chip(
      'atmega328p',
      volts,
      `loads: { ${Array.from({ length: modules }, (_, k) => `m${k}: { type: module, active: 1 mA, supply: bench, pull-up: ${pullUp}, signals: { sda: PC4 } }`).join(', ')} }`,
    );
  const sunk = (text: string): number => account(text, 'main.PC4', 'current', 'at-most').draw!.max;
  const rise = (text: string): number => account(text, 'main.PC4', 'time', 'at-most').draw!.max;

  // Texas Instruments, I2C Bus Pullup Resistor Calculation, SLVA689, 2015, section 4: the least for 3.3 V and 3 mA at 0.4 V is
  // 966.667 Ω. NXP, UM10204, section 7.1, has the same formula: Rp(min) = (VDD − VOL) / IOL.
  test('at the least value of 966.667 Ω and 3.3 V a device carries the 3 mA it is sure of', () => {
    expect(sunk(bus('3.3 V', '966.667 Ω'))).toBeCloseTo(3e-3, 8);
  });

  // The same formula at 5 V: 1533.3 Ω; derived.
  test('at 1533.3 Ω and 5 V it does, too', () => {
    expect(sunk(bus('5 V', '1533.3333 Ω'))).toBeCloseTo(3e-3, 8);
  });

  // Derived: three sets of 2.2 kΩ are 733 Ω.
  test('three modules of 2.2 kΩ at 5 V ask for 6.27 mA', () => {
    expect(sunk(bus('5 V', '2.2 kΩ', 3))).toBeCloseTo(6.27e-3, 5);
  });

  // NXP, UM10204, section 7.1: from 0.3 to 0.7 VDD a line takes 0.8473 R C. SLVA689, section 4: 1.77 kΩ with 200 pF are 300 ns.
  test('a line rises in 0.8473 R C', () => {
    // Two devices of 10 pF and 50 pF of wires.
    expect(rise(bus('3.3 V', '10 kΩ'))).toBeCloseTo(0.8473 * 10e3 * 70e-12, 10);
    expect((rise(bus('3.3 V', '1.77 kΩ')) * 200) / 70).toBeCloseTo(300e-9, 9);
  });
});

describe('dividers and clamps', () => {
  const echo = (parts: string): Account =>
    account(
      chip('rp2040', '3.3 V', `incoming: { echo: { voltage: 5 V, pin: GPIO3, ${parts} } }`),
      'echo',
      'voltage',
      'at-least',
    );

  // The voltage divider of every textbook: V R2 / (R1 + R2); common practice, no source for the pairs.
  test.each([
    ['1.8 kΩ', '3.3 kΩ', 3.2353],
    ['1 kΩ', '2 kΩ', 3.3333],
    ['2.7 kΩ', '4.7 kΩ', 3.1757],
  ])('5 V over %s and %s', (up, down, volts) => {
    const { draw } = echo(`series: ${up}, pull-down: ${down}`);
    expect(draw!.min).toBeCloseTo(volts, 3);
    expect(draw!.max).toBeCloseTo(volts, 3);
  });

  // Microchip, application note on a zero-cross detector that uses the clamping diodes of a pin, section Hardware: the pin is
  // forced down to VCC + 0.5 V. Through 1 MΩ the mains' peak of 325 V leaves about 320 µA (derived).
  test('the mains’ peak over 1 MΩ stands half a volt above the supply and pushes 0.32 mA in', () => {
    const text = chip('atmega328p', '5 V', 'incoming: { mains: { voltage: 325 V, pin: PD2, series: 1 MΩ } }');
    const pushed = account(text, 'main.PD2', 'current', 'injected');
    expect(pushed.draw!.max).toBeCloseTo((325 - 5.5) / 1e6, 6);
    const { draw } = account(text, 'mains', 'voltage', 'at-least');
    expect(draw!.min).toBeGreaterThan(5.4);
    expect(draw!.max).toBeLessThan(5.9);
  });
});
