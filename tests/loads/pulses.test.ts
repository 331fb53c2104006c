/** Pulses: how they are read, and what a period of them comes to, worked by hand. */
import { describe, expect, test } from 'vitest';
import { judge } from '../../src/checks/judge.js';
import type { JudgedAccount } from '../../src/checks/verdict.js';
import { builtIn, read } from '../../src/index.js';
import { formulaOf } from '../samples/printed-sum.js';

const PARTS = `
  plain: { extends: nmos-ao3400a, on-resistance: { value: 100 mΩ, at: 4.5 V }, hot-ratio: { value: 1, at: 125 °C }, thermal-resistance: 100 K/W, gate-charge: 10 nC }`;

const text = (loads: string, more = ''): string => `ampledger: 1
title: Pulses
ambient: 25 °C
policy: classroom
supplies: { bench: { voltage: 5 V, current: 5 A } }
controllers: { main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA } } }
parts: {${PARTS} }
loads:
${loads}
${more}`;

function judged(loads: string, more = '') {
  const { document, errors } = read(text(loads, more), 'case.yaml');
  if (document === undefined) throw new Error(JSON.stringify(errors));
  return judge(document.data, 'case.yaml', { catalogue: builtIn });
}

function accountsOf(loads: string, more = ''): readonly JudgedAccount[] {
  const result = judged(loads, more);
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result.accounts;
}

const drawOf = (accounts: readonly JudgedAccount[], id: string, quantity: string, direction = 'at-most') => {
  const found = accounts.find((j) => {
    const { account: a } = j;
    return a.id === id && a.quantity === quantity && a.direction === direction;
  });
  if (found?.account.draw === undefined) throw new Error(`no ${quantity} of ${id}`);
  return found.account.draw;
};

const switched = (name: string, amps: string, pin: string, pwm = ''): string =>
  `  ${name}: { type: constant-current, current: ${amps}, supply: bench, driver: { part: plain, pin: ${pin}, gate-resistor: 75 Ω, pull-down: 1 MΩ }${pwm} }`;
const pulses = (duty: string, frequency = '10 kHz'): string => `, pwm: { frequency: ${frequency}, duty: ${duty} }`;
const WIRE = 'wires: [ { from: bench, to: [a, b], length: 1 mm, gauge: 100 mm², name: lead } ]';

describe('a MOSFET that pulses 2 A', () => {
  const accounts = accountsOf(switched('a', '2 A', 'PB1', pulses('25 %')));

  test('is heated by a quarter of 0.4 W, and by its edges', () => {
    // I²·R = 4·0.1 = 0.4 W, a quarter of it 0.1 W. Edges: the gate stands at 5 V (less a ten-thousandth) and takes
    // ln 9·(25 + 75) Ω·10 nC/5 V = 439 ns either way: 5 V·2 A·879 ns·10 kHz/2 = 43.9 mW.
    expect(drawOf(accounts, 'a.driver', 'temperature').max).toBeCloseTo(25 + 100 * (0.1 + 0.04394), 2);
  });

  test('carries 2 A all the same, and so does its supply', () => {
    expect(drawOf(accounts, 'a.driver', 'current').max).toBeCloseTo(2, 9);
    expect(drawOf(accounts, 'bench', 'current').max).toBeCloseTo(2.01, 3);
  });

  test('without pulses it is heated by all of it', () => {
    const steady = accountsOf(switched('a', '2 A', 'PB1'));
    expect(drawOf(steady, 'a.driver', 'temperature').max).toBeCloseTo(25 + 100 * 0.4, 6);
  });

  test('at less than 10 Hz each pulse counts as on', () => {
    const slow = accountsOf(switched('a', '2 A', 'PB1', pulses('25 %', '5 Hz')));
    expect(drawOf(slow, 'a.driver', 'temperature').max).toBeGreaterThan(25 + 100 * 0.4 - 1e-6);
  });
});

describe('two loads that pulse on one wire', () => {
  const both = [switched('a', '2 A', 'PB1', pulses('25 %')), switched('b', '1 A', 'PB2', pulses('50 %'))].join('\n');
  const accounts = accountsOf(both, WIRE);

  test('heat it by the root mean square of pulses that begin together: 3 A, then 1 A, each for a quarter', () => {
    expect(drawOf(accounts, 'lead', 'current').max).toBeCloseTo(Math.sqrt(0.25 * 9 + 0.25 * 1), 6);
  });

  test('have entries that add up to it', () => {
    const { account } = accounts.find((j) => j.account.id === 'lead')!;
    expect(account.entries.reduce((sum, e) => sum + e.max, 0)).toBeCloseTo(account.draw!.max, 9);
    // Of the phases' squares: (0.25·2·3)/1.581 and (0.25·1·3 + 0.25·1·1)/1.581.
    expect(account.entries.map((e) => e.max)).toEqual([expect.closeTo(1.5 / 1.5811, 3), expect.closeTo(1 / 1.5811, 3)]);
  });

  test('a longer pulse never means less', () => {
    const longer = accountsOf(both.replace('25 %', '40 %'), WIRE);
    expect(drawOf(longer, 'lead', 'current').max).toBeGreaterThan(drawOf(accounts, 'lead', 'current').max);
  });
});

