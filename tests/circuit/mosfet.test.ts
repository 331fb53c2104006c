import { describe, expect, it } from 'vitest';
import { warmChannel } from '../../src/circuit/mosfet.js';

describe('a channel that its own loss heats', () => {
  it('comes to rest where its loss and its resistance agree', () => {
    const { ohms, junction } = warmChannel(2, 0.1, 0.006, 60, 40);
    expect(junction).toBeCloseTo(40 + 60 * 4 * ohms, 9);
    expect(ohms).toBeCloseTo(0.1 * (1 + 0.006 * (junction - 25)), 12);
  });

  it('has its stated resistance at 25 °C, and no less in the cold', () => {
    expect(warmChannel(0, 0.1, 0.006, 60, 25).ohms).toBe(0.1);
    expect(warmChannel(1, 0.1, 0.006, 60, -20)).toEqual({ ohms: 0.1, junction: -14 });
  });

  it('has no rest where each kelvin brings more than one', () => {
    expect(warmChannel(10, 0.1, 0.01, 100, 25)).toEqual({ ohms: Infinity, junction: Infinity });
  });

  it('is hotter with more current, more resistance and more ambient', () => {
    const at = (amps: number, ohms: number, ambient: number) => warmChannel(amps, ohms, 0.006, 60, ambient).junction;
    expect(at(2.1, 0.1, 40)).toBeGreaterThan(at(2, 0.1, 40));
    expect(at(2, 0.11, 40)).toBeGreaterThan(at(2, 0.1, 40));
    expect(at(2, 0.1, 41)).toBeGreaterThan(at(2, 0.1, 40) + 1);
  });
});
