/** Rows of stages: which pin level energises, and that each lets go at the other one, whatever stands before what. */
import { describe, expect, test } from 'vitest';
import { audit, read } from '../../src/index.js';
import { says } from '../../src/wording/sentences.js';
import { judged } from '../checks/judged.js';

const NPN = '{ part: npn-2n2222a, base-resistor: 1 kΩ }';
const NPN_FED = '{ part: npn-2n2222a, pull-up: 680 Ω }';
const PNP = '{ part: pnp-2n2907a, base-resistor: 470 Ω, pull-up: 10 kΩ }';
const NMOS = '{ part: nmos-ao3400a, pull-down: 100 kΩ }';
const NMOS_FED = '{ part: nmos-ao3400a, pull-up: 10 kΩ }';
const PMOS = '{ part: pmos-ao3401a, pull-up: 10 kΩ }';
const PMOS_LOW = '{ part: pmos-ao3401a, pull-down: 10 kΩ }';
const GATE_DRIVER = '{ type: gate-driver, supply: bench, threshold: 0.8 to 2.4 V }';

const project = (load: string, stages: readonly string[], active?: string): string => `ampledger: 1
title: Rows
ambient: 10 to 40 °C
supplies: { bench: { voltage: 5 V ±4 %, current: 5 A } }
controllers: { main: { chip: atmega328p, supply: bench, draws: { active: 10 mA } } }
loads:
  a: { ${load}, supply: bench, ${active === undefined ? '' : `active: ${active}, `}driver: { pin: PD2, stages: [ ${stages.join(', ')} ] } }
`;
const coil = 'part: relay-coil-5v-70r, clamp: { part: diode-1n4148 }';
const lamp = 'part: led-red-5mm, series: 330 Ω';

const ROWS: readonly (readonly [level: 'high' | 'low', stages: readonly string[]])[] = [
  ['high', [NPN]],
  ['high', [NMOS]],
  ['low', [PNP]],
  ['low', [PMOS]],
  ['high', [NPN, PNP]],
  ['high', [NPN, PMOS]],
  ['high', [NMOS, PNP]],
  ['high', [NMOS, PMOS]],
  ['low', [NPN, NPN_FED]],
  ['low', [NPN, NMOS_FED]],
  ['low', [NMOS, NPN_FED]],
  ['low', [PNP, NMOS]],
  ['high', [PMOS_LOW, PMOS_LOW]],
  ['high', [GATE_DRIVER, NMOS]],
  ['low', [GATE_DRIVER, PMOS]],
  ['high', [NPN, NPN_FED, NMOS_FED]],
  ['low', [NPN, NMOS_FED, PNP]],
];

describe.each(ROWS)('of a pin that is %s for on, %j', (level, stages) => {
  test.each([coil, lamp])('switches %s on and lets go of it', (load) => {
    const { project: resolved, accounts, findings } = judged(project(load, stages));
    expect(resolved.uses.find((u) => u.by === 'a')?.active).toBe(level);
    const drives = accounts.filter(({ account: a }) => a.kind === 'driver' && a.direction === 'at-least');
    expect(drives.length).toBe(stages.length);
    for (const { account, verdict } of drives) expect(`${account.id} ${verdict}`).toMatch(/ (sound|thin)$/);
    const off = accounts.find(({ account: a }) =>
      load === coil ? a.id === 'a.coil' && a.quantity === 'current' : a.id === 'a.off',
    );
    expect(off!.account.draw!.max).toBeLessThan(1e-4);
    expect(findings.filter((f) => f.verdict === 'breach').map((f) => f.rule)).toEqual([]);
  });

  test('contradicts a file that says the other level, and agrees with one that says this one', () => {
    const rules = (active: string) => judged(project(coil, stages, active)).findings.map((f) => f.rule);
    expect(rules(level)).not.toContain('driver-inverted');
    expect(rules(level === 'high' ? 'low' : 'high')).toContain('driver-inverted');
  });
});

describe('a row that can do only one thing', () => {
  test('never conducts where a base behind an open collector has nothing that feeds it', () => {
    const { findings } = judged(project(coil, [NPN, NPN]));
    expect(findings.map((f) => `${f.verdict} ${f.rule} ${f.about}`)).toContain('breach driver-drive a');
  });

  test('never lets go where nothing discharges a gate', () => {
    const { findings } = judged(project(lamp, [NPN, '{ part: pmos-ao3401a }']));
    expect(findings.map((f) => `${f.verdict} ${f.rule} ${f.about}`)).toContain('breach driver-release a');
  });

  test('finds a stage between that is not driven', () => {
    const { findings } = judged(project(coil, ['{ part: npn-2n2222a, base-resistor: 1 MΩ }', PNP]));
    expect(findings.map((f) => `${f.verdict} ${f.rule} ${f.account?.id}`)).toContain('breach driver-drive a.stage-1');
  });

  test('finds a stage that is not able to hold the next one off', () => {
    const { findings } = judged(project(coil, ['{ part: npn-2n2222a, base-resistor: 100 kΩ }', NPN_FED]));
    expect(findings.map((f) => `${f.rule} ${f.account?.id}`)).toContain('driver-drive a.stage-1');
  });
});

