/** A second reading of the documents of modules, motor drivers and relays, against the figures typed here from them. */
import { describe, expect, test } from 'vitest';
import { at, bounds, points, value } from './catalogue-figures.js';

const amps = (id: string, ...path: string[]) => bounds(at(id, ...path), 'current');
const volts = (id: string, ...path: string[]) => bounds(at(id, ...path), 'voltage');
/** Close to what the document prints, whatever binary fractions make of it. */
const near = (figure: number | undefined): unknown => (figure === undefined ? undefined : expect.closeTo(figure, 9));
const span = (min: number | undefined, typ: number | undefined, max: number | undefined) =>
  Object.fromEntries(
    Object.entries({ min, typ, max })
      .filter(([, v]) => v !== undefined)
      .map(([k, v]) => [k, near(v)]),
  );

describe('relay boards', () => {
  /** HF3FA/HF3FA-T, Hongfa, Coil data at 23 °C: nominal voltage, pick-up at most, drop-out at least, resistance ±10 %. */
  test.each([
    [5, 3.75, 0.5, 70],
    [12, 9, 1.2, 400],
    [24, 18, 2.4, 1600],
  ])('HF3FA, Coil data, %d V: picks up at %d V, drops out at %d V, %d Ω', (rated, pickUp, dropOut, ohms) => {
    const coils = ['opto-low', 'opto-high', 'opto-selectable-low', 'opto-selectable-high'];
    for (const kind of coils) {
      const coil = (name: string): unknown => at(`relay-board-${kind}-${rated}v-1`, 'coil', name);
      expect(value(coil('voltage'), 'voltage')).toBe(rated);
      expect(bounds(coil('resistance'), 'resistance')).toEqual(span(0.9 * ohms, ohms, 1.1 * ohms));
      expect(rated * bounds(coil('pull-in'), 'ratio').max!).toBeCloseTo(pickUp, 9);
      expect(rated * bounds(coil('drop-out'), 'ratio').min!).toBeCloseTo(dropOut, 9);
    }
  });

  /** Common practice, no source: what sellers print of boards with a level jumper. */
  test.each([
    [5, 2.5, 1.5],
    [12, 4.5, 4],
    [24, 8.5, 8],
  ])('boards of %d V with a level jumper are on from %d V and off up to %d V, and take 2 to 4 mA', (rated, on, off) => {
    const id = `relay-board-opto-selectable-high-${rated}v-1`;
    expect(value(at(id, 'input', 'on-above'), 'voltage')).toBe(on);
    expect(value(at(id, 'input', 'off-below'), 'voltage')).toBe(off);
    expect(amps(id, 'input', 'current')).toMatchObject({ min: 0.002, max: 0.004 });
    // Set to low, a coupler's LED of 1.1 V and the resistor from the same supply take as much.
    const { min, max } = bounds(at(`relay-board-opto-selectable-low-${rated}v-1`, 'input', 'series'), 'resistance');
    expect((rated - 1.1) / max!).toBeCloseTo(0.002, 3);
    expect((rated - 1.1) / min!).toBeCloseTo(0.004, 3);
  });
});

