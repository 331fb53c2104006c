/** What makers publish of a load's inputs, whatever its supply: levels and what they bear (second hand: the catalogue's figures). */
import { describe, expect, it } from 'vitest';
import { findingsOf, judged } from '../checks/judged.js';

const onPins = (pins: string, loads: string): string => `ampledger: 1
title: Case
ambient: 25 °C
policy: everyday
supplies: { bench: { voltage: ${pins}, current: 5 A }, brick-12v: { voltage: 12 V, current: 5 A }, logic: { voltage: 5 V, current: 5 A }, cell: { voltage: 4 V, current: 5 A } }
controllers:
  main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA } }
loads: { a: { ${loads} } }
`;
const levels = (text: string, rule: string): readonly string[] => findingsOf(text, rule).map((f) => f.verdict);

describe('published levels', () => {
  it('hold whatever the supply: 5 V are high to a strip on 12 V whose drivers live on 5 V, 3.3 V are not', () => {
    const strip = (pins: string): string =>
      onPins(pins, 'part: pixels-ws2811-12v, count: 1, pin: PB1, supply: brick-12v');
    expect(levels(strip('5 V'), 'level-high')).toEqual([]);
    expect(levels(strip('3.3 V'), 'level-high')).toEqual(['strain']);
  });

  it('fail a typical input half way between them: the MAX7219 reads low up to 0.8 V and high from 3.5 V', () => {
    const reads = (pins: string, part = 'display-driver-max7219'): string =>
      onPins(pins, `part: ${part}, supply: logic, signals: { cs: PB1 }`);
    expect(levels(reads('3.7 V'), 'level-high')).toEqual([]);
    expect(levels(reads('3.3 V'), 'level-high')).toEqual(['strain']);
    expect(levels(reads('2.1 V'), 'level-high')).toEqual(['breach']);
    // A level shifter in front of a card reads high from 2 V, on the same 5 V.
    expect(levels(reads('3.3 V', 'card-reader-microsd'), 'level-high')).toEqual([]);
  });
});

describe('levels published as shares', () => {
  it('go with the supply: 3.3 V are no sure high to a strip on 5 V, and are to one on a cell', () => {
    const strip = (supply: string): string =>
      onPins('3.3 V', `part: pixels-ws2812b, count: 1, pin: PB1, supply: ${supply}`);
    expect(levels(strip('logic'), 'level-high')).toEqual(['strain']);
    expect(levels(strip('cell'), 'level-high')).toEqual([]);
  });
});

describe('what inputs bear', () => {
  const gsm = (pins: string): string => onPins(pins, 'part: gsm-sim800l, supply: cell, signals: { reset: PB1 }');

  it('is held against the line, whatever the supply: 5 V at an input for 3.1 V', () => {
    expect(levels(gsm('5 V'), 'level-over')).toEqual(['breach']);
    expect(judged(gsm('5 V')).findings.some((f) => f.verdict === 'unproven')).toBe(false);
  });

  it('lets a radio on 3.3 V stand at pins of 5 V where its maker allows 5.25 V', () => {
    const radio = (part: string): string =>
      onPins('5 V', `part: ${part}, supply: low, signals: { cs: PB1 }`).replace(
        'cell: { voltage: 4 V',
        'low: { voltage: 3.3 V',
      );
    expect(levels(radio('radio-nrf24l01'), 'level-over')).toEqual([]);
    expect(levels(radio('radio-cc1101'), 'level-over')).toEqual(['breach']);
  });
});
