/** PCA9685 16-channel, 12-bit PWM Fm+ I2C-bus LED controller, NXP Semiconductors, Rev. 2, 16 July 2009, Table 13; Rev. 4, 16 April 2015, 1. */
import { expect, test } from 'vitest';
import { at, bounds, limits } from '../catalogue-figures.js';

const ID = 'pca9685';

test('Table 13, note 2: 25 mA a bit, 400 mA in all; 10 mA out of a pin', () => {
  expect(limits(ID, 'each-pin', 'sink', 'operating')).toEqual([[0.025, {}]]);
  expect(limits(ID, 'each-pin', 'source', 'operating')).toEqual([[0.01, {}]]);
  expect(limits(ID, 'ground-pins', 'sink', 'operating')).toEqual([[0.4, {}]]);
});

test('Table 13: 2.3 to 5.5 V, inputs read 0.3 and 0.7 of that, and leak 1 µA', () => {
  expect(bounds(at(ID, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 2.3, max: 5.5 });
  expect(bounds(at(ID, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.3 });
  expect(bounds(at(ID, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.7 });
  expect(bounds(at(ID, 'leakage'), 'current')).toEqual({ max: 1e-6 });
});

test('the registers as a reset leaves them: every output fully off', () => {
  expect(at(ID, 'at-boot', 'otherwise')).toBe('low');
});
