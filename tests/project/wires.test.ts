/** Wires: what their ends may be, what reaches the far end, and what is said of a wire that leads nowhere. */
import { describe, expect, it } from 'vitest';
import { resolve } from '../../src/project/resolve.js';
import { builtIn, read } from '../../src/index.js';
import { TYPICAL } from '../../src/ledger/corner.js';
import { solver } from '../../src/ledger/solver.js';
import { judged } from '../checks/judged.js';

/** AWG 24 at 20 °C: 0.2047 mm², 84.22 mΩ a metre, by ASTM B258 and IEC 60028. */
const A_METRE = 0.08422;

const file = (wires: string, loads = 'pump: { type: constant-current, current: 1 A, supply: brick }'): string => `
ampledger: 1
title: Wires
ambient: 20 °C
policy: classroom
supplies:
  brick: { voltage: 12 V, current: 5 A }
  laptop: { voltage: 5 V, current: 2 A }
controllers:
  main: { board: atmega328p-5v-board, powered: { usb: laptop }, draws: { active: 50 mA },
          regulators: { fuse-usb: { resistance: 0.1 Ω, hold: 2 A }, regulator-3v3: { quiescent: 0 mA } } }
loads:
  ${loads}
wires:
  - ${wires}
`;

const problems = (text: string): string[] => {
  const { document, errors } = read(text, 'x.yaml');
  if (document === undefined) return errors.map((e) => e.says);
  const resolved = resolve(document.data, 'x.yaml', builtIn);
  return 'problems' in resolved ? resolved.problems.map((p) => `${p.says}; ${p.expected ?? ''}`) : [];
};

/** Typical volts of a node with all on. */
const typical = (text: string) => {
  const { project } = judged(text);
  const bench = solver(project);
  const on = Uint8Array.from(project.circuits, () => 1);
  return bench.solve({ moment: { mode: 'all', on }, corner: TYPICAL, focus: bench.nobody });
};

const account = (text: string, id: string) => judged(text).accounts.find(({ account: a }) => a.id === id)!.account;

