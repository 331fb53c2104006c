/** A second reading of the data sheets of parts, against the figures typed here from the document. */
import { describe, expect, test } from 'vitest';
import { at, bounds, points, value } from './catalogue-figures.js';

describe('resettable fuse on the USB inlet (MF-MSMF Series PTC Resettable Fuses, Bourns)', () => {
  const fuse = (name: string): unknown => at('atmega328p-5v-board', 'parts', 'fuse-usb', name);

  test('Electrical Characteristics, MF-MSMF050: holds 0.50 A and trips at 1.00 A at 23 °C, 0.15 to 1.00 Ω', () => {
    expect(bounds(fuse('resistance'), 'resistance')).toMatchObject({ min: 0.15, max: 1 });
    expect(value(fuse('trip'), 'current')).toBe(1);
    expect(points(fuse('hold'), 'current', 'temperature')).toContainEqual([23, { min: 0.5, typ: 0.5, max: 0.5 }]);
  });

  test('Thermal Derating Chart, MF-MSMF050: 0.77 A at −40 °C down to 0.29 A at 85 °C', () => {
    const chart = [
      [-40, 0.77],
      [-20, 0.68],
      [0, 0.59],
      [23, 0.5],
      [40, 0.44],
      [50, 0.4],
      [60, 0.37],
      [70, 0.33],
      [85, 0.29],
    ];
    expect(points(fuse('hold'), 'current', 'temperature').map(([celsius, { max }]) => [celsius, max])).toEqual(chart);
  });
});

describe('coils', () => {
  test('HF3FA, Hongfa, Coil data, 5 V: 70 Ω ±10 %, picks up at 3.75 V at most, drops out at 0.5 V at least, 360 mW', () => {
    const { min, typ, max } = bounds(at('relay-coil-5v-70r', 'resistance'), 'resistance');
    expect([min, typ, max]).toEqual([63, 70, 77].map((ohms) => expect.closeTo(ohms, 9)));
    expect(bounds(at('relay-coil-5v-70r', 'pull-in'), 'ratio').max).toBeCloseTo(3.75 / 5, 12);
    expect(bounds(at('relay-coil-5v-70r', 'drop-out'), 'ratio').min).toBeCloseTo(0.5 / 5, 12);
    expect(value(at('relay-coil-5v-70r', 'power'), 'power')).toBe(0.36);
  });

  /** HJR-3FF, Tianbo, T810S-P001C, coil data: 130 % at 70 °C of a coil of the same size and power. */
  test('the coil bears 6 V for good (common practice, no source); HF3FA gives 6.5 V for a short time, its kin for good', () => {
    expect(bounds(at('relay-coil-5v-70r', 'maximum'), 'voltage')).toMatchObject({ min: 6, max: 6.5 });
  });

  test('G5LE, Omron, 400 mW class, 12 V: 360 Ω ±10 %, 33.3 mA, operates at 75 %, releases at 10 %, bears 170 % at 23 °C and 130 % at 70 °C', () => {
    expect(bounds(at('relay-coil-12v-400mw', 'resistance'), 'resistance').typ).toBe(360);
    expect(12 / 360).toBeCloseTo(0.0333, 4);
    expect(bounds(at('relay-coil-12v-400mw', 'pull-in'), 'ratio').max).toBeCloseTo(0.75, 12);
    expect(bounds(at('relay-coil-12v-400mw', 'drop-out'), 'ratio').min).toBeCloseTo(0.1, 12);
    expect(points(at('relay-coil-12v-400mw', 'maximum'), 'ratio', 'temperature')).toEqual([
      [23, { min: 1.7, typ: 1.7, max: 1.7 }],
      [70, { min: 1.3, typ: 1.3, max: 1.3 }],
    ]);
  });

  test.each(['1', '2', '4', '8'])('the relays of the %s-channel board are of the 5 V, 70 Ω kind', (channels) => {
    for (const name of ['voltage', 'resistance', 'pull-in', 'drop-out', 'maximum']) {
      expect(at(`relay-board-opto-low-5v-${channels}`, 'coil', name)).toEqual(at('relay-coil-5v-70r', name));
    }
  });
});

