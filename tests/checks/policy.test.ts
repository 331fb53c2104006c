/** Policies that treat kinds of account apart: each row holds for the ratings of its kind, and for nothing else. */
import { describe, expect, it } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { resolve } from '../../src/project/resolve.js';
import { readDocument } from '../../src/source/read.js';
import { judged } from './judged.js';

const file = (policy: string, loads: string): string =>
  `ampledger: 1
title: Policy
ambient: 25 °C
policy: ${policy}
supplies: { bench: { voltage: 10 V, current: 10 A } }
controllers: { main: { board: atmega328p-5v-board, powered: { 5v: bench-5v }, draws: { active: 50 mA } } }
loads: { ${loads} }
`.replace('supplies: {', 'supplies: { bench-5v: { voltage: 5 V, current: 2 A },');

const verdict = (text: string, id: string, quantity: string, direction = 'at-most'): string => {
  const { accounts } = judged(text);
  const found = accounts.find(({ account: a }) => a.id === id && a.quantity === quantity && a.direction === direction);
  if (found === undefined)
    throw new Error(
      `no ${id} ${quantity}: ${accounts.map(({ account: a }) => `${a.id} ${a.quantity} ${a.direction}`).join('; ')}`,
    );
  return found.verdict;
};

/** 10 V across 1 kΩ are 0.1 W, of a resistor that bears 0.16 W: 37.5 % in hand. */
const RESISTOR = 'a: { type: resistor, resistance: 1 kΩ, power: 0.16 W, supply: bench }';
/** 100 mA of 130 mA through a switch that bears 12 V of the 10 V it keeps back: 23 and 17 % in hand. */
const driver = (more = ''): string =>
  `a: { type: resistor, resistance: 100 Ω, power: 5 W, supply: bench, driver: { type: nmos, pin: D3, threshold: 1 to 2 V, on-resistance: { value: 0.1 Ω, at: 4 V }, maximum-current: 130 mA, maximum-voltage: 12 V, gate-resistor: 100 Ω, pull-down: 100 kΩ${more} } }`;

