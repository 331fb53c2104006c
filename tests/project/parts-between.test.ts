/** Parts of the catalogue between supplies and in wires: whose figures count, and where each is from. */
import { describe, expect, it } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { resolve } from '../../src/project/resolve.js';
import { readDocument } from '../../src/source/read.js';
import { accountsOf } from '../loads/read-account.js';

const file = (supplies: string, more = ''): string => `ampledger: 1
title: Parts
ambient: 20 °C
supplies: { brick: { voltage: 9 V, current: 2 A }, ${supplies} }
${more}
`;

const resolved = (text: string) => {
  const { document } = readDocument(text, 'parts.yaml');
  return resolve(document!.data, 'parts.yaml', builtIn);
};

const problemsOf = (text: string): string[] => {
  const result = resolved(text);
  return 'problems' in result ? result.problems.map((p) => `${p.path.join('.')}: ${p.says}; ${p.expected ?? ''}`) : [];
};

const linkOf = (text: string, id: string) => {
  const result = resolved(text);
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result.project.links.find((link) => link.id === id)!;
};

describe('a part of the catalogue between two supplies', () => {
  it('is a regulator with all its figures, each with its source', () => {
    const link = linkOf(file('low: { from: brick, part: regulator-7805-to220 }'), 'low');
    expect(link).toMatchObject({
      kind: 'linear-regulator',
      volts: { min: 4.75, max: 5.25 },
      origin: { basis: 'document' },
    });
    expect(link.input!.origin!.document).toContain('STMicroelectronics');
    expect(link.heat!.thermal).toMatchObject({ min: 50, max: 65 });
  });

  it('leaves the project’s own figures in front, and says that they are its own', () => {
    const own = 'low: { from: brick, part: regulator-7805-to220, thermal-resistance: 20 K/W, current: 500 mA }';
    const link = linkOf(file(own), 'low');
    expect(link.heat).toMatchObject({ thermal: { min: 20, max: 20 }, origin: { basis: 'project' } });
    expect(link.limits).toMatchObject([{ value: 0.5, grade: 'operating', origin: { basis: 'project' } }]);
    expect(link.volts).toMatchObject({ min: 4.75, max: 5.25 });
  });

  it('masks a figure of the catalogue that is called unknown', () => {
    const link = linkOf(file('low: { from: brick, part: fuse-ptc-500ma, hold: unknown }'), 'low');
    expect(link.limits).toEqual([]);
    expect(link.missing?.figure).toBe('hold');
  });

  it('is a fuse that holds less in the heat', () => {
    const text = (ambient: string) =>
      file(
        'low: { from: brick, part: fuse-ptc-500ma }',
        'loads: { a: { type: constant-current, current: 100 mA, supply: low } }',
      ).replace('20 °C', ambient);
    // Bourns, MF-MSMF050: 0.59 A at 0 °C, 0.33 A at 70 °C.
    expect(accountsOf(text('0 °C'))('low', 'at-most').limits[0]!.value).toBeCloseTo(0.59, 9);
    expect(accountsOf(text('70 °C'))('low', 'at-most').limits[0]!.value).toBeCloseTo(0.33, 9);
  });

  it('is a diode by the curve of a clamp, alone or one for each of several sources', () => {
    expect(linkOf(file('low: { from: brick, part: diode-1n4007 }'), 'low')).toMatchObject({ kind: 'diode', law: {} });
    const two = 'spare: { voltage: 6 V, current: 1 A }, low: { from: [brick, spare], part: diode-schottky-1a }';
    expect(linkOf(file(two), 'low:spare')).toMatchObject({ kind: 'diode', law: {} });
  });

  it('takes a drop that the project states for the curve of the catalogue', () => {
    const link = linkOf(file('low: { from: brick, part: diode-1n4007, drop: 0.7 V }'), 'low');
    expect(link).toMatchObject({ kind: 'diode', drop: { min: 0.7, max: 0.7 } });
    expect(link.law).toBeUndefined();
  });

  it('may be a part of the project’s own', () => {
    const parts = `parts:
  mine: { extends: regulator-lm1117-3v3, voltage: 2.5 V }
  link: { type: limiter, resistance: 80 mΩ, current: 500 mA }`;
    expect(linkOf(file('low: { from: brick, part: mine }', parts), 'low').volts).toMatchObject({ typ: 2.5 });
    expect(linkOf(file('low: { from: brick, part: link }', parts), 'low')).toMatchObject({
      kind: 'limiter',
      ohms: { typ: 0.08 },
    });
  });

  it.each([
    [
      'low: { from: brick, part: regulator-7850-to220 }',
      ['supplies.low.part: no `regulator-7850-to220` is in the catalogue; did you mean `regulator-7805-to220`?'],
    ],
    [
      'low: { from: brick, part: npn-2n2222a }',
      [
        'supplies.low.part: `npn-2n2222a` is a npn, which does not stand between two supplies; a regulator, fuse or diode of the catalogue',
      ],
    ],
    [
      'low: { from: brick, type: fuse, part: regulator-7805-to220 }',
      [
        'supplies.low.type: `regulator-7805-to220` is a linear-regulator, and not a fuse; no `type`, or `linear-regulator`',
      ],
    ],
    [
      'low: { from: brick, type: regulator-7805-to220 }',
      ['supplies.low.type: `regulator-7805-to220` is a part, not a type; `part: regulator-7805-to220`'],
    ],
    [
      'low: { part: regulator-7805-to220 }',
      ['supplies.low: nothing feeds the linear-regulator `low`; `from:` with the name of what feeds it'],
    ],
    [
      'low: { voltage: 5 V, part: usb2-port }',
      [
        'supplies.low.part: `part` belongs to a supply that another one feeds; `type:` with the name of a source in the catalogue, or `from:` with what feeds it',
      ],
    ],
    [
      'low: { from: brick, part: regulator-7805-to220, hold: 1 A }',
      [
        'supplies.low.hold: `hold` is no figure of a linear-regulator; its figures are voltage, dropout, quiescent, input, thermal-resistance, maximum-junction',
      ],
    ],
  ])('%s', (supplies, says) => {
    expect(problemsOf(file(supplies))).toEqual(says);
  });
});

