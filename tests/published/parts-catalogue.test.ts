/** A second reading of the catalogue's parts: headline figures typed from the documents, whatever the profiles say. */
import { describe, expect, test } from 'vitest';
import type { Dimension } from '../../src/quantity/dimension.js';
import { at, bounds, points, value } from './catalogue-figures.js';

type Bound = 'min' | 'typ' | 'max';

/** What one bound of a figure is in SI. */
const one = (id: string, name: string, dimension: Dimension, bound: Bound): number | undefined =>
  bounds(at(id, name), dimension)[bound];

/** One bound of a figure's points, by their condition in SI. */
const over = (id: string, name: string, dimension: Dimension, condition: Dimension, bound: Bound) =>
  Object.fromEntries(points(at(id, name), dimension, condition).map(([x, y]) => [x, y[bound]]));

/** Ohms of a coil at the reference temperature, and the share of its rated voltage at which it pulls in at the latest. */
const coil = (id: string) => ({
  volts: value(at(id, 'voltage'), 'voltage'),
  ohms: one(id, 'resistance', 'resistance', 'typ'),
  pullIn: one(id, 'pull-in', 'ratio', 'max'),
  dropOut: one(id, 'drop-out', 'ratio', 'min'),
});

describe('coils', () => {
  test.each([
    // HF3FA, Hongfa, Coil data: 12 V 400 Ω, 24 V 1600 Ω, pick-up 75 %, drop-out 10 %.
    ['relay-coil-12v-360mw', 12, 400, 0.75, 0.1],
    ['relay-coil-24v-360mw', 24, 1600, 0.75, 0.1],
    // G5LE, Omron, Coil ratings: 5 V 63 Ω (79.4 mA), 24 V 1440 Ω (16.7 mA), must operate 75 %, must release 10 %.
    ['relay-coil-5v-400mw', 5, 63, 0.75, 0.1],
    ['relay-coil-24v-400mw', 24, 1440, 0.75, 0.1],
    // G5LE-G, Omron, p. 173: 12 V 205.7 Ω (58.3 mA), 24 V 822.9 Ω (29.2 mA).
    ['relay-coil-12v-700mw', 12, 205.7, 0.75, 0.1],
    ['relay-coil-24v-700mw', 24, 822.9, 0.75, 0.1],
    // HF46F, Hongfa, Coil data: 5 V 125 Ω, 12 V 720 Ω, drop-out 5 %.
    ['relay-coil-5v-200mw', 5, 125, 0.75, 0.05],
    ['relay-coil-12v-200mw', 12, 720, 0.75, 0.05],
    // HF32FA, Hongfa, Coil data, sensitive: 24 V 2800 Ω; standard: 5 V 55 Ω, 12 V 320 Ω, 24 V 1280 Ω.
    ['relay-coil-24v-200mw', 24, 2800, 0.75, 0.05],
    ['relay-coil-5v-450mw', 5, 55, 0.75, 0.05],
    ['relay-coil-12v-450mw', 12, 320, 0.75, 0.05],
    ['relay-coil-24v-450mw', 24, 1280, 0.75, 0.05],
    // JW Relays, Panasonic, ASCTB190E, 1 Coil data: 5 V 47 Ω, 12 V 272 Ω, 24 V 1087 Ω, pick-up 70 %, drop-out 10 %.
    ['relay-coil-5v-530mw', 5, 47, 0.7, 0.1],
    ['relay-coil-12v-530mw', 12, 272, 0.7, 0.1],
    ['relay-coil-24v-530mw', 24, 1087, 0.7, 0.1],
    // G5V-1, Omron, Coil ratings: 5 V 167 Ω (30 mA), 12 V 960 Ω (12.5 mA), 24 V 3840 Ω (6.25 mA), must operate 80 %.
    ['relay-coil-5v-150mw', 5, 167, 0.8, 0.1],
    ['relay-coil-12v-150mw', 12, 960, 0.8, 0.1],
    ['relay-coil-24v-150mw', 24, 3840, 0.8, 0.1],
  ])('%s: %d V, %d Ω, pulls in at %d and lets go at %d of its voltage', (id, volts, ohms, pullIn, dropOut) => {
    expect(coil(id)).toEqual({
      volts,
      ohms: expect.closeTo(ohms, 9),
      pullIn: expect.closeTo(pullIn, 12),
      dropOut: expect.closeTo(dropOut, 12),
    });
  });

  test('G5V-1, Omron, Coil ratings: 0.15 H with the armature off and 0.29 H on at 5 V, 0.85 and 1.63 H at 12 V', () => {
    expect(bounds(at('relay-coil-5v-150mw', 'inductance'), 'inductance')).toMatchObject({ min: 0.15, max: 0.29 });
    expect(bounds(at('relay-coil-12v-150mw', 'inductance'), 'inductance')).toMatchObject({ min: 0.85, max: 1.63 });
  });

  test('JW Relays, 1 Coil data: bears 130 % at 60 °C and 120 % at 85 °C', () => {
    expect(over('relay-coil-12v-530mw', 'maximum', 'ratio', 'temperature', 'max')).toEqual({ 60: 1.3, 85: 1.2 });
  });

  test('5V Mini Relay, pic-control.com: 500 Ω ±10 %, picks up at 3.75 V, drops out at 0.6 V', () => {
    expect(one('reed-relay-5v-500r', 'resistance', 'resistance', 'typ')).toBe(500);
    expect(value(at('reed-relay-5v-500r', 'pull-in'), 'voltage')).toBe(3.75);
    expect(value(at('reed-relay-5v-500r', 'drop-out'), 'voltage')).toBe(0.6);
  });
});

