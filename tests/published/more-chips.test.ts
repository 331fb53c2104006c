/** The same second reading for more chips: what the catalogue says, against the figures typed here from the documents. */
import { describe, expect, test } from 'vitest';
import { pinsIn } from '../../src/catalogue/pin-range.js';
import type { Fields } from '../../src/catalogue/profile.js';
import { at, bounds, levels, limits, value } from './catalogue-figures.js';

/** ATmega640/1280/1281/2560/2561 data sheet, Atmel, 2549, pp. 370 and 371. */
describe('ATmega2560', () => {
  test('Absolute Maximum Ratings: 40.0 mA an I/O pin, 200.0 mA on VCC and GND pins, 6.0 V', () => {
    expect(limits('atmega2560', 'each-pin', 'source', 'absolute')).toEqual([[0.04, {}]]);
    expect(limits('atmega2560', 'each-pin', 'sink', 'absolute')).toEqual([[0.04, {}]]);
    expect(limits('atmega2560', 'supply-pins', 'source', 'absolute')).toEqual([[0.2, {}]]);
    expect(limits('atmega2560', 'ground-pins', 'sink', 'absolute')).toEqual([[0.2, {}]]);
    expect(bounds(at('atmega2560', 'supply', 'absolute'), 'voltage').max).toBe(6);
  });

  test('notes 3 and 4: five sets of ports, 200 mA for three of them and 100 mA for two (the last two of note 4 from memory)', () => {
    const ports = (text: string): string => [...pinsIn(text.split(' '))].sort().join(' ');
    const sums = (direction: string) =>
      (at('atmega2560', 'limits') as readonly Fields[])
        .filter((row) => Array.isArray(row['applies-to']) && row[direction] !== undefined)
        .map((row) => [[...pinsIn(row['applies-to'] as string[])].sort().join(' '), value(row[direction], 'current')]);
    for (const direction of ['source', 'sink'])
      expect(sums(direction)).toEqual([
        [ports('PJ0..PJ7 PG2 PA0..PA7'), 0.2],
        [ports('PC0..PC7 PG0 PG1 PD0..PD7 PL0..PL7'), 0.2],
        [ports('PG3 PG4 PB0..PB7 PH0..PH7'), 0.2],
        [ports('PE0..PE7 PG5'), 0.1],
        [ports('PF0..PF7 PK0..PK7'), 0.1],
      ]);
  });

  test('VOH at least 4.2 V at 20 mA and 5 V, 2.3 V at 10 mA and 3 V; VOL at most 0.9 V and 0.6 V', () => {
    expect(levels('atmega2560', 'output-high')).toEqual([
      [5, undefined, 0.02, { min: 4.2 }],
      [3, undefined, 0.01, { min: 2.3 }],
    ]);
    expect(levels('atmega2560', 'output-low')).toEqual([
      [5, undefined, 0.02, { max: 0.9 }],
      [3, undefined, 0.01, { max: 0.6 }],
    ]);
  });

  test('every pin of the sums is one of its 86, and the header of the usual board reaches 70 of them', () => {
    expect((at('atmega2560', 'pins') as string[]).length).toBe(86);
    const header = Object.values(at('atmega2560-5v-board', 'pins') as Fields);
    expect(new Set(header).size).toBe(70);
  });
});

