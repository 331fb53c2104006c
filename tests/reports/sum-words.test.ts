import { describe, expect, it } from 'vitest';
import { symbol } from '../../src/loads/branch-working.js';
import type { ReportAccount, ReportStep } from '../../src/reports/report.js';
import { stepOf, sumWords } from '../../src/reports/sum-words.js';
import { gardenGate } from './fixtures/garden-gate.js';

const step = (formula: string, numbers: ReportStep['with'], gives: ReportStep['gives']): ReportStep => ({
  name: 'I',
  formula,
  with: numbers,
  gives,
});

const find = <T>(list: readonly T[], is: (each: T) => boolean): T => {
  const found = list.find(is);
  if (found === undefined) throw new Error('the fixture has changed');
  return found;
};

/** An account that carries so many milliamperes of each circuit, and the step that adds them up. */
function sum(parts: { readonly [circuit: string]: number }): { account: ReportAccount; step: ReportStep } {
  const entries = Object.entries(parts).map(([circuit, mA]) => ({ circuit, min: 0, typ: 0, max: mA / 1000 }));
  const max = entries.reduce((total, entry) => total + entry.max, 0);
  const names = entries.map(({ circuit }) => symbol('I', circuit));
  return {
    account: {
      ...find(gardenGate.accounts, ({ id }) => id === 'main.fuse-usb'),
      draw: { min: 0, typ: 0.1, max },
      limits: [],
      entries,
    },
    step: step(names.join(' + '), Object.fromEntries(entries.map(({ max }, at) => [names[at], [max, 'A']])), [
      max,
      'A',
    ]),
  };
}

const words = (parts: { readonly [circuit: string]: number }): string => {
  const { account, step } = sum(parts);
  return sumWords(step, account);
};

describe('a sum of currents', () => {
  it('names who contributes, the largest first, equal channels of a load together', () => {
    expect(words({ bell: 10, 'vents.1': 94.1, 'vents.2': 94.1, 'vents.3': 94.1, 'main.board': 41 })).toBe(
      '3 × 94.1 mA (vents.1 to 3) + 41 mA (main.board) + 10 mA (bell) = 333 mA, typically 100 mA',
    );
  });

  it('keeps apart what differs in the third digit, and equal parts of different loads', () => {
    expect(words({ 'vents.1': 94.1, 'vents.2': 94.2, bell: 50, horn: 50 })).toBe(
      '94.2 mA (vents.2) + 94.1 mA (vents.1) + 50 mA (bell) + 50 mA (horn) = 288 mA, typically 100 mA',
    );
  });

  it('tells the largest five of many and the rest in one', () => {
    expect(words({ a: 1, b: 2, c: 3, d: 4, e: 5, f: 6, g: 7 })).toBe(
      '7 mA (g) + 6 mA (f) + 5 mA (e) + 4 mA (d) + 3 mA (c) + 3 mA (2 more) = 28.0 mA, typically 100 mA',
    );
  });

  it('is one of names only where the formula is nothing but a sum', () => {
    const { account } = sum({ a: 1, b: 2 });
    const other = step('(V - V_led) / R', { V: [5, 'V'], V_led: [2, 'V'], R: [1000, 'Ω'] }, [0.003, 'A']);
    expect(sumWords(other, account)).toBe('(5 V − 2 V) / 1 kΩ = 3.00 mA, typically 100 mA');
  });

  it('does not call typical what is typical of another figure, nor what it has just said', () => {
    const { account } = sum({ a: 200 });
    const half = (a: number, gives: ReportStep['gives']) =>
      sumWords(step('a * b', { a: [a, 'A'], b: [0.5, ''] }, gives), account);
    expect(half(0.4, [0.2, 'A'])).toBe('400 mA · 0.5 = 200 mA, typically 100 mA');
    expect(half(0.2, [0.1, 'A'])).toBe('200 mA · 0.5 = 100 mA');
    expect(half(0.4, [0.2, 'W'])).toBe('400 mA · 0.5 = 200 mW');
    const typical = { ...account, draw: { min: 0, typ: 0.2, max: 0.2 } };
    expect(sumWords(step('a * b', { a: [0.4, 'A'], b: [0.5, ''] }, [0.2, 'A']), typical)).toBe('400 mA · 0.5 = 200 mA');
  });
});

describe('the step that is told', () => {
  const finding = find(gardenGate.findings, ({ rule }) => rule === 'coil-pulls-in');
  const account = find(gardenGate.accounts, ({ id }) => id === 'valve.coil');
  const given = step('V', { V: [3.61, 'V'] }, [3.61, 'V']);
  const first = step('V + V_more', { V: [1, 'V'], V_more: [1, 'V'] }, [2, 'V']);
  const worst = step('V - V_less', { V: [4, 'V'], V_less: [0.39, 'V'] }, [3.61, 'V']);

  it('is the one that comes to what is held against the limit', () => {
    expect(stepOf({ ...finding, working: [given, first, worst] }, account)).toBe(worst);
  });

  it('is else the first that works anything out', () => {
    expect(stepOf({ ...finding, working: [given, first] }, account)).toBe(first);
    expect(stepOf({ ...finding, working: [given] }, account)).toBeUndefined();
    expect(stepOf({ ...finding, working: [first] }, undefined)).toBe(first);
  });
});