describe('a wire of the catalogue', () => {
  const LOAD = 'loads: { a: { type: constant-current, current: 1 A, supply: brick, supply-voltage: 1 to 20 V } }';
  const volts = (wire: string, parts = ''): { min: number; max: number } => {
    const text = file('', `${LOAD}\n${parts}\nwires: [{ from: brick, to: a, name: lead, ${wire} }]`);
    return {
      min: accountsOf(text)('a', 'at-least', 'voltage').draw!.min,
      max: accountsOf(text)('a', 'at-most', 'voltage').draw!.max,
    };
  };
  const limits = (wire: string, parts = '') =>
    accountsOf(file('', `${LOAD}\n${parts}\nwires: [{ from: brick, to: a, name: lead, ${wire} }]`))(
      'lead',
      'at-most',
    ).limits.map(({ limit }) => [limit.value, limit.condition]);
  const CORD = 'parts: { cord: { kind: wire, gauge: AWG 24, resistance-per-metre: 80 to 100 mΩ, rating: 2 A } }';

  it('has what a metre of it has, there and back', () => {
    // 2 m there and back: 4 × 80 to 4 × 100 mΩ.
    expect(volts('length: 2 m, part: cord', CORD).min).toBeCloseTo(9 - 0.4, 9);
    expect(volts('length: 2 m, part: cord', CORD).max).toBeCloseTo(9 - 0.32, 9);
    expect(volts('length: 2 m, part: cord, conductors: 1', CORD).min).toBeCloseTo(9 - 0.2, 9);
  });

  it('is held to its rating, and to what copper of its gauge may carry', () => {
    expect(limits('length: 2 m, part: cord', CORD)).toEqual([
      [2, undefined],
      [expect.closeTo(3.5, 9), 'copper of that thickness, one wire in free air'],
    ]);
  });

  it('is no thicker than a gauge that the project states', () => {
    // AWG 20: 0.5176 mm², 33.3 mΩ a metre.
    expect(volts('length: 2 m, part: cord, gauge: AWG 20', CORD).min).toBeCloseTo(9 - 4 * 0.0333, 3);
  });

  it('goes through connectors, each with a contact in each conductor and a rating of its own', () => {
    const plug = 'parts: { plug: { kind: connector, contact-resistance: max 20 mΩ, rating: 3 A } }';
    const wire = 'resistance: 0 Ω, connectors: [plug, plug, connector-header-2mm54]';
    // Two plugs and a header with two contacts of at most 20 mΩ each; next to nothing at least.
    expect(volts(wire, plug).min).toBeCloseTo(9 - 0.12, 9);
    expect(volts(wire, plug).max).toBeCloseTo(9, 9);
    expect(volts(`${wire}, contact-resistance: 10 mΩ`, plug).min).toBeCloseTo(9 - 0.13, 9);
    expect(limits(wire, plug).map(([amps]) => amps)).toEqual([3, 3, 1]);
    expect(limits(wire, plug)[2]![1]).toBe('Pin header and jumper lead, 2.54 mm, one contact');
  });

  it('may be connectors alone', () => {
    expect(limits('connectors: [connector-breadboard]').map(([amps]) => amps)).toEqual([1]);
  });

  it.each([
    ['length: 1 m, part: wire-awg42-pvc', ['wires.0.part: no wire `wire-awg42-pvc` is in the catalogue']],
    ['length: 1 m, part: npn-2n2222a', ['wires.0.part: `npn-2n2222a` is a driver, not a wire']],
    ['part: wire-awg24-pvc', ['wires.0: nothing says how long the wire `lead` is']],
    ['connectors: [plug]', ['wires.0.connectors.0: no connector `plug` is in the catalogue']],
  ])('%s', (wire, says) => {
    const text = file('', `${LOAD}\nwires: [{ from: brick, to: a, name: lead, ${wire} }]`);
    expect(problemsOf(text).map((each) => each.split(';')[0])).toEqual(says);
  });
});
