/** Multiplexed displays: what segment pins, digit pins and digit drivers carry. */
import { describe, expect, it } from 'vitest';
import { onChip } from '../checks/cases/case.js';
import { findingsOf, judged } from '../checks/judged.js';
import { accountsOf } from './read-account.js';

/** Segments that drop exactly 2 V at 8 mA; pins of exactly 25 Ω on exactly 5 V. */
const display = (more: string, setting: Parameters<typeof onChip>[1] = {}): string =>
  onChip(`a: { type: display, forward-voltage: { value: 2 V, at: 8 mA }, maximum-current: 20 mA, ${more} }`, setting);
const PINS = 'segment-pins: [PD0..PD7], digit-pins: [PB0..PB3]';

describe('a digit of common cathode', () => {
  /**
   * Eight segments of 8 mA meet in the digit's pin: 64 mA through 25 Ω are 1.6 V; 5 V - 1.6 V - 2 V - 8 mA · 25 Ω leave
   * 1.2 V for 150 Ω.
   */
  const text = display(`common: cathode, series: 150 Ω, ${PINS}`);
  const account = accountsOf(text);

  it('has the most in a segment pin while that segment is lit alone: about 3 V / 200 Ω', () => {
    for (const pin of ['main.PD0', 'main.PD7']) {
      expect(account(pin, 'source').draw!.max).toBeGreaterThan(0.0145);
      expect(account(pin, 'source').draw!.max).toBeLessThan(0.015);
    }
    expect(account('a.single-1.segment', 'at-most').draw!.max).toBeCloseTo(account('main.PD0', 'source').draw!.max, 9);
  });

  it('has all of them at once in the pin of the digit, whichever digit it is', () => {
    for (const pin of ['PB0', 'PB1', 'PB2', 'PB3'])
      expect(account(`main.${pin}`, 'sink').draw!.max).toBeCloseTo(0.064, 5);
    expect(findingsOf(text, 'pin-current').map((f) => f.path.join('.'))).toHaveLength(4);
    expect(findingsOf(text, 'pin-current').every((f) => f.verdict === 'breach')).toBe(true);
  });

  it('asks its supply for one digit at a time', () => {
    expect(account('bench', 'at-most').draw!.max).toBeCloseTo(0.01 + 0.064, 5);
  });

  it('is lit in turns in a mode that names it, and counts once in the average', () => {
    const working = display(`common: cathode, series: 150 Ω, ${PINS}`, {
      more: 'modes: { showing: { active: [a], share: 50 % }, dark: { active: [], share: 50 % } }',
    });
    expect(accountsOf(working)('bench', 'at-most').draw!.max).toBeCloseTo(0.074, 5);
    expect(accountsOf(working)('main.PB3', 'sink').draw!.max).toBeCloseTo(0.064, 5);
    expect(judged(working).ledger.energy[0]!.amps).toBeCloseTo(0.01 + 0.032, 5);
  });

  it('is held to a segment’s current on average: lit a quarter of the time', () => {
    const [met] = account('a.single-1.segment', 'at-most').limits;
    expect(met!.value).toBeCloseTo(0.08, 9);
    expect(met!.limit.condition).toContain('25 % of the time');
  });

  it('heats a segment’s resistor a quarter of the time', () => {
    const amps = account('main.PD0', 'source').draw!.max;
    expect(account('a.single-1.series', 'at-most', 'power').draw!.max).toBeCloseTo(0.25 * amps ** 2 * 150, 6);
  });
});

describe('a digit of common anode', () => {
  it('has the same currents the other way round', () => {
    const account = accountsOf(display(`common: anode, series: 150 Ω, ${PINS}`));
    expect(account('main.PD0', 'sink').draw!.max).toBeGreaterThan(0.0145);
    expect(account('main.PB2', 'source').draw!.max).toBeCloseTo(0.064, 5);
  });
});

describe('two digits that are lit together', () => {
  it('share the segment pins’ own resistance', () => {
    const account = accountsOf(display(`common: cathode, series: 150 Ω, digits-on-together: 2, ${PINS}`));
    const segment = account('main.PD0', 'source').draw!.max;
    const digit = account('main.PB3', 'sink').draw!.max;
    // Two segments in a segment’s pin, eight in a digit’s, whose own resistance leaves less for each.
    expect(segment).toBeGreaterThan(0.02);
    expect(segment).toBeLessThan(0.03);
    expect(digit).toBeGreaterThan(0.055);
    expect(digit).toBeLessThan(0.064);
  });
});