describe('sensors', () => {
  test('DS18B20, Maxim, 2008, p. 19: 3.0 to 5.5 V, asleep 0.75 and at most 1 µA, active 1 and at most 1.5 mA', () => {
    expect(volts('sensor-ds18b20', 'supply-voltage')).toMatchObject({ min: 3, max: 5.5 });
    expect(amps('sensor-ds18b20', 'idle')).toEqual({ typ: 0.75e-6, max: 1e-6 });
    expect(amps('sensor-ds18b20', 'active')).toEqual({ typ: 0.001, max: 0.0015 });
  });

  test('SHT3x-DIS, Sensirion, Version 5, 05/2018, Table 3: 2.15 to 5.5 V, 0.2 µA, measuring 600 and at most 1500 µA', () => {
    expect(volts('sensor-sht31', 'supply-voltage')).toMatchObject({ min: 2.15, max: 5.5 });
    expect(amps('sensor-sht31', 'idle').typ).toBe(0.2e-6);
    expect(amps('sensor-sht31', 'active')).toEqual(span(undefined, 600e-6, 1500e-6));
  });

  test('SGP40, Sensirion, Table 2: 1.7 to 3.6 V, idle 34 and at most 105 µA, 2.6/3.0 mA at 3.3 V, 3.5/4.0 mA at 1.8 V', () => {
    expect(volts('sensor-sgp40', 'supply-voltage')).toMatchObject({ min: 1.7, max: 3.6 });
    expect(amps('sensor-sgp40', 'idle')).toEqual(span(undefined, 34e-6, 105e-6));
    expect(amps('sensor-sgp40', 'active')).toEqual(span(2.6e-3, 3e-3, 4e-3));
  });

  test('SCD30, Sensirion, Version 1.0 D1, 05/2020, p. 1: 19 mA with one measurement every 2 s', () => {
    expect(amps('sensor-scd30', 'active').typ).toBe(0.019);
  });

  test('SCD4x, Sensirion, 1.3, 09/2022, section 2.1: 2.4 to 5.5 V, peaks 175/205 mA at 3.3 V and 115/137 mA at 5 V, 3.2/3.5 mA', () => {
    expect(volts('sensor-scd41', 'supply-voltage')).toMatchObject({ min: 2.4, max: 5.5 });
    expect(amps('sensor-scd41', 'peak')).toEqual(span(0.115, 0.175, 0.205));
    expect(amps('sensor-scd41', 'idle').max).toBeCloseTo(0.0035, 12);
    expect(amps('sensor-scd41', 'active').min).toBeCloseTo(0.0032, 12);
  });

  test('BH1750FVI, Rohm, 2009.04 Rev. B, pp. 1 and 2: 2.4 to 3.6 V, 120 and at most 190 µA, powered down 0.01 and at most 1 µA', () => {
    expect(volts('sensor-bh1750', 'supply-voltage')).toEqual({ min: 2.4, typ: 3, max: 3.6 });
    expect(amps('sensor-bh1750', 'active')).toEqual(span(undefined, 120e-6, 190e-6));
    expect(amps('sensor-bh1750', 'idle')).toEqual(span(undefined, 0.01e-6, 1e-6));
  });

  test('GP2Y0A21YK, Sharp, Electro-optical characteristics: 4.5 to 5.5 V, at most 40 mA on average', () => {
    expect(volts('sensor-gp2y0a21', 'supply-voltage')).toMatchObject({ min: 4.5, max: 5.5 });
    expect(amps('sensor-gp2y0a21', 'active').max).toBe(0.04);
  });

  test('MPU-6000/MPU-6050, InvenSense, Rev. 3.4, p. 14: 2.375 to 3.46 V, 3.9 mA with everything on, 0.5 mA acceleration alone, 5 µA', () => {
    expect(volts('sensor-mpu6050', 'supply-voltage')).toMatchObject({ min: 2.375, max: 3.46 });
    expect(amps('sensor-mpu6050', 'idle').min).toBe(5e-6);
    expect(amps('sensor-mpu6050', 'active').min).toBe(0.0005);
    // The chip, and the power indicator of a module, 1 to 2 mA (from memory).
    const { typ, max } = amps('sensor-mpu6050', 'active');
    expect(typ! - 0.0039).toBeCloseTo(0.0015, 9);
    expect(max! - 0.0039).toBeGreaterThanOrEqual(0.002);
  });

  /** Hanwei, MQ-2, MQ-135: 33 Ω ±5 %; MQ-5: 31 Ω ±10 %; all at 5 V ±0.1 V and less than 800 mW. */
  test.each([
    ['sensor-mq2', 33, 0.05],
    ['sensor-mq135', 33, 0.05],
    ['sensor-mq5', 31, 0.1],
  ])('the heater of %s: %d Ω', (id, ohms, tolerance) => {
    const { typ, max } = amps(id, 'active');
    expect(typ).toBeCloseTo(5 / ohms, 3);
    expect(max).toBeGreaterThanOrEqual(5.1 / (ohms * (1 - tolerance)));
    expect(amps(id, 'idle')).toEqual(amps(id, 'active'));
    expect(volts(id, 'supply-voltage')).toMatchObject({ min: 4.9, max: 5.1 });
  });

  test('INA219, Texas Instruments, SBOS448G, 12/2015, p. 1: 3 to 5.5 V, at most 1 mA', () => {
    expect(volts('sensor-ina219', 'supply-voltage')).toMatchObject({ min: 3, max: 5.5 });
    expect(amps('sensor-ina219', 'active').max).toBe(0.001);
  });

  test('HX711, Avia, p. 1: less than 1.5 mA, powered down less than 1 µA; with a cell of 350 Ω at 5 V 14 mA more', () => {
    expect(amps('load-cell-amplifier-hx711', 'idle').max).toBe(1e-6);
    expect(amps('load-cell-amplifier-hx711', 'active').min).toBe(0.0015);
    expect(amps('load-cell-amplifier-hx711', 'active').max).toBeGreaterThanOrEqual(0.0015 + 5 / 350);
  });

  test('levels of inputs: BH1750, p. 2, and SHT3x-DIS, Table 21, 30 and 70 %; SAM-M8Q, Table 7, 20 and 70 %; ESP8266EX, Table 5-1, 25 and 75 %', () => {
    const shares = (id: string) => bounds(at(id, 'input-threshold'), 'ratio');
    expect(shares('sensor-bh1750')).toMatchObject(span(0.3, undefined, 0.7));
    expect(shares('sensor-sht31')).toMatchObject(span(0.3, undefined, 0.7));
    expect(shares('gps-sam-m8q')).toMatchObject(span(0.2, undefined, 0.7));
    expect(shares('wifi-serial-esp8266')).toMatchObject(span(0.25, undefined, 0.75));
  });

  test('BME680, Bosch Sensortec, DS001-00, 1.0, Table 1: at most 849 µA while it measures the pressure', () => {
    expect(amps('sensor-bme680', 'active').typ).toBeCloseTo(849e-6, 12);
  });

  test('SAM-M8Q, u-blox, UBX-16012619, R04, Table 8: 67 mA at most, 32 and 29 mA with two systems, 23 and 9.5 mA with less', () => {
    expect(amps('gps-sam-m8q', 'active')).toEqual(span(0.023, 0.029, 0.067));
    expect(amps('gps-sam-m8q', 'idle')).toEqual(span(0.0095, 0.029, 0.032));
  });
});

