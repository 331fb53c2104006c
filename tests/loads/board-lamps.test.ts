/** Lamps that a board has on its own pins are load to them, whichever way they hang. */
import { describe, expect, it } from 'vitest';
import { accountsOf } from './read-account.js';

const core = (load: string, parts = ''): string => `
ampledger: 1
title: core
ambient: 25 °C
${parts}supplies: { bench: { voltage: 5 V, current: 2 A } }
controllers: { main: { board: BOARD, powered: { usb: bench } } }
loads:
  a: ${load}
`;
const on = (board: string, load: string, parts?: string): string => core(load, parts).replace('BOARD', board);

describe('a lamp between supply and pin', () => {
  const account = accountsOf(on('stm32f103-board', '{ type: resistor, resistance: 10 kΩ, pin: PC13 }'));

  it('is lit while the pin is low', () => {
    // 3.3 V less 1.85 V at 2 mA over 510 Ω and the pin: between 2 and 4 mA.
    const { typ } = account('main.PC13', 'sink').draw!;
    expect(typ).toBeGreaterThan(0.0025);
    expect(typ).toBeLessThan(0.003);
  });

  it('is no load while the pin is high', () => {
    expect(account('main.PC13', 'source').draw!.max).toBeLessThan(0.00035);
  });
});

describe('a lamp behind an amplifier', () => {
  it('is none of the pin', () => {
    const parts = 'parts: { buffered: { extends: atmega328p-5v-board, pin-leds: { led-d13: { buffered: true } } } }\n';
    const draw = (board: string): number =>
      accountsOf(on(board, '{ type: resistor, resistance: 10 kΩ, pin: D13 }', parts))('main.D13', 'source').draw!.max;
    expect(draw('buffered')).toBeCloseTo(5 / 10e3, 4);
    expect(draw('atmega328p-5v-board')).toBeGreaterThan(0.0025);
  });
});
