/** Inputs of relay boards: what is fitted at them, where indicators sit, what a black box draws. Sums worked by hand. */
import { describe, expect, it } from 'vitest';
import { onChip } from '../checks/cases/case.js';
import { judged } from '../checks/judged.js';

/** Draw of an account on a bare 5 V chip whose pins have exactly 25 Ω. */
const draw = (text: string, id: string, direction: string, quantity = 'current') => {
  const { accounts } = judged(text);
  const found = accounts.find(({ account: a }) => a.id === id && a.direction === direction && a.quantity === quantity);
  if (found?.account.draw === undefined) throw new Error(`no account ${id}, ${quantity}, ${direction}`);
  return found.account.draw;
};

const COIL = 'coil: { voltage: 5 V, resistance: 1 kΩ }';

/** A black box that takes exactly 4 mA. */
const blackBox = (input: string, active = 'high', more = COIL): string =>
  onChip(
    `a: { type: relay-board, channels: 1, input: { active: ${active}, on-above: 2 V, off-below: 1 V, current: 4 mA }, ${more}, inputs: { 1: ${input} }, supply: bench }`,
  );

describe('what is fitted between a pin and an input', () => {
  it('takes its share off the level: 5 V less 4 mA through 25 Ω and 225 Ω are 4 V', () => {
    expect(draw(blackBox('{ pin: PB1, series: 225 Ω }'), 'a.1.input', 'at-least', 'voltage').typ).toBeCloseTo(4, 6);
    expect(draw(blackBox('{ pin: PB1, series: 225 Ω }', 'low'), 'a.1.input', 'at-least', 'voltage').typ).toBeCloseTo(
      4,
      6,
    );
  });

  it('takes off a diode’s voltage, too: 0.7 V at 4 mA leave 4.9 V less 0.7 V', () => {
    const diode = 'series-diode: { forward-voltage: { value: 0.7 V, at: 4 mA } }';
    for (const active of ['high', 'low'])
      expect(draw(blackBox(`{ pin: PB1, ${diode} }`, active), 'a.1.input', 'at-least', 'voltage').typ).toBeCloseTo(
        4.2,
        3,
      );
  });

  it('is a part of the catalogue by its name', () => {
    const { max } = draw(blackBox('{ pin: PB1, series-diode: diode-1n4148 }'), 'a.1.input', 'at-least', 'voltage');
    expect(max).toBeGreaterThan(4.1);
    expect(max).toBeLessThan(4.4);
  });

  it('blocks what an input gives back: behind a diode one that is off stays at what feeds it', () => {
    const low = blackBox('{ pin: PB1, series-diode: diode-1n4148 }', 'low');
    expect(draw(low, 'a.1.input', 'at-most', 'voltage').max).toBeLessThan(0.01);
  });

  it('leaves a channel open whose resistor nobody knows, and asks for it', () => {
    const { findings } = judged(blackBox('{ pin: PB1, series: unknown }'));
    expect(findings.map((f) => `${f.verdict} ${f.account?.id}`)).toContain('unproven a.1.input-series');
  });
});

describe('resistors at a pin', () => {
  it('add to what it sinks: 5 V / (10 kΩ) beside 4 mA, all of it through 25 Ω', () => {
    // V = 25 Ω x (4 mA + (5 V - V) / 10 kΩ): V = 0.112219 V, and 4 mA + 0.488778 mA.
    const { typ } = draw(blackBox('{ pin: PB1, pull-up: 10 kΩ }', 'low'), 'main.PB1', 'sink');
    expect(1000 * typ).toBeCloseTo(4.48878, 4);
  });

  it('add to what it sources: the pull-down of a pin that is high', () => {
    const { typ } = draw(blackBox('{ pin: PB1, pull-down: 10 kΩ }'), 'main.PB1', 'source');
    // V = 5 V - 25 Ω x (4 mA + V / 10 kΩ): V = 4.887781 V, and 4 mA + 0.488778 mA.
    expect(1000 * typ).toBeCloseTo(4.48878, 4);
  });

  it('pull to a supply of their own: what flows into a pin that is high is what its rail lacks', () => {
    const text = blackBox('{ pin: PB1, pull-up: { resistance: 1 kΩ, supply: high } }', 'low').replace(
      'supplies: { ',
      'supplies: { high: { voltage: 12 V, current: 1 A }, ',
    );
    // On: V = 25 Ω x (4 mA + (12 V - V) / 1 kΩ): V = 0.390244 V, and 4 mA + 11.60976 mA.
    expect(1000 * draw(text, 'main.PB1', 'sink').typ).toBeCloseTo(15.60976, 4);
  });
});