describe('radios', () => {
  test('nRF24L01+, Nordic, 1.0, section 5.1: 0.9, 26 and 320 µA; 11.3 mA sending at 0 dBm, 13.5 mA receiving at 2 Mbit/s', () => {
    expect(volts('radio-nrf24l01', 'supply-voltage')).toEqual({ min: 1.9, typ: 3, max: 3.6 });
    expect(amps('radio-nrf24l01', 'idle')).toEqual(span(0.9e-6, 26e-6, 320e-6));
    expect(amps('radio-nrf24l01', 'active')).toEqual(span(0.0113, 0.0135, undefined));
  });

  test('SX1276/77/78/79, Semtech, p. 1 and Table 6: 9.9 mA receiving, 120 mA sending at 20 dBm', () => {
    expect(amps('radio-sx1278', 'active').min).toBe(0.0099);
    expect(amps('radio-sx1278', 'peak').typ).toBe(0.12);
  });

  test('RFM69HCW, HopeRF, 1.1, p. 11: 130 mA at 20 dBm, standby 1.25 and at most 1.5 mA; p. 1: 16 mA receiving, asleep 0.1 µA', () => {
    expect(amps('radio-rfm69hcw', 'peak').typ).toBe(0.13);
    expect(amps('radio-rfm69hcw', 'active').typ).toBe(0.016);
    expect(amps('radio-rfm69hcw', 'idle')).toEqual(span(0.1e-6, 1.25e-3, 1.5e-3));
  });

  test('CC1101, Texas Instruments, SWRS061B, section 4.1 and Figure 5: 0.2 µA, 1.7 mA, 14.7 to 15.7 mA, 32.8 mA at 10 dBm', () => {
    expect(amps('radio-cc1101', 'idle')).toMatchObject(span(0.2e-6, 1.7e-3, undefined));
    expect(amps('radio-cc1101', 'active')).toMatchObject(span(0.0147, undefined, 0.0157));
    expect(amps('radio-cc1101', 'peak').min).toBeCloseTo(0.0328, 12);
  });

  test('ESP8266EX, Espressif, v6.6, Tables 3-4 and 5-3: 170 mA sending at 17 dBm, 56 mA receiving, 15 mA in modem sleep', () => {
    expect(amps('wifi-serial-esp8266', 'active')).toEqual(span(0.056, 0.08, 0.17));
    expect(amps('wifi-serial-esp8266', 'idle').min).toBe(0.015);
  });

  describe('SIM800H & SIM800L, SIMCom, Hardware Design 2.02, 07/2015, Table 49, p. 60', () => {
    const gsm = 'gsm-sim800l';
    test('3.4, 4.0 and 4.4 V, a drop of at most 350 mV, 17.38 mA idle, asleep 1.04 mA, 2.0 A in a burst', () => {
      expect(volts(gsm, 'supply-voltage')).toEqual({ min: 3.4, typ: 4, max: 4.4 });
      expect(value(at(gsm, 'maximum-dip'), 'voltage')).toBe(0.35);
      expect(amps(gsm, 'idle')).toEqual(span(1.04e-3, 17.38e-3, undefined));
      expect(value(at(gsm, 'peak'), 'current')).toBe(2);
    });

    test('its bursts and what flows between them come to no less than its averages: a call 238.44 mA, data 529.84 mA', () => {
      const time = (name: string): number => value(at(gsm, name), 'time')!;
      const mean = (between: number): number => between + ((2 - between) * time('peak-time')) / time('peak-every');
      // A frame of GSM has eight slots, 120 ms / 26 each (3GPP TS 45.002).
      expect(time('peak-every') / time('peak-time')).toBeCloseTo(8, 2);
      expect(time('peak-every')).toBeCloseTo(0.12 / 26, 6);
      expect(mean(amps(gsm, 'active').typ!)).toBeGreaterThanOrEqual(0.23844);
      expect(mean(amps(gsm, 'active').max!)).toBeGreaterThanOrEqual(0.52984);
    });
  });
});

