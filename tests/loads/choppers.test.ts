/** Steppers whose windings a chopper holds at a current, by sums a reader can do in the head. */
import { describe, expect, it, test } from 'vitest';
import { onChip, onSupplies } from '../checks/cases/case.js';
import { findingsOf, judged } from '../checks/judged.js';
import { accountsOf, asked } from './read-account.js';

/** At 20 °C and with a rise of none that shows: rated far beyond what it is set to. */
const axis = (motor: string, driver: string, volts = '12 V', more = ''): string =>
  onSupplies(
    `bench: { voltage: ${volts}, current: 20 A }`,
    `a: { type: stepper, maximum-current: 100 A, ${motor}, supply: bench, driver: { type: chopper, ${driver} } }`,
    { ambient: '20 °C', policy: 'classroom', more },
  );
const two = (amps: string, volts = '12 V', more = ''): string =>
  axis(`winding-resistance: 2.5 Ω, phase-current: ${amps}${more}`, 'on-resistance: 0.5 Ω, maximum-current: 3 A', volts);

describe('a stepper behind a chopper', () => {
  it('takes from its supply the power of both windings and their switches', () => {
    // 2 · (1 A)² · (2.5 + 0.5) Ω = 6 W: 0.5 A of 12 V, 0.25 A of 24 V.
    expect(asked(two('1 A'))).toBeCloseTo(0.5, 3);
    expect(asked(two('1 A', '24 V'))).toBeCloseTo(0.25, 3);
    // One winding: 3 W.
    expect(asked(two('1 A', '12 V', ', phases-on: 1'))).toBeCloseTo(0.25, 3);
    // What the shaft gives comes on top: 6 W + 3 W.
    expect(asked(two('1 A', '12 V', ', shaft-power: 3 W'))).toBeCloseTo(0.75, 3);
  });

  it('never takes less for more current, nor more than its windings carry together', () => {
    const amps = [0.2, 0.5, 1, 2, 3, 4, 5].map((each) => ({ each, taken: asked(two(`${each} A`)) }));
    for (const [k, { each, taken }] of amps.entries()) {
      expect(taken).toBeGreaterThan(amps[k - 1]?.taken ?? 0);
      expect(taken).toBeLessThanOrEqual(2 * each * (1 + 1e-9));
    }
    // 2 · (5 A)² · 3 Ω are 150 W, which would be 12.5 A of 12 V: it is on all the time by then.
    expect(amps.at(-1)!.taken).toBeCloseTo(10, 9);
  });

  it('carries 0.71 of what it is set to in each winding where it follows sine and cosine', () => {
    const text = axis(
      'winding-resistance: 2.5 Ω, phase-current: 2 A',
      'on-resistance: 0.5 Ω, maximum-current: 3 A, both-on: 71 %',
    );
    const account = accountsOf(text);
    // 2 · (1.42 A)² · 3 Ω = 12.1 W.
    expect(asked(text)).toBeCloseTo((2 * 1.42 ** 2 * 3) / 12, 2);
    expect(account('a.windings', 'at-most').draw!.max).toBeCloseTo(1.42, 9);
    expect(account('a.driver', 'at-most').draw!.max).toBeCloseTo(2, 9);
  });

  it('reaches its current only from a supply that could drive more', () => {
    // 3 A · 3 Ω are 9 V.
    const reached = (volts: string) => accountsOf(two('3 A', volts))('a.windings', 'at-least').draw!.min;
    expect(reached('12 V')).toBeCloseTo(4, 2);
    expect(findingsOf(two('3 A', '9.1 V'), 'chopper-starved')).toEqual([]);
    expect(findingsOf(two('3 A', '8.9 V'), 'chopper-starved').map((f) => f.verdict)).toEqual(['breach']);
    expect(findingsOf(two('3 A', '8.5 to 9.9 V'), 'chopper-starved').map((f) => f.verdict)).toEqual(['strain']);
  });

  it('takes more when its windings are warm', () => {
    // At its rated current a winding grows 80 K warmer: 2.5 Ω · 334.5 / 254.5 = 3.286 Ω.
    const rated = axis(
      'winding-resistance: 2.5 Ω, phase-current: 1 A',
      'on-resistance: 0.5 Ω, maximum-current: 3 A',
    ).replace('100 A', '1 A');
    expect(asked(rated)).toBeCloseTo((2 * (3.286 + 0.5)) / 12, 3);
    expect(accountsOf(rated)('bench', 'at-most').draw!.min).toBeCloseTo(0.5, 6);
  });

  it('has its driver take for itself, and its logic, too', () => {
    const text = onChip(
      'a: { type: stepper, maximum-current: 100 A, winding-resistance: 2.5 Ω, phase-current: 1 A, supply: bench, driver: { type: chopper, on-resistance: 0.5 Ω, maximum-current: 3 A, quiescent: 4 mA, logic-current: 8 mA, logic-supply: bench, pin: PB1 }, signals: { step: PB2, direction: PB3 } }',
      { ambient: '20 °C', more: 'modes: { parked: { active: [] }, held: { active: [a] } }' },
    );
    // 10 mA of the chip; 6 W of 5 V.
    expect(accountsOf(text, 'parked')('bench', 'at-most').draw!.max).toBeCloseTo(0.022, 6);
    expect(accountsOf(text, 'held')('bench', 'at-most').draw!.max).toBeCloseTo(1.222, 3);
  });

  it('holds nothing while its logic has no supply', () => {
    const text = onChip(
      'a: { type: stepper, maximum-current: 100 A, winding-resistance: 2.5 Ω, phase-current: 1 A, supply: strong, driver: { type: chopper, on-resistance: 0.5 Ω, maximum-current: 3 A, logic-current: 8 mA, logic-voltage: 3 to 5.5 V, logic-supply: bench, pin: PB1 } }',
      { more: 'modes: { held: { active: [a] }, lost: { active: [a], without: [bench] } }' },
    ).replace('supplies: { ', 'supplies: { strong: { voltage: 12 V, current: 5 A }, ');
    expect(findingsOf(text, 'load-voltage')).toEqual([]);
    expect(accountsOf(text, 'lost')('strong', 'at-most').draw!.max).toBe(0);
  });

  it('refuses what it has no use for, and asks for what it needs', () => {
    const said =
      (motor: string, driver = 'on-resistance: 0.5 Ω'): (() => unknown) =>
      () =>
        judged(axis(motor, driver));
    const motor = 'winding-resistance: 2.5 Ω, phase-current: 1 A';
    expect(said('winding-resistance: 2.5 Ω')).toThrow('the current that its chopper is set to');
    expect(said('phase-current: 1 A')).toThrow('needs the resistance of a winding');
    expect(said(`${motor}, series: 1 Ω`)).toThrow('only heats');
    expect(said(`${motor}, clamp: { part: diode-1n4007 }`)).toThrow('clamp its windings themselves');
    expect(said(`${motor}, needs: 1 A`)).toThrow('holds what it is set to');
    expect(said(`${motor}, pwm: { frequency: 1 kHz, duty: 50 % }`)).toThrow('so nothing pulses it');
    expect(said(motor, 'pins: [D3, D4]')).toThrow('one switches its driver on');
    const plain = onSupplies(
      'bench: { voltage: 5 V, current: 20 A }',
      `a: { type: stepper, voltage: 5 V, ${motor}, supply: bench }`,
    );
    expect(() => judged(plain)).toThrow('no chopper holds a current');
    const open = judged(axis(motor, 'current-accuracy: 5 %').replace('maximum-current: 100 A, ', ''));
    expect(
      open.findings
        .filter((f) => f.verdict === 'unproven')
        .map((f) => f.account?.missing?.figure)
        .sort(),
    ).toEqual(['maximum-current', 'maximum-current', 'on-resistance']);
  });
});

test('a stepper that no chopper feeds is held to its rated current, too', () => {
  // 5 V over 2 · 10 Ω: 0.5 A in each winding.
  const text = (rated: string): string =>
    onSupplies(
      'bench: { voltage: 5 V, current: 20 A }',
      `a: { type: stepper, voltage: 5 V, winding-resistance: 10 Ω, maximum-current: ${rated}, supply: bench }`,
      { ambient: '20 °C', policy: 'classroom' },
    );
  expect(findingsOf(text('500 mA'), 'phase-current')).toEqual([]);
  expect(findingsOf(text('490 mA'), 'phase-current').map((f) => f.verdict)).toEqual(['breach']);
});