describe('a row of `kinds`', () => {
  it('asks for more of the power of its kind than of others', () => {
    const power = (policy: string) => verdict(file(policy, RESISTOR), 'a.resistor', 'power');
    const load = (policy: string) => judged(file(policy, RESISTOR)).verdict;
    expect(load('everyday')).toBe('sound');
    expect([power('{ kinds: { series: { power: 50 % } } }'), power('{ kinds: { series: { power: 30 % } } }')]).toEqual([
      'thin',
      'sound',
    ]);
    expect(power('{ kinds: { driver: { power: 50 % } } }')).toBe('sound');
  });

  it('asks for less, too', () => {
    const current = (policy: string) => verdict(file(policy, driver()), 'a.driver', 'current');
    expect(current('{ current: 30 % }')).toBe('thin');
    expect(current('{ current: 30 %, kinds: { driver: { current: 10 % } } }')).toBe('sound');
  });

  it('asks for a share of volts, of which all others may be used up', () => {
    const volts = (policy: string) => verdict(file(policy, driver()), 'a.driver', 'voltage');
    expect(volts('everyday')).toBe('sound');
    expect(volts('{ kinds: { driver: { voltage: 25 % } } }')).toBe('thin');
    expect(volts('{ kinds: { driver: { voltage: 10 % } } }')).toBe('sound');
  });

  it('leaves what has to be reached, and what is judged in volts, as it is for all', () => {
    const coil = `a: { type: coil, voltage: 10 V, resistance: 200 Ω, pull-in: max 7 V, supply: bench,
      driver: { part: nmos-ao3400a, pin: D3, gate-resistor: 100 Ω, pull-down: 100 kΩ }, clamp: { part: diode-1n4007 } }`;
    const pullIn = (policy: string) => verdict(file(policy, coil), 'a.coil', 'voltage', 'at-least');
    expect(pullIn('{ kinds: { coil: { voltage: 90 % } } }')).toBe('sound');
  });

  it('tells in degrees how warm a thing of its kind may become', () => {
    // 100 mA through 1 Ω at 25 °C and 1000 K/W: 35 °C of 150.
    const warm = driver(', thermal-resistance: 1000 K/W, maximum-junction: 150 °C').replace('0.1 Ω, at', '1 Ω, at');
    const heat = (policy: string) => verdict(file(policy, warm), 'a.driver', 'temperature');
    expect(heat('everyday')).toBe('sound');
    expect(heat('{ kinds: { driver: { temperature-below: 110 K } } }')).toBe('sound');
    expect(heat('{ kinds: { driver: { temperature-below: 118 K } } }')).toBe('thin');
    expect(heat('{ kinds: { driver: { temperature-at-most: 40 °C } } }')).toBe('sound');
    expect(heat('{ kinds: { driver: { temperature-at-most: 32 °C } } }')).toBe('thin');
  });

  it('keeps nothing of a figure that is a margin already', () => {
    const wire = `${RESISTOR.replace('1 kΩ', '10 Ω').replace('0.16 W', '50 W')} }
wires: [ { from: bench, to: a, length: 0.1 m, gauge: AWG 30, name: lead } ]
notes: { `.replace(/\nnotes: \{ $/, '');
    // About 0.9 A where 0.86 A are common practice for AWG 30: beyond it is a strain, just inside it is sound.
    const text = (policy: string, ohms: string): string =>
      file(policy, wire.replace('10 Ω', ohms)).replace(/ \}\n$/, '\n');
    const policy = '{ kinds: { wire: { current: 50 % } } }';
    expect(verdict(text(policy, '10 Ω'), 'lead', 'current')).toBe('strain');
    expect(verdict(text(policy, '12.5 Ω'), 'lead', 'current')).toBe('sound');
  });
});

describe('the policy after ECSS-Q-ST-30-11C', () => {
  it('keeps half of a resistor’s power and of a connector’s current, and a quarter of a transistor’s current', () => {
    expect(verdict(file('ecss-q-st-30-11c', RESISTOR), 'a.resistor', 'power')).toBe('thin');
    expect(verdict(file('ecss-q-st-30-11c', driver()), 'a.driver', 'current')).toBe('thin');
    const plug = `${RESISTOR.replace('1 kΩ', '20 Ω').replace('0.16 W', '50 W')} }
wires: [ { from: bench, to: a, connectors: [connector-breadboard], name: lead } ]`;
    const text = (policy: string) => file(policy, plug).replace(/ \}\n$/, '\n');
    // 0.5 A of 1 A, which is common practice and so a margin already; of a stated rating it is not.
    expect(verdict(text('ecss-q-st-30-11c'), 'lead', 'current')).toBe('sound');
    const stated = (policy: string) =>
      text(policy).replace('connectors: [connector-breadboard]', 'resistance: 0 Ω, rating: 0.9 A');
    expect([
      verdict(stated('everyday'), 'lead', 'current'),
      verdict(stated('ecss-q-st-30-11c'), 'lead', 'current'),
    ]).toEqual(['sound', 'thin']);
  });
});

it('tells an unknown kind or figure with the nearest one', () => {
  const problems = (policy: string): string[] => {
    const { document } = readDocument(file(policy, RESISTOR), 'policy.yaml');
    const resolved = resolve(document!.data, 'policy.yaml', builtIn);
    return 'problems' in resolved ? resolved.problems.map((p) => `${p.path.join('.')}: ${p.says}`) : [];
  };
  expect(problems('{ kinds: { drivers: { current: 25 % } } }')).toHaveLength(1);
  expect(problems('{ kinds: { driver: { current: 25 A } } }')).toHaveLength(1);
  expect(problems('{ kinds: { driver: { temperature-below: 40 °C } } }')).toHaveLength(1);
});