describe('Darlington array', () => {
  test('ULN2003APG, Toshiba, 2006-06-14, p. 4: VCE(sat) 0.9/1.1 V at 100 mA, 1.1/1.3 V at 200 mA, 1.3/1.6 V at 350 mA', () => {
    expect(points(at('darlington-array-7', 'saturation'), 'voltage', 'current')).toEqual([
      [0.1, { typ: 0.9, max: 1.1 }],
      [0.2, { typ: 1.1, max: 1.3 }],
      [0.35, { typ: 1.3, max: 1.6 }],
    ]);
    expect(bounds(at('darlington-array-7', 'gain'), 'ratio')).toEqual({ min: 1000 });
  });

  test('SLRS027M, Texas Instruments, 02/2013, p. 4: 50 V, 500 mA a channel, 2.5 A together, 67 and 73 K/W, 30 V at an input', () => {
    expect(value(at('darlington-array-7', 'maximum-voltage'), 'voltage')).toBe(50);
    expect(value(at('darlington-array-7', 'channel-current'), 'current')).toBe(0.5);
    expect(value(at('darlington-array-7', 'package-current'), 'current')).toBe(2.5);
    expect(bounds(at('darlington-array-7', 'thermal-resistance'), 'thermal-resistance')).toMatchObject({
      min: 67,
      typ: 73,
    });
    expect(value(at('darlington-array-7', 'input-maximum'), 'voltage')).toBe(30);
  });

  test('SLRS049E, Texas Instruments, 07/2006, p. 3: an input draws 0.93 mA typically and 1.35 mA at most at 3.85 V', () => {
    const resistance = bounds(at('darlington-array-7', 'input-resistance'), 'resistance');
    const drop = bounds(at('darlington-array-7', 'input-drop'), 'voltage');
    expect((3.85 - drop.typ!) / resistance.typ!).toBeCloseTo(0.93e-3, 4);
    expect((3.85 - drop.typ!) / resistance.min!).toBeCloseTo(1.35e-3, 4);
  });
});

describe('optocoupler (PC817 Series, Sharp)', () => {
  test('Absolute maximum ratings: 50 mA in, 50 mA and 35 V out', () => {
    expect(value(at('opto-817', 'led-maximum-current'), 'current')).toBe(0.05);
    expect(value(at('opto-817', 'maximum-current'), 'current')).toBe(0.05);
    expect(value(at('opto-817', 'maximum-voltage'), 'voltage')).toBe(35);
  });

  test.each([
    ['the coupler by itself', (name: string) => at('opto-817', name)],
    ['the one on the relay boards', (name: string) => at('relay-board-opto-low-5v-1', 'input', name)],
  ])('%s: 1.2 V typically and 1.4 V at most at 20 mA, class C 200 to 400 % at 5 mA, 0.2 V at 1 mA', (_, part) => {
    const [, drop] = points(part('led-drop'), 'voltage', 'current').find(([amps]) => amps === 0.02)!;
    expect(drop).toMatchObject({ typ: 1.2, max: 1.4 });
    const [, ratio] = points(part('transfer-ratio'), 'ratio', 'current').find(([amps]) => amps === 0.005)!;
    expect(ratio).toMatchObject({ min: 2, max: 4 });
    expect(bounds(part('saturation'), 'voltage')).toEqual({ typ: 0.1, max: 0.2 });
  });
});

