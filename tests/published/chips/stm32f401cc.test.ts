/** STM32F401xB STM32F401xC data sheet, STMicroelectronics, DS9716 Rev 11, April 2019, tables 11 to 14, 25, 55, 86. */
import { expect, test } from 'vitest';
import { at, bounds, levels, limits, value } from '../catalogue-figures.js';

const ID = 'stm32f401cc';

test('Table 12: 25 mA a pin, 120 mA of all I/O pins; 6.3.16: 20 mA with relaxed levels, 3 mA at PC13 to PC15', () => {
  for (const direction of ['source', 'sink']) {
    expect(limits(ID, 'each-pin', direction, 'absolute')).toEqual([[0.025, {}]]);
    expect(limits(ID, 'all-pins', direction, 'absolute')).toEqual([[0.12, {}]]);
    expect(limits(ID, 'each-pin', direction, 'characterised')).toEqual([[0.02, {}]]);
  }
  expect(limits(ID, 'supply-pins', 'source', 'absolute').map(([amps]) => amps)).toEqual([0.16, 0.1]);
  expect(limits(ID, 'ground-pins', 'sink', 'absolute').map(([amps]) => amps)).toEqual([0.16, 0.1]);
  expect(limits(ID, { each: ['PC13', 'PC14', 'PC15'] }, 'sink', 'operating')).toEqual([[0.003, {}]]);
});

test('Table 55: 0.4 V at 8 mA and 1.3 V at 20 mA from 2.7 V on, 0.4 V at 6 mA from 1.8 V and at 4 mA from 1.7 V on', () => {
  const rows = [
    [0.008, 0.4],
    [0.02, 1.3],
    [0.006, 0.4],
    [0.004, 0.4],
  ];
  expect(levels(ID, 'output-low').map(([, , amps, { max }]) => [amps, max])).toEqual(rows);
  const lost = levels(ID, 'output-high').map(([supply, , amps, { min }]) => [
    amps,
    Math.round((supply! - min!) * 100) / 100,
  ]);
  expect(lost).toEqual(rows);
});

test('tables 14, 11, 25, 86, 13: 1.7 to 3.6 V, at most 4.0 V; 21.2 mA, at most 35 mA; 32 K/W; 130 °C', () => {
  expect(bounds(at(ID, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 1.7, max: 3.6 });
  expect(bounds(at(ID, 'supply', 'absolute'), 'voltage')).toEqual({ max: 4 });
  expect(bounds(at(ID, 'draws', 'active'), 'current')).toEqual({ typ: 0.0212, max: 0.035 });
  expect(value(at(ID, 'thermal-resistance'), 'thermal-resistance')).toBe(32);
  expect(value(at(ID, 'maximum-junction'), 'temperature')).toBe(130);
});