test('the sums of pulses, evaluated by an expression library, give their results', () => {
  const both = [switched('a', '2 A', 'PB1', pulses('25 %')), switched('b', '1 A', 'PB2', pulses('50 %'))].join('\n');
  const steps = accountsOf(both, WIRE).flatMap(({ account }) => account.steps());
  const names = new Set(steps.map((step) => step.name));
  for (const name of ['P_mean', 'I_rms', 'P_switch']) expect(names).toContain(name);
  for (const { formula, with: numbers, gives } of steps) {
    const values = Object.fromEntries(Object.entries(numbers).map(([symbol, [value]]) => [symbol, value]));
    expect(formulaOf(formula, values), formula).toBeCloseTo(gives[0], 9);
  }
});

describe('a coil that pulses', () => {
  const valve = (duty: string): string =>
    `  a: { type: coil, voltage: 5 V, resistance: 100 Ω, reference-temperature: 25 °C, supply: bench, pull-in: 60 %, driver: { part: plain, pin: PB1, pull-down: 1 MΩ }, clamp: { part: still }, pwm: { frequency: 1 kHz, duty: ${duty} } }`;
  const DIODE = 'still: { extends: diode-schottky-1a, forward-voltage: { value: 0.4 V, at: 50 mA } }';
  const coil = (duty: string) => {
    const { document } = read(text(valve(duty)).replace('parts: {', `parts: { ${DIODE},`), 'case.yaml');
    const result = judge(document!.data, 'case.yaml', { catalogue: builtIn });
    if ('problems' in result) throw new Error(JSON.stringify(result.problems));
    return result.accounts;
  };

  test('is pulled by the mean voltage: in the pause the clamp takes its own away from it', () => {
    // 5 V·100/100.1 = 4.995 V; the diode keeps 0.4 V at 50 mA.
    const { max } = drawOf(coil('80 %'), 'a.coil', 'voltage', 'at-least');
    expect(max).toBeCloseTo(0.8 * 4.995 - 0.2 * 0.4, 2);
  });

  test('has a clamp that carries its current in every pause: what it bears for ever holds for the mean', () => {
    const { account } = coil('80 %').find((j) => j.account.id === 'a.clamp' && j.account.quantity === 'current')!;
    const lasting = account.limits.find(({ limit }) => limit.condition?.startsWith('pulses') === true)!;
    expect(lasting.value).toBeCloseTo(1 / 0.2, 6);
    expect(account.draw!.max).toBeCloseTo(0.05, 3);
  });
});

describe('pulses that cannot be', () => {
  const problems = (loads: string): string[] => {
    const result = judged(loads);
    return 'problems' in result ? result.problems.map((p) => p.says) : [];
  };

  test.each([
    [', pwm: { frequency: 1 kHz, duty: 120 % }', 'a duty lies between 0 and 100 %'],
    [', pwm: { frequency: 0 Hz, duty: 50 % }', 'a frequency has to be above zero'],
  ])('%s', (pwm, says) => {
    expect(problems(switched('a', '1 A', 'PB1', pwm))).toContain(says);
  });

  test('nothing of ours switches it', () => {
    expect(
      problems('  a: { type: constant-current, current: 1 A, supply: bench, pwm: { frequency: 1 kHz, duty: 5 % } }'),
    ).toEqual(['nothing of ours switches `a`, so nothing pulses it']);
  });

  test('one pin, two trains of them', () => {
    const lamp = (name: string, duty: string): string =>
      `  ${name}: { part: led-red-5mm, pin: PB1, series: 1 kΩ${pulses(duty)} }`;
    expect(problems(`${lamp('a', '20 %')}\n${lamp('b', '30 %')}`)).toEqual([
      '`b` and `a` hang on one pin, which cannot pulse both differently',
    ]);
    expect(problems(`${lamp('a', '20 %')}\n${lamp('b', '20 %')}`)).toEqual([]);
  });
});