describe('bipolar transistors', () => {
  test('2N3904, Micro Commercial Components, On characteristics at 1 V: 40, 70, 100, 60, 30 at 0.1 to 100 mA', () => {
    expect(over('npn-2n3904', 'gain', 'ratio', 'current', 'min')).toEqual({
      0.0001: 40,
      0.001: 70,
      0.01: 100,
      0.05: 60,
      0.1: 30,
    });
    expect(over('npn-2n3904', 'saturation', 'voltage', 'current', 'max')).toEqual({ 0.01: 0.2, 0.05: 0.3 });
    expect(value(at('npn-2n3904', 'maximum-current'), 'current')).toBe(0.2);
  });

  test('BC337-40, onsemi BC337/D, p. 2: at least 250 at 100 mA and 60 at 300 mA, 0.7 V at 500 mA; ST allows 500 mA', () => {
    expect(over('npn-bc337-40', 'gain', 'ratio', 'current', 'min')).toEqual({ 0.1: 250, 0.3: 60 });
    expect(over('npn-bc337-40', 'saturation', 'voltage', 'current', 'max')).toEqual({ 0.5: 0.7 });
    expect(value(at('npn-bc337-40', 'maximum-current'), 'current')).toBe(0.5);
  });

  test('TIP120, onsemi TIP120/D: at least 1000 at 0.5 and 3 A, 2 V at 3 A, 4 V at 5 A, 60 V, 5 A, 16 mW/K in free air', () => {
    expect(over('npn-tip120', 'gain', 'ratio', 'current', 'min')).toEqual({ 0.5: 1000, 3: 1000 });
    expect(over('npn-tip120', 'saturation', 'voltage', 'current', 'max')).toMatchObject({ 3: 2, 5: 4 });
    expect(value(at('npn-tip120', 'maximum-voltage'), 'voltage')).toBe(60);
    expect(1 / value(at('npn-tip120', 'thermal-resistance'), 'thermal-resistance')!).toBeCloseTo(0.016, 9);
  });

  test('S8050, Unisonic QW-R201-013: 100, 120 and 40 at 1, 150 and 500 mA, 0.5 V at 500 mA, 20 V, 700 mA', () => {
    expect(over('npn-s8050', 'gain', 'ratio', 'current', 'min')).toEqual({ 0.001: 100, 0.15: 120, 0.5: 40 });
    expect(one('npn-s8050', 'saturation', 'voltage', 'max')).toBe(0.5);
    expect(value(at('npn-s8050', 'maximum-voltage'), 'voltage')).toBe(20);
  });

  test('S8050 in SOT-23, Hottech, p. 1: 120 at 50 mA, 50 at 500 mA, 0.6 V, 25 V, 500 mA, 0.3 W', () => {
    expect(over('npn-s8050-sot23', 'gain', 'ratio', 'current', 'min')).toEqual({ 0.05: 120, 0.5: 50 });
    expect(one('npn-s8050-sot23', 'saturation', 'voltage', 'max')).toBe(0.6);
    expect(125 / value(at('npn-s8050-sot23', 'thermal-resistance'), 'thermal-resistance')!).toBeCloseTo(0.3, 3);
  });

  test('S9013 in SOT-23, Jiangsu Changjiang, p. 1: 120 at 50 mA, 40 at 500 mA, 416 K/W', () => {
    expect(over('npn-s9013-sot23', 'gain', 'ratio', 'current', 'min')).toEqual({ 0.05: 120, 0.5: 40 });
    expect(value(at('npn-s9013-sot23', 'thermal-resistance'), 'thermal-resistance')).toBe(416);
  });

  test('PMBT2222A, NXP, Table 8: 50, 75, 50 (1 V), 40 at 1, 10, 150, 500 mA; 0.3 and 1 V at 150 and 500 mA', () => {
    expect(over('npn-pmbt2222a', 'gain', 'ratio', 'current', 'min')).toEqual({
      0.001: 50,
      0.01: 75,
      0.15: 50,
      0.5: 40,
    });
    expect(over('npn-pmbt2222a', 'saturation', 'voltage', 'current', 'max')).toEqual({ 0.15: 0.3, 0.5: 1 });
  });
});

