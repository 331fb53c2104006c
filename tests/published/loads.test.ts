/** Lamps, motors, steppers, solid-state relays, buzzers, pixels and displays against what their makers and others have published. */
import { describe, expect, test } from 'vitest';
import { branchCurrent } from '../../src/circuit/branch.js';
import { onChip, onSupplies } from '../checks/cases/case.js';
import { accountsOf, asked } from '../loads/read-account.js';

const on = (volts: string, load: string, ambient = '20 °C'): string =>
  onSupplies(`bench: { voltage: ${volts}, current: 90 A }`, `a: { ${load}, supply: bench }`, { ambient });

describe('filament lamps', () => {
  /**
   * "Lamp rerating" (after Welch Allyn, "Miniature halogen lamps; lamp electrical characteristics", 2007, and Fink and Beaty,
   * "Standard Handbook for Electrical Engineers", 11th edition, p. 22-8): current as V^0.55, power as V^1.6.
   */
  test.each([0.8, 0.9, 1.1, 1.2])('at %f of the design voltage: current as V^0.55, power about as V^1.6', (share) => {
    const lamp = { resistance: 0, drop: 0, junctions: [], filament: { volts: 12, amps: 1 } };
    const amps = branchCurrent(lamp, 12 * share);
    expect(amps).toBeCloseTo(share ** 0.55, 12);
    expect((amps * share) / share ** 1.6).toBeCloseTo(1, 1);
  });

  /** "Cautions for use of solid-state relays", Panasonic, ASCTB400E, 2020, p. 16: 10 to 15 times, for about a third of a second. */
  test('take 10 to 15 times their current when they are switched on', () => {
    const amps = asked(on('12 V', 'type: lamp, voltage: 12 V, power: 6 W'));
    expect(amps / 0.5).toBeGreaterThanOrEqual(10);
    expect(amps / 0.5).toBeLessThanOrEqual(15 * (1 + 1e-9));
  });
});

describe('motors', () => {
  /** Motor stall current measurement, Industrial Monitor Direct: 3.9 A at 8.7 V; at 24 V it would be 10.8 A. */
  test('stall with a current in proportion to the voltage', () => {
    expect(asked(on('24 V', 'type: dc-motor, voltage: 8.7 V, run: 1 A, stall: 3.9 A'))).toBeCloseTo(10.8, 1);
  });

  /** "Stepper Motor Specifications", Mosaic Industries, motor 42BYG228: 12 V, 400 mA, 30 Ω a phase. */
  test('of the stepping kind take their rated voltage over the resistance of a phase', () => {
    const motor = 'type: stepper, voltage: 12 V, winding-resistance: 30 Ω, phases-on: 1';
    expect(asked(on('12 V', motor))).toBeCloseTo(0.4, 9);
  });
});

describe('inputs of solid-state relays', () => {
  /** DUAL Series, Crydom, input specifications: 13 mA at 5 V, through 300 or 240 Ω; sure to turn on at 4.0 V. */
  test('with a resistor: 13 mA at 5 V', () => {
    const { min, max } = accountsOf(on('5 V', 'part: ssr-4-15v-25a', '25 °C'))('bench', 'at-most').draw!;
    expect(min).toBeLessThan(0.013);
    expect(max).toBeGreaterThan(0.013);
    expect(max).toBeLessThan(0.018);
  });

  /** Series 1, Crydom, input specifications: sure to turn on at 3.0 V, 3.4 to 20 mA from there to 32 V, nominally 1500 Ω. */
  test('with a wide input: 3.4 mA at 3.0 V, which are enough, and no less than 20 mA at 32 V', () => {
    const account = accountsOf(on('3.0 V', 'part: ssr-3-32v-10a'));
    expect(account('bench', 'at-most').draw!.max).toBeCloseTo(0.0034, 4);
    expect(accountsOf(on('32 V', 'part: ssr-3-32v-10a'))('bench', 'at-most').draw!.min).toBeCloseTo(0.02, 4);
    expect(account('a.input', 'at-least', 'voltage').limits[0]!.left).toBeCloseTo(0, 9);
  });
});

describe('buzzers', () => {
  /** Magnetic buzzer CD-1206, CUI, 2006, p. 1: 47 ± 7 Ω, at most 40 mA on average of a square wave of 5 V that is high half of the time. */
  test('take no less at rest than twice their mean current of half a wave', () => {
    const { min, max } = accountsOf(on('5 V', 'part: buzzer-magnetic-5v-47r'))('bench', 'at-most').draw!;
    expect(min).toBeCloseTo(5 / 54, 9);
    expect(max).toBeCloseTo(5 / 40, 9);
    expect(min).toBeGreaterThan(2 * 0.04);
  });
});

describe('pixels', () => {
  const strip = (count: number) =>
    accountsOf(on('5 V', `part: pixels-ws2812b, count: ${count}`))('bench', 'at-most').draw!;

  /** "Power consumption estimates", Accessible Pixel, 2018: 16 pixels at full white, 660 mA. */
  test('of a strip of 16 take 660 mA at full white', () => {
    expect(strip(16).min).toBeLessThan(0.66);
    expect(strip(16).max).toBeGreaterThan(0.66);
    expect(strip(16).typ).toBeCloseTo(0.66, 2);
  });

  /** "How much current do WS2812 pixels really use", PJRC: 33.5 and 52.5 mA of two makes. */
  test.each([0.0335, 0.0525])('of two makes take %f A', (amps) => {
    expect(strip(1).min).toBeLessThan(amps);
    expect(strip(1).max).toBeGreaterThan(amps);
  });

  /** "Ws2812b leds current consumption", disk91, 2014: 1 mA and R/16 + G/16 + B/16 mA, so that a third of white is 17 mA. */
  test('take their dark current and a share of their white one', () => {
    const third = on('5 V', 'type: pixels, count: 1, idle-each: 1 mA, full-each: 49 mA, brightness: 33.333 %');
    expect(asked(third)).toBeCloseTo(1e-3 + 0.048 / 3, 5);
  });
});

describe('charlieplexed displays', () => {
  /** "Charlieplexing", table of pins and LEDs (liquisearch.com): 5 pins light 20 LEDs, n pins n·n - n. */
  test('of five pins light each of twenty LEDs a twentieth of the time', () => {
    const text = onChip(
      'a: { type: display, forward-voltage: { value: 2 V, at: 10 mA }, maximum-current: 2 mA, series: 130 Ω, charlieplexed-pins: [PD0..PD4] }',
    );
    expect(accountsOf(text)('a.led', 'at-most').limits[0]!.value).toBeCloseTo(20 * 0.002, 9);
  });
});

describe('multiplexed displays', () => {
  /** AS1115 overview, ams, slide 5: with 8 digits, 40 mA while a segment is lit are 5 mA on average. */
  test('of eight digits light a segment an eighth of the time', () => {
    const text = onChip(
      'a: { type: display, common: cathode, forward-voltage: { value: 2 V, at: 10 mA }, maximum-current: 5 mA, series: 270 Ω, segment-pins: [PD0..PD7], digit-pins: [PB0..PB5, PC0, PC1] }',
    );
    expect(accountsOf(text)('a.single-1.segment', 'at-most').limits[0]!.value).toBeCloseTo(0.04, 9);
  });
});