describe('displays, clocks, cards, sound', () => {
  test('MAX7219, Maxim, 19-4452, Rev. 4, p. 1: 150 µA shut down', () => {
    expect(amps('display-driver-max7219', 'idle').min).toBe(150e-6);
  });

  test('DS3231, Maxim, 19-5170, p. 4: a temperature conversion takes 125 and at most 200 ms', () => {
    expect(bounds(at('clock-ds3231', 'peak-time'), 'time')).toMatchObject({ min: 0.125, max: 0.2 });
  });

  test('MFRC522, NXP, Table 1: transmitter 60 and at most 100 mA, analogue at most 10 mA, digital 6.5 mA, powered down 10 µA', () => {
    const { typ, max } = amps('card-reader-mfrc522', 'active');
    expect(typ).toBeGreaterThanOrEqual(0.06 + 0.0065);
    expect(max).toBeGreaterThanOrEqual(0.1 + 0.01 + 0.0065);
    expect(amps('card-reader-mfrc522', 'idle').max).toBe(10e-6);
    expect(volts('card-reader-mfrc522', 'supply-voltage')).toEqual({ min: 2.5, typ: 3.3, max: 3.6 });
  });

  test('MAX98357A, Maxim, p. 1: 2.5 to 5.5 V, 2.4 mA, 3.2 W into 4 Ω at 5 V with an efficiency of at most 92 %', () => {
    expect(volts('audio-amplifier-max98357', 'supply-voltage')).toMatchObject({ min: 2.5, max: 5.5 });
    expect(amps('audio-amplifier-max98357', 'idle').typ).toBe(0.0024);
    expect(amps('audio-amplifier-max98357', 'peak').min).toBeGreaterThanOrEqual(3.2 / 5 / 0.92);
  });

  test('APA102 and SK6812, Awesome LED list: 19 to 22 mA and 20 mA a colour, 1 mA at rest', () => {
    expect(amps('pixels-apa102', 'full-each')).toMatchObject(span(0.057, undefined, 0.066));
    expect(amps('pixels-sk6812', 'full-each').max).toBe(0.06);
    expect(amps('pixels-sk6812-rgbw', 'full-each').max).toBe(0.08);
    for (const id of ['pixels-apa102', 'pixels-sk6812', 'pixels-sk6812-rgbw'])
      expect(amps(id, 'idle-each').max).toBe(0.001);
  });
});