describe('field-effect transistors', () => {
  const ohms = (id: string, bound: Bound = 'max') => over(id, 'on-resistance', 'resistance', 'voltage', bound);
  const threshold = (id: string) => bounds(at(id, 'threshold'), 'voltage');

  test('2N7000, Vishay Siliconix 70226, pp. 1 and 2: 0.8, 2.1, 3 V; 5 Ω at 10 V; 200 mA, 60 V, 312.5 K/W', () => {
    expect(threshold('nmos-2n7000')).toEqual({ min: 0.8, typ: 2.1, max: 3 });
    expect(ohms('nmos-2n7000')).toMatchObject({ 10: 5 });
    expect(value(at('nmos-2n7000', 'maximum-current'), 'current')).toBe(0.2);
    expect(value(at('nmos-2n7000', 'thermal-resistance'), 'thermal-resistance')).toBe(312.5);
  });

  test('2N7002 and BS170, the same sheet: 1 to 2.5 V, 7.5 Ω, 115 mA; 0.8 to 3 V, 5 Ω, 500 mA', () => {
    expect(threshold('nmos-2n7002')).toMatchObject({ min: 1, max: 2.5 });
    expect(ohms('nmos-2n7002')).toMatchObject({ 10: 7.5 });
    expect(value(at('nmos-2n7002', 'maximum-current'), 'current')).toBe(0.115);
    expect(threshold('nmos-bs170')).toMatchObject({ min: 0.8, max: 3 });
    expect(one('nmos-bs170', 'maximum-current', 'current', 'max')).toBe(0.5);
  });

  test('BSS138: 0.8 to 1.5 V at 1 mA, 6 Ω at 4.5 V and 3.5 Ω at 10 V, 220 mA, 50 V', () => {
    expect(threshold('nmos-bss138')).toMatchObject({ min: 0.8, max: 1.5 });
    expect(ohms('nmos-bss138')).toEqual({ 4.5: 6, 10: 3.5 });
    expect(value(at('nmos-bss138', 'maximum-voltage'), 'voltage')).toBe(50);
  });

  test('IRLB8721, International Rectifier PD-97390: 1.35, 1.80, 2.35 V; 16 mΩ at 4.5 V, 8.7 mΩ at 10 V; 62 K/W', () => {
    expect(threshold('nmos-irlb8721')).toEqual({ min: 1.35, typ: 1.8, max: 2.35 });
    expect(ohms('nmos-irlb8721')).toEqual({ 4.5: 0.016, 10: 0.0087 });
    expect(value(at('nmos-irlb8721', 'thermal-resistance'), 'thermal-resistance')).toBe(62);
  });

  test('IRFZ44N, International Rectifier, p. 2: 2 to 4 V, and 17.5 mΩ at 10 V alone', () => {
    expect(threshold('nmos-irfz44n')).toMatchObject({ min: 2, max: 4 });
    expect(ohms('nmos-irfz44n')).toEqual({ 10: 0.0175 });
  });

  test('AO3401, AOS, Static parameters: 0.7, 1.0, 1.3 V; 120, 65, 50 mΩ at 2.5, 4.5, 10 V', () => {
    expect(threshold('pmos-ao3401')).toEqual({ min: 0.7, typ: 1, max: 1.3 });
    expect(ohms('pmos-ao3401')).toEqual({ 2.5: 0.12, 4.5: 0.065, 10: 0.05 });
  });

  test('AOD417, AOS, p. 1: 55 mΩ at 4.5 V, 34 mΩ at 10 V, 30 V, gate 20 V, 40 and 50 K/W', () => {
    expect(ohms('pmos-aod417')).toEqual({ 4.5: 0.055, 10: 0.034 });
    expect(value(at('pmos-aod417', 'gate-maximum'), 'voltage')).toBe(20);
    expect(bounds(at('pmos-aod417', 'thermal-resistance'), 'thermal-resistance')).toMatchObject({ typ: 40, max: 50 });
  });
});