describe('a black box', () => {
  it('draws its coil from the coils’ supply: 5 V / 1 kΩ', () => {
    expect(
      1000 * draw(blackBox('PB1', 'low', 'coil: { voltage: 5 V, resistance: 1 kΩ }'), 'bench', 'at-most').max,
    ).toBeGreaterThan(4.9);
    const { findings } = judged(blackBox('PB1', 'high', 'board-current: 30 mA'));
    expect(findings.filter((f) => f.account?.missing)).toEqual([]);
  });

  it('asks what it draws when neither its coil nor the board’s current is known', () => {
    const { findings } = judged(
      blackBox('PB1', 'high', 'channels: 1')
        .replace('channels: 1, channels: 1', 'channels: 1')
        .replace(', channels: 1, inputs', ', inputs'),
    );
    expect(findings.map((f) => f.account?.missing?.figure)).toContain('draws');
  });
});

describe('indicators', () => {
  /** 1 kΩ and a coupler at 1 V, in figures that a fit takes as they are; an indicator of 2 V behind 1 kΩ of its own. */
  const board = (indicator: string): string =>
    onChip(
      `a: { type: relay-board, channels: 1, input: { active: low, coupling: opto, series: 975 Ω, led-drop: { value: 1 V, at: 4 mA }, led-maximum-current: 50 mA, transfer-ratio: 200 %, indicator: ${indicator}, indicator-drop: { value: 2 V, at: 3 mA }, indicator-series: 1 kΩ }, output: { type: npn, gain: 200, base-resistor: 1 kΩ, saturation: 0.1 V, maximum-current: 500 mA }, coil: { voltage: 5 V, resistance: 100 Ω }, inputs: { 1: PB1 }, supply: bench }`,
    );

  it('that are none leave (5 - 1) V / 1 kΩ to the coupler', () => {
    expect(1000 * draw(board('none'), 'a.1.input', 'at-most').typ).toBeCloseTo(4, 2);
  });

  it('in series take their volts off it: (5 - 2 - 1) V / 1 kΩ, a little more at the lower current', () => {
    const { typ } = draw(board('in-series'), 'a.1.input', 'at-most');
    expect(1000 * typ).toBeGreaterThan(2);
    expect(1000 * typ).toBeLessThan(2.1);
  });

  it('beside it add to what the pin sinks: 4 mA and about (5 - 0.17 - 2) V / 1 kΩ', () => {
    const { typ } = draw(board('parallel'), 'main.PB1', 'sink');
    expect(1000 * typ).toBeGreaterThan(6.6);
    expect(1000 * typ).toBeLessThan(6.9);
    expect(1000 * draw(board('parallel'), 'a.1.input', 'at-most').typ).toBeGreaterThan(3.9);
  });

  it('across the coil go through the driver, and not through the pin: 4.9 V / 102 Ω and (4.9 - 2) V / 1 kΩ', () => {
    expect(1000 * draw(board('across-coil'), 'main.PB1', 'sink').typ).toBeCloseTo(4, 2);
    expect(1000 * draw(board('none'), 'a.1.driver', 'at-most').typ).toBeCloseTo(48.06, 2);
    expect(1000 * draw(board('across-coil'), 'a.1.driver', 'at-most').typ).toBeCloseTo(50.95, 1);
  });
});

