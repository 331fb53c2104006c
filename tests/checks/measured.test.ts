/** Meter readings that cannot be: what they contradict and what explains them, each tried on a project made for it. */
import { describe, expect, it } from 'vitest';
import type { Account } from '../../src/ledger/account.js';
import { says } from '../../src/wording/sentences.js';
import { findingsOf, judged } from './judged.js';

const project = (measured: string): string => `ampledger: 1
title: Case
ambient: 20 to 30 °C
policy: everyday
supplies:
  laptop: { type: usb2-port }
  brick: { voltage: 5 V ±4 %, current: 2 A }
  brick-12v: { voltage: 12 V ±5 %, current: 1 A }
controllers: { main: { board: atmega328p-5v-board, powered: { usb: laptop } } }
loads:
  vents:
    part: relay-board-opto-low-5v-4
    inputs: { 1: D4, 2: D5, 3: D6, 4: D7 }
    logic-supply: main.5v
    coil-supply: brick
    jumper: removed
  valve:
    part: relay-coil-5v-70r
    supply: brick
    driver: { part: npn-2n2222a, pin: D8, base-resistor: 1 kΩ ±5 %, pull-down: 10 kΩ ±5 % }
    clamp: { part: diode-1n4148 }
  lamp: { part: led-red-5mm, pin: D9, series: 330 Ω ±5 % }
modes:
  venting: { active: [vents.1, vents.2] }
  watering: { active: [valve] }
  lit: { active: [lamp] }
measured: [ ${measured} ]
`;

const reading = (measured: string): Account => {
  const found = judged(project(measured)).accounts.filter((j) => j.account.kind === 'measured');
  expect(found.length).toBe(1);
  return found[0]!.account;
};

const told = (measured: string): string => {
  const findings = findingsOf(project(measured), 'measured-disagrees');
  expect(findings.map((f) => [f.verdict, f.family])).toEqual([['unproven', 'data']]);
  return says(findings[0]!);
};

describe('the bounds of a reading', () => {
  it.each([
    // The coil’s own account, cold and warm.
    ['valve.coil, voltage: 4.8 V, mode: watering', 4.44, 5.2],
    // 5.2 V, and no more, over 63 Ω at 20 °C.
    ['valve.coil, current: 70 mA, mode: watering', 0.0575, 0.0825],
    // A coil that is off in the mode has nothing across it.
    ['valve.coil, voltage: 0 V, mode: venting', 0, 0],
    ['valve.coil, current: 0 A, mode: venting', 0, 0],
    // Supplies stand where the file says.
    ['brick-12v, voltage: 12 V, mode: venting', 11.4, 12.6],
    // The pin drives the base: 5.25 V less 12.5 Ω x 4.6 mA at most.
    ['D8, voltage: 4.9 V, mode: watering', 4.5, 5.2],
    ['main.D8, current: 4 mA, mode: watering', 0.0033, 0.0047],
    // What the transistor keeps: next to nothing, up to what half a drive costs; switched off, the supply.
    ['valve.driver, voltage: 0.2 V, mode: watering', 0, 0.35],
    ['valve.driver, voltage: 5 V, mode: venting', 4.8, 5.2],
    ['valve.driver, current: 70 mA, mode: watering', 0.0575, 0.0825],
    ['valve.clamp, voltage: 4.8 V, mode: watering', 4.44, 5.2],
    ['lamp, current: 8 mA, mode: lit', 0.0055, 0.0108],
    ['lamp, voltage: 2 V, mode: lit', 1.7, 2.6],
    ['valve.driver, temperature: 30 °C, mode: watering', 24, 37],
  ])('of %s lie between %d and %d', (what, min, max) => {
    const { draw } = reading(`{ of: ${what} }`);
    expect(draw!.min).toBeGreaterThan(min - 0.05 * Math.abs(max) - 1e-9);
    expect(draw!.min).toBeLessThanOrEqual(min + 0.05 * Math.abs(max));
    expect(draw!.max).toBeGreaterThanOrEqual(max - 0.05 * Math.abs(max));
    expect(draw!.max).toBeLessThan(max + 0.05 * Math.abs(max) + 1e-9);
  });

  it('are those of the account that says the same', () => {
    const { accounts } = judged(project('{ of: valve.coil, voltage: 4.8 V, mode: watering }'), 'watering');
    const of = (kind: string) =>
      accounts.find(
        (j) => j.account.kind === kind && j.account.quantity === 'voltage' && /valve/.test(j.account.title),
      )!;
    expect(of('measured').account.draw!.min).toBeCloseTo(of('coil').account.draw!.min, 9);
  });

  it('span all modes where the reading names none', () => {
    const { draw } = reading('{ of: valve.coil, voltage: 3 V }');
    expect(draw!.min).toBe(0);
    expect(draw!.max).toBeGreaterThan(4.9);
  });

  it('are kept out of a look at another mode', () => {
    const { accounts } = judged(project('{ of: valve.coil, voltage: 3 V, mode: watering }'), 'venting');
    expect(accounts.filter((j) => j.account.kind === 'measured')).toEqual([]);
  });
});

