import { describe, expect, it } from 'vitest';
import { against, figure, given, governing, inHand, percent, span, worstOf } from '../../src/reports/figures.js';
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

describe('the limit that a margin speaks of', () => {
  it('is the one whose own margin it is, in each direction and for temperatures', () => {
    expect(governing(account('main.D6'), 40)?.grade).toBe('absolute');
    expect(governing({ ...account('main.D6'), margin: -1.6329 }, 40)?.grade).toBe('characterised');
    const heat = account('main.regulator-5v');
    const limits = [{ value: 150, stated: '150 °C', grade: 'operating' as const }, ...heat.limits];
    expect(governing({ ...heat, limits }, 40)?.value).toBe(125);
    expect(governing({ ...heat, limits, margin: 59 / 110 }, 40)?.value).toBe(150);
  });

  it('is held against the least for what must at least be reached', () => {
    expect(worstOf(account('valve.coil'))).toBe(3.61);
    expect(worstOf(account('main.D6'))).toBe(0.052658);
    expect(against('3.61 V', 3.769, account('valve.coil'))).toBe('3.61 V where 3.77 V is needed');
    expect(against('52.7 mA', 0.04, account('main.D6'))).toBe('52.7 mA of 40 mA');
  });
});
