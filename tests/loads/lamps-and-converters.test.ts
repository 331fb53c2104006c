/** Filament lamps and loads with a converter of their own. */
import { describe, expect, it } from 'vitest';
import { onBoard, onChip, onSupplies } from '../checks/cases/case.js';
import { findingsOf, judged } from '../checks/judged.js';
import { accountsOf, asked } from './read-account.js';

describe('a lamp', () => {
  const lamp = (more: string, volts = '12 V'): string =>
    onSupplies(
      `bench: { voltage: ${volts}, current: 20 A }`,
      `a: { type: lamp, voltage: 12 V, ${more}, supply: bench }`,
    );
  const steady = (text: string): number => accountsOf(text)('bench', 'at-most').draw!.typ;

  it('takes P / V at its rated voltage and follows the rerating law elsewhere', () => {
    expect(steady(lamp('power: 6 W'))).toBeCloseTo(0.5, 9);
    expect(steady(lamp('power: 6 W', '6 V'))).toBeCloseTo(0.5 * 0.5 ** 0.55, 9);
  });

  it('takes its inrush when it is switched on: ten times 0.5 A is 5 A', () => {
    expect(asked(lamp('power: 6 W, inrush-ratio: 10, inrush-time: 50 ms'))).toBeCloseTo(5, 9);
  });

  it('takes fifteen times as much where nobody says so, and says that this is assumed', () => {
    expect(asked(lamp('power: 6 W'))).toBeCloseTo(7.5, 9);
    expect(
      judged(lamp('power: 6 W'))
        .project.assumptions.map((a) => a.says)
        .join(),
    ).toContain('15 times its current');
  });

  it('heats a fuse by the root mean square of its first second, and its driver by its steady current', () => {
    const text = onBoard(
      'a: { type: lamp, voltage: 5 V, power: 1 W, inrush-ratio: 10, inrush-time: 50 ms, supply: main.5v, driver: { type: nmos, pin: D3, on-resistance: { value: 1 mΩ, at: 4.5 V }, threshold: typ 1 V max 2 V, maximum-current: 3 A } }',
    );
    const account = accountsOf(text);
    const rms = 0.2 * Math.sqrt(100 * 0.05 + 0.95);
    expect(account('main.fuse-usb', 'at-most').draw!.max / (0.05 + rms)).toBeCloseTo(1, 1);
    // Cold, 2.5 Ω are left.
    expect(account('a.driver', 'at-most').draw!.max / 2).toBeGreaterThan(0.85);
  });

  it('is not inductive, and on a pin is judged by its inrush', () => {
    const text = onChip('a: { type: lamp, voltage: 6 V, power: 60 mW, inrush-ratio: 10, pin: PB1 }');
    expect(judged(text).findings.map((f) => f.rule)).toEqual(['pin-current']);
    // 5 V / (25 Ω + 6 V / 100 mA cold)
    expect(accountsOf(text)('main.PB1', 'source').draw!.max).toBeCloseTo(5 / 85, 9);
  });
});

describe('a constant power', () => {
  const load = (volts: string, more = ''): string =>
    onSupplies(
      `bench: { voltage: ${volts}, current: 20 A${more} }`,
      'a: { type: constant-power, power: 5 W, supply: bench }',
    );
  const draw = (text: string) => accountsOf(text)('bench', 'at-most').draw!;

  it('takes the most on the lowest supply', () => {
    expect(draw(load('4.5 to 5.5 V')).max).toBeCloseTo(5 / 4.5, 9);
    expect(draw(load('4.5 to 5.5 V')).min).toBeCloseTo(5 / 5.5, 9);
  });

  it('takes more for what is lost on its way: 5 W behind 0.5 Ω on 5 V are 1.127 A', () => {
    expect(draw(load('5 V', ', resistance: 0.5 Ω')).max).toBeCloseTo(1.127016654, 8);
    expect(draw(load('5 V', ', resistance: 0.2 to 0.5 Ω')).max).toBeCloseTo(1.127016654, 8);
  });

  it('through a driver takes the most where the driver loses most', () => {
    const text = onSupplies(
      'bench: { voltage: 4.5 to 5.5 V, current: 20 A }',
      'a: { type: constant-power, power: 5 W, supply: bench, series: 0.1 to 0.5 Ω }',
    );
    const u = 4.5;
    const amps = (2 * 5) / (u + Math.sqrt(u * u - 4 * 5 * 0.5));
    expect(draw(text).max).toBeCloseTo(amps, 8);
    expect(accountsOf(text)('a.series', 'at-most', 'power').draw!.max).toBeCloseTo(amps * amps * 0.5, 8);
  });

  it('that asks more of a supply than its resistance passes on makes it collapse, and that is a breach', () => {
    for (const watts of [10, 12, 12.5, 13, 20, 100]) {
      const text = onSupplies(
        'bench: { voltage: 5 V, current: 1 A, resistance: 0.5 Ω }',
        `a: { type: constant-power, power: ${watts} W, supply: bench }`,
      );
      expect(findingsOf(text, 'supply-current').map((f) => f.verdict)).toEqual(['breach']);
    }
  });

  it('on one supply with another load takes the more, the heavier the other is', () => {
    const drawn = [0, 0.5, 1, 1.5, 2].map((amps) => {
      const others = amps === 0 ? '' : `\nb: { type: constant-current, current: ${amps} A, supply: bench }`;
      const text = onSupplies(
        'bench: { voltage: 5 V, current: 9 A, resistance: 0.3 Ω }',
        `a: { type: constant-power, power: 5 W, supply: bench }${others}`,
      );
      return draw(text).max;
    });
    drawn.slice(1).forEach((amps, k) => expect(amps).toBeGreaterThan(drawn[k]! + 0.5));
  });

  it('is not fed by a pin', () => {
    expect(() => judged(onChip('a: { type: constant-power, power: 50 mW, pin: PB1 }'))).toThrow('no pin can feed');
  });
});
