import { describe, expect, it } from 'vitest';
import {
  against,
  carried,
  figure,
  given,
  governing,
  inHand,
  percent,
  span,
  worstOf,
} from '../../src/reports/figures.js';
import type { ReportAccount } from '../../src/reports/report.js';
import { gardenGate } from './fixtures/garden-gate.js';

const account = (id: string): ReportAccount => {
  const found = gardenGate.accounts.find((each) => each.id === id);
  if (!found) throw new Error(`the fixture has no ${id}`);
  return found;
};

describe('a margin', () => {
  it.each([
    [0.198, '19 %'],
    [0.2, '20 %'],
    [0, '0 %'],
    [-0.004, '−1 %'],
    [-0.768, '−77 %'],
    [0.29, '29 %'],
    [2.5, '250 %'],
    [40, '> 999 %'],
  ])('of %f reads %s: never better than it is', (margin, text) => {
    expect(percent(margin)).toBe(text);
  });

  it('is in hand, over, or short of', () => {
    expect(inHand(0.2, 'source')).toBe('20 % in hand');
    expect(inHand(-0.31, 'source')).toBe('31 % over');
    expect(inHand(-0.042, 'at-least')).toBe('5 % short');
  });
});

describe('a figure', () => {
  it.each([
    [0.0707, 'A', '70.7 mA'],
    [-5, 'V', '−5.00 V'],
    [234.5, '', '234.5'],
    [41.25, '°C', '41.3 °C'],
    [5, '°C', '5 °C'],
    [309.7, '°C', '310 °C'],
    [90, 'K/W', '90.0 K/W'],
    [1.5, 'furlong', '1.5 furlong'],
  ])('%f %s that was worked out reads %s', (value, unit, text) => {
    expect(figure(value, unit)).toBe(text);
  });

  it.each([
    [0.04, 'A', '40 mA'],
    [4.5, 'V', '4.5 V'],
    [100, 'Ω', '100 Ω'],
    [5.25, 'V', '5.25 V'],
    [10_000, 'Ω', '10 kΩ'],
  ])('%f %s that was given reads %s', (value, unit, text) => {
    expect(given(value, unit)).toBe(text);
  });

  it('has a range in one unit', () => {
    expect(span({ min: 0.0352, max: 0.0707 }, 'A')).toBe('35.2 to 70.7 mA');
    expect(span({ min: -10, max: 40.5 }, '°C')).toBe('−10 to 40.5 °C');
  });
});

describe('the limit that gives the verdict', () => {
  it('is the first of them', () => {
    expect(governing(account('main.D6'))?.grade).toBe('absolute');
    expect(governing({ ...account('main.D6'), limits: [] })).toBeUndefined();
  });

  it('is held against the draw at its own corner, which is the end of the draw where it says nothing else', () => {
    expect(worstOf(account('valve.coil'))).toBe(3.61);
    expect(worstOf(account('main.D6'))).toBe(0.052658);
    expect(worstOf(account('main.A1'))).toBe(0.003);
    expect(worstOf({ ...account('valve.coil'), limits: [] })).toBe(3.52);
    expect(worstOf(account('pump.driver'))).toBeUndefined();
    expect(against('3.61 V', 3.769, account('valve.coil'))).toBe('3.61 V where 3.77 V is needed');
    expect(against('52.7 mA', 0.04, account('main.D6'))).toBe('52.7 mA of 40 mA');
  });

  it('is what the range of a draw ends at', () => {
    expect(carried(account('valve.coil'))).toBe('3.61 to 4.71 V');
    expect(carried(account('main.fuse-usb'))).toBe('302 to 398 mA');
    expect(carried(account('pump.driver'))).toBe('not known');
  });
});