describe('a coil on the pin of a lower supply', () => {
  it('does not let go of 12 V with a pin that goes to 5 V: 7 V / (1 kΩ + 25 Ω)', () => {
    const text = onChip(
      'a: { type: relay-board, channels: 1, input: { active: low, coupling: none }, coil: { voltage: 12 V, resistance: 1 kΩ }, inputs: { 1: PB1 }, supply: high }',
      { ambient: '20 °C' },
    ).replace('supplies: { ', 'supplies: { high: { voltage: 12 V, current: 1 A }, ');
    expect(1000 * draw(text, 'a.1.coil', 'at-most').typ).toBeCloseTo(6.829, 3);
  });
});

describe('transistors of a board', () => {
  const board = (input: string, output: string, supply = 'bench'): string =>
    onChip(
      `a: { type: relay-board, channels: 1, input: { coupling: transistor, indicator: none, ${input} }, output: { ${output}, gain: 100, maximum-current: 1 A }, coil: { voltage: 5 V, resistance: 100 Ω }, inputs: { 1: PB1 }, supply: ${supply} }`,
    ).replace('supplies: { ', 'supplies: { six: { voltage: 6.5 V, current: 1 A }, ');
  const NPN = 'type: npn, base-emitter: { value: 0.8 V, at: 4 mA }';
  const PNP = 'type: pnp, base-emitter: { value: 0.8 V, at: 4 mA }';

  it('draw their base current from the pin, or give it to the pin: (5 - 0.8) V / 1.05 kΩ', () => {
    const high = board('active: high, series: 1025 Ω', NPN);
    expect(1000 * draw(high, 'main.PB1', 'source').typ).toBeCloseTo(4, 2);
    const low = board('active: low, series: 1025 Ω', PNP);
    expect(1000 * draw(low, 'main.PB1', 'sink').typ).toBeCloseTo(4, 2);
  });

  it('that are PNP stay on where a high pin is below their emitter: (6.5 - 5) V less a junction drive them still', () => {
    const text = board('active: low, series: 1025 Ω', PNP, 'six');
    expect(judged(text).findings.map((f) => `${f.verdict} ${f.rule}`)).toContain('breach coil-release');
    // All that the coil takes, 6.5 V / 102 Ω.
    expect(1000 * draw(text, 'a.1.coil', 'at-most').typ).toBeCloseTo(63.75, 1);
  });

  it('let go where pin and emitter stand alike, and as NPN whatever feeds the coil', () => {
    for (const text of [board('active: low, series: 1 kΩ', PNP), board('active: high, series: 1 kΩ', NPN, 'six')])
      expect(judged(text).findings.filter((f) => f.rule === 'coil-release')).toEqual([]);
  });

  it('conduct at the level that they do, whatever the file says', () => {
    const inverted = (text: string) => judged(text).findings.filter((f) => f.rule === 'driver-inverted');
    expect(inverted(board('active: low, series: 1 kΩ', NPN)).map((f) => f.verdict)).toEqual(['breach']);
    expect(inverted(board('active: high, series: 1 kΩ', NPN))).toEqual([]);
    expect(judged(board('series: 1 kΩ', NPN)).findings.filter((f) => f.rule === 'input-left-open')).toEqual([]);
  });

  it('may be MOSFETs, of either channel', () => {
    const gate =
      'threshold: 1 to 2 V, on-resistance: { value: 50 mΩ, at: 4.5 V }, gate-resistor: 100 Ω, maximum-current: 1 A';
    const text = onChip(
      `a: { type: relay-board, channels: 1, input: { active: high, coupling: transistor, indicator: none, series: 1 kΩ }, output: { type: nmos, ${gate}, pull-down: 100 kΩ }, coil: { voltage: 5 V, resistance: 100 Ω }, inputs: { 1: PB1 }, supply: bench }`,
    );
    // 5 V x 100 / (100 + 1.1 + 0.025)
    expect(draw(text, 'a.1.driver', 'at-least', 'voltage').typ).toBeCloseTo(4.944, 2);
  });
});

