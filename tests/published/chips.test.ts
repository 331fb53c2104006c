/** A second reading of the data sheets: what the catalogue says of a chip, against the figures typed here from the document. */
import { describe, expect, test } from 'vitest';
import { pinsIn } from '../../src/catalogue/pin-range.js';
import type { Fields } from '../../src/catalogue/profile.js';
import { at, bounds, levels, limits, value } from './catalogue-figures.js';

/** ATmega48A/PA/88A/PA/168A/PA/328/P data sheet, Atmel, 8271H, 08/2014, pp. 300 and 301. */
describe('ATmega328P', () => {
  test('29.1 Absolute Maximum Ratings: 40.0 mA an I/O pin, 200.0 mA on VCC and GND pins, 6.0 V', () => {
    expect(limits('atmega328p', 'each-pin', 'source', 'absolute')).toEqual([[0.04, {}]]);
    expect(limits('atmega328p', 'each-pin', 'sink', 'absolute')).toEqual([[0.04, {}]]);
    expect(limits('atmega328p', 'supply-pins', 'source', 'absolute')).toEqual([[0.2, {}]]);
    expect(limits('atmega328p', 'ground-pins', 'sink', 'absolute')).toEqual([[0.2, {}]]);
    expect(bounds(at('atmega328p', 'supply', 'absolute'), 'voltage').max).toBe(6);
  });

  test('Table 29-1, notes 3 and 4: the test conditions are 20 mA at 5 V and 10 mA at 3 V, both ways', () => {
    for (const direction of ['source', 'sink']) {
      const rows = limits('atmega328p', 'each-pin', direction, 'characterised');
      const holds = (volts: number): number[] =>
        rows.flatMap(([amps, when]) => {
          const { min = 0, max = 0 } = bounds((when as Fields)['supply'], 'voltage');
          return min <= volts && volts <= max ? [amps!] : [];
        });
      expect([holds(5), holds(3)]).toEqual([[0.02], [0.01]]);
    }
  });

  /** ATmega48P/88P/168P/328P data sheet, Atmel, 8025I, 02/2009, p. 320. */
  test('Table 26-4: BODLEVEL 101 resets at 2.5 V, 2.7 V, 2.9 V', () => {
    expect(bounds(at('atmega328p', 'brown-out'), 'voltage')).toMatchObject({ min: 2.5, typ: 2.7, max: 2.9 });
  });

  /** Every sum of a direction as [pins in order, amperes]. */
  const sums = (direction: string) =>
    (at('atmega328p', 'limits') as readonly Fields[])
      .filter((row) => Array.isArray(row['applies-to']) && row[direction] !== undefined)
      .map((row) => [[...pinsIn(row['applies-to'] as string[])].sort().join(' '), value(row[direction], 'current')]);

  test('note 3: C0 to C5, D0 to D4, ADC7, RESET source 150 mA; B0 to B5, D5 to D7, ADC6, XTAL1, XTAL2 source 150 mA', () => {
    expect(sums('source')).toEqual([
      ['ADC7 PC0 PC1 PC2 PC3 PC4 PC5 PC6 PD0 PD1 PD2 PD3 PD4', 0.15],
      ['ADC6 PB0 PB1 PB2 PB3 PB4 PB5 PB6 PB7 PD5 PD6 PD7', 0.15],
    ]);
  });

  test('note 4: C0 to C5, ADC7, ADC6; B0 to B5, D5 to D7, XTAL1, XTAL2; D0 to D4, RESET sink 100 mA each', () => {
    expect(sums('sink')).toEqual([
      ['ADC6 ADC7 PC0 PC1 PC2 PC3 PC4 PC5', 0.1],
      ['PB0 PB1 PB2 PB3 PB4 PB5 PB6 PB7 PD5 PD6 PD7', 0.1],
      ['PC6 PD0 PD1 PD2 PD3 PD4', 0.1],
    ]);
  });

  test('Table 29-1: VOH at least 4.2 V at 20 mA and 5 V, 2.3 V at 10 mA and 3 V, up to 85 °C', () => {
    expect(levels('atmega328p', 'output-high')).toEqual([
      [5, undefined, 0.02, { min: 4.2 }],
      [3, undefined, 0.01, { min: 2.3 }],
    ]);
  });

  /** ATmega48PA/88PA/168PA/328P data sheet, Atmel, 8161D, 10/2009, p. 314. */
  test('28.2 DC Characteristics: VOL at most 0.9 V at 20 mA and 5 V, 0.6 V at 10 mA and 3 V', () => {
    expect(levels('atmega328p', 'output-low')).toEqual([
      [5, undefined, 0.02, { max: 0.9 }],
      [3, undefined, 0.01, { max: 0.6 }],
    ]);
  });

  test('Table 29-1: pull-up 20 to 50 kΩ, leakage at most 1 µA, works from 1.8 to 5.5 V', () => {
    expect(bounds(at('atmega328p', 'pull-up'), 'resistance')).toMatchObject({ min: 20e3, max: 50e3 });
    expect(bounds(at('atmega328p', 'leakage'), 'current')).toEqual({ max: 1e-6 });
    expect(bounds(at('atmega328p', 'supply', 'operating'), 'voltage')).toMatchObject({ min: 1.8, max: 5.5 });
  });

  test('typically 25 Ω (from memory: typical curves, about 0.5 V lost at 20 mA and 5 V)', () => {
    expect(0.5 / 0.02).toBe(25);
    for (const way of ['source', 'sink']) {
      expect(bounds(at('atmega328p', 'pin-resistance', way), 'resistance')).toEqual({ typ: 25 });
      expect(at('atmega328p', 'pin-resistance', way, 'cite', 0)).toBe('memory');
    }
  });
});

