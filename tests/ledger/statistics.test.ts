/** Likelier bounds on circuits whose statistics can be done by hand, and what may not change them. */
import { describe, expect, it } from 'vitest';
import { drawnBuilds, uncertainFigures, within } from '../../src/ledger/builds.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import type { Method, Statistics } from '../../src/ledger/statistics.js';
import { statisticsOf } from '../../src/ledger/statistics.js';
import type { Data } from '../properties/projects.js';
import { projectOf } from '../properties/projects.js';

const RSS: Method = { method: 'rss' };
const draws = (builds: number, seed = 1): Method => ({ method: 'monte-carlo', builds, seed });

function statistics(data: Data, id: string, method: Method): Statistics {
  const ledger = ledgerOf(projectOf({ ampledger: 1, title: 'By hand', ...data }));
  const account = ledger.accounts.find((a) => a.id === id && a.quantity === 'current')!;
  return statisticsOf(ledger, method).get(account)!;
}

const resistor = (resistance: string) => ({ type: 'resistor', resistance, power: '1 W', supply: 'brick' });
const heater: Data = {
  supplies: { brick: { voltage: '10 V ±10 %', current: '1 A' } },
  loads: { heater: resistor('100 Ω ±5 %') },
};

describe('a build', () => {
  it('takes the typical value at the middle, and the ends at the ends', () => {
    const lopsided = { min: 1, typ: 2, max: 6 };
    expect([0, 0.25, 0.5, 0.75, 1].map((share) => within(lopsided, share))).toEqual([1, 1.5, 2, 4, 6]);
  });

  it('has one figure for each thing that is uncertain, and none for what is exact', () => {
    const figures = uncertainFigures(
      projectOf({
        ampledger: 1,
        title: 'Figures',
        ambient: '25 °C',
        supplies: { brick: { voltage: '5 V ±5 %', current: '1 A' } },
        loads: { exact: resistor('100 Ω'), wide: resistor('100 Ω ±1 %') },
      }),
    );
    expect(figures.map((f) => f.split('.')[0])).toEqual(['brick volts', 'wide']);
  });

  it('has the same figures for the same seed, whatever else is drawn', () => {
    const of = (names: readonly string[], seed: number): number[] =>
      [...drawnBuilds(names, 5, seed)].map((build) => build.share('coil'));
    expect(of(['coil', 'ambient'], 7)).toEqual(of(['lamp', 'coil', 'ambient', 'series'], 7));
    expect(of(['coil'], 7)).not.toEqual(of(['coil'], 8));
    const [build] = drawnBuilds(['coil', 'lamp'], 1, 7);
    expect(build!.share('coil')).not.toBe(build!.share('lamp'));
  });

  it('lies anywhere between 0 and 1 with equal chance', () => {
    const shares = [...drawnBuilds(['coil'], 20_000, 3)].map((build) => build.share('coil'));
    const mean = shares.reduce((sum, s) => sum + s, 0) / shares.length;
    const variance = shares.reduce((sum, s) => sum + (s - mean) ** 2, 0) / shares.length;
    // 1/2 and 1/12, within five standard errors.
    expect(Math.abs(mean - 1 / 2)).toBeLessThan(0.0102);
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(0.0027);
    expect(Math.min(...shares)).toBeLessThan(0.001);
    expect(Math.max(...shares)).toBeGreaterThan(0.999);
  });
});

describe('the root of squares', () => {
  it('of a supply and a resistance is that of what each does by itself', () => {
    const { low, middle, high } = statistics(heater, 'brick', RSS);
    // 10 V / 100 Ω; the supply adds or takes 10 mA, the resistance adds 100/95 or takes 100/105.
    expect(middle).toBeCloseTo(0.1, 12);
    expect(high).toBeCloseTo(0.1 + Math.hypot(0.01, 10 / 95 - 0.1), 12);
    expect(low).toBeCloseTo(0.1 - Math.hypot(0.01, 0.1 - 10 / 105), 12);
  });

  it('adds the tolerances of many parts as squares, but what they share once', () => {
    const many = Object.fromEntries(Array.from({ length: 9 }, (_, k) => [`heater${k}`, resistor('100 Ω ±5 %')]));
    const { middle, high } = statistics({ ...heater, loads: many }, 'brick', RSS);
    expect(middle).toBeCloseTo(0.9, 12);
    expect(high).toBeCloseTo(0.9 + Math.hypot(0.09, 3 * (10 / 95 - 0.1)), 12);
  });
});

describe('builds at random', () => {
  it('give the percentiles of a figure that is alone uncertain', () => {
    const { low, middle, high } = statistics(
      { ...heater, loads: { heater: resistor('100 Ω') } },
      'brick',
      draws(20_000),
    );
    // Anywhere between 90 and 110 mA; within about five standard errors of each percentile.
    expect(Math.abs(low - (0.09 + 0.00135 * 0.02))).toBeLessThan(3e-5);
    expect(Math.abs(high - (0.11 - 0.00135 * 0.02))).toBeLessThan(3e-5);
    expect(Math.abs(middle - 0.1)).toBeLessThan(4e-4);
  });

  it('are the same for the same seed and others for another', () => {
    expect(statistics(heater, 'brick', draws(200, 5))).toEqual(statistics(heater, 'brick', draws(200, 5)));
    expect(statistics(heater, 'brick', draws(200, 5))).not.toEqual(statistics(heater, 'brick', draws(200, 6)));
  });

  it('have one output resistance for all pins of a chip, and a figure of its own for each part', () => {
    const on = (resistance: string) =>
      projectOf({
        ampledger: 1,
        title: 'Pins',
        supplies: { port: { type: 'usb2-port' } },
        controllers: { main: { board: 'atmega328p-5v-board', powered: { usb: 'port' } } },
        loads: Object.fromEntries(
          ['D4', 'D5'].map((pin) => [`on${pin}`, { type: 'resistor', resistance, power: '1 W', pin }]),
        ),
      });
    const pair = (resistance: string): number[] => {
      const project = on(resistance);
      const { accounts, solver } = ledgerOf(project);
      const pins = ['main.D4', 'main.D5'].map((id) => accounts.find((a) => a.id === id)!.sampling()!);
      const [build] = drawnBuilds(uncertainFigures(project), 1, 4);
      const all = { mode: 'free', on: Uint8Array.from(project.circuits, () => 1) };
      const solution = solver.solveBuild(all, {
        ambient: 'typ',
        sources: 'typ',
        outputs: 'typ',
        losses: 'typ',
        load: 'typ',
        control: 'typ',
        rest: 'typ',
        build: build!,
      });
      return pins.map(({ read }) => read(solution)!);
    };
    const [one, other] = pair('330 Ω');
    expect(one).toBeCloseTo(other!, 15);
    const [wide, wider] = pair('330 Ω ±5 %');
    expect(Math.abs(wide! - wider!)).toBeGreaterThan(1e-5);
  });
});
