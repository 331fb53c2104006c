/** Output resistance of pins from the rows of data sheets: volts lost over amperes. The quotients are derived. */
import { describe, expect, test } from 'vitest';
import { branchFlow } from '../../src/circuit/branch.js';
import { type LevelRow, pinResistance } from '../../src/circuit/pin.js';

const rail = (volts: number) => ({ min: volts, typ: volts });
/** A row as printed: the pin's voltage at a current and a supply. */
const high = (bound: 'typ' | 'max', volts: number, current: number, supply: number): LevelRow => ({
  supply,
  current,
  lost: { [bound]: supply - volts },
});
const low = (bound: 'typ' | 'max', volts: number, current: number, supply: number): LevelRow => ({
  supply,
  current,
  lost: { [bound]: volts },
});

/** ATmega48A/PA/88A/PA/168A/PA/328/P, Atmel, 8271H, 08/2014, Table 29-1, p. 301; sinking: 8161D, 10/2009, 28.2, p. 314. */
describe('ATmega328P', () => {
  const source = [high('max', 4.2, 0.02, 5), high('max', 2.3, 0.01, 3)];
  const sink = [low('max', 0.9, 0.02, 5), low('max', 0.6, 0.01, 3)];
  /** From memory of the typical curves: about 0.5 V lost at 20 mA and 5 V. */
  const TYPICAL = 0.5 / 0.02;

  test('VOH of at least 4.2 V and VOL of at most 0.9 V at 20 mA and 5 V are at most 40 and 45 Ω', () => {
    expect(pinResistance(source, TYPICAL, rail(5))!.ohms.max).toBeCloseTo(40, 9);
    expect(pinResistance(sink, TYPICAL, rail(5))!.ohms.max).toBeCloseTo(45, 9);
  });

  test('2.3 V and 0.6 V at 10 mA and 3 V are at most 70 and 60 Ω', () => {
    expect(pinResistance(source, TYPICAL, rail(3))!.ohms.max).toBeCloseTo(70, 9);
    expect(pinResistance(sink, TYPICAL, rail(3))!.ohms.max).toBeCloseTo(60, 9);
  });

  test('at 4.5 V it is at most 47.5 Ω sourcing, between the two', () => {
    expect(pinResistance(source, TYPICAL, rail(4.5))!.ohms.max).toBeCloseTo(47.5, 9);
  });

  test('typically 25 Ω are at least 12.5 Ω, by the rule that half the typical is the bound nobody published', () => {
    expect(pinResistance(source, TYPICAL, rail(5))!.ohms).toMatchObject({ min: 12.5, typ: 25 });
  });

  /** The voltage that the sheet promises is what the resistance gives back. */
  test('gives 4.2 V at 20 mA back', () => {
    const { max } = pinResistance(source, TYPICAL, rail(5))!.ohms;
    const { current } = branchFlow({ resistance: max + 4.2 / 0.02, drop: 0, junctions: [] }, 5);
    expect(current).toBeCloseTo(0.02, 12);
    expect(5 - max * current).toBeCloseTo(4.2, 9);
  });

  test('a bare coil of 70 Ω (HF3FA, Hongfa) draws 52.6 mA through the typical pin, beyond the 40 mA of 29.1', () => {
    const { current } = branchFlow({ resistance: TYPICAL + 70, drop: 0, junctions: [] }, 5);
    expect(1000 * current).toBeCloseTo(52.6, 1);
    expect(current).toBeGreaterThan(0.04);
  });
});

/** RP2040 Datasheet, Raspberry Pi Ltd, Table 625 (632 in earlier editions): each at the current of its drive setting. */
describe('RP2040 at 3.3 V', () => {
  test.each([
    [0.002, 340, 250],
    [0.004, 170, 125],
    [0.008, 85, 62.5],
    [0.012, 56.667, 41.667],
  ])('VOH of at least 2.62 V and VOL of at most 0.5 V at %d A are at most %d and %d Ω', (amps, source, sink) => {
    expect(pinResistance([high('max', 2.62, amps, 3.3)], undefined, rail(3.3))!.ohms.max).toBeCloseTo(source, 3);
    expect(pinResistance([low('max', 0.5, amps, 3.3)], undefined, rail(3.3))!.ohms.max).toBeCloseTo(sink, 3);
  });
});

/** ESP32-D0WD-V3, Espressif Systems, Table 13: typical figures at the highest drive. */
describe('ESP32 at 3.3 V', () => {
  test('2.64 V at 40 mA are typically 16.5 Ω, 0.495 V at 28 mA typically 17.7 Ω', () => {
    expect(pinResistance([high('typ', 2.64, 0.04, 3.3)], undefined, rail(3.3))!.ohms.typ).toBeCloseTo(16.5, 9);
    expect(pinResistance([low('typ', 0.495, 0.028, 3.3)], undefined, rail(3.3))!.ohms.typ).toBeCloseTo(17.7, 1);
  });
});

/** 74HC595; 74HCT595, NXP Semiconductors, Rev. 6, 12 December 2011, Table 6, up to 85 °C. */
describe('74HC595', () => {
  const source: LevelRow[] = [
    { supply: 4.5, current: 0.006, lost: { typ: 4.5 - 4.32, max: 4.5 - 3.84 } },
    { supply: 6, current: 0.0078, lost: { typ: 6 - 5.81, max: 6 - 5.34 } },
  ];

  test('4.32 V typically and 3.84 V at least at 6 mA and 4.5 V are 30 and 110 Ω', () => {
    const { typ, max } = pinResistance(source, undefined, rail(4.5))!.ohms;
    expect([typ, max]).toEqual([expect.closeTo(30, 9), expect.closeTo(110, 9)]);
  });

  test('5.81 V and 5.34 V at 7.8 mA and 6 V are 24.4 and 84.6 Ω, and 5 V lie a third of the way there', () => {
    const six = pinResistance(source, undefined, rail(6))!.ohms;
    expect([six.typ, six.max]).toEqual([expect.closeTo(24.4, 1), expect.closeTo(84.6, 1)]);
    expect(pinResistance(source, undefined, rail(5))!.ohms.max).toBeCloseTo(110 - (110 - six.max) / 3, 9);
  });
});