describe('motor drivers', () => {
  test('L298, ST, 01/2000: total drop 1.80 to 3.2 V at 1 A, at most 4.9 V at 2 A; 2 A, 2.5 A in pulses, 46 V, 35 K/W, 130 °C', () => {
    const drop = points(at('motor-driver-l298', 'drop'), 'voltage', 'current');
    expect(drop.map(([current, { max }]) => [current, max])).toEqual([
      [1, 3.2],
      [2, 4.9],
    ]);
    expect(drop[0]?.[1].min).toBe(1.8);
    expect(value(at('motor-driver-l298', 'maximum-current'), 'current')).toBe(2);
    expect(value(at('motor-driver-l298', 'peak-current'), 'current')).toBe(2.5);
    expect(value(at('motor-driver-l298', 'maximum-voltage'), 'voltage')).toBe(46);
    expect(value(at('motor-driver-l298', 'thermal-resistance'), 'thermal-resistance')).toBe(35);
    expect(value(at('motor-driver-l298', 'maximum-junction'), 'temperature')).toBe(130);
    expect(amps('motor-driver-l298', 'input-current')).toMatchObject(span(undefined, 30e-6, 100e-6));
  });

  test('L298, ST, Electrical characteristics: at most 70 mA of the power stage and 36 mA of the logic, together at most 106 mA', () => {
    expect(amps('motor-driver-l298', 'quiescent').max).toBeCloseTo(0.07 + 0.036, 12);
  });

  test('L293D, Texas Instruments, SLRS008C, 11/2004, p. 5, at 0.6 A: 1.4/1.8 V above, 1.2/1.8 V below; 36 V; at most 24 mA', () => {
    const drop = volts('motor-driver-l293d', 'drop');
    expect([drop.typ, drop.max]).toEqual([near(1.4 + 1.2), near(1.8 + 1.8)]);
    expect(value(at('motor-driver-l293d', 'drop', 'at'), 'current')).toBe(0.6);
    expect(value(at('motor-driver-l293d', 'maximum-current'), 'current')).toBe(0.6);
    expect(value(at('motor-driver-l293d', 'maximum-voltage'), 'voltage')).toBe(36);
    expect(amps('motor-driver-l293d', 'quiescent')).toMatchObject(span(undefined, 0.014, 0.024));
  });

  test('TB6612FNG, Toshiba, 10/2014, pp. 1 and 2: 0.5 Ω both together, 1.2 A on average, 3.2 A in peaks, 13.5 V', () => {
    expect(bounds(at('motor-driver-tb6612', 'on-resistance'), 'resistance').typ).toBe(0.5);
    expect(value(at('motor-driver-tb6612', 'maximum-current'), 'current')).toBe(1.2);
    expect(value(at('motor-driver-tb6612', 'peak-current'), 'current')).toBe(3.2);
    expect(value(at('motor-driver-tb6612', 'maximum-voltage'), 'voltage')).toBe(13.5);
    // 200 kΩ inside pull each input down.
    expect(amps('motor-driver-tb6612', 'input-current').typ).toBeCloseTo(3 / 200e3, 9);
  });

  test('DRV8833, Texas Instruments, p. 1: 360 mΩ both together, 1.5 A RMS and 2 A in peaks a bridge, 2.7 to 10.8 V', () => {
    expect(bounds(at('motor-driver-drv8833', 'on-resistance'), 'resistance').typ).toBe(0.36);
    expect(value(at('motor-driver-drv8833', 'maximum-current'), 'current')).toBe(1.5);
    expect(value(at('motor-driver-drv8833', 'peak-current'), 'current')).toBe(2);
    expect(value(at('motor-driver-drv8833', 'maximum-voltage'), 'voltage')).toBe(10.8);
  });
});

