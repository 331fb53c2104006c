/**
 * A second reading: ATmega809/1609/3209/4809 48-pin Data Sheet, Microchip, DS40002016B, 2019, pp. 9, 12, 18; ATmega4808/4809 Data
 * Sheet on onlinedocs.microchip.com, section 32.2.
 */
import { expect, test } from 'vitest';
import { at, bounds, heldAt, levels, limits, pinsInOrder, sums } from '../catalogue-figures.js';

const id = 'atmega4809';

test('32.2: 40 mA an I/O pin; Table 4-1, p. 9: 200 mA into a VDD pin up to 85 °C, 100 mA above, 6 V', () => {
  for (const direction of ['source', 'sink'])
    expect(limits(id, 'each-pin', direction, 'absolute')).toEqual([[0.04, {}]]);
  for (const [scope, direction] of [
    ['supply-pins', 'source'],
    ['ground-pins', 'sink'],
  ] as const)
    expect(limits(id, scope, direction, 'absolute')).toEqual([
      [0.2, { temperature: '-40 to 85 °C' }],
      [0.1, { temperature: '85 to 125 °C' }],
    ]);
  expect(bounds(at(id, 'supply', 'absolute'), 'voltage')).toEqual({ max: 6 });
});

test('4.10, p. 18: 1 V lost at 15 mA and 5 V, 0.6 V at 7.5 mA and 3 V, 0.36 V at 1.5 mA and 1.8 V, both ways', () => {
  expect(levels(id, 'output-low')).toEqual([
    [5, undefined, 0.015, { max: 1 }],
    [3, undefined, 0.0075, { max: 0.6 }],
    [1.8, undefined, 0.0015, { max: 0.36 }],
  ]);
  expect(levels(id, 'output-high')).toEqual([
    [5, undefined, 0.015, { min: 4 }],
    [3, undefined, 0.0075, { min: 2.4 }],
    [1.8, undefined, 0.0015, { min: 1.44 }],
  ]);
  for (const direction of ['source', 'sink'])
    expect([5, 3, 1.8].map((volts) => heldAt(id, 'each-pin', direction, 'characterised', volts))).toEqual([
      [0.015],
      [0.0075],
      [0.0015],
    ]);
});

/** Itotal, p. 18; the pins of the groups (note 1 of the table) from memory: A PA7..0 and PF6..2, B PB and PC, C PD, PE and PF1..0. */
test('4.10, p. 18: a pin group carries 200 mA at 25 °C and 100 mA at 125 °C, source and sink together', () => {
  const groups = [
    ['PA0..PA7', 'PF2..PF6'],
    ['PB0..PB5', 'PC0..PC7'],
    ['PD0..PD7', 'PE0..PE3', 'PF0', 'PF1'],
  ].map(pinsInOrder);
  expect(sums(id, 'either', { temperature: '-40 to 25 °C' })).toEqual(groups.map((pins) => [pins, 0.2]));
  expect(sums(id, 'either', { temperature: '25 to 125 °C' })).toEqual(groups.map((pins) => [pins, 0.1]));
  expect(groups.join(' ').split(' ').sort()).toEqual([...(at(id, 'pins') as string[])].sort());
});

test('32.2: 1 mA may be injected from 4.9 V on and 15 mA below, except at the reset pin', () => {
  const every = { each: ['PA0..PA7', 'PB0..PB5', 'PC0..PC7', 'PD0..PD7', 'PE0..PE3', 'PF0..PF5'] };
  expect(heldAt(id, every, 'injected', 'absolute', 5)).toEqual([0.001]);
  expect(heldAt(id, every, 'injected', 'absolute', 3.3)).toEqual([0.015]);
});

test('4.10: reads 0.3 and 0.7 of its supply, pull-up 20, 35, 50 kΩ', () => {
  expect(bounds(at(id, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.3 });
  expect(bounds(at(id, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.7 });
  expect(bounds(at(id, 'pull-up'), 'resistance')).toEqual({ min: 20e3, typ: 35e3, max: 50e3 });
});

test('Table 4-5, p. 12: typically 8.5 mA at 20 MHz and 5 V, 2.8 mA idle; Table 4-6: standby 0.7 µA, 6 µA at 85 °C', () => {
  expect(bounds(at(id, 'draws', 'active'), 'current')).toEqual({ typ: 0.0085 });
  expect(bounds(at(id, 'draws', 'idle'), 'current')).toEqual({ typ: 0.0028 });
  expect(bounds(at(id, 'draws', 'asleep'), 'current')).toEqual({ typ: 0.7e-6, max: 6e-6 });
});
