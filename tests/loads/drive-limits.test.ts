/** A limit that holds at one drive setting holds for the pins that have it. */
import { describe, expect, it } from 'vitest';
import { accountsOf } from './read-account.js';

const chip = `
ampledger: 1
title: drive
ambient: 25 °C
supplies: { bench: { voltage: 3.3 V, current: 1 A } }
controllers:
  main: { chip: rp2040, supply: bench, pins: { GPIO2: { drive: 12 mA } },
          limits: [ { applies-to: each-pin, source: 3 mA, grade: operating, when: { drive: 4 mA } },
                    { applies-to: each-pin, source: 9 mA, grade: operating, when: { drive: 12 mA } } ] }
loads:
  plain: { type: resistor, resistance: 10 kΩ, pin: GPIO1 }
  strong: { type: resistor, resistance: 10 kΩ, pin: GPIO2 }
`;

describe('limits by the drive setting', () => {
  const account = accountsOf(chip);
  const own = (pin: string): readonly string[] =>
    account(pin, 'source')
      .limits.filter((l) => l.limit.grade === 'operating')
      .map((l) => l.limit.stated);

  it('are those of the setting that a pin has', () => {
    expect(own('main.GPIO1')).toEqual(['3 mA']);
    expect(own('main.GPIO2')).toEqual(['9 mA']);
  });
});

describe('what a chip turns into heat', () => {
  it('counts the most that it takes itself: 20 mA of 3.3 V, and 10 mA over 3.3 V less its load’s', () => {
    const text = chip
      .replace(
        /limits: \[[^]*?\] \}/,
        'draws: { active: typ 10 mA max 20 mA }, limits: [ { applies-to: package, power: 1 W, grade: absolute } ] }',
      )
      .replace('10 kΩ, pin: GPIO1', '270 Ω, pin: GPIO1');
    const { typ, max } = accountsOf(text)('main.package', 'at-most', 'power').draw!;
    // The pin: at the most 170 Ω and what flows with the least, 42.5 Ω; typically 85 Ω. The other one next to nothing.
    expect(max).toBeCloseTo(0.02 * 3.3 + (3.3 / (270 + 42.5)) ** 2 * 170, 3);
    expect(typ).toBeCloseTo(0.01 * 3.3 + (3.3 / (270 + 85)) ** 2 * 85, 3);
  });
});
