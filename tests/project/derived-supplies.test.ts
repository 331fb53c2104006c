/** Supplies that others feed: what is an error, and what stands where. */
import { describe, expect, it } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { resolve } from '../../src/project/resolve.js';
import { readDocument } from '../../src/source/read.js';
import { accountsOf } from '../loads/read-account.js';

const problemsOf = (supplies: string, more = ''): string[] => {
  const { document } = readDocument(`ampledger: 1\ntitle: Tree\nsupplies: { ${supplies} }\n${more}`, 'tree.yaml');
  const resolved = resolve(document!.data, 'tree.yaml', builtIn);
  return 'problems' in resolved ? resolved.problems.map((p) => `${p.path.join('.')}: ${p.says}`) : [];
};

const BRICK = 'brick: { voltage: 9 V ±5 %, current: 1 A }';

describe('what is wrong with a supply that another one feeds', () => {
  it.each([
    ['a: { from: a, type: fuse }', ['supplies.a.from: `a` feeds itself: a feeds from a']],
    [
      'a: { from: b, type: fuse }, b: { from: a, type: diode }',
      ['supplies.b.from: `a` feeds itself: a feeds from b feeds from a'],
    ],
    [`${BRICK}, a: { from: brik, type: fuse }`, ['supplies.a.from: there is no supply or rail `brik`']],
    [`${BRICK}, a: { from: brick }`, ['supplies.a: nothing says what stands between it and what feeds it']],
    [
      `${BRICK}, a: { from: brick, type: linear-regulato }`,
      ['supplies.a.type: `linear-regulato` does not stand between two supplies'],
    ],
    [
      `${BRICK}, a: { from: brick, type: linear-regulator, dropout: 1 V }`,
      ['supplies.a: the regulator `a` has no voltage'],
    ],
    [`${BRICK}, a: { from: brick, type: divider, upper: 1 kΩ }`, ['supplies.a: the divider `a` has no lower resistor']],
    [`${BRICK}, a: { from: brick, type: fuse, upper: 1 kΩ }`, ['supplies.a.upper: `upper` is no figure of a fuse']],
    [
      `${BRICK}, a: { from: brick, type: fuse, state: suspended }`,
      ['supplies.a.state: `state` is no figure of a fuse'],
    ],
    ['a: { type: limiter, current: 1 A }', ['supplies.a: nothing feeds the limiter `a`']],
    ['a: { voltage: 5 V, dropout: 1 V }', ['supplies.a.dropout: `dropout` belongs to a supply that another one feeds']],
  ])('%s', (supplies, says) => {
    expect(problemsOf(supplies)).toEqual(says);
  });

  it('is told of a board in the circle, too', () => {
    const board = 'controllers: { main: { board: rp2040-board, powered: { usb: a } } }';
    expect(problemsOf('a: { from: main.3v3, type: diode, drop: 0.3 V }', board)).toEqual([
      'controllers.main.powered.usb: `a` feeds itself: a feeds from main feeds from a',
    ]);
  });
});

describe('a supply that another one feeds', () => {
  it('may stand before it in the file, hang on a board’s rail, and feed another board', () => {
    const text = `ampledger: 1
title: Tree
supplies:
  late: { from: main.5v, type: fuse, resistance: 0.1 Ω, hold: 1 A }
  port: { voltage: 5 V, current: 2 A }
controllers:
  second: { board: rp2040-board, powered: { usb: late }, draws: { active: 50 mA } }
  main: { board: atmega328p-5v-board, powered: { 5v: port }, draws: { active: 50 mA } }
`;
    const { max } = accountsOf(text)('late', 'at-most').draw!;
    expect(max).toBeGreaterThan(0.03);
    expect(accountsOf(text)('port', 'at-most').draw!.max).toBeGreaterThan(max + 0.05);
  });

  it('is reached over the wires that lead to it', () => {
    const text = (wires: string): string => `ampledger: 1
title: Tree
ambient: 20 °C
supplies: { ${BRICK.replace(' ±5 %', '')}, low: { from: brick, type: fuse, resistance: 1 Ω, hold: 1 A } }
loads: { a: { type: constant-current, current: 100 mA, supply: low, supply-voltage: 8 to 9 V } }
${wires}`;
    const volts = (wires: string): number => accountsOf(text(wires))('a', 'at-least', 'voltage').draw!.min;
    expect(volts('')).toBeCloseTo(8.9, 9);
    // Two conductors of 1 m of 0.5 Ω each.
    expect(volts('wires: [{ from: brick, to: low, resistance: 1 Ω }]')).toBeCloseTo(8.8, 9);
  });

  it('keeps a reservoir within what may be charged through it', () => {
    const text = `ampledger: 1
title: Tree
supplies:
  ${BRICK}
  low: { from: brick, type: limiter, resistance: 0.1 Ω, current: 500 mA, maximum-capacitance: 100 µF }
loads: { a: { type: constant-current, current: 10 mA, supply: low, input-capacitance: 470 µF } }
`;
    const { draw, limits } = accountsOf(text)('low', 'at-most', 'charge');
    expect(draw!.max).toBeGreaterThan(limits[0]!.value);
  });
});

it('lets a regulator give in a burst what its heat would not bear for long', () => {
  const text = (load: string): string => `ampledger: 1
title: Tree
ambient: 25 °C
supplies:
  brick: { voltage: 9 V, current: 2 A }
  low: { from: brick, type: linear-regulator, voltage: 5 V, current: 1 A, dropout: 1 V, thermal-resistance: 100 K/W, maximum-junction: 125 °C }
loads: { a: { type: module, supply: low, ${load} } }
`;
  // 100 K / 100 K/W / 4 V are 250 mA.
  const left = (load: string): number =>
    Math.min(...accountsOf(text(load))('low', 'at-most').limits.map((l) => l.left));
  expect(left('active: 100 mA, idle: 100 mA, peak: 500 mA, peak-time: 1 ms')).toBeCloseTo(0.5, 9);
  expect(left('active: 500 mA, idle: 500 mA')).toBeCloseTo(-1, 9);
});

it('counts an assumed junction temperature in degrees, and what its heat allows in amperes', () => {
  const text = `ampledger: 1
title: Tree
ambient: 25 °C
supplies:
  brick: { voltage: 9 V, current: 2 A }
  low: { from: brick, type: linear-regulator, voltage: 5 V, current: 1 A, dropout: 1 V, thermal-resistance: 100 K/W }
loads: { a: { type: constant-current, current: 400 mA, supply: low } }
`;
  expect(accountsOf(text)('low', 'at-most', 'temperature').limits[0]!.limit.range).toMatchObject({ max: 150 });
  const [, byHeat] = accountsOf(text)('low', 'at-most').limits;
  expect(byHeat!.value).toBeCloseTo(0.25, 9);
  expect(byHeat!.limit.range).toBeUndefined();
});