describe('a stage that never lets go', () => {
  /** A PNP or P-channel MOSFET at 12 V straight on a pin of 5 V, and a stage behind it. */
  const behind = (first: string, second: string): string =>
    project(lamp, [first, second])
      .replace('current: 5 A }', 'current: 5 A }, high: { voltage: 12 V ±5 %, current: 5 A }')
      .replace('supply: bench, driver', 'supply: high, driver');
  const NPN_HIGH = '{ part: npn-2n2222a, base-resistor: 4.7 kΩ, pull-down: 10 kΩ }';
  const PMOS_NAMED = '{ type: pmos, on-resistance: { value: 0.1 Ω, at: 2.5 V }, pull-up: 10 kΩ }';

  test.each([
    [PNP, NMOS],
    [PNP, NPN_HIGH],
    [PMOS, NMOS],
    [PMOS, NPN_HIGH],
    [PMOS_NAMED, NMOS],
  ])('%s keeps %s behind it on', (first, second) => {
    const { findings } = judged(behind(first, second));
    expect(findings.map((f) => `${f.verdict} ${f.rule} ${f.about}`)).toContain('breach driver-release a');
  });
});

describe('a stage that should let go for the next one to conduct', () => {
  test.each([PMOS_LOW, '{ part: pnp-2n2907a, pull-down: 1 kΩ }'])('and does not keeps %s off', (second) => {
    const text = project(lamp, [PNP, second])
      .replace('current: 5 A }', 'current: 5 A }, high: { voltage: 12 V ±5 %, current: 5 A }')
      .replace('supply: bench, driver', 'supply: high, driver');
    expect(judged(text).findings.map((f) => `${f.verdict} ${f.rule} ${f.about}`)).toContain('breach driver-drive a');
  });
});

describe('what a stage does to the one behind it', () => {
  const account = (text: string, id: string, direction: string) =>
    judged(text).accounts.find(
      ({ account: a }) => a.id === id && a.direction === direction && a.quantity === 'current',
    )!.account;

  test('is no more than it can carry at the least gain', () => {
    const weak = project(coil, ['{ part: npn-2n2222a, base-resistor: 100 kΩ, base-emitter: 0.7 V, gain: 50 }', PNP]);
    // (5.2 V - 0.55 V) / 100 kΩ x 50 = 2.33 mA, of which the pull-up takes a little.
    const base = account(weak, 'a.driver', 'at-least').draw!;
    expect(base.max).toBeLessThan(2.35e-3);
    expect(base.max).toBeGreaterThan(2e-3);
  });

  test('holds the next one off the less, the more its resistor is', () => {
    const held = (ohms: string): number =>
      account(
        project(coil, [NPN, `{ part: npn-2n2222a, pull-up: 12 kΩ, base-resistor: ${ohms} }`]),
        'a.coil',
        'at-most',
      ).draw!.max;
    expect(held('800 to 1200 Ω')).toBeCloseTo(held('1200 Ω'), 9);
    expect(held('1200 Ω')).toBeGreaterThan(2 * held('800 Ω'));
  });
});

describe('a row without a stage', () => {
  test('is refused, and nothing else is said of it', () => {
    const { document } = read(project(lamp, []), 'case.yaml');
    const { errors } = audit(document!);
    expect(errors.map((e) => e.says)).toEqual(['`stages` has too few entries']);
  });
});

describe('what is wrong with a stage', () => {
  /** An N-channel stage whose gate another one drives from 15 V. */
  const text = project(lamp, [NMOS, '{ part: pmos-ao3401a, pull-up: 10 kΩ, gate-resistor: 10 kΩ }', NMOS])
    .replace('current: 5 A }', 'current: 5 A }, high: { voltage: 15 V, current: 5 A }')
    .replace('supply: bench, driver', 'supply: high, driver');

  test('is about the load, and says which stage', () => {
    const [found] = judged(text).findings.filter((f) => f.rule === 'gate-voltage');
    expect(found!.about).toBe('a');
    expect(says(found!)).toMatch(/^The gate of a gets up to 15\.0 V/);
    const [drive] = judged(project(lamp, [GATE_DRIVER.replace('2.4', '6'), NMOS])).findings;
    expect(drive!.about).toBe('a');
    expect(says(drive!)).toMatch(/^The input of stage 1 of the driver of a gets 4\.\d+ V and needs 6 V/);
  });

  test('is told of the stage whose gate it is', () => {
    const [found] = judged(text.replace('gate-resistor: 10 kΩ', 'gate-resistor: 100 Ω')).findings.filter(
      (f) => f.account?.id === 'a.stage-2.gate',
    );
    expect(found!.about).toBe('a');
    expect(says(found!)).toMatch(/^The gate of stage 2 of the driver of a gets up to 14\.\d+ V/);
  });
});

describe('the pins of a driver', () => {
  const listed = (more: string): string =>
    project(coil, [NPN]).replace('driver: { pin: PD2,', `${more} driver: { pins: [PD2..PD4],`);

  test('are a circuit each', () => {
    expect(judged(listed('')).project.circuits.map((c) => c.id)).toEqual(['a.1', 'a.2', 'a.3']);
  });

  test('are named once', () => {
    expect(() => judged(listed('pin: PD5,'))).toThrow('the pins of `a` are named twice');
  });

  test('belong to the driver, not to one of its stages', () => {
    expect(() => judged(project(coil, ['{ part: npn-2n2222a, pin: PD3 }']))).toThrow('a stage has no pin of its own');
  });
});