describe('transistors', () => {
  test('P2N2222A/D, onsemi, Rev. 7, 01/2013: 40 V, 600 mA, 200 K/W, 0.3 V at 150/15 mA, 1.0 V at 500/50 mA, VBE(sat) 0.6 to 1.2 V', () => {
    expect(value(at('npn-2n2222a', 'maximum-voltage'), 'voltage')).toBe(40);
    expect(value(at('npn-2n2222a', 'maximum-current'), 'current')).toBe(0.6);
    expect(value(at('npn-2n2222a', 'thermal-resistance'), 'thermal-resistance')).toBe(200);
    expect(points(at('npn-2n2222a', 'saturation'), 'voltage', 'current')).toEqual([
      [0.15, { max: 0.3 }],
      [0.5, { max: 1 }],
    ]);
    expect(0.15 / 0.015).toBe(value(at('npn-2n2222a', 'forced-gain'), 'ratio'));
    expect(points(at('npn-2n2222a', 'base-emitter'), 'voltage', 'current')[0]).toMatchObject([
      0.015,
      { min: 0.6, max: 1.2 },
    ]);
  });

  test('PMBT2222A, NXP Semiconductors, Rev. 6, 11/2010, Table 8: gain at least 75 at 10 mA, 50 at 150 mA and 1 V, 40 at 500 mA', () => {
    expect(points(at('npn-2n2222a', 'gain'), 'ratio', 'current')).toEqual([
      [0.01, { min: 75 }],
      [0.15, { min: 50 }],
      [0.5, { min: 40 }],
    ]);
  });

  test('AO3400A, Alpha & Omega: at most 48, 32, 26.5 mΩ at 2.5, 4.5, 10 V; 5.7 A at 25 °C, 4.7 A at 70 °C; 30 V; 125 K/W', () => {
    const rows = points(at('nmos-ao3400a', 'on-resistance'), 'resistance', 'voltage');
    expect(rows.map(([volts, { max }]) => [volts, max])).toEqual(
      [2.5, 4.5, 10].map((v, i) => [v, [0.048, 0.032, 0.0265][i]]),
    );
    const amps = points(at('nmos-ao3400a', 'maximum-current'), 'current', 'temperature');
    expect(amps.map(([celsius, { max }]) => [celsius, max])).toEqual([
      [25, 5.7],
      [70, 4.7],
    ]);
    expect(value(at('nmos-ao3400a', 'maximum-voltage'), 'voltage')).toBe(30);
    expect(bounds(at('nmos-ao3400a', 'thermal-resistance'), 'thermal-resistance').max).toBe(125);
    expect(bounds(at('nmos-ao3400a', 'threshold'), 'voltage')).toEqual({ min: 0.7, typ: 1, max: 1.5 });
  });
});

describe('diodes', () => {
  test('1N4148, Vishay, 81857, Rev. 1.4, 07/2017: at most 1 V at 10 mA; 300 mA, 500 mA repetitive peak, 75 V, 350 K/W', () => {
    const row = points(at('diode-1n4148', 'forward-voltage'), 'voltage', 'current').find(([amps]) => amps === 0.01)!;
    expect(row[1].max).toBe(1);
    expect(value(at('diode-1n4148', 'current'), 'current')).toBe(0.3);
    expect(value(at('diode-1n4148', 'peak-current'), 'current')).toBe(0.5);
    expect(value(at('diode-1n4148', 'reverse-voltage'), 'voltage')).toBe(75);
    expect(value(at('diode-1n4148', 'thermal-resistance'), 'thermal-resistance')).toBe(350);
  });

  test('1N4001 to 1N4007, Diotec, p. 2: at most 1.1 V at 1 A; DS28002 Rev. E-2, Diodes Incorporated: 1000 V, 100 K/W', () => {
    const row = points(at('diode-1n4007', 'forward-voltage'), 'voltage', 'current').find(([amps]) => amps === 1)!;
    expect(row[1].max).toBe(1.1);
    expect(value(at('diode-1n4007', 'current'), 'current')).toBe(1);
    expect(value(at('diode-1n4007', 'reverse-voltage'), 'voltage')).toBe(1000);
    expect(value(at('diode-1n4007', 'thermal-resistance'), 'thermal-resistance')).toBe(100);
  });
});

