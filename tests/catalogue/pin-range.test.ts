import { expect, test } from 'vitest';
import { pinsIn } from '../../src/catalogue/pin-range.js';

test('a range stands for all pins from its first to its last, a single pin for itself', () => {
  expect(pinsIn(['PC0..PC2', 'PD7', 'GPIO9..GPIO11'])).toEqual([
    'PC0',
    'PC1',
    'PC2',
    'PD7',
    'GPIO9',
    'GPIO10',
    'GPIO11',
  ]);
});

test('the letters may be left off at its end', () => {
  expect(pinsIn(['q0..3'])).toEqual(['q0', 'q1', 'q2', 'q3']);
});

test('names with leading zeros keep them', () => {
  expect(pinsIn(['PA08..PA11', 'P000..002', 'D0..D1'])).toEqual('PA08 PA09 PA10 PA11 P000 P001 P002 D0 D1'.split(' '));
});

test('a pin with a dot is no range', () => {
  expect(pinsIn(['P0.15'])).toEqual(['P0.15']);
});

test('a range that runs backwards, changes its letters or is endless gives nothing', () => {
  for (const range of ['PC5..PC0', 'PC0..PD4', 'q0..q99999999']) expect(pinsIn([range])).toEqual([]);
});
