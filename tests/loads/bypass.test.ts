/** A capacitor across a series resistor: what is drawn at switching on, over the first second, and for good. */
import { describe, expect, it } from 'vitest';
import { onBoard } from '../checks/cases/case.js';
import { accountsOf } from './read-account.js';

const valve = (series: string): string =>
  onBoard(
    `a: { type: coil, voltage: 5 V, resistance: 60 Ω, supply: main.5v, series: ${series}, driver: { type: nmos, pin: D8, on-resistance: { value: 1 mΩ, at: 4.5 V }, threshold: 1 to 2 V, maximum-current: 1 A }, clamp: { part: diode-1n4148 } }`,
    { regulators: 'regulator-3v3: { quiescent: 0 mA }, fuse-usb: { resistance: 1 mΩ }', ambient: '20 °C' },
  );
const BOARD = 0.05;
const account = accountsOf(valve('{ resistance: 40 Ω, power: 1 W, bypass: 1000 µF }'));
const plain = accountsOf(valve('{ resistance: 40 Ω, power: 1 W }'));

describe('a coil of 60 Ω behind 40 Ω that 1000 µF bridge', () => {
  it('takes 5 V / 60 Ω at switching on, which supply, driver and clamp see', () => {
    expect(account('bench', 'at-most').draw!.max).toBeCloseTo(BOARD + 5 / 60, 4);
    expect(account('a.driver', 'at-most').draw!.max).toBeCloseTo(5 / 60, 4);
    expect(account('a.clamp', 'at-most').draw!.max).toBeCloseTo(5 / 60, 4);
  });

  it('comes to the root mean square of its decay for the fuse', () => {
    // 50 mA, and 33.3 mA more that fall with 24 ms: 2 × 50 × 33.3 × 0.024 + 33.3² × 0.012, mA².
    const load = Math.sqrt(0.05 ** 2 + 2 * 0.05 * 0.03333 * 0.024 + 0.03333 ** 2 * 0.012);
    expect(account('main.fuse-usb', 'at-most').draw!.max).toBeCloseTo(BOARD + load, 4);
    expect(plain('main.fuse-usb', 'at-most').draw!.max).toBeCloseTo(BOARD + 0.05, 4);
  });

  it('is held by 50 mA, and heats its resistor with no more', () => {
    expect(account('a.coil', 'at-least').draw!.max).toBeCloseTo(0.05, 4);
    expect(account('a.series', 'at-most', 'power').draw!.max).toBeCloseTo(0.05 ** 2 * 40, 4);
  });

  it('pulls in with what is left of 5 V after 15 ms: 3 V, and 2 V more that fall with 24 ms', () => {
    expect(account('a.coil', 'at-least', 'voltage').draw!.min).toBeCloseTo(3 + 2 * Math.exp(-15 / 24), 3);
    expect(plain('a.coil', 'at-least', 'voltage').draw!.min).toBeCloseTo(3, 3);
  });
});

describe('an LED behind a resistor that a capacitor bridges', () => {
  it('is limited by the pin alone for a moment', () => {
    const lit = accountsOf(
      onBoard('a: { part: led-red-5mm, pin: D8, series: { resistance: 330 Ω, bypass: 100 nF } }', {
        ambient: '25 °C',
      }),
    );
    expect(lit('a', 'at-most').draw!.max).toBeGreaterThan(0.15);
    expect(lit('main.D8', 'source').draw!.max).toBeGreaterThan(0.15);
    expect(lit('a.series', 'at-most', 'power').draw!.max).toBeLessThan(0.05);
  });
});
