/** Capacitors against peaks, held against the circuit simulator over time: the law by itself, and in projects. */
import { beforeAll, describe, expect, it } from 'vitest';
import { sourceShare } from '../../src/circuit/dip.js';
import { accountsOf } from '../loads/read-account.js';
import type { Simulator } from './simulator.js';
import { simulator } from './simulator.js';

let engine: Simulator;
beforeAll(async () => {
  engine = await simulator();
});

/** A current that rises from `steady` to `peak` at once; it is asked for just before it falls again. */
const pulse = (name: string, node: string, steady: number, peak: number): string =>
  `i${name} ${node} 0 PULSE(${steady} ${peak} 0 1e-9 1e-9 1e3 2e3)`;

describe('the share of a source', () => {
  it.each([
    [1, 1000e-6, 0.2e-3],
    [1, 1000e-6, 1e-3],
    [0.15, 470e-6, 2e-3],
    [20, 100e-6, 5e-3],
  ])('of %f ohm beside %f F after %f s is that of the simulator', async (ohms, farads, lasts) => {
    const end = await engine.after(
      ['v1 a 0 5', 'v2 a b 0', `r1 b c ${ohms}`, `c1 c 0 ${farads}`, pulse('1', 'c', 0, 0.5)],
      lasts,
    );
    const share = sourceShare(lasts, ohms, farads);
    expect(end.amps('v2')).toBeCloseTo(0.5 * share, 4);
    expect(end.volts('c')).toBeCloseTo(5 - 0.5 * share * ohms, 3);
  });
});

const project = (loads: string, capacitors = 'rails: { 5v: { capacitance: 2200 µF } }'): string => `ampledger: 1
title: Dips
ambient: 25 °C
supplies: { bench: { voltage: 5 V, resistance: 0.4 Ω, current: 5 A } }
controllers:
  main: { board: atmega328p-5v-board, powered: { usb: bench }, draws: { active: 50 mA }, ${capacitors},
          regulators: { fuse-usb: { resistance: 0.6 Ω, hold: 2 A }, regulator-3v3: { quiescent: 0 mA } } }
loads:
${loads}
`;

describe('a rail behind a supply of 0.4 Ω and a fuse of 0.6 Ω, with 2200 µF on it', () => {
  const text = project('  a: { type: servo, run: 100 mA, stall: 900 mA, stall-time: 2 ms, supply: main.5v }');
  const rail = ['v1 a 0 5', 'v2 a b 0', 'r1 b c 0.4', 'r2 c d 0.6', 'c1 d 0 2200e-6', 'i0 d 0 0.05'];

  it('stands at the end of a stall where the simulator has it, and its supply gives what it has there', async () => {
    const end = await engine.after([...rail, pulse('1', 'd', 0.1, 0.9)], 2e-3);
    const account = accountsOf(text);
    expect(account('main.5v', 'at-least', 'voltage').draw!.min).toBeCloseTo(end.volts('d'), 3);
    // The capacitor carries the stall by itself, as far as limits go; without windows it would be asked for this much.
    expect(account('bench', 'at-most').draw!.max).toBeCloseTo(0.15, 6);
    expect(end.amps('v2')).toBeGreaterThan(0.5);
  });

  it('bears two peaks of different length that end together', async () => {
    const two = text.replace(
      'loads:',
      'loads:\n  b: { type: servo, run: 50 mA, stall: 350 mA, stall-time: 0.5 ms, supply: main.5v }',
    );
    const late = 'ib d 0 PULSE(0.05 0.35 1.5e-3 1e-9 1e-9 1e3 2e3)';
    const end = await engine.after([...rail, pulse('1', 'd', 0.1, 0.9), late], 2e-3);
    expect(accountsOf(two)('main.5v', 'at-least', 'voltage').draw!.min).toBeCloseTo(end.volts('d'), 3);
  });

  it('is without its capacitor as low as a stall for ever makes it', async () => {
    const end = await engine.solve(['v1 a 0 5', 'v2 a b 0', 'r1 b c 0.4', 'r2 c d 0.6', 'i0 d 0 0.95']);
    const bare = text.replace(', rails: { 5v: { capacitance: 2200 µF } }', '');
    expect(bare).not.toBe(text);
    expect(accountsOf(bare)('main.5v', 'at-least', 'voltage').draw!.min).toBeCloseTo(end.volts('d'), 6);
  });
});

describe('a stall that lasts too long for the capacitor to carry it', () => {
  it('is seen by the supply by the share that the simulator has', async () => {
    const lasts = 30e-3;
    const text = project('  a: { type: servo, run: 100 mA, stall: 2.2 A, stall-time: 30 ms, supply: main.5v }');
    const end = await engine.after(
      ['v1 a 0 5', 'v2 a b 0', 'r1 b c 0.4', 'r2 c d 0.6', 'c1 d 0 2200e-6', 'i0 d 0 0.05', pulse('1', 'd', 0.1, 2.2)],
      lasts,
    );
    const account = accountsOf(text);
    expect(account('bench', 'at-most').draw!.max).toBeCloseTo(end.amps('v2'), 3);
    expect(account('main.5v', 'at-least', 'voltage').draw!.min).toBeCloseTo(end.volts('d'), 3);
  });
});
