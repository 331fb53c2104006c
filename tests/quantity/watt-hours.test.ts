/** Energies and times of a day as people read them. */
import { expect, test } from 'vitest';
import { formatHours, formatWattHours } from '../../src/quantity/watt-hours.js';

test.each([
  [20_700, '5.75 Wh'],
  [3.6e6, '1 kWh'],
  [1386, '385 mWh'],
  [0.19, '52.8 µWh'],
  [0, '0 Wh'],
  [3599.9, '1 Wh'],
])('%s J are %s', (joules, text) => {
  expect(formatWattHours(joules)).toBe(text);
});

test.each([
  [82_800, '23 h'],
  [720, '0.2 h'],
  [0.48, '480 ms'],
  [0, '0 h'],
])('%s s a day are %s', (seconds, text) => {
  expect(formatHours(seconds)).toBe(text);
});
