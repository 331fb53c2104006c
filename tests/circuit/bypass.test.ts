import { describe, expect, it } from 'vitest';
import { bypassTime, ohmsAfter, ohmsOverSecond } from '../../src/circuit/bypass.js';

/** The current of one volt by small steps: the capacitor's voltage by the difference equation, and nothing of the formulas. */
function stepped(series: number, rest: number, capacitance: number, until: number) {
  const steps = 2_000_000;
  const dt = until / steps;
  let [volts, squares, amps] = [0, 0, 0];
  for (let k = 0; k < steps; k++) {
    amps = (1 - volts) / rest;
    squares += amps * amps * dt;
    volts += ((amps - volts / series) / capacitance) * dt;
  }
  return { amps, rms: Math.sqrt(squares / until) };
}

const cases = [
  { series: 47, rest: 63, capacitance: 470e-6 },
  { series: 330, rest: 70, capacitance: 100e-6 },
  { series: 22, rest: 70, capacitance: 4700e-6 },
];

describe('a bypassed resistor', () => {
  it.each(cases)('lets through after a time what small steps come to: %o', (bypassed) => {
    for (const seconds of [1e-3, 10e-3, 50e-3]) {
      const amps = 1 / (bypassed.rest + ohmsAfter(bypassed, seconds));
      expect(amps).toBeCloseTo(stepped(bypassed.series, bypassed.rest, bypassed.capacitance, seconds).amps, 7);
    }
  });

  it.each(cases)('comes to its root mean square over the first second: %o', (bypassed) => {
    const rms = 1 / (bypassed.rest + ohmsOverSecond(bypassed));
    expect(rms).toBeCloseTo(stepped(bypassed.series, bypassed.rest, bypassed.capacitance, 1).rms, 6);
  });

  it('is bridged at first and counts whole in the end', () => {
    const bypassed = { series: 47, rest: 63, capacitance: 470e-6 };
    expect(ohmsAfter(bypassed, 0)).toBe(0);
    expect(ohmsAfter(bypassed, 1)).toBeCloseTo(47, 9);
    // 470 µF and 47 Ω beside 63 Ω, 26.9 Ω.
    expect(bypassTime(bypassed)).toBeCloseTo(12.65e-3, 5);
  });
});