describe('diodes and couplers', () => {
  test('1N5817, RFE C3SBR4: 0.45 V at 1 A, 0.75 V at 3 A, 20 V', () => {
    expect(over('schottky-1n5817', 'forward-voltage', 'voltage', 'current', 'max')).toMatchObject({ 1: 0.45, 3: 0.75 });
    expect(value(at('schottky-1n5817', 'reverse-voltage'), 'voltage')).toBe(20);
  });

  test('1N5819HW, Diodes DS30217: 0.320, 0.450, 0.750 V at 0.1, 1, 3 A, 222 K/W', () => {
    expect(over('schottky-1n5819hw', 'forward-voltage', 'voltage', 'current', 'max')).toEqual({
      0.1: 0.32,
      1: 0.45,
      3: 0.75,
    });
    expect(value(at('schottky-1n5819hw', 'thermal-resistance'), 'thermal-resistance')).toBe(222);
  });

  test('B5817WS, JSHD: typically 0.37, 0.42, 0.62 V and at most 0.40, 0.45, 0.75 V at 0.5, 1, 3 A', () => {
    expect(over('schottky-b5817ws', 'forward-voltage', 'voltage', 'current', 'typ')).toEqual({
      0.5: 0.37,
      1: 0.42,
      3: 0.62,
    });
    expect(over('schottky-b5817ws', 'forward-voltage', 'voltage', 'current', 'max')).toEqual({
      0.5: 0.4,
      1: 0.45,
      3: 0.75,
    });
  });

  test.each([
    ['opto-817a', 0.8, 1.6],
    ['opto-817b', 1.3, 2.6],
    ['opto-817d', 3, 6],
    ['opto-817-any', 0.5, 6],
  ])('%s, Sharp PC817, table of current transfer ratio at 5 mA: %d to %d', (id, min, max) => {
    const at5mA = points(at(id, 'transfer-ratio'), 'ratio', 'current').find(([amps]) => amps === 0.005)![1];
    expect(at5mA.min).toBeCloseTo(min, 9);
    expect(at5mA.max).toBeCloseTo(max, 9);
  });

  test('4N35, Broadcom: at least 100 % at 10 mA, at most 1.5 V at 10 mA, 60 mA, 30 V, 100 mA', () => {
    expect(over('opto-4n35', 'transfer-ratio', 'ratio', 'current', 'min')).toMatchObject({ 0.01: 1 });
    expect(one('opto-4n35', 'led-drop', 'voltage', 'max')).toBe(1.5);
    expect(value(at('opto-4n35', 'led-maximum-current'), 'current')).toBe(0.06);
    expect(value(at('opto-4n35', 'maximum-voltage'), 'voltage')).toBe(30);
  });

  test('6N136, Agilent HCPL-4503, p. 9: at least 19 % at 16 mA; LED 25 mA at most', () => {
    expect(one('opto-6n136', 'transfer-ratio', 'ratio', 'min')).toBeCloseTo(0.19, 12);
    expect(value(at('opto-6n136', 'led-maximum-current'), 'current')).toBe(0.025);
  });
});

