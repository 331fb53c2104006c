/** Cases of the rules about pins. */
import type { Case } from './case.js';
import { onBoard, onChip } from './case.js';

/** Lets a test look at the damage limit alone. */
const FAR = '{ applies-to: each-pin, source: 1 A, sink: 1 A, grade: characterised }';
const resistor = (ohms: string, more = ''): string =>
  `lamp: { type: resistor, resistance: ${ohms}, power: 5 W, pin: PB1${more} }`;
const led = (pin: string, series: string | undefined): string =>
  `lamp: { part: led-red-5mm, pin: ${pin}${series === undefined ? '' : `, series: ${series}`} }`;

export const PINS: readonly Case[] = [
  {
    rule: 'pin-current',
    when: 'at 20.2 mA strains what is promised to 20 mA: 5 V / (222.5 + 25) Ω',
    verdict: 'strain',
    text: onChip(resistor('222.5 Ω')),
  },
  {
    rule: 'pin-current',
    when: 'at 20.2 mA into the pin strains the other way round as well',
    verdict: 'strain',
    text: onChip(resistor('222.5 Ω', ', active: low')),
  },
  {
    rule: 'pin-current',
    when: 'at exactly 20 mA is as far as the maker promises, and that is a margin already: 5 V / (225 + 25) Ω',
    verdict: 'silent',
    text: onChip(resistor('225 Ω')),
  },
  {
    rule: 'pin-current',
    when: 'at 40.3 mA breaks the damage limit of 40 mA: 5 V / (99 + 25) Ω',
    verdict: 'breach',
    text: onChip(resistor('99 Ω'), { limits: FAR }),
  },
  {
    rule: 'pin-current',
    when: 'at 32.3 mA is short of 20 % in hand of 40 mA: 5 V / (130 + 25) Ω',
    verdict: 'thin',
    text: onChip(resistor('130 Ω'), { limits: FAR }),
  },
  {
    rule: 'pin-current',
    when: 'at exactly 32 mA has the 20 % in hand that it wants: 5 V / (131.25 + 25) Ω',
    verdict: 'silent',
    text: onChip(resistor('131.25 Ω'), { limits: FAR }),
  },
  {
    rule: 'pin-current',
    when: 'asks for a limit where nobody publishes one',
    verdict: 'unproven',
    text: onChip(resistor('1 kΩ'), { more: 'parts: { mute: { extends: atmega328p, limits: [] } }' }).replace(
      'chip: atmega328p',
      'chip: mute',
    ),
  },
  {
    rule: 'pin-input-only',
    when: 'breaks on a lamp at A6, which has no output stage',
    verdict: 'breach',
    text: onBoard(led('A6', '1 kΩ')),
  },
  {
    rule: 'pin-input-only',
    when: 'is content with A5, its neighbour that has one',
    verdict: 'silent',
    text: onBoard(led('A5', '1 kΩ')),
  },
  {
    rule: 'pin-reserved',
    when: 'strains on a lamp at D1, the serial line of the board',
    verdict: 'strain',
    text: onBoard(led('D1', '1 kΩ')),
  },
  {
    rule: 'pin-reserved',
    when: 'is content with D2',
    verdict: 'silent',
    text: onBoard(led('D2', '1 kΩ')),
  },
  {
    rule: 'pin-used-twice',
    when: 'breaks on two lamps of opposite level at one pin',
    verdict: 'breach',
    text: onBoard(`${led('D2', '1 kΩ')}\nb: { part: led-red-5mm, pin: D2, series: 1 kΩ, active: low }`),
  },
  {
    rule: 'pin-used-twice',
    when: 'is content with two lamps of one level at one pin',
    verdict: 'silent',
    text: onBoard(`${led('D2', '1 kΩ')}\nb: { part: led-red-5mm, pin: D2, series: 1 kΩ }`),
  },
  ...(
    [
      ['is content with registers in a row, which take one clock and one latch', 'clock: PB2, latch: PB3', 'silent'],
      ['breaks where the clock of one register is the latch of another', 'clock: PB3, latch: PB2', 'breach'],
    ] as const
  ).map(([when, control, verdict]) => ({
    rule: 'pin-used-twice',
    when,
    verdict,
    text: onChip(
      'a: { part: led-red-5mm, pin: row.q0, series: 1 kΩ }\nb: { part: led-red-5mm, pin: next.q0, series: 1 kΩ }',
      {
        more: `expanders:
  row: { chip: 74hc595, supply: bench, control: { data: PB1, clock: PB2, latch: PB3 } }
  next: { chip: 74hc595, supply: bench, control: { data: PB4, ${control} } }\n`,
      },
    ),
  })),
  {
    rule: 'nothing-limits',
    when: 'breaks on a lamp without a resistor',
    verdict: 'breach',
    text: onChip(led('PB1', undefined)),
  },
  {
    rule: 'nothing-limits',
    when: 'counts 24 Ω as nothing beside the 25 Ω of the pin',
    verdict: 'breach',
    text: onChip(led('PB1', '24 Ω')),
  },
  {
    rule: 'nothing-limits',
    when: 'counts a resistor from the 25 Ω of the pin on, if it is only a little one',
    verdict: 'silent',
    text: onChip(led('PB1', '25 Ω')),
  },
  {
    rule: 'pins-joined',
    when: 'is a note on two pins of one chip',
    verdict: 'note',
    text: onChip('lamp: { type: resistor, resistance: 1 kΩ, power: 1 W, joined-pins: [PB1, PB2] }'),
  },
  {
    rule: 'pins-joined',
    when: 'breaks on pins of two chips',
    verdict: 'breach',
    text: onChip('lamp: { type: resistor, resistance: 1 kΩ, power: 1 W, joined-pins: [PB1, bar.q0] }').replace(
      'loads:',
      'expanders: { bar: { chip: 74hc595, supply: bench } }\nloads:',
    ),
  },
  {
    rule: 'pins-joined',
    when: 'is content with a load on each pin',
    verdict: 'silent',
    text: onChip('lamp: { type: resistor, resistance: 1 kΩ, power: 1 W, pins: [PB1, PB2] }'),
  },
];