describe('solid-state relays', () => {
  /** G3MB, Omron, Input rating: operating range in volts, input impedance ±20 % in ohms. */
  test.each([
    ['ssr-4-6v-2a', 4, 6, 440],
    ['ssr-10-14v-2a', 9.6, 14.4, 1000],
    ['ssr-19-29v-2a', 19.2, 28.8, 2200],
  ])('G3MB, %s: %d to %d V, %d Ω', (id, least, most, ohms) => {
    expect(volts(id, 'input', 'window')).toMatchObject({ min: least, max: most });
    const impedance = bounds(at(id, 'input', 'series'), 'resistance');
    expect([impedance.min, impedance.typ, impedance.max]).toEqual(
      [0.8, 1, 1.2].map((share) => expect.closeTo(share * ohms, 9)),
    );
  });

  test('G3TB, Omron, output modules: operate at 4 V, or 3 V, up to 32 V, at most 5 mA', () => {
    expect(volts('ssr-4-32v-3a', 'input', 'window')).toMatchObject({ min: 4, max: 32 });
    expect(volts('ssr-3-32v-3a', 'input', 'window')).toMatchObject({ min: 3, max: 32 });
    for (const id of ['ssr-4-32v-3a', 'ssr-3-32v-3a']) expect(amps(id, 'input', 'maximum-current').max).toBe(0.005);
  });

  /** MOC3041/D, Motorola, p. 1 (MOC3041, 3042, 3043); DB91045m, Isocom, p. 2 (MOC3021, 3022, 3023): 15, 10 and 5 mA at most. */
  test.each([15, 10, 5])(
    'couplers with a triac that trigger with %d mA: 1.2 and at most 1.5 V at 10 mA, 50 mA',
    (current) => {
      const id = `triac-coupler-${current}ma`;
      expect(value(at(id, 'input', 'on-current'), 'current')).toBe(current / 1000);
      expect(volts(id, 'input', 'led-drop')).toMatchObject({ typ: 1.2, max: 1.5 });
      expect(value(at(id, 'input', 'maximum-current'), 'current')).toBe(0.05);
    },
  );
});

/** 4-Wire Pulse Width Modulation (PWM) Controlled Fans Specification, Intel, revision 1.3, 2005, 2.1.4: low up to 0.8 V, at most 5.25 V. */
test.each(['fan-12v-40mm', 'fan-12v-80mm', 'fan-12v-120mm'])('%s takes its control line for low up to 0.8 V', (id) => {
  expect(volts(id, 'input-threshold').min).toBe(0.8);
  expect(value(at(id, 'input-maximum'), 'voltage')).toBe(5.25);
});
