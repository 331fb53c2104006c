/** Servos, steppers, buzzers, pixels, displays: what they take, by sums a reader can do in the head. */
import { describe, expect, it } from 'vitest';
import { onChip, onSupplies } from '../checks/cases/case.js';
import { findingsOf, judged } from '../checks/judged.js';
import { accountsOf, asked } from './read-account.js';

const bench = 'bench: { voltage: 5 V, current: 20 A }';
const fed = (load: string, more = ''): string => onSupplies(bench, `a: { ${load}, supply: bench }`, { more });
const ON = 'modes: { working: { active: [a], share: 100 % } }';
const OFF = 'modes: { resting: { active: [] }, working: { active: [a] } }';
const draws = (text: string, mode: string): number => accountsOf(text, mode)('bench', 'at-most').draw!.max;

describe('a servo', () => {
  it('holds its place on its idle current and turns on its run current, which a stall outdoes', () => {
    const servo = fed('type: servo, idle: 8 mA, run: 200 mA, stall: 700 mA', OFF);
    expect(draws(servo, 'resting')).toBeCloseTo(0.008, 9);
    expect(draws(servo, 'working')).toBeCloseTo(0.7, 9);
  });

  it('is told by its pin, which carries none of its current', () => {
    const text = onChip('a: { type: servo, run: 200 mA, stall: 700 mA, pin: PB1, supply: bench }');
    expect(judged(text).accounts.filter((j) => j.account.kind === 'pin')).toEqual([]);
    expect(judged(text).verdict).toBe('sound');
  });

  it('asks for a supply where only a pin is named, and for its stall current', () => {
    expect(() => judged(onChip('a: { type: servo, run: 200 mA, pin: PB1 }'))).toThrow('its pin carries a signal only');
    expect(findingsOf(fed('type: servo, run: 200 mA'), 'load-current').map((f) => f.verdict)).toEqual(['unproven']);
  });
});

describe('a motor on more than the voltage its stall current is stated at', () => {
  it('stalls with as much more: 700 mA at 5 V are 840 mA on 6 V', () => {
    const on = (volts: string, rated: string): number =>
      asked(
        onSupplies(
          `bench: { voltage: ${volts}, current: 9 A }`,
          `a: { type: dc-motor, ${rated}, run: 100 mA, stall: 700 mA, supply: bench }`,
        ),
      );
    expect(on('6 V', 'voltage: 5 V')).toBeCloseTo(0.84, 9);
    expect(on('5.5 to 6 V', 'voltage: 5 V')).toBeCloseTo(0.84, 9);
    expect(on('4 V', 'voltage: 5 V')).toBeCloseTo(0.7, 9);
    expect(on('6 V', 'note: not said')).toBeCloseTo(0.7, 9);
  });
});

describe('a stepper motor', () => {
  it('takes as many windings as are on: 2 of 50 Ω on 5 V are 200 mA at 20 °C', () => {
    const cold = (phases: number): string =>
      onSupplies(
        bench,
        `a: { type: stepper, voltage: 5 V, winding-resistance: 50 Ω, phases-on: ${phases}, supply: bench }`,
        { ambient: '20 °C' },
      );
    expect(asked(cold(1))).toBeCloseTo(0.1, 9);
    expect(asked(cold(2))).toBeCloseTo(0.2, 9);
  });

  it('with a pin for each winding has no more of them on than are said to be', () => {
    const windings = Array.from({ length: 4 }, (_, k) => `PB${k + 1}`).join(', ');
    const text = onChip(
      `a: { type: stepper, voltage: 5 V, winding-resistance: 50 Ω, phases-on: 2, supply: bench, pins: [${windings}], driver: { type: nmos, on-resistance: { value: 1 Ω, at: 4.5 V }, threshold: typ 1 V max 2 V, maximum-current: 1 A }, clamp: { part: diode-1n4148 } }`,
      { ambient: '20 °C' },
    );
    // 2 windings of 51 Ω, and 10 mA of the chip.
    const { draw, mode } = accountsOf(text)('bench', 'at-most');
    expect(draw!.max).toBeCloseTo(0.01 + 10 / 51, 6);
    expect(mode).toBe('free');
    expect(judged(text).ledger.runaway).toBeDefined();
  });

  it('is warned of more than its rated voltage by three tenths', () => {
    const on = (volts: string): string =>
      `${onSupplies(`bench: { voltage: ${volts}, current: 5 A }`, 'a: { type: stepper, voltage: 5 V, winding-resistance: 50 Ω, supply: bench }')}`;
    const verdicts = (volts: string) => findingsOf(on(volts), 'coil-voltage').map((f) => f.verdict);
    expect(verdicts('5.5 V')).toEqual([]);
    expect(verdicts('6 V')).toEqual(['strain']);
    expect(verdicts('12 V')).toEqual(['breach']);
  });
});