describe('zener diodes', () => {
  test.each([
    // 1N4728-1N4764, Digitron: nominal voltage and highest regulator current at 50 °C.
    ['4728', 3.3, 0.276],
    ['4733', 5.1, 0.178],
    ['4735', 6.2, 0.146],
    ['4740', 10, 0.091],
    ['4742', 12, 0.076],
    ['4744', 15, 0.061],
    ['4746', 18, 0.05],
    ['4749', 24, 0.038],
    ['4750', 27, 0.034],
  ])('1N%sA: %d V ±5 % (suffix A), %d A', (number, volts, amps) => {
    const { min, typ, max } = bounds(at(`zener-1n${number}a`, 'zener-voltage'), 'voltage');
    expect([min, typ, max]).toEqual([0.95 * volts, volts, 1.05 * volts].map((v) => expect.closeTo(v, 9)));
    expect(value(at(`zener-1n${number}a`, 'current'), 'current')).toBe(amps);
  });

  test('1N4728 thru 1N4764, General Semiconductor: 890 mA once at 5.1 V, 454 mA at 10 V, 170 K/W', () => {
    expect(value(at('zener-1n4733a', 'peak-current'), 'current')).toBe(0.89);
    expect(value(at('zener-1n4740a', 'peak-current'), 'current')).toBe(0.454);
    expect(one('zener-1n4740a', 'thermal-resistance', 'thermal-resistance', 'max')).toBe(170);
  });
});

describe('LEDs', () => {
  const volts = (id: string, bound: Bound) => over(id, 'forward-voltage', 'voltage', 'current', bound);

  test('TSAL4400, Vishay 81006, Absolute maximum ratings: 100 mA, 200 mA in pulses', () => {
    expect(value(at('led-ir-940-3mm', 'maximum-current'), 'current')).toBe(0.1);
    expect(value(at('led-ir-940-3mm', 'peak-current'), 'current')).toBe(0.2);
  });

  test('TSUS4300, Vishay 81053, p. 1: typically 1.3 V and at most 1.7 V at 100 mA', () => {
    expect(volts('led-ir-950-3mm', 'typ')).toMatchObject({ 0.1: 1.3 });
    expect(volts('led-ir-950-3mm', 'max')).toMatchObject({ 0.1: 1.7 });
  });

  test('NTE30048, NTE: typically 1.50 V and at most 1.70 V at 50 mA, 100 mA', () => {
    expect(volts('led-ir-850-5mm', 'typ')).toMatchObject({ 0.05: 1.5 });
    expect(volts('led-ir-850-5mm', 'max')).toMatchObject({ 0.05: 1.7 });
  });

  test('APT2012ZGC/E, Kingbright DSAJ9197, p. 2: typically 3.2 V and at most 4 V at 20 mA', () => {
    expect(volts('led-pure-green-0805', 'typ')).toMatchObject({ 0.02: 3.2 });
    expect(volts('led-pure-green-0805', 'max')).toMatchObject({ 0.02: 4 });
  });

  test('1 Watt LED, components101.com: 3.0 to 3.5 V, usually 3.3 V, 350 mA at most', () => {
    expect([volts('led-white-1w', 'min'), volts('led-white-1w', 'typ'), volts('led-white-1w', 'max')]).toMatchObject([
      { 0.35: 3 },
      { 0.35: 3.3 },
      { 0.35: 3.5 },
    ]);
    expect(value(at('led-white-1w', 'maximum-current'), 'current')).toBe(0.35);
  });
});

