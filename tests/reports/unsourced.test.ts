import { expect, it } from 'vitest';
import { unsourcedWords } from '../../src/reports/unsourced.js';
import { reportOf } from '../samples/audited.js';

const file = (loads: string): string => `ampledger: 1
title: Lamp
supplies: { brick: { voltage: 5 V ±4 %, current: 1 A } }
controllers: { main: { board: atmega328p-5v-board, powered: { 5v: brick } } }
parts:
  lit:   { type: led, forward-voltage: 1.8 / 2 / 2.2 V, maximum-current: 20 mA }
loads: { ${loads} }
`;
const figures = (loads: string): readonly string[] =>
  reportOf(file(loads)).unsourced.figures.map(({ figure }) => figure);

it('counts the figures without a document that accounts used, each point once, whatever the number of loads', () => {
  const one = reportOf(file('a: { part: led-red-5mm, pin: D5, series: 330 Ω ±5 % }')).unsourced;
  const two = reportOf(
    file(
      'a: { part: led-red-5mm, pin: D5, series: 330 Ω ±5 % }, b: { part: led-red-5mm, pin: D6, series: 330 Ω ±5 % }',
    ),
  ).unsourced;
  expect(two).toEqual(one);
  expect(one.figures).toContainEqual({
    figure: 'led-red-5mm forward-voltage at 10 mA',
    basis: 'practice',
    where: 'trade charts of red indicators',
  });
  expect(one.practice).toBe(one.figures.filter(({ basis }) => basis === 'practice').length);
  expect(one.memory + one.practice).toBe(one.figures.length);
});

it('leaves out figures of the project itself, of documents, and what no account used', () => {
  expect(
    figures('a: { part: lit, pin: D5, series: 330 Ω ±5 % }').filter((each) => !each.startsWith('atmega328p')),
  ).toEqual([]);
  // The 2 mA and 20 mA points are from data sheets.
  expect(
    figures('a: { part: led-red-5mm, pin: D5, series: 330 Ω ±5 % }').filter((each) => /at (2|20) mA$/.test(each)),
  ).toEqual([]);
  // Fed at its rail, the board has no use for its barrel jack and what hangs on it.
  expect(
    figures('a: { part: led-red-5mm, pin: D5, series: 330 Ω ±5 % }').filter((each) => each.includes('barrel')),
  ).toEqual([]);
});

it('says so in one short line', () => {
  expect(unsourcedWords({ memory: 0, practice: 0, figures: [] })).toBeUndefined();
  expect(unsourcedWords({ memory: 1, practice: 0, figures: [] })).toBe('1 figure from memory');
  expect(unsourcedWords({ memory: 9, practice: 14, figures: [] })).toBe(
    '9 figures from memory and 14 of common practice',
  );
  expect(unsourcedWords({ memory: 0, practice: 2, figures: [] })).toBe('2 figures of common practice');
});
