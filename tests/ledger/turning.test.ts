/** Heat in a resistor: most where it equals what is in series with it, wherever in its range that is. */
import { describe, expect, it } from 'vitest';
import { judged } from '../checks/judged.js';

/** A resistor on exactly 10 V with a resistance of its own. */
const on = (ohms: string, inner = '10 Ω'): string => `
ampledger: 1
title: Turning
ambient: 20 °C
policy: classroom
supplies: { bench: { voltage: 10 V, current: 5 A, resistance: ${inner} } }
loads:
  heater: { type: resistor, resistance: ${ohms}, power: 50 W, supply: bench }
`;

const heat = (text: string, id: string) =>
  judged(text).accounts.find(({ account: a }) => a.id === id && a.quantity === 'power')!.account.draw!;

/** 10 V over r and R in series: what R turns into heat. */
const watts = (R: number, r: number): number => (10 / (R + r)) ** 2 * R;

describe('heat in a resistor', () => {
  it('is most inside its range, where it equals the rest: 10² / (4 x 10) = 2.5 W', () => {
    const draw = heat(on('5 to 40 Ω'), 'heater.resistor');
    expect(draw.max).toBeCloseTo(2.5, 6);
    // Least at the end that is farther off, as a ratio: 40 is four times 10, 5 is half of it.
    expect(draw.min).toBeCloseTo(watts(40, 10), 6);
  });

  it('is least at its lowest resistance where that is farther off', () => {
    expect(heat(on('1 to 20 Ω'), 'heater.resistor').min).toBeCloseTo(watts(1, 10), 6);
    expect(heat(on('1 to 20 Ω'), 'heater.resistor').max).toBeCloseTo(2.5, 6);
  });

  it('is most at an end where the rest is always more, or always less', () => {
    expect(heat(on('1 to 4 Ω'), 'heater.resistor').max).toBeCloseTo(watts(4, 10), 6);
    expect(heat(on('1 to 4 Ω'), 'heater.resistor').min).toBeCloseTo(watts(1, 10), 6);
    expect(heat(on('20 to 50 Ω'), 'heater.resistor').max).toBeCloseTo(watts(20, 10), 6);
    expect(heat(on('20 to 50 Ω'), 'heater.resistor').min).toBeCloseTo(watts(50, 10), 6);
  });

  it('takes the rest at its own ends: 4 to 12 Ω of supply', () => {
    const draw = heat(on('2 to 9 Ω', '4 to 12 Ω'), 'heater.resistor');
    expect(draw.max).toBeCloseTo(watts(4, 4), 6);
    expect(draw.min).toBeCloseTo(watts(2, 12), 6);
  });

  // The pins' own 25 Ω lie inside the range: 5² / (4 x 25) = 0.25 W, less what the chip's draw takes off nothing here.
  it('of a resistor on a pin: at the pin’s own resistance', () => {
    const text = `
ampledger: 1
title: Turning
ambient: 20 °C
policy: classroom
supplies: { bench: { voltage: 5 V, current: 5 A } }
controllers: { main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA } } }
loads:
  lamp: { type: resistor, resistance: 200 Ω, pin: PB1, series: 10 to 400 Ω, power: 1 W }
  short: { type: resistor, resistance: 1 Ω, pin: PB2, series: 10 to 400 Ω, power: 1 W }
`;
    expect(heat(text, 'lamp.series').max).toBeCloseTo(25 / (4 * 225), 6);
    expect(heat(text, 'short.series').max).toBeCloseTo(25 / (4 * 26), 6);
    expect(heat(text, 'short.series').min).toBeCloseTo((5 / 426) ** 2 * 400, 6);
  });

  it('behind a junction: no value of a fine sweep is above it', () => {
    const at = (ohms: string) => `
ampledger: 1
title: Turning
ambient: 20 °C
policy: classroom
supplies: { bench: { voltage: 3.6 V, current: 5 A, resistance: 2 Ω } }
loads:
  lamp: { part: led-white-5mm, supply: bench, series: ${ohms} }
`;
    const { min, max } = heat(at('1 to 60 Ω'), 'lamp.series');
    let [most, least] = [0, Infinity];
    for (let ohms = 1; ohms <= 60; ohms += 0.5) {
      const one = heat(at(`${ohms} Ω`), 'lamp.series');
      most = Math.max(most, one.max);
      least = Math.min(least, one.min);
    }
    expect(max).toBeGreaterThanOrEqual(most * (1 - 1e-9));
    expect(max / most).toBeLessThan(1.005);
    expect(min / least).toBeCloseTo(1, 4);
  });
});