describe('a reading outside them', () => {
  it('names the figures that would each have to be another, the nearest first', () => {
    const text = told('{ of: vents.1.coil, voltage: 4.18 V, mode: venting }');
    expect(text).toMatch(/^The meter shows 4.18 V at vents.1.coil in mode venting/);
    expect(text).toMatch(/the voltage of brick would have to be 4\.6\d V/);
    expect(text).toMatch(/what vents\.1\.driver loses would have to be/);
  });

  it('says what a figure would have to be so that it really comes out: 12.1 V for 11.4 V at the coil', () => {
    const text = told('{ of: valve.coil, voltage: 11.4 V, mode: watering }');
    const volts = Number(/the voltage of brick would have to be ([\d.]+) V/.exec(text)![1]);
    const other = project('{ of: valve.coil, voltage: 11.4 V ±1 %, mode: watering }').replace('5 V ±4 %', `${volts} V`);
    expect(findingsOf(other, 'measured-disagrees')).toEqual([]);
  });

  it.each([
    [
      'a clamp the wrong way round',
      'valve.coil, voltage: 0.82 V, mode: watering',
      'the clamp of valve is fitted the wrong way round',
    ],
    ['another supply', 'valve.coil, voltage: 11.6 V, mode: watering', 'it is fed from brick-12v and not from brick'],
    [
      'the jumper',
      'vents.1.coil, voltage: 4.25 V, mode: venting',
      'the supply jumper of vents is fitted and main.5v feeds its coils',
    ],
    ['a second coil', 'valve.coil, current: 145 mA, mode: watering', 'a second one like valve.coil hangs across it'],
    ['a circuit that is off', 'valve.coil, voltage: 0 V, mode: watering', 'valve is not switched on'],
    ['another mode', 'valve.coil, voltage: 4.8 V, mode: venting', 'the mode was watering'],
    ['a lamp that nobody named', 'laptop, current: 68 mA, mode: watering', 'lamp is on, too'],
  ])('is explained by %s', (_, what, because) => {
    expect(told(`{ of: ${what} }`)).toContain(because);
  });

  it('is not explained by what does not reproduce it', () => {
    const text = told('{ of: valve.coil, voltage: 7.5 V, mode: watering }');
    expect(text).toContain('No single fault of wiring that was tried explains it');
    // Two coils take 115 to 165 mA.
    for (const amps of ['100 mA', '180 mA'])
      expect(told(`{ of: valve.coil, current: ${amps}, mode: watering }`)).not.toContain('a second one');
  });
});

describe('a reading that does not bind', () => {
  it.each([
    ['{ of: valve.coill, voltage: 4 V }', /nothing called `valve.coill`/],
    ['{ of: valve.coil, voltage: 4 V, mode: sprinkling }', /no mode `sprinkling`/],
    ['{ of: valve.coil, temperature: 40 °C }', /has no temperature/],
    ['{ of: D12, voltage: 4 V }', /nothing hangs on pin `D12`/],
    ['{ of: valve.coil, voltage: 4 A }', /voltage|volt/],
  ])('is an error: %s', (measured, message) => {
    expect(() => judged(project(measured))).toThrow(message);
  });
});