/** ESP8266EX Datasheet, Espressif Systems, v6.6, 2020, tables 1-1, 3-4, 5-1, 5-3; early edition of 2013, p. 15. */
describe('ESP8266EX', () => {
  test('Table 5-1: 12 mA at the most; VOH at least 0.8 and VOL at most 0.1 of the supply', () => {
    expect(limits('esp8266ex', 'each-pin', 'source', 'operating')).toEqual([[0.012, {}]]);
    expect(limits('esp8266ex', 'each-pin', 'sink', 'operating')).toEqual([[0.012, {}]]);
    expect(levels('esp8266ex', 'output-high')).toEqual([[3.3, undefined, 0.012, { min: 0.8 * 3.3 }]]);
    expect(levels('esp8266ex', 'output-low')).toEqual([[3.3, undefined, 0.012, { max: 0.33 }]]);
  });

  test('Table 5-1: 2.5 to 3.6 V, reads 0.25 and 0.75 of its supply; p. 15: leaks at most 50 nA', () => {
    expect(bounds(at('esp8266ex', 'supply', 'operating'), 'voltage')).toMatchObject({ min: 2.5, max: 3.6 });
    expect(bounds(at('esp8266ex', 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.25 });
    expect(bounds(at('esp8266ex', 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.75 });
    expect(bounds(at('esp8266ex', 'leakage'), 'current')).toEqual({ max: 50e-9 });
  });

  test('80 mA on average, 170 mA sending; asleep in steps of 15 mA and 20 µA', () => {
    expect(bounds(at('esp8266ex', 'draws', 'active'), 'current')).toEqual({ typ: 0.08, max: 0.17 });
    expect(bounds(at('esp8266ex', 'draws', 'idle'), 'current')).toEqual({ typ: 0.015 });
    expect(bounds(at('esp8266ex', 'draws', 'asleep'), 'current')).toEqual({ typ: 20e-6 });
  });
});

/** STM32F103x8 STM32F103xB data sheet, STMicroelectronics, DocID13587 Rev 17, August 2015. */
describe('STM32F103C8', () => {
  test('Table 7: 25 mA a pin, 150 mA into VDD and out of VSS; Table 6: 4.0 V', () => {
    for (const direction of ['source', 'sink'])
      expect(limits('stm32f103c8', 'each-pin', direction, 'absolute')).toEqual([[0.025, {}]]);
    expect(limits('stm32f103c8', 'supply-pins', 'source', 'absolute')).toEqual([[0.15, {}]]);
    expect(limits('stm32f103c8', 'ground-pins', 'sink', 'absolute')).toEqual([[0.15, {}]]);
    expect(bounds(at('stm32f103c8', 'supply', 'absolute'), 'voltage').max).toBe(4);
  });

  test('Table 9: 363 mW in LQFP48 at 85 °C; MCP23008, p. 23: 700 mW', () => {
    const power = (id: string) =>
      (at(id, 'limits') as readonly Fields[]).flatMap((row) => value(row['power'] ?? '0 W', 'power') || []);
    expect(power('stm32f103c8')).toEqual([0.363]);
    expect(power('mcp23017')).toEqual([0.7]);
  });

  test('Table 5, note 5: PC13 to PC15 sink at most 3 mA and are no source', () => {
    const switched = { each: ['PC13', 'PC14', 'PC15'] };
    expect(limits('stm32f103c8', switched, 'sink', 'operating')).toEqual([[0.003, {}]]);
    // What is left for an input or a gate is ours.
    expect(limits('stm32f103c8', switched, 'source', 'operating')).toEqual([[0.0001, {}]]);
  });

  test('Table 36: 0.4 V lost at 8 mA and 1.3 V at 20 mA above 2.7 V, 0.4 V at 6 mA below, both ways', () => {
    expect(levels('stm32f103c8', 'output-low')).toEqual([
      [3.3, undefined, 0.008, { max: 0.4 }],
      [3.3, undefined, 0.02, { max: 1.3 }],
      [2.3, undefined, 0.006, { max: 0.4 }],
    ]);
    const lost = levels('stm32f103c8', 'output-high').map(([supply, , amps, { min }]) => [amps, supply! - min!]);
    expect(lost.map(([amps, volts]) => [amps, Math.round(volts! * 100) / 100])).toEqual([
      [0.008, 0.4],
      [0.02, 1.3],
      [0.006, 0.4],
    ]);
  });

  test('Table 35: reads 0.35 and 0.65 of its supply, pulls of 30 to 50 kΩ; Table 62: 55 K/W', () => {
    expect(bounds(at('stm32f103c8', 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.35 });
    expect(bounds(at('stm32f103c8', 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.65 });
    for (const pull of ['pull-up', 'pull-down'])
      expect(bounds(at('stm32f103c8', pull), 'resistance')).toEqual({ min: 30e3, typ: 40e3, max: 50e3 });
    expect(value(at('stm32f103c8', 'thermal-resistance'), 'thermal-resistance')).toBe(55);
  });
});

/** MCP23017/MCP23S17, Microchip, DS20001952C, 2016, Table 1-1, p. 4; ratings as its sister MCP23008 has them, DS21919, p. 23. */
describe('MCP23017', () => {
  test('ratings: 25 mA a pin, 125 mA into VDD, 150 mA out of VSS, clamps 20 mA', () => {
    for (const direction of ['source', 'sink'])
      expect(limits('mcp23017', 'each-pin', direction, 'absolute')).toEqual([[0.025, {}]]);
    expect(limits('mcp23017', 'supply-pins', 'source', 'absolute')).toEqual([[0.125, {}]]);
    expect(limits('mcp23017', 'ground-pins', 'sink', 'absolute')).toEqual([[0.15, {}]]);
    expect(limits('mcp23017', 'each-pin', 'injected', 'absolute')).toEqual([[0.02, {}]]);
  });

  test('Table 1-1: 0.6 V at 8 mA; 0.7 V lost at 3 mA and 4.5 V, and at 0.4 mA and 1.8 V', () => {
    expect(levels('mcp23017', 'output-low')).toEqual([[4.5, undefined, 0.008, { max: 0.6 }]]);
    expect(levels('mcp23017', 'output-high')).toEqual([
      [4.5, undefined, 0.003, { min: 3.8 }],
      [1.8, undefined, 0.0004, { min: 1.1 }],
    ]);
  });

  test('D004, D005: at most 1 mA, 1 µA in standby up to 85 °C', () => {
    expect(bounds(at('mcp23017', 'draws', 'active'), 'current')).toEqual({ max: 1e-3 });
    expect(bounds(at('mcp23017', 'draws', 'asleep'), 'current').max).toBeCloseTo(1e-6, 12);
  });

  test('D070: 40 to 115 µA at 5 V is a pull-up of 43 to 125 kΩ', () => {
    const { min, typ, max } = bounds(at('mcp23017', 'pull-up'), 'resistance');
    expect(5 / max!).toBeCloseTo(40e-6, 7);
    expect(5 / typ!).toBeCloseTo(75e-6, 6);
    expect(5 / min!).toBeCloseTo(115e-6, 5);
  });
});

/** nRF52840 Product Specification, Nordic Semiconductor, GPIO electrical specification. */
describe('nRF52840', () => {
  test('0.4 V lost: standard drive 1, 2, 4 mA; high drive 6, 9 or 10, 14 or 15 mA from 2.7 V on, 3 mA from 1.7 V on', () => {
    expect(levels('nrf52840', 'output-low').filter(([, drive]) => drive === 0.001)).toEqual([
      [3, 0.001, 0.001, { max: 0.4 }],
      [3, 0.001, 0.002, { typ: 0.4 }],
      [1.8, 0.001, 0.001, { max: 0.4 }],
    ]);
    expect(levels('nrf52840', 'output-low').filter(([, drive]) => drive === 0.006)).toEqual([
      [3, 0.006, 0.006, { max: 0.4 }],
      [3, 0.006, 0.01, { typ: 0.4 }],
      [1.8, 0.006, 0.003, { max: 0.4 }],
    ]);
    expect(levels('nrf52840', 'output-high').filter(([, drive]) => drive === 0.006)).toEqual([
      [3, 0.006, 0.006, { min: 2.6 }],
      [3, 0.006, 0.009, { typ: 2.6 }],
      [1.8, 0.006, 0.003, { min: 1.4 }],
    ]);
  });

  test('standard drive unless chosen otherwise, and at the pins beside the radio always', () => {
    expect(value(at('nrf52840', 'drive', 'default'), 'current')).toBe(0.001);
    const beside = { each: ['P0.02', 'P0.29', 'P0.31', 'P1.10', 'P1.13', 'P1.15'] };
    expect(limits('nrf52840', beside, 'source', 'characterised')).toEqual([[0.001, {}]]);
    expect(limits('nrf52840', 'each-pin', 'sink', 'absolute')).toEqual([]);
  });

  test('pulls of 11, 13, 16 kΩ; reads 0.3 and 0.7 of its supply', () => {
    for (const pull of ['pull-up', 'pull-down'])
      expect(bounds(at('nrf52840', pull), 'resistance')).toEqual({ min: 11e3, typ: 13e3, max: 16e3 });
    expect(bounds(at('nrf52840', 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.3 });
    expect(bounds(at('nrf52840', 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.7 });
  });
});