describe('regulators and fuses', () => {
  test('LM7805, Fairchild 1.3.1, p. 3: 4.75 to 5.25 V, typically 5 and at most 8 mA, typically 2 V at 1 A; L78: 35 V', () => {
    expect(bounds(at('regulator-7805-to220', 'voltage'), 'voltage')).toMatchObject({ min: 4.75, max: 5.25 });
    expect(bounds(at('regulator-7805-to220', 'quiescent'), 'current')).toMatchObject({ typ: 0.005, max: 0.008 });
    expect(over('regulator-7805-to220', 'dropout', 'voltage', 'current', 'typ')).toMatchObject({ 1: 2 });
    expect(one('regulator-7805-to220', 'input', 'voltage', 'max')).toBe(35);
  });

  test('LM1117I, National, p. 6: 1.30, 1.35, 1.40 V at 100, 500, 800 mA; TS1117B, p. 2: 3.235 to 3.366 V', () => {
    expect(over('regulator-lm1117-3v3', 'dropout', 'voltage', 'current', 'max')).toEqual({
      0.1: 1.3,
      0.5: 1.35,
      0.8: 1.4,
    });
    expect(bounds(at('regulator-lm1117-3v3', 'voltage'), 'voltage')).toMatchObject({ min: 3.235, max: 3.366 });
  });

  test('MCP1700, Microchip DS21826B, p. 3: 250 mA, 6.0 V in, typically 1.6 and at most 4 µA, ±3 %', () => {
    expect(value(at('regulator-mcp1700-3v3', 'current'), 'current')).toBe(0.25);
    expect(one('regulator-mcp1700-3v3', 'input', 'voltage', 'max')).toBe(6);
    expect(bounds(at('regulator-mcp1700-3v3', 'quiescent'), 'current')).toMatchObject({ typ: 1.6e-6, max: 4e-6 });
    expect(one('regulator-mcp1700-3v3', 'voltage', 'voltage', 'max')).toBeCloseTo(3.3 * 1.03, 9);
  });

  test('MCP1702, Microchip, DC characteristics: 2.7 to 13.2 V in, typically 2 and at most 5 µA', () => {
    expect(bounds(at('regulator-mcp1702-5v', 'input'), 'voltage')).toMatchObject({ min: 2.7, max: 13.2 });
    expect(bounds(at('regulator-mcp1702-5v', 'quiescent'), 'current')).toMatchObject({ typ: 2e-6, max: 5e-6 });
  });

  test('RT9193, Richtek DS9193-17, p. 1: 300 mA, typically 220 mV, 2.5 to 5.5 V; RT9193T, p. 9: 250 K/W in SOT-23-5', () => {
    expect(value(at('regulator-rt9193-3v3', 'current'), 'current')).toBe(0.3);
    expect(one('regulator-rt9193-3v3', 'dropout', 'voltage', 'typ')).toBeCloseTo(0.22, 12);
    expect(bounds(at('regulator-rt9193-3v3', 'input'), 'voltage')).toMatchObject({ min: 2.5, max: 5.5 });
    expect(value(at('regulator-rt9193-3v3', 'thermal-resistance'), 'thermal-resistance')).toBe(250);
  });

  test('LP2985, Texas Instruments SLVS522O, p. 1: 150 mA, typically 280 mV at 150 mA and 7 mV at 1 mA', () => {
    expect(value(at('regulator-lp2985-3v3', 'current'), 'current')).toBe(0.15);
    expect(over('regulator-lp2985-3v3', 'dropout', 'voltage', 'current', 'typ')).toEqual({ 0.001: 0.007, 0.15: 0.28 });
  });

  test('LM2596-ADJ, National, p. 4: 5 and at most 10 mA, the switch drops 1.16 and at most 1.5 V', () => {
    expect(bounds(at('converter-lm2596', 'quiescent'), 'current')).toMatchObject({ typ: 0.005, max: 0.01 });
    expect(bounds(at('converter-lm2596', 'dropout'), 'voltage')).toMatchObject({ typ: 1.16, max: 1.5 });
  });

  test('MP1584, MPS Rev. 1.0, p. 1: 4.5 to 28 V in, 100 µA', () => {
    expect(bounds(at('converter-mp1584', 'input'), 'voltage')).toMatchObject({ min: 4.5, max: 28 });
    expect(one('converter-mp1584', 'quiescent', 'current', 'typ')).toBeCloseTo(100e-6, 12);
  });

  test.each([
    ['fuse-ptc-200ma', [0.29, 0.26, 0.23, 0.2, 0.17, 0.15, 0.14, 0.12, 0.1]],
    ['fuse-ptc-500ma', [0.77, 0.68, 0.59, 0.5, 0.44, 0.4, 0.37, 0.33, 0.29]],
    ['fuse-ptc-750ma', [1.15, 1.01, 0.88, 0.75, 0.65, 0.6, 0.55, 0.49, 0.43]],
    ['fuse-ptc-1a1', [1.59, 1.43, 1.26, 1.1, 0.95, 0.87, 0.8, 0.71, 0.6]],
  ])('%s, Bourns MF-MSMF, Thermal Derating Chart at −40, −20, 0, 23, 40, 50, 60, 70, 85 °C', (id, holds) => {
    expect(points(at(id, 'hold'), 'current', 'temperature').map(([celsius, { max }]) => [celsius, max])).toEqual(
      [-40, -20, 0, 23, 40, 50, 60, 70, 85].map((celsius, k) => [celsius, holds[k]]),
    );
  });

  test('1812L Series, Littelfuse: 0.100 to 0.450 Ω and 1.50 A; 0.040 to 0.210 Ω and 2.20 A', () => {
    expect(bounds(at('fuse-ptc-750ma', 'resistance'), 'resistance')).toMatchObject({ min: 0.1, max: 0.45 });
    expect(bounds(at('fuse-ptc-1a1', 'resistance'), 'resistance')).toMatchObject({ min: 0.04, max: 0.21 });
    expect([value(at('fuse-ptc-750ma', 'trip'), 'current'), value(at('fuse-ptc-1a1', 'trip'), 'current')]).toEqual([
      1.5, 2.2,
    ]);
  });
});