describe('regulators on boards', () => {
  test('LM1117I, National Semiconductor, DS100919, 04/2006, p. 6: 1.30, 1.35, 1.40 V at most at 100, 500, 800 mA', () => {
    for (const [board, part] of [
      ['atmega328p-5v-board', 'regulator-5v'],
      ['esp32-devkit', 'regulator-3v3'],
    ] as const) {
      const rows = points(at(board, 'parts', part, 'dropout'), 'voltage', 'current');
      expect(rows.map(([amps, { max }]) => [amps, max])).toEqual([
        [0.1, 1.3],
        [0.5, 1.35],
        [0.8, 1.4],
      ]);
      expect(value(at(board, 'parts', part, 'current'), 'current')).toBe(0.8);
    }
  });

  test('TS1117B, Taiwan Semiconductor, Version E12, p. 2: 4.900 to 5.100 V and 3.235 to 3.366 V, 5 mA and at most 10 mA of its own', () => {
    const voltage = (board: string, part: string) => bounds(at(board, 'parts', part, 'voltage'), 'voltage');
    expect(voltage('atmega328p-5v-board', 'regulator-5v')).toEqual({ min: 4.9, typ: 5, max: 5.1 });
    expect(voltage('esp32-devkit', 'regulator-3v3')).toEqual({ min: 3.235, typ: 3.3, max: 3.366 });
    const own = bounds(at('atmega328p-5v-board', 'parts', 'regulator-5v', 'quiescent'), 'current');
    expect(own).toEqual({ typ: 0.005, max: 0.01 });
  });
});

describe('ports', () => {
  /** Universal Serial Bus Specification 2.0, section 7.2; USB 3.0: unit loads of 150 mA. */
  test.each([
    ['usb2-port', 0.5, 0.1],
    ['usb3-port', 0.9, 0.15],
  ])('%s gives %d A when configured, %d A before, at 4.75 to 5.25 V', (id, full, before) => {
    expect(value(at(id, 'current'), 'current')).toBe(full);
    expect(value(at(id, 'unconfigured-current'), 'current')).toBe(before);
    const { min, max } = bounds(at(id, 'voltage'), 'voltage');
    expect([min, max]).toEqual([expect.closeTo(4.75, 12), expect.closeTo(5.25, 12)]);
  });

  /** Universal Serial Bus Type-C Cable and Connector Specification, current levels that a port advertises. */
  test.each([
    ['usb-c-default-port', 0.5],
    ['usb-c-1a5-port', 1.5],
    ['usb-c-3a-port', 3],
  ])('%s gives %d A', (id, amps) => {
    expect(value(at(id, 'current'), 'current')).toBe(amps);
  });
});

/** BME280, Bosch Sensortec, BST-BME280-DS002-15, 09/2018, p. 2. */
test('BME280: 1.71 to 3.6 V, 3.6 µA at one measurement a second, 0.1 µA asleep', () => {
  expect(bounds(at('sensor-bme280', 'supply-voltage'), 'voltage')).toMatchObject({ min: 1.71, max: 3.6 });
  expect(bounds(at('sensor-bme280', 'active'), 'current').typ).toBe(3.6e-6);
  expect(bounds(at('sensor-bme280', 'idle'), 'current').typ).toBe(0.1e-6);
});

/** The figures of the everyday policy are fixed by the project file's format, rule 5. */
test('the everyday policy keeps 20 % of currents, 5 % of functions in volts, 20 % of the rise, 25 % of drive', () => {
  const share = (name: string): number | undefined => value(at('everyday', name), 'ratio');
  expect(['current', 'function-voltage', 'window', 'temperature', 'drive'].map(share)).toEqual([
    0.2, 0.05, 0, 0.2, 0.25,
  ]);
});
