/** Places with an ambient of their own: what reads which, and what pulls on what from elsewhere. */
import { describe, expect, it } from 'vitest';
import { builtIn, read } from '../../src/index.js';
import { resolve } from '../../src/project/resolve.js';
import { judged } from '../checks/judged.js';

const accountOf = (text: string, id: string, quantity: string, direction?: string) => {
  const found = judged(text).accounts.find(
    ({ account: a }) =>
      a.id === id && a.quantity === quantity && (direction === undefined || a.direction === direction),
  );
  return found!.account;
};

/** A coil of exactly 70 Ω at 20 °C whose driver loses nothing to speak of, on exactly 5 V. */
const coil = (place: string, more = ''): string => `
ampledger: 1
title: Places
ambient: 20 °C
places: { box: { ambient: 0 to 60 °C }, yard: { ambient: -20 to 40 °C } }
policy: classroom
supplies: { bench: { voltage: 5 V, current: 5 A${more} } }
loads:
  latch: { type: coil, voltage: 5 V, resistance: 70 Ω, pull-in: 70 %, thermal-resistance: 50 K/W, supply: bench${place} }
`;

describe('an account reads the ambient of its own place', () => {
  // By hand: 5 V / (70 Ω x 234.5 / 254.5) cold, and 3.5 V x 294.5 / 254.5 = 4.05 V to pull in cold at 60 °C.
  it('of a coil: the cold end for the current, the hot end for pull-in', () => {
    const text = coil(', place: box');
    expect(accountOf(text, 'bench', 'current').draw).toMatchObject({
      min: expect.closeTo(5 / ((70 * 294.5) / 254.5), 9),
      typ: expect.closeTo(5 / ((70 * 264.5) / 254.5), 9),
      max: expect.closeTo(5 / ((70 * 234.5) / 254.5), 9),
    });
    const { limits } = accountOf(text, 'latch.coil', 'voltage', 'at-least');
    expect(limits[0]?.value).toBeCloseTo((3.5 * 294.5) / 254.5, 9);
    expect(limits[0]?.ambient).toBe(60);
    // Nobody states what is typical: 65 %, by the rules.
    expect(limits[0]?.typical.value).toBeCloseTo((3.25 * 264.5) / 254.5, 9);
  });

  it('or that of the project, where it stands in none', () => {
    expect(accountOf(coil(''), 'bench', 'current').draw?.max).toBeCloseTo(5 / 70, 9);
    expect(accountOf(coil(''), 'latch.coil', 'voltage', 'at-least').limits[0]?.ambient).toBe(20);
  });

  it('of a load that is like another, as that one does', () => {
    const text = `${coil(', place: box')}  twin: { like: latch }\n`;
    expect(accountOf(text, 'twin.coil', 'voltage', 'at-least').limits[0]?.ambient).toBe(60);
  });

  // A fuse of the board holds 500 mA at 23 °C and less in the heat; a regulator is hotter by its place.
  it('of a board: its fuse and its regulator stand where it stands', () => {
    const board = (place: string): string => `
ampledger: 1
title: Places
ambient: 20 °C
places: { box: { ambient: 0 to 60 °C } }
supplies: { bench: { voltage: 5 V, current: 5 A } }
controllers: { main: { board: atmega328p-5v-board, powered: { usb: bench }${place} } }
`;
    const fuse = (text: string) => accountOf(text, 'main.fuse-usb', 'current').limits[0]!;
    expect(fuse(board(', place: box')).ambient).toBe(60);
    expect(fuse(board(', place: box')).value).toBeLessThan(fuse(board('')).value);
    const heat = (text: string) => accountOf(text, 'main.regulator-3v3', 'temperature').draw!.max;
    expect(heat(board(', place: box')) - heat(board(''))).toBeCloseTo(40, 1);
  });
});

describe('what stands elsewhere', () => {
  /** A coil in the box and one in the yard on a supply of 1 Ω. */
  const two = `${coil(', place: box', ', resistance: 1 Ω')}
  other: { type: coil, voltage: 5 V, resistance: 70 Ω, pull-in: 70 %, thermal-resistance: 50 K/W, supply: bench, place: yard }
`;
  const box = (celsius: number): number => (70 * (234.5 + celsius)) / 254.5;
  /** Volts behind 1 Ω with both on, at ambients of the box and of the yard. */
  const rail = (one: number, other: number): number => 5 / (1 + 1 / box(one) + 1 / box(other));

  it('pulls the rail down most when it is cold, whatever the place in question', () => {
    const { draw, limits } = accountOf(two, 'latch.coil', 'voltage', 'at-least');
    expect(draw?.min).toBeCloseTo(rail(0, -20), 6);
    // The hot coil needs the most, and gets the least when the other is cold: a corner of two ambients.
    expect(limits[0]?.draw).toBeCloseTo(rail(60, -20), 6);
    expect(draw?.max).toBeCloseTo(rail(60, 40), 6);
  });

  it('adds to a sum at its own end', () => {
    const { draw } = accountOf(two, 'bench', 'current');
    expect(draw?.max).toBeCloseTo(5 - rail(0, -20), 6);
    expect(draw?.min).toBeCloseTo(5 - rail(60, 40), 6);
    expect(draw?.typ).toBeCloseTo(5 - rail(30, 10), 6);
  });
});

describe('places in the file', () => {
  const problems = (text: string): string[] => {
    const { document } = read(text, 'x.yaml');
    const resolved = resolve(document!.data, 'x.yaml', builtIn);
    return 'problems' in resolved ? resolved.problems.map((p) => `${p.path.join('.')}: ${p.says}; ${p.expected}`) : [];
  };

  it.each([
    [coil(', place: bocks'), /loads\.latch\.place: there is no place `bocks`/],
    [coil(', place: boxx'), /did you mean `box`/],
    [coil('', ', place: cellar'), /supplies\.bench\.place: there is no place `cellar`.*one of box, yard/],
    [coil(', place: box').replace('0 to 60 °C', '60 to 0 °C'), /places\.box\.ambient: .*not in order/],
    [coil(', place: box').replace('ambient: 0 to 60 °C', ''), /`ambient` is missing in place `box`/],
    [coil(', place: box').replace(/places.*/, ''), /an entry in `places:`/],
  ])('is held to its names and figures: %#', (text, says) => {
    expect(problems(text).join(' | ')).toMatch(says);
  });

  it('keep their ambient when the project’s is replaced', () => {
    const { document } = read(coil(', place: box'), 'x.yaml');
    const resolved = resolve(document!.data, 'x.yaml', builtIn, { ambient: { min: 1, typ: 2, max: 3 } });
    if ('problems' in resolved) throw new Error('problems');
    expect(resolved.project.ambient.max).toBe(3);
    expect(resolved.project.places.get('box')).toEqual({ min: 0, typ: 30, max: 60 });
  });
});
