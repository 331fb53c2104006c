/** What supplies say of themselves beside their voltage: what can burn is warned of, what makes no sense is refused. */
import { describe, expect, it } from 'vitest';
import { judged } from '../checks/judged.js';

const on = (supply: string, more = ''): string => `ampledger: 1
title: Supplies
supplies: { a: { ${supply} }, b: { voltage: 5 V, current: 1 A } }
loads:
  x: { type: constant-current, current: 1 mA, supply: a }
${more}`;

const cautions = (supply: string): string => judged(on(supply)).project.cautions.join('\n');

describe('a battery', () => {
  it.each([
    ['li-ion-18650', 'burn'],
    ['coin-cr2032', 'children'],
    ['lead-acid-12v-7ah', 'fuse right at its terminal'],
  ])('%s is warned of', (type, says) => {
    expect(cautions(`type: ${type}`)).toContain(says);
  });

  it('of the file’s own is warned of by its chemistry, and others by nothing', () => {
    expect(cautions('voltage: 3.7 V, current: 1 A, chemistry: lithium-ion')).toContain('lithium cells burn');
    expect(cautions('type: alkaline-aa-3')).toBe('');
    expect(cautions('voltage: 5 V, current: 1 A')).toBe('');
  });
});

describe('what a supply cannot be', () => {
  it.each([
    ['voltage: 9 V, open-voltage: 14 V', '', 'nothing says at what current it is down to its `voltage`'],
    ['voltage: 9 V, open-voltage: 14 V, current: 0 A', '', 'nothing says at what current it is down to its `voltage`'],
    ['voltage: 9 V, current: 1 A, input-capacitance: 10 µF', '', 'belongs to a supply that another one feeds'],
    [
      'voltage: 5 V, current: 1 A',
      'modes: { m: { active: [], supplies: { laptop: suspended } } }',
      'there is no port `laptop`',
    ],
  ])('%s %s is refused', (supply, more, says) => {
    expect(() => judged(on(supply, more))).toThrow(says);
  });

  it('a capacitor at the input of what no supply feeds is refused, and so is a dip', () => {
    const led = (key: string): string => `ampledger: 1
title: On a pin
supplies: { a: { voltage: 5 V, current: 1 A } }
controllers: { main: { chip: atmega328p, supply: a } }
loads:
  x: { part: led-red-5mm, pin: PD3, series: 330 Ω, ${key} }
`;
    expect(() => judged(led('input-capacitance: 10 µF'))).toThrow('none feeds `x`');
    expect(() => judged(led('maximum-dip: 1 V'))).toThrow('none feeds `x`');
  });
});