describe('wires and connectors', () => {
  test.each([
    // Wire Resistance Table, Cirris: ohms of 10 ft of solid copper. Stranded wire has no less.
    [24, 0.2567],
    [22, 0.1614],
    [20, 0.1015],
    [18, 0.06385],
    [28, 0.649],
    [26, 0.4081],
  ])('AWG %d: no less than the %d Ω of 10 ft of solid copper, and no more than a fifth above it', (gauge, ohms) => {
    const metre = ohms / 3.048;
    const { min, max } = bounds(at(`wire-awg${gauge}-pvc`, 'resistance-per-metre'), 'resistance');
    expect(min).toBeGreaterThan(metre * 0.985);
    expect(min).toBeLessThan(metre * 1.01);
    expect(max).toBeLessThan(metre * 1.2);
  });

  test('JST XH Connector: Complete Guide, Keszoo: 3 A, 20 mΩ at most; XH is 3 times, SH 1 A', () => {
    expect(value(at('connector-jst-xh', 'rating'), 'current')).toBe(3);
    expect(one('connector-jst-xh', 'contact-resistance', 'resistance', 'max')).toBe(0.02);
    expect(value(at('connector-jst-sh', 'rating'), 'current')).toBe(1);
  });

  test('How to pick the right JST connector, Romtronic: PH 2 A, VH 10 A, SM 3 A', () => {
    const amps = ['ph', 'vh', 'sm'].map((name) => value(at(`connector-jst-${name}`, 'rating'), 'current'));
    expect(amps).toEqual([2, 10, 3]);
  });
});

describe('motors', () => {
  test('Table of 130-size motors, freesky558: 6 V, at most 250 mA loaded, stall at most 500 mA, starts at 2 V', () => {
    expect(one('motor-130-6v', 'run', 'current', 'max')).toBe(0.25);
    expect(one('motor-130-6v', 'stall', 'current', 'max')).toBe(0.5);
    expect(value(at('motor-130-6v', 'minimum-voltage'), 'voltage')).toBe(2);
  });

  test('Micro Metal Gearmotors, Pololu Rev 2.0: LP 6 V, 20 mA free, 0.36 A stalled', () => {
    expect(one('gearmotor-micro-6v-low-power', 'run', 'current', 'min')).toBe(0.02);
    expect(one('gearmotor-micro-6v-low-power', 'stall', 'current', 'typ')).toBe(0.36);
  });
});
