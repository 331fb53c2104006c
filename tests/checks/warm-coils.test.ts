/** What heats a coil before it is switched on again (rule 11), and what a clamp's working tells, read off whole projects. */
import { describe, expect, it } from 'vitest';
import { coilTemperature, copperFactor } from '../../src/circuit/copper.js';
import { releaseTime } from '../../src/circuit/release.js';
import type { Step } from '../../src/loads/account-plan.js';
import { judged } from './judged.js';

const COIL =
  'a: { type: coil, voltage: 5 V, resistance: 100 Ω, pull-in: typ 3 V max 4 V, drop-out: 0.5 V, maximum: 20 V, thermal-resistance: 40 K/W';

const project = (supplies: string, load: string, controllers = ''): string => `ampledger: 1
title: Case
ambient: 20 °C
policy: everyday
supplies: { ${supplies} }
${controllers}
loads: { ${load} }
`;

const stepsOf = (text: string, title: RegExp): readonly Step[] => {
  const found = judged(text).accounts.find((j) => title.test(j.account.title));
  if (found === undefined) throw new Error(`no account like ${title}`);
  return found.account.steps();
};
const given = (steps: readonly Step[], name: string): number | undefined =>
  steps.find((s) => s.name === name)?.gives[0];

describe('a coil that is switched on again', () => {
  const heats = (supplies: string, supply = 'cell', controllers = ''): number | undefined =>
    given(stepsOf(project(supplies, `${COIL}, supply: ${supply} }`, controllers), /coil of a, pull-in/), 'V_heat');

  it('has been heated by the voltage that it is switched on with, on a regulated supply', () => {
    expect(heats('cell: { voltage: 4.2 to 8 V, current: 1 A }')).toBeUndefined();
    expect(heats('cell: { voltage: 4.2 to 8 V, current: 1 A, regulated: true }')).toBeUndefined();
  });

  it('has been heated by the highest one, on a battery', () => {
    expect(heats('cell: { voltage: 4.2 to 8 V, current: 1 A, regulated: false }')).toBeCloseTo(8, 9);
  });

  it('has been heated by what its battery gives with nothing on it, whatever its own resistance takes by now', () => {
    expect(heats('cell: { voltage: 4.2 to 8 V, current: 1 A, resistance: 2 Ω, regulated: false }')).toBeGreaterThan(
      7.9,
    );
  });

  const board = 'controllers: { main: { board: atmega328p-5v-board, powered: { barrel: cell } } }';
  it('on a regulator that always has enough input has one voltage', () => {
    expect(heats('cell: { voltage: 8 to 12 V, current: 1 A, regulated: false }', 'main.5v', board)).toBeUndefined();
  });

  it('on a regulator that runs out of input has been heated by its set point', () => {
    const volts = heats('cell: { voltage: 5.2 to 12 V, current: 1 A, regulated: false }', 'main.5v', board);
    expect(volts).toBeGreaterThan(5);
    expect(volts).toBeLessThan(5.2);
  });

  it('needs what copper makes of its warmth, by hand', () => {
    const steps = stepsOf(
      project('cell: { voltage: 4.2 to 8 V, current: 1 A, regulated: false }', `${COIL}, supply: cell }`),
      /coil of a, pull-in/,
    );
    const warm = coilTemperature(8, 100, 20, 40);
    expect(given(steps, 'T_coil')).toBeCloseTo(warm, 6);
    expect(given(steps, 'V_hot')).toBeCloseTo(4 * copperFactor(warm), 6);
  });
});

describe('the working of a clamp', () => {
  const load = (more: string): string =>
    `a: { type: coil, voltage: 12 V, resistance: 240 Ω, drop-out: 1.2 V, maximum: 20 V, supply: cell, clamp: { type: diode-zener, current: 1 A, zener-voltage: 24 V, forward-voltage: { value: 1 V, at: 50 mA } }${more} }`;
  const text = (more: string): string => project('cell: { voltage: 12 V, current: 1 A }', load(more));

  it('tells energy, power and release time where the inductance is stated', () => {
    const steps = stepsOf(text(', inductance: 300 mH'), /^clamp of a$/);
    expect(given(steps, 'E')).toBeCloseTo(0.5 * 0.3 * 0.05 ** 2, 12);
    expect(given(steps, 'P_peak')).toBeCloseTo(25 * 0.05, 2);
    expect(given(steps, 't_release')).toBeCloseTo(releaseTime(0.3, 240, 0.05, 0.005, 25), 6);
  });

  it('asks for nothing where it is not', () => {
    const { findings, accounts } = judged(text(''));
    expect(findings.filter((f) => f.verdict === 'unproven')).toEqual([]);
    expect(accounts.every((j) => j.verdict !== 'unproven')).toBe(true);
    expect(given(stepsOf(text(''), /^clamp of a$/), 'E')).toBeUndefined();
  });
});
