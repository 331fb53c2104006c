/** What sees peaks and what does not (rule 17): semiconductors and supplies do, what heats slowly sees a second's root mean square. */
import { describe, expect, it } from 'vitest';
import { onBoard, onChip, onSupplies } from '../checks/cases/case.js';
import { findingsOf, judged } from '../checks/judged.js';
import { accountsOf, asked } from './read-account.js';

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

describe('the dip of a soft supply', () => {
  const dip = (loads: string, bench = 'resistance: 0.5 Ω'): number =>
    accountsOf(
      onSupplies(
        `bench: { voltage: 12 V, current: 10 A, ${bench} }`,
        `${loads}\nr: { type: module, active: 0 mA, maximum-dip: 0.5 V, supply: bench }`,
      ),
    )('r.input', 'at-most', 'voltage').draw!.max;
  const motor = (id: string, stall: string, more = 'switched: elsewhere'): string =>
    `${id}: { type: dc-motor, run: 200 mA, stall: ${stall}, supply: bench, ${more} }`;
  const long = 'stall-time: 1.5 s';

  it.each([
    ['of a start counts from where it stood without the motor: 2 A · 0.5 Ω', motor('a', '2 A'), 1],
    ['of one that is always on counts from where it ran: (2 − 0.2) A · 0.5 Ω', motor('a', '2 A', 'note: bare'), 0.9],
    ['is no less when the stall lasts over a second', motor('a', '2 A', `switched: elsewhere, ${long}`), 1],
    ['and of one that is always on: (2 − 0.2) A · 0.5 Ω', motor('a', '2 A', long), 0.9],
    ['adds up where two start together: 3 A · 0.5 Ω', `${motor('a', '2 A')}\n${motor('b', '1 A')}`, 1.5],
    [
      'of a burst of two seconds: (300 − 20) mA · 0.5 Ω',
      'a: { type: module, active: 20 mA, peak: 300 mA, peak-time: 2 s, supply: bench }',
      0.14,
    ],
    [
      'of a cold lamp that takes ten times its 1 A: 12 V · 0.5 / (1.2 + 0.5)',
      'a: { type: lamp, voltage: 12 V, power: 12 W, inrush-ratio: 10, inrush-time: 50 ms, supply: bench, switched: elsewhere }',
      6 / 1.7,
    ],
  ])('%s', (_, loads, volts) => {
    expect(dip(loads)).toBeCloseTo(volts, 9);
  });

  it('is less behind a capacitor: 1 V · (1 − 1/e) when the start lasts one time constant', () => {
    const start = motor('a', '2 A', 'switched: elsewhere, stall-time: 0.5 ms');
    expect(dip(start, 'resistance: 0.5 Ω, capacitance: 1000 µF')).toBeCloseTo(1 - Math.exp(-1), 9);
  });

  it('of a motor that a contact starts counts, too: 3 A · 0.5 Ω', () => {
    const text = onChip(
      'k: { part: relay-coil-5v-70r, supply: bench, driver: { part: npn-2n2222a, pin: PB1, base-resistor: 470 Ω, pull-down: 10 kΩ }, clamp: { part: diode-1n4148 }, contact: { wired: normally-open, load: { type: motor, voltage: 12 V DC, current: 1 A, stall: 3 A, supply: soft } } }\nr: { type: module, active: 0 mA, maximum-dip: 0.5 V, supply: soft }',
    ).replace('supplies: { ', 'supplies: { soft: { voltage: 12 V, current: 10 A, resistance: 0.5 Ω }, ');
    expect(accountsOf(text)('r.input', 'at-most', 'voltage').draw!.max).toBeCloseTo(1.5, 9);
    expect(() => judged(text.replace('stall: 3 A', 'inrush: 3 A'))).toThrow('is its `stall`');
  });
});

describe('what comes to little on average', () => {
  const mean = (load: string): number => {
    const text = onChip(`a: { ${load} }`, {
      more: 'modes: { working: { active: [a], share: 50 % }, resting: { active: [], share: 50 % } }',
    });
    return judged(text).ledger.energy.find((e) => e.supply === 'bench')!.amps;
  };

  it('a burst of two seconds every ten: half of (20 + 0.2 · 280) mA, beside 10 mA of the chip', () => {
    const sends = 'type: module, active: 20 mA, idle: 0 mA, peak: 300 mA, peak-every: 10 s, supply: bench';
    expect(mean(`${sends}, peak-time: 2 s`)).toBeCloseTo(0.01 + 0.5 * (0.02 + 0.2 * 0.28), 9);
    expect(mean(`${sends}, peak-time: 10 ms`)).toBeCloseTo(0.01 + 0.5 * (0.02 + 0.001 * 0.28), 9);
  });

  it('pulses by their duty, however slow: half of 5 % of 20 mA', () => {
    const lamp = 'type: resistor, resistance: 225 Ω, pin: PB1';
    for (const frequency of ['1 Hz', '1 kHz'])
      expect(mean(`${lamp}, pwm: { frequency: ${frequency}, duty: 5 % }`)).toBeCloseTo(0.01 + 0.5 * 0.05 * 0.02, 9);
  });
});

it('a bridge that names the supply has its motor stall with what that comes to: 5 V on one of 2.5 V', () => {
  const text = (where: 'load' | 'bridge'): string =>
    onChip(
      `a: { type: dc-motor, voltage: 2.5 V, run: 200 mA, stall: 500 mA${where === 'load' ? ', supply: bench' : ''}, driver: { part: motor-driver-tb6612, pins: [PB1, PB2]${where === 'load' ? '' : ', supply: bench'} } }`,
    );
  expect(asked(text('bridge'))).toBeCloseTo(asked(text('load')), 9);
  expect(accountsOf(text('bridge'))('a.driver', 'at-most').draw!.max).toBeCloseTo(1, 9);
});

describe('firmware that hangs', () => {
  /** 12 V over 6 Ω and a MOSFET of 0.5 Ω: 1.85 A, and 1.7 W while it is on; half a watt at 30 %. */
  const heater = (duty: string, more = ''): string =>
    onChip(
      `a: { type: resistor, resistance: 6 Ω, power: 50 W, supply: strong, driver: { type: nmos, threshold: 1 V, on-resistance: { value: 0.5 Ω, at: 4.5 V }, maximum-current: 3 A, maximum-voltage: 30 V, pin: PB1, gate-resistor: 100 Ω, pull-down: 100 kΩ, thermal-resistance: 80 K/W }, pwm: { frequency: 1 kHz, duty: ${duty} } }`,
      { more },
    ).replace('supplies: { ', 'supplies: { strong: { voltage: 12 V, current: 5 A }, ');

  it.each(['', 'modes: { warm: { active: [a] } }'])(
    'ends no pulse: what heats by its mean then heats for good',
    (more) => {
      const { findings, verdict } = judged(heater('30 %', more));
      expect(findings.map(({ rule, verdict: v, runaway }) => [rule, v, runaway])).toEqual([
        ['driver-heat', 'strain', true],
      ]);
      expect(verdict).toBe('strain');
      // On throughout anyhow, it is no news.
      expect(findingsOf(heater('100 %', more), 'driver-heat').map((f) => [f.verdict, f.runaway])).toEqual([
        ['breach', undefined],
      ]);
    },
  );
});
