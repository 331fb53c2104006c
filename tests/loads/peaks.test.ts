/** What sees peaks and what does not (rule 17): semiconductors and supplies do, what heats slowly sees a second's root mean square. */
import { describe, expect, it } from 'vitest';
import { onBoard } from '../checks/cases/case.js';
import { accountsOf } from './read-account.js';

const motor = (time: string): string =>
  onBoard(
    `a: { type: dc-motor, run: 180 mA, stall: 800 mA, stall-time: ${time}, supply: main.5v,
    driver: { type: nmos, pin: D3, on-resistance: { value: 10 mΩ, at: 4.5 V }, threshold: typ 1 V max 2 V, maximum-current: 3 A, thermal-resistance: 100 K/W }, clamp: { part: diode-schottky-1a } }`.replaceAll(
      '\n',
      ' ',
    ),
  );
const BOARD = 0.05;

describe('a stall of half a second', () => {
  const account = accountsOf(motor('500 ms'));
  const rise = () => account('a.driver', 'at-most', 'temperature').draw!.max - 25;

  it('is a peak to the supply, to the driver and to the clamp', () => {
    expect(account('bench', 'at-most').draw!.max).toBeCloseTo(BOARD + 0.8, 9);
    expect(account('a.driver', 'at-most').draw!.max).toBeCloseTo(0.8, 9);
    expect(account('a.clamp', 'at-most').draw!.max).toBeCloseTo(0.8, 9);
  });

  it('is 580 mA to the fuse: the root mean square of 800 and 180 mA', () => {
    expect(account('main.fuse-usb', 'at-most').draw!.max).toBeCloseTo(BOARD + Math.sqrt((0.64 + 0.0324) / 2), 9);
  });

  it('heats nothing for long', () => {
    // Its channel is hardly warmer, and so hardly more than 10 mΩ.
    expect(rise()).toBeCloseTo(100 * 0.18 ** 2 * 0.01, 3);
  });
});

describe('a stall of two seconds', () => {
  const account = accountsOf(motor('2 s'));
  const rise = () => account('a.driver', 'at-most', 'temperature').draw!.max - 25;

  it('is sustained: fuse and heat see all of it', () => {
    expect(account('main.fuse-usb', 'at-most').draw!.max).toBeCloseTo(BOARD + 0.8, 9);
    expect(rise()).toBeCloseTo(100 * 0.8 ** 2 * 0.01, 1);
  });
});