describe('what reaches the far end of a wire', () => {
  it('is the voltage less the current through the wire there and back', () => {
    const s = typical(file('{ from: brick, to: pump, length: 2 m, gauge: AWG 24 }'));
    expect(s.voltage('brick-pump')).toBeCloseTo(12 - 1 * 4 * A_METRE, 3);
    expect(s.groundAt('brick-pump')).toBeCloseTo(2 * A_METRE, 3);
  });

  it('is that of one wire alone where it is said to be one', () => {
    const s = typical(file('{ from: brick, to: pump, length: 2 m, gauge: AWG 24, conductors: 1, name: plus }'));
    expect(s.voltage('plus')).toBeCloseTo(12 - 2 * A_METRE, 3);
    expect(s.groundAt('plus')).toBe(0);
  });

  it('counts the drop of a ground wire, whichever end is named first', () => {
    for (const ground of ['from: pump.ground, to: brick.ground', 'from: brick.ground, to: pump.ground']) {
      const s = typical(file(`{ ${ground}, length: 2 m, gauge: AWG 24, name: minus }`));
      expect(s.voltage('minus')).toBeCloseTo(12 - 2 * A_METRE, 3);
      expect(s.groundAt('minus')).toBeCloseTo(2 * A_METRE, 3);
    }
  });

  it('is shared by all that hang on the wire', () => {
    const loads = `a: { type: constant-current, current: 300 mA, supply: brick }
  b: { type: constant-current, current: 700 mA, supply: brick }`;
    const text = file('{ from: brick, to: [a, b], length: 2 m, gauge: AWG 24, contact-resistance: 0.1 Ω }', loads);
    const s = typical(text);
    expect(s.voltage('brick-a-b')).toBeCloseTo(12 - 4 * A_METRE - 0.1, 3);
    const { draw, entries } = account(text, 'brick-a-b');
    expect(draw?.max).toBeCloseTo(1, 9);
    expect(entries.map((e) => [e.circuit, e.max])).toEqual([
      ['b', expect.closeTo(0.7, 9)],
      ['a', expect.closeTo(0.3, 9)],
    ]);
  });

  it('is less when the wire is hot: 294.5 / 254.5 of the drop at 60 °C, and plugs stay as they are', () => {
    const text = file('{ from: brick, to: pump, length: 2 m, gauge: AWG 24, contact-resistance: 0.1 Ω }');
    const s = typical(text.replace('ambient: 20 °C', 'ambient: 60 °C'));
    expect(s.voltage('brick-pump')).toBeCloseTo(12 - (4 * A_METRE * 294.5) / 254.5 - 0.1, 3);
  });

  // 2 m of AWG 28 there and back have 0.8517 Ω; with 50 mA of board and 100 mA of load that is 0.128 V.
  it('is what a board gets over its USB cable', () => {
    for (const to of ['main', 'main.usb', 'usb']) {
      const s = typical(
        file(
          `{ from: laptop, to: ${to}, length: 2 m, gauge: AWG 28, name: cable }`,
          'rest: { type: constant-current, current: 100 mA, supply: main.5v }',
        ),
      );
      expect(s.voltage('main.usb')).toBeCloseTo(5 - 0.15 * 0.8517, 3);
      expect(s.voltage('main.5v')).toBeCloseTo(5 - 0.15 * (0.8517 + 0.1), 3);
      expect(s.groundAt('main.5v')).toBeCloseTo((0.15 * 0.8517) / 2, 3);
    }
  });

  it('leads one of the two supplies of a relay board, and leaves the other alone', () => {
    const s = judged(
      file(
        '{ from: brick, to: vents, length: 1 m, gauge: AWG 24 }',
        'vents: { part: relay-board-opto-low-5v-1, inputs: { 1: D4 }, logic-supply: main.5v, coil-supply: brick, jumper: removed }',
      ),
    );
    const { board } = s.project.circuits[0]!.wiring;
    expect([board?.logic, board?.coil]).toEqual(['main.5v', 'brick-vents']);
  });
});

describe('wires that lead nowhere', () => {
  it.each([
    ['{ from: brick, to: pumpp, length: 1 m, gauge: AWG 24 }', /nothing `pumpp`.*did you mean `pump`/],
    ['{ from: brik, to: pump, length: 1 m, gauge: AWG 24 }', /no supply or rail `brik`; did you mean `brick`/],
    ['{ from: brick, to: pump, gauge: AWG 24 }', /how long the wire `brick-pump` is/],
    ['{ from: brick, to: pump, length: 1 m }', /how thick the wire `brick-pump` is/],
    ['{ from: brick, to: pump, rating: 1 A }', /what resistance the wire `brick-pump` has/],
    ['{ from: brick, to: pump, length: 1 m, gauge: 0 mm² }', /thicker than nothing/],
    ['{ from: brick, to: pump.ground, length: 1 m, gauge: AWG 24 }', /joins a ground with what is none/],
    [
      '{ from: brick.ground, to: pumpp.ground, length: 1 m, gauge: AWG 24 }',
      /nothing `pumpp` that could have a ground/,
    ],
    ['{ from: brick, to: pump, length: 1 m, gauge: AWG 24, name: pump }', /the name `pump` is taken/],
    ['{ from: brick, to: pump, length: 1 m, gauge: AWG 24, name: laptop-x, width: 2 m }', /unknown key `width`/],
    ['{ to: pump, length: 1 m, gauge: AWG 24 }', /`from` is missing/],
  ])('%s', (wire, says) => {
    expect(problems(file(wire)).join(' | ')).toMatch(says);
  });

  it('are told once where two lead from and to the same', () => {
    const twice = '{ from: brick, to: pump, length: 1 m, gauge: AWG 24 }';
    expect(problems(file(`${twice}\n  - ${twice}`)).join(' | ')).toMatch(/`brick-pump` is taken/);
  });
});
