/** Charlieplexed displays: what pins, LEDs and resistors carry. Sums worked by hand. */
import { describe, expect, it } from 'vitest';
import { onChip } from '../checks/cases/case.js';
import { findingsOf, judged } from '../checks/judged.js';
import { accountsOf } from './read-account.js';

/** LEDs that drop exactly 2 V at 10 mA; pins of exactly 25 Ω on exactly 5 V. */
const display = (more: string): string =>
  onChip(`a: { type: display, forward-voltage: { value: 2 V, at: 10 mA }, maximum-current: 20 mA, ${more} }`);

describe('LEDs between each two of three pins', () => {
  // 5 V - 2 V over two pins of 25 Ω and two resistors of 125 Ω.
  const text = display('charlieplexed-pins: [PD0..PD2], series: 125 Ω');
  const account = accountsOf(text);

  it('take 3 V over 300 Ω, out of one pin and into another', () => {
    for (const pin of ['PD0', 'PD1', 'PD2'])
      for (const direction of ['source', 'sink'])
        expect(account(`main.${pin}`, direction).draw!.max).toBeCloseTo(0.01, 6);
    expect(account('a.led', 'at-most').draw!.max).toBeCloseTo(0.01, 6);
    expect(account('bench', 'at-most').draw!.max).toBeCloseTo(0.01 + 0.01, 6);
  });

  it('are six, each lit a sixth of the time', () => {
    const [met] = account('a.led', 'at-most').limits;
    expect(met!.value).toBeCloseTo(6 * 0.02, 9);
  });

  it('heat each resistor two thirds of the time: a third as source, a third as sink', () => {
    expect(account('a.series', 'at-most', 'power').draw!.max).toBeCloseTo((2 / 3) * 0.01 ** 2 * 125, 6);
  });

  it('use each pin for one display, and no pin twice', () => {
    expect(findingsOf(text, 'pin-used-twice')).toEqual([]);
  });
});

describe('two of them lit together', () => {
  /** 20 mA leave the pin that is high: 5 V - 20 mA · (25 Ω + 75 Ω) - 2 V leave 1 V for 10 mA through 25 Ω and 75 Ω. */
  const account = accountsOf(display('charlieplexed-pins: [PD0..PD2], series: 75 Ω, lit-together: 2'));

  it('leave one pin and enter two', () => {
    expect(account('main.PD0', 'source').draw!.max).toBeCloseTo(0.02, 6);
    // One of them alone: 3 V over 200 Ω.
    expect(account('main.PD0', 'sink').draw!.max).toBeGreaterThan(0.0145);
    expect(account('main.PD0', 'sink').draw!.max).toBeLessThan(0.015);
  });

  it('are lit a third of the time each', () => {
    expect(account('a.led', 'at-most').limits[0]!.value).toBeCloseTo(3 * 0.02, 9);
  });
});

describe('what a charlieplexed display has to say', () => {
  it.each([
    ['charlieplexed-pins: [PD0]', 'one pin is not enough'],
    ['charlieplexed-pins: [PD0, PD1, PD0]', 'named twice'],
    ['charlieplexed-pins: [PD0, PD1], lit-together: 2', 'at most 1 LEDs lead to the others'],
  ])('%s', (more, says) => {
    expect(() => judged(display(more))).toThrow(says);
  });

  it('is that something but its pins limits its current', () => {
    expect(findingsOf(display('charlieplexed-pins: [PD0..PD2]'), 'nothing-limits')[0]?.verdict).toBe('breach');
  });
});