describe('a driver at each digit', () => {
  const text = display(
    `common: cathode, series: 270 Ω, ${PINS}, driver: { type: npn, base-resistor: 1 kΩ, base-emitter: { value: 0.75 V, at: 4 mA }, gain: 100, saturation: 0.2 V, maximum-current: 500 mA, maximum-voltage: 30 V, thermal-resistance: 200 K/W }`,
  );

  it('carries all segments, and its pin only the base', () => {
    const account = accountsOf(text);
    expect(account('a.1.driver', 'at-most').draw!.max).toBeGreaterThan(0.07);
    expect(account('main.PB0', 'source').draw!.max).toBeLessThan(0.005);
    expect(findingsOf(text, 'pin-current')).toEqual([]);
  });
});

describe('what a display needs', () => {
  it.each([
    ['what its digits have in common', `series: 150 Ω, ${PINS}`, 'have in common'],
    ['its pins', 'common: cathode, segment-pins: [PD0..PD7]', 'needs the pins'],
  ])('is asked for: %s', (_, more, says) => {
    expect(() => judged(display(more))).toThrow(says);
  });

  it('is a resistor for each segment, too', () => {
    expect(findingsOf(display(`common: cathode, ${PINS}`), 'nothing-limits')[0]?.verdict).toBe('breach');
  });
});

describe('a digit that is lit for a while', () => {
  /** One segment pin and four digits, 20 mA in the segment that is lit: 3 V over 25 + 100 + 25 Ω. */
  const lit = (rated: string, refresh = ''): string =>
    onChip(
      `a: { type: display, common: cathode, forward-voltage: { value: 2 V, at: 20 mA }, series: 100 Ω, segment-pins: [PD0], digit-pins: [PB0..PB3], ${rated}${refresh && `, refresh: ${refresh}`} }`,
      { policy: 'classroom' },
    );
  const verdicts = (text: string) => findingsOf(text, 'load-current').map((f) => f.verdict);
  const rated = 'maximum-current: 15 mA, peak-current: 70 mA';

  it('is held to what its LEDs bear for ever, on average, where no peak is rated', () => {
    expect(verdicts(lit('maximum-current: 5.01 mA'))).toEqual([]);
    expect(verdicts(lit('maximum-current: 4.9 mA'))).toEqual(['breach']);
  });

  it('may carry its peak in pulses as short and as seldom as that is rated for', () => {
    // Four turns of 2.5 ms at 100 pictures a second, a quarter of the time each.
    expect(verdicts(lit(`${rated}, peak-width: 2.5 ms, peak-duty: 25 %`, '100 Hz'))).toEqual([]);
    expect(verdicts(lit(`${rated}, peak-width: 2.4 ms, peak-duty: 25 %`, '100 Hz'))).toEqual(['strain']);
    expect(verdicts(lit(`${rated}, peak-width: 2.5 ms, peak-duty: 24 %`, '100 Hz'))).toEqual(['strain']);
    expect(verdicts(lit(`${rated}, peak-duty: 24 %`))).toEqual(['strain']);
    // Beyond that it is still content with what an LED bears for ever.
    expect(verdicts(lit('maximum-current: 20.01 mA, peak-current: 70 mA, peak-duty: 24 %'))).toEqual([]);
  });

  it('asks how long that is where nobody says how often it is refreshed', () => {
    const [finding] = findingsOf(lit(`${rated}, peak-width: 1 ms`), 'load-current');
    expect(finding?.verdict).toBe('unproven');
    expect(finding?.by?.limit.asks).toContain('`refresh: 100 Hz`');
  });

  it('stays lit when firmware hangs, and its resistor with it', () => {
    const account = accountsOf(lit(rated));
    expect(account('a.stuck', 'at-most').draw!.max).toBeCloseTo(0.02, 6);
    expect(account('a.stuck', 'at-most', 'power').draw!.max).toBeCloseTo(0.02 ** 2 * 100, 5);
    expect(findingsOf(lit(rated), 'scan-stops').map((f) => [f.verdict, f.account?.quantity])).toEqual([
      ['strain', 'current'],
    ]);
    const weak = lit(rated).replace('series: 100 Ω', 'series: { resistance: 100 Ω, power: 0.03 W }');
    expect(findingsOf(weak, 'resistor-power')).toEqual([]);
    expect(
      findingsOf(weak, 'scan-stops')
        .map((f) => f.account?.quantity)
        .sort(),
    ).toEqual(['current', 'power']);
  });

  it('is refreshed by its own controller where it has one', () => {
    expect(() => judged(onChip('a: { type: display, active: 20 mA, supply: bench, refresh: 100 Hz }'))).toThrow(
      'a controller of its own',
    );
    expect(() => judged(lit(rated, '0 Hz'))).toThrow('more than never');
  });
});
