/** LEDs in strings and side by side. */
import { describe, expect, it } from 'vitest';
import { besideOthers, junctionCurrent } from '../../src/circuit/side-by-side.js';
import { fitJunction, junctionVoltage, thermalVoltage } from '../../src/circuit/junction.js';
import { says } from '../../src/wording/sentences.js';
import { onChip, onSupplies } from '../checks/cases/case.js';
import { findingsOf, judged } from '../checks/judged.js';
import { accountsOf } from './read-account.js';

const text = (more: string, volts = '5 V', forward = '2 V'): string =>
  onSupplies(
    `bench: { voltage: ${volts}, current: 5 A }`,
    `a: { type: led, forward-voltage: { value: ${forward}, at: 20 mA }, maximum-current: 30 mA, supply: bench, ${more} }`,
  );
const typical = (more: string, volts?: string): number => accountsOf(text(more, volts))('bench', 'at-most').draw!.typ;

describe('a string', () => {
  it('adds its drops: three of 2 V leave 3 V of 9 V, and 150 Ω pass 20 mA', () => {
    expect(typical('in-series: 3, series: 150 Ω', '9 V')).toBeCloseTo(0.02, 9);
    expect(typical('in-series: 1, series: 350 Ω', '9 V')).toBeCloseTo(0.02, 9);
  });

  it('that its supply cannot light says so', () => {
    const [finding] = findingsOf(text('in-series: 3, series: 100 Ω'), 'load-needs');
    expect(finding?.verdict).toBe('breach');
    expect(says(finding!)).toContain('its drops add up to more than there is');
  });

  it('is held to what it needs where the file says so', () => {
    expect(findingsOf(text('in-series: 2, series: 50 Ω, needs: 25 mA'), 'load-needs').map((f) => f.verdict)).toEqual([
      'breach',
    ]);
    expect(findingsOf(text('in-series: 2, series: 50 Ω, needs: 15 mA'), 'load-needs')).toEqual([]);
  });
});

describe('LEDs side by side on one resistor', () => {
  it('carry together what one resistor passes, and share it while they are alike', () => {
    expect(typical('in-parallel: 2, series: 75 Ω')).toBeCloseTo(0.04, 6);
    expect(accountsOf(text('in-parallel: 2, series: 75 Ω'))('a', 'at-most').draw!.typ).toBeCloseTo(0.02, 6);
  });

  /**
   * Two ideal junctions of ideality 2 whose voltages differ by d at the same current share as e^(d / 2·VT) to 1: 0.1 V at
   * 25 °C is a factor of 7, so that one takes 87.5 % (arithmetic from the junction law, no source).
   */
  it('part as their forward voltages do: 0.1 V between two are 7 to 1', () => {
    const low = fitJunction([{ current: 0.02, voltage: 1.9 }]);
    const high = fitJunction([{ current: 0.02, voltage: 2.0 }]);
    const { amps, total } = besideOthers(5, 75, { ...low, series: 0 }, { ...high, series: 0 }, 1);
    const factor = Math.exp(0.1 / (2 * thermalVoltage(25)));
    expect(factor).toBeCloseTo(7, 1);
    expect(amps / (total - amps)).toBeCloseTo(factor, 2);
  });

  it('may leave nearly all to one: of 40 mA one of four takes far more than its tenth', () => {
    const many = accountsOf(text('in-parallel: 4, series: 75 Ω', '5 V', '1.8 to 2.2 V'))('a', 'at-most').draw!;
    expect(many.typ).toBeCloseTo(0.01, 3);
    expect(many.max).toBeGreaterThan(0.03);
    const [finding] = findingsOf(text('in-parallel: 4, series: 75 Ω', '5 V', '1.8 to 2.2 V'), 'leds-share-resistor');
    expect(says(finding!)).toMatch(
      /^The 4 LEDs of a .*one of them may take 4\d\.\d mA where a typical one takes 10\.\d mA/,
    );
  });

  it('have sums that come out', () => {
    const account = accountsOf(text('in-parallel: 3, series: 75 Ω', '5 V', '1.9 to 2.1 V'))('a', 'at-most');
    const last = account.steps().at(-1)!;
    const [all, n, other] = ['I_all', 'n', 'I_other'].map((name) => last.with[name]![0]) as [number, number, number];
    expect(all - n * other).toBeCloseTo(last.gives[0], 12);
    expect(last.gives[0]).toBeCloseTo(account.draw!.max, 12);
  });

  it('without a resistor are limited by nothing', () => {
    expect(judged(text('in-parallel: 2')).findings.map((f) => f.rule)).toContain('nothing-limits');
  });
});

describe('the current of a junction at a voltage', () => {
  it('is the inverse of its voltage at a current', () => {
    const junction = fitJunction([
      { current: 0.002, voltage: 1.8 },
      { current: 0.02, voltage: 2.0 },
    ]);
    for (const amps of [1e-9, 1e-6, 1e-3, 0.02, 0.5])
      expect(junctionCurrent(junction, junctionVoltage(junction, amps)) / amps).toBeCloseTo(1, 9);
    expect(junctionCurrent(junction, 0)).toBe(0);
    expect(junctionCurrent(junction, -1)).toBe(0);
  });
});

describe('an LED in pulses', () => {
  /** 20 mA while it is on: 3 V over 125 Ω and a pin of 25 Ω. It bears 10 mA for ever, 20 mA in 100 µs for half of the time. */
  const pulsed = (frequency: string, duty = '50 %'): string =>
    onChip(
      `a: { type: led, forward-voltage: { value: 2 V, at: 20 mA }, maximum-current: 10 mA, peak-current: 20.01 mA, peak-width: 100 µs, peak-duty: 50 %, pin: PB1, series: 125 Ω, pwm: { frequency: ${frequency}, duty: ${duty} } }`,
      { policy: 'classroom' },
    );
  const found = (text: string) => findingsOf(text, 'load-current').map((f) => [f.verdict, f.runaway ?? false]);

  it('is held to its peak rating while that holds, and should firmware end no pulse to what it bears for ever', () => {
    expect(found(pulsed('5 kHz'))).toEqual([['note', true]]);
    expect(found(pulsed('4.9 kHz'))).toEqual([
      ['strain', false],
      ['note', true],
    ]);
    expect(found(pulsed('50 kHz', '60 %'))[0]).toEqual(['breach', false]);
  });
});