/** RP2040 Datasheet, Raspberry Pi Ltd, tables 622, 625 (632 in earlier editions), 614, 615, 634. */
describe('RP2040', () => {
  test('Table 625: all pins together source at most 50 mA and sink at most 50 mA', () => {
    expect(limits('rp2040', 'all-pins', 'source', 'operating')).toEqual([[0.05, {}]]);
    expect(limits('rp2040', 'all-pins', 'sink', 'operating')).toEqual([[0.05, {}]]);
  });

  test('5.5.3.5: drive settings of 2, 4, 8 and 12 mA; Table 614: 4 mA is the default', () => {
    const settings = (at('rp2040', 'drive', 'settings') as string[]).map((text) => value(text, 'current'));
    expect(settings).toEqual([0.002, 0.004, 0.008, 0.012]);
    expect(value(at('rp2040', 'drive', 'default'), 'current')).toBe(0.004);
    expect(limits('rp2040', 'each-pin', 'source', 'characterised')).toEqual([[0.012, {}]]);
    expect(limits('rp2040', 'each-pin', 'source', 'absolute')).toEqual([]);
  });

  test('Table 625: VOH 2.62, 1.78, 1.24 V and VOL 0.5, 0.4, 0.3 V at 3.3, 2.5, 1.8 V, each at the current of its setting', () => {
    const rows = (volts: [number, number, number], bound: 'min' | 'max') =>
      [3.3, 2.5, 1.8].flatMap((supply, i) =>
        [0.002, 0.004, 0.008, 0.012].map((amps) => [supply, amps, amps, { [bound]: volts[i] }]),
      );
    expect(levels('rp2040', 'output-high')).toEqual(rows([2.62, 1.78, 1.24], 'min'));
    expect(levels('rp2040', 'output-low')).toEqual(rows([0.5, 0.4, 0.3], 'max'));
  });

  test('tables 634, 622, 625: 1.62 to 3.63 V, at most 3.63 V, pulls of 50 to 80 kΩ, pull-down at reset', () => {
    expect(bounds(at('rp2040', 'supply', 'operating'), 'voltage')).toMatchObject({ min: 1.62, max: 3.63 });
    expect(bounds(at('rp2040', 'supply', 'absolute'), 'voltage')).toEqual({ max: 3.63 });
    expect(bounds(at('rp2040', 'pull-up'), 'resistance')).toMatchObject({ min: 50e3, max: 80e3 });
    expect(bounds(at('rp2040', 'pull-down'), 'resistance')).toMatchObject({ min: 50e3, max: 80e3 });
    expect(at('rp2040', 'at-boot', 'otherwise')).toBe('pulled-down');
  });
});