/** A board whose inputs go to something else than a transistor. */
const boardWith = (input: string, output: string): string =>
  onChip(
    `a: { type: relay-board, channels: 1, input: { ${input} }, output: { ${output} }, ${COIL}, clamp: { type: diode, current: 1 A }, inputs: { 1: PB1 }, supply: bench }`,
  );

describe('what switches the coils of a board', () => {
  /** Ohms of the coil at 25 °C. */
  const WARM = (1000 * (234.5 + 25)) / (234.5 + 20);
  const chip = 'type: open-drain, saturation: { value: 0.5 V, at: 10 mA }, maximum-current: 500 mA';

  it('may be a driver chip with logic inputs and open outputs, without a resistor before them', () => {
    const text = boardWith('active: high, coupling: transistor', chip);
    expect(draw(text, 'a.1.coil', 'at-least', 'voltage').typ).toBeCloseTo(4.5, 6);
    expect(draw(text, 'main.PB1', 'source').max).toBeLessThanOrEqual(10e-6);
  });

  it('may be a coupler: (5 − 1.2) V over 380 Ω and 25 Ω light it, and ten times that are more than the coil takes', () => {
    const coupler = 'led-drop: { value: 1.2 V, at: 9.4 mA }, led-maximum-current: 50 mA, transfer-ratio: 1000 %';
    const text = boardWith(
      'active: low, coupling: transistor',
      `type: opto, series: 380 Ω, ${coupler}, saturation: 1 V, maximum-current: 150 mA`,
    );
    expect(draw(text, 'main.PB1', 'sink').typ).toBeCloseTo(3.8 / 405, 4);
    expect(draw(text, 'a.1.coil', 'at-least', 'voltage').typ).toBeCloseTo(4, 6);
    expect(draw(text, 'a.1.driver', 'at-least').typ).toBeCloseTo((10 * 3.8) / 405, 3);
  });

  it('has to be something that carries the coil’s current', () => {
    const gate = boardWith('active: high, coupling: transistor', 'type: gate-driver');
    expect(() => judged(gate)).toThrow('a gate driver moves the gate of a MOSFET and switches no coil');
  });

  it('may be a bridge: 5 V over the coil, 1 kΩ and warmer than 20 °C, and the 1 Ω of both its switches', () => {
    const text = boardWith(
      'active: high, coupling: transistor',
      'type: h-bridge, threshold: 0.8 to 2 V, on-resistance: 1 Ω, maximum-current: 1 A',
    );
    expect(draw(text, 'a.1.driver', 'at-most').typ).toBeCloseTo(5 / (WARM + 1), 8);
    expect(draw(text, 'a.1.driver', 'at-least', 'voltage').typ).toBeCloseTo(5, 6);
    expect(draw(text, 'a.1.driver', 'at-most', 'temperature').typ).toBeCloseTo(25 + 400 * (5 / (WARM + 1)) ** 2, 4);
  });

  it('may be a MOSFET behind a gate driver that lives from the coils’ supply', () => {
    const text = boardWith(
      'active: high, coupling: transistor',
      'stages: [{ type: gate-driver, threshold: 0.8 to 2.4 V, quiescent: 2 mA }, { type: nmos, threshold: 1 to 2 V, on-resistance: { value: 1 Ω, at: 4.5 V }, maximum-current: 1 A }]',
    );
    expect(draw(text, 'a.1.coil', 'at-least', 'voltage').typ).toBeCloseTo((5 * WARM) / (WARM + 1), 4);
    expect(draw(text, 'a.1.driver', 'at-least', 'voltage').typ).toBeCloseTo(5, 4);
    expect(draw(text, 'bench', 'at-most').typ).toBeCloseTo(0.01 + 0.002 + 5 / (WARM + 1), 5);
  });
});