describe('a buzzer', () => {
  it('known by its current is electronics, known by its resistance a coil', () => {
    const active = onChip('a: { type: buzzer, current: 15 mA, pin: PB1 }');
    expect(judged(active).findings.map((f) => f.rule)).not.toContain('coil-on-pin');
    const bare = onChip('a: { type: buzzer, resistance: 42 Ω, pin: PB1 }');
    expect(judged(bare).findings.map((f) => f.rule)).toEqual(
      expect.arrayContaining(['coil-on-pin', 'coil-no-clamp', 'pin-current']),
    );
  });
});

describe('a resistor in series with a load that its pin only talks to', () => {
  it('lies in its signal, and carries none of what the load takes', () => {
    const pixels = onChip('a: { type: pixels, count: 8, full-each: 50 mA, pin: PB1, series: 330 Ω, supply: bench }');
    const { accounts } = judged(pixels);
    expect(accounts.find((j) => j.account.id === 'a.series')).toBeUndefined();
    expect(accountsOf(pixels)('bench', 'at-most').draw!.max).toBeGreaterThanOrEqual(0.4);
  });
});

describe('a stepper on an array', () => {
  const list = (channels: string): string =>
    onChip(
      `a: { type: stepper, voltage: 5 V, winding-resistance: 50 Ω, phases-on: 1, supply: bench, driver: { array: [${channels}], pins: [PB1, PB2] } }`,
      { more: 'arrays: { sink: { part: darlington-array-7, common: bench } }' },
    );

  it('has a channel for each of its pins where as many are named', () => {
    const { accounts, findings } = judged(list('sink.1, sink.2'));
    expect(findings.filter((f) => f.rule === 'channel-used-twice')).toEqual([]);
    // 5 V less 0.9 V over 50 Ω.
    for (const circuit of ['a.1', 'a.2'])
      expect(accounts.find((j) => j.account.id === `${circuit}.windings`)?.account.draw?.typ).toBeCloseTo(4.1, 1);
  });

  it('joins them for each pin where there are more', () => {
    expect(judged(list('sink.1, sink.2, sink.3')).findings.some((f) => f.rule === 'channel-used-twice')).toBe(true);
  });
});

describe('a motor behind a bridge that carries more in peaks', () => {
  const bridge = (run: string, stall: string) =>
    accountsOf(
      onChip(
        `a: { type: dc-motor, run: ${run}, stall: ${stall}, stall-time: 100 ms, supply: bench, driver: { part: motor-driver-tb6612, pins: [PB1, PB2] } }`,
      ),
    )('a.driver', 'at-most');
  const left = (account: ReturnType<typeof bridge>): number => Math.min(...account.limits.map((l) => l.left));

  it('may start with 3.2 A and run with 1.2 A', () => {
    expect(left(bridge('0.5 A', '3.1 A'))).toBeCloseTo(1 - 3.1 / 3.2, 6);
    expect(left(bridge('0.5 A', '3.3 A'))).toBeLessThan(0);
    expect(left(bridge('1.1 A', '2 A'))).toBeCloseTo(1 - 1.1 / 1.2, 6);
    expect(left(bridge('1.3 A', '2 A'))).toBeLessThan(0);
  });
});

describe('pixels', () => {
  const strip = (more = ''): string =>
    fed(`type: pixels, count: 30, idle-each: 1 mA, full-each: 50 mA${more}`, `${ON}`);

  it('are one circuit, and draw their count', () => {
    expect(judged(strip()).project.circuits.map((c) => c.id)).toEqual(['a']);
    expect(asked(strip())).toBeCloseTo(1.5, 9);
  });

  it('draw their dark current on top of their colours: 30 % of 49 mA and 1 mA', () => {
    expect(asked(strip(', brightness: 30 %'))).toBeCloseTo(30 * (0.001 + 0.3 * 0.049), 9);
    const says = judged(strip(', brightness: 30 %')).project.assumptions.map((a) => a.says);
    expect(says).toContainEqual(expect.stringMatching(/firmware keeps it at 30 %; at full white .* 1.50 A/));
  });

  it('are dark, not switched off, where a mode leaves them out', () => {
    expect(draws(fed('type: pixels, count: 30, idle-each: 1 mA, full-each: 50 mA', OFF), 'resting')).toBeCloseTo(0.03);
  });
});

describe('a display with a controller of its own', () => {
  it('draws like a module', () => {
    const text = fed('type: display, idle: 2 mA, active: 20 mA, peak: 40 mA, peak-time: 1 ms', OFF);
    expect(draws(text, 'resting')).toBeCloseTo(0.002, 9);
    expect(draws(text, 'working')).toBeCloseTo(0.04, 9);
  });
});

describe('what is not itemised', () => {
  it('is a constant current under another name', () => {
    expect(asked(fed('type: other, current: 120 mA'))).toBeCloseTo(0.12, 9);
  });
});