/** ESP32-D0WD-V3 data sheet, Espressif Systems, Table 13; ESP32 Series Datasheet v4.5, 2024, tables 4-1, 4-2, Appendix A. */
describe('ESP32', () => {
  test('Table 13: typically 40 mA sourced at 2.64 V and 28 mA sunk at 0.495 V, at the highest drive and 3.3 V', () => {
    expect(levels('esp32', 'output-high')[0]).toEqual([3.3, 0.04, 0.04, { typ: 2.64 }]);
    expect(levels('esp32', 'output-low')[0]).toEqual([3.3, 0.04, 0.028, { typ: 0.495 }]);
    expect(limits('esp32', 'each-pin', 'source', 'characterised')).toEqual([[0.04, {}]]);
    expect(limits('esp32', 'each-pin', 'sink', 'characterised')).toEqual([[0.028, {}]]);
  });

  test('Table 13: the VDD_SDIO domain (GPIO6 to 11, 16, 17) sources 20 mA', () => {
    const domain = { each: ['GPIO6..GPIO11', 'GPIO16', 'GPIO17'] };
    expect(limits('esp32', domain, 'source', 'characterised')).toEqual([[0.02, {}]]);
  });

  test('Table 4-1: 1,200 mA together; Table 4-2: 2.3 to 3.6 V', () => {
    expect(limits('esp32', 'all-pins', 'source', 'absolute')).toEqual([[1.2, {}]]);
    expect(bounds(at('esp32', 'supply', 'operating'), 'voltage')).toMatchObject({ min: 2.3, max: 3.6 });
  });

  test('Appendix A: drives of 5, 10, 20, 40 mA with 20 mA the default; GPIO34 to 39 are inputs; 6 to 11 are the flash', () => {
    const settings = (at('esp32', 'drive', 'settings') as string[]).map((text) => value(text, 'current'));
    expect(settings).toEqual([0.005, 0.01, 0.02, 0.04]);
    expect(value(at('esp32', 'drive', 'default'), 'current')).toBe(0.02);
    expect(at('esp32', 'input-only')).toEqual(pinsIn(['GPIO34..GPIO39']));
    expect(Object.keys(at('esp32', 'reserved') as object)).toEqual(pinsIn(['GPIO6..GPIO11']));
    expect(Object.keys(at('esp32', 'strapping') as object)).toEqual(['GPIO0', 'GPIO2', 'GPIO5', 'GPIO12', 'GPIO15']);
  });
});

/** 74HC595; 74HCT595 product data sheet, NXP Semiconductors, Rev. 6, 12 December 2011, tables 4 to 6; CD74HC595, TI, SCHS353. */
describe('74HC595', () => {
  test('Table 4: 35 mA an output (25 mA the serial one), 70 mA supply and ground current, 7.0 V', () => {
    for (const direction of ['source', 'sink']) {
      expect(limits('74hc595', { each: ['q0..q7'] }, direction, 'absolute')).toEqual([[0.035, {}]]);
      expect(limits('74hc595', { each: ['q7s'] }, direction, 'absolute')).toEqual([[0.025, {}]]);
    }
    expect(limits('74hc595', 'supply-pins', 'source', 'absolute')).toEqual([[0.07, {}]]);
    expect(limits('74hc595', 'ground-pins', 'sink', 'absolute')).toEqual([[0.07, {}]]);
    expect(bounds(at('74hc595', 'supply', 'absolute'), 'voltage')).toEqual({ max: 7 });
  });

  test('Table 6, up to 85 °C: 4.32 typ 3.84 min and 0.15 typ 0.33 max at 6 mA and 4.5 V; at 7.8 mA and 6 V', () => {
    expect(levels('74hc595', 'output-high')).toEqual([
      [4.5, undefined, 0.006, { min: 3.84, typ: 4.32 }],
      [6, undefined, 0.0078, { min: 5.34, typ: 5.81 }],
    ]);
    expect(levels('74hc595', 'output-low')).toEqual([
      [4.5, undefined, 0.006, { typ: 0.15, max: 0.33 }],
      [6, undefined, 0.0078, { typ: 0.16, max: 0.33 }],
    ]);
  });

  test('Table 4: 750 mW in DIP16 less 12 mW/K above 70 °C, 500 mW in SO16 less 8 mW/K, at 85 °C', () => {
    const watts = (at('74hc595', 'limits') as readonly Fields[]).filter((row) => row['power'] !== undefined);
    expect(watts.map((row) => value(row['power'], 'power'))).toEqual([0.75, 0.57, 0.5, 0.38]);
  });
});
