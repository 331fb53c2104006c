import { describe, expect, it } from 'vitest';
import type { ReportStep } from '../../src/reports/report.js';
import { substitute } from '../../src/reports/substitute.js';

const step = (formula: string, numbers: ReportStep['with'], gives: ReportStep['gives'] = [1, '']): ReportStep => ({
  name: 'x',
  formula,
  with: numbers,
  gives,
});

describe('a step with its numbers put in', () => {
  it('has the formula, the numbers with units, and the result', () => {
    const coil = step('I = V / (R_coil + R_pin)', { V: [5.25, 'V'], R_coil: [59.3, 'Ω'], R_pin: [15, 'Ω'] }, [
      0.0707,
      'A',
    ]);
    expect(substitute(coil)).toEqual({
      left: 'I',
      formula: 'V / (R_coil + R_pin)',
      numbers: '5.25 V / (59.3 Ω + 15 Ω)',
      result: '70.7 mA',
      digits: 3,
    });
  });

  it.each([
    [
      'voltages that nearly cancel',
      step('(V - V_led) / R', { V: [3.2, 'V'], V_led: [3.19123456, 'V'], R: [1000, 'Ω'] }, [8.76544e-6, 'A']),
      '(3.2 V − 3.19123 V) / 1 kΩ',
      '8.77 µA',
    ],
    [
      'many that are alike',
      step('a + b + c + d', { a: [2.837e-3, 'A'], b: [2.837e-3, 'A'], c: [2.837e-3, 'A'], d: [2.837e-3, 'A'] }, [
        11.348e-3,
        'A',
      ]),
      '2.837 mA + 2.837 mA + 2.837 mA + 2.837 mA',
      '11.3 mA',
    ],
    [
      'a sum that does not come to its result',
      step('a + b', { a: [1, 'A'], b: [1, 'A'] }, [3, 'A']),
      '1 A + 1 A',
      '3.00 A',
    ],
    [
      'degrees to a tenth',
      step('K + T', { K: [234.5, '°C'], T: [5, '°C'] }, [239.5, '°C']),
      '234.5 °C + 5 °C',
      '240 °C',
    ],
  ] as const)('tells as many digits as it takes to do the sum again: %s', (_, sum, numbers, result) => {
    expect(substitute(sum)).toMatchObject({ numbers, result });
  });

  it.each([
    ['one symbol in another', 'R + R_1 + R_12', { R: [1, 'Ω'], R_1: [2, 'Ω'], R_12: [3, 'Ω'] }, '1 Ω + 2 Ω + 3 Ω'],
    ['a square', 'I^2 * R', { I: [0.07, 'A'], R: [70, 'Ω'] }, '(70 mA)² · 70 Ω'],
    ['a negative number', '234.5 + T', { T: [-5, '°C'] }, '234.5 + (−5 °C)'],
    ['drops', '(V - V_led) / R', { V: [5, 'V'], V_led: [1.9, 'V'], R: [330, 'Ω'] }, '(5 V − 1.9 V) / 330 Ω'],
    ['functions', 'max(a, b)', { a: [1, ''], b: [2, ''] }, 'max(1, 2)'],
    ['Greek symbols', 'ΔT * k', { ΔT: [25, 'K'], k: [2, ''] }, '25 K · 2'],
    ['a symbol named like a property of every object', 'constructor + 1', { V: [1, 'V'] }, 'constructor + 1'],
    ['no symbols', '0.2 A', {}, '0.2 A'],
  ] as const)('copes with %s', (_, formula, numbers, text) => {
    expect(substitute(step(formula, numbers)).numbers).toBe(text);
  });

  it('calls the result by its name when the formula has no left side', () => {
    expect(substitute(step('V / R', { V: [5, 'V'], R: [100, 'Ω'] })).left).toBe('x');
  });
});
