/** An array's package against what is on together: interlocks and joined channels count. Sums worked by hand. */
import { describe, expect, it } from 'vitest';
import { accountsOf } from './read-account.js';

/** 100, 100 and 200 Ω on 12 V behind channels that keep exactly 1 V: 110, 110 and 55 mA. */
const LOADS = {
  a: '{ type: resistor, resistance: 100 Ω, power: 5 W, supply: brick, driver: { array: CHANNELS, pin: PB1 } }',
  b: '{ type: resistor, resistance: 100 Ω, power: 5 W, supply: brick, driver: { array: sink.3, pin: PB2 } }',
  c: '{ type: resistor, resistance: 200 Ω, power: 5 W, supply: brick, driver: { array: sink.4, pin: PB3 } }',
};
const project = (names: readonly (keyof typeof LOADS)[], more = '', channels = 'sink.1'): string => `
ampledger: 1
title: array
ambient: 25 °C
parts: { sharp: { extends: darlington-array-7, saturation: 1 V, simultaneous-current: [ { value: 500 mA, at: 1 }, { value: 200 mA, at: 3 }, { value: 120 mA, at: 4 } ] } }
supplies: { bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 12 V, current: 5 A } }
controllers: { main: { chip: atmega328p, supply: bench, draws: { active: 10 mA } } }
arrays: { sink: { part: sharp, common: brick } }
loads:
${names.map((name) => `  ${name}: ${LOADS[name].replace('CHANNELS', channels)}`).join('\n')}
${more}`;
const atMost = (of: string, by: string): string => `interlocks: [ { at-most: 1, of: [${of}], by: ${by} } ]`;

const current = (text: string) => accountsOf(text)('sink.package', 'at-most');
const heat = (text: string): number => accountsOf(text)('sink.package', 'at-most', 'temperature').draw!.max;

describe('a package', () => {
  it('carries all channels at once where nothing holds them apart', () => {
    expect(current(project(['a', 'b', 'c'])).draw!.max).toBeCloseTo(0.275, 6);
  });

  it.each(['wiring', 'firmware'])('carries the heaviest alone where one is on at a time, by %s', (by) => {
    const account = current(project(['a', 'b', 'c'], atMost('a, b, c', by)));
    expect(account.draw!.max).toBeCloseTo(0.11, 6);
    expect(account.moment).toHaveLength(1);
  });

  it('carries one of two and the third beside it', () => {
    expect(current(project(['a', 'b', 'c'], atMost('a, b', 'wiring'))).draw!.max).toBeCloseTo(0.165, 6);
  });

  it('is as hot as with those that can be on together alone', () => {
    expect(heat(project(['a', 'b', 'c'], atMost('a, b, c', 'wiring')))).toBeCloseTo(heat(project(['a'])), 3);
    expect(heat(project(['a', 'b', 'c'], atMost('a, b', 'wiring')))).toBeCloseTo(heat(project(['a', 'c'])), 3);
    expect(heat(project(['a', 'b', 'c']))).toBeGreaterThan(heat(project(['a', 'c'])) + 5);
  });
});

describe('joined channels', () => {
  const joined = project(['a', 'b'], '', '[sink.1, sink.2]');

  it('carry one current through the package, and are no hotter for it but at their inputs', () => {
    expect(current(joined).draw!.max).toBeCloseTo(0.22, 6);
    expect(heat(joined) - heat(project(['a', 'b']))).toBeLessThan(2);
  });

  it('are two that conduct: with a third one a row for three channels holds', () => {
    const limit = (text: string): number => accountsOf(text)('sink.channels', 'at-most').limits[0]!.value;
    expect(limit(joined)).toBe(0.2);
    // Of two that are on together the row for three counts, too; of one alone the first.
    expect(limit(project(['a']))).toBe(0.5);
    expect(limit(project(['a', 'b'], atMost('a, b', 'wiring')))).toBe(0.5);
    expect(limit(project(['a', 'b', 'c'], '', '[sink.1, sink.2]'))).toBe(0.12);
  });
});

describe('the clamps of an array', () => {
  /** (12 V − 1 V) / 200 Ω are 55 mA, on which its clamp drops exactly 1 V. */
  const wound = (common: string): string =>
    project(
      [],
      `  w: { type: coil, voltage: 12 V, resistance: 200 Ω, inductance: 200 mH, drop-out: 0.6 V, reference-temperature: 25 °C, supply: brick, driver: { array: sink.1, pin: PB1 } }`,
    )
      .replace('saturation: 1 V,', 'saturation: 1 V, clamp-forward-voltage: { value: 1 V, at: 55 mA },')
      .replace('common: brick', `common: ${common}`)
      .replace('supplies: {', 'supplies: { high: { voltage: 24 V, current: 1 A },');

  it.each([
    // 12 V and 1 V; 0.2 H / 200 Ω · ln((55 mA + 1 V / 200 Ω) / (3 mA + 1 V / 200 Ω)) = 1 ms · ln 7.5
    ['brick', 13, 2.0149],
    // Tied to 24 V it works against 24 − 12 + 1 V: 25 V at the channel, 1 ms · ln(120 / 68).
    ['high', 25, 0.56798],
  ])('tied to %s let a channel rise to %d V, and its coil go in %d ms', (common, volts, milliseconds) => {
    const of = accountsOf(wound(common));
    expect(of('sink.1', 'at-most', 'voltage').draw!.max).toBeCloseTo(volts, 6);
    const release = of('w.clamp', 'at-most')
      .steps()
      .find((s) => s.name === 't_release')!;
    expect(1000 * release.gives[0]).toBeCloseTo(milliseconds, 4);
  });
});
