/** Cases of the rules about sums of pins. */
import type { Case } from './case.js';
import { onChip } from './case.js';

/** The five pins of the lower half of port D, each with so many ohms from the supply into the pin. */
const lowerPortD = (ohms: string): string =>
  `lamp: { type: resistor, resistance: ${ohms}, power: 5 W, pins: [PD0..PD4], active: low }`;
/** Two pins at 20 mA each; with the chip's own 10 mA its supply pins carry 50 mA. */
const TWO = 'lamp: { type: resistor, resistance: 225 Ω, power: 5 W, pins: [PB1, PB2] }';
/** The same pins with resistors of 10 %: most from the pins is not the moment of least from the chip. */
const SPREAD = TWO.replace('225 Ω', '225 Ω ±10 %');
const supplyPins = (amps: string): string => `{ applies-to: supply-pins, source: ${amps}, grade: absolute }`;

/** Two pins at 20 mA of 25 Ω, 10 mW each, and the chip itself at 10 mA of 5 V, 50 mW. */
const heat = (appliesTo: string, watts: string): string =>
  `{ applies-to: ${appliesTo}, power: ${watts}, grade: absolute }`;

export const GROUPS: readonly Case[] = [
  {
    rule: 'chip-heat',
    when: 'breaks where a chip that bears 69 mW turns 2 × 10 mW and 50 mW into heat',
    verdict: 'breach',
    text: onChip(TWO, { limits: heat('package', '69 mW') }),
  },
  {
    rule: 'chip-heat',
    when: 'is thin at 70 of 80 mW',
    verdict: 'thin',
    text: onChip(TWO, { limits: heat('package', '80 mW') }),
  },
  {
    rule: 'chip-heat',
    when: 'is content with 70 of 87.5 mW',
    verdict: 'silent',
    text: onChip(TWO, { limits: heat('package', '87.5 mW') }),
  },
  {
    rule: 'chip-heat',
    when: 'breaks where one pin may turn 9.9 mW into heat',
    verdict: 'breach',
    text: onChip(TWO, { limits: heat('each-pin', '9.9 mW') }),
  },
  {
    rule: 'chip-heat',
    when: 'goes by the narrower row: 12.5 mW for the two pins that are named',
    verdict: 'silent',
    text: onChip(TWO, { limits: `${heat('each-pin', '9.9 mW')}, ${heat('{ each: [PB1, PB2] }', '12.5 mW')}` }),
  },
  {
    rule: 'chip-heat',
    when: 'breaks where two pins may turn 19.9 mW into heat together',
    verdict: 'breach',
    text: onChip(TWO, { limits: heat('[PB1, PB2]', '19.9 mW').replace('power', 'name: pair, power') }),
  },
  {
    rule: 'total-current',
    when: 'cannot tell where each of several supply pins may carry 40 mA and all of them carry 50',
    verdict: 'unproven',
    text: onChip(TWO, { limits: supplyPins('40 mA').replace('grade', 'per: pin, grade') }),
  },
  {
    rule: 'total-current',
    when: 'is content where a single one could carry it all',
    verdict: 'silent',
    text: onChip(TWO, { limits: supplyPins('62.5 mA').replace('grade', 'per: pin, grade') }),
  },
  {
    rule: 'group-current',
    when: 'breaks at five times 20.2 mA into pins that may take 100 mA together',
    verdict: 'breach',
    text: onChip(lowerPortD('222.5 Ω'), { policy: 'classroom' }),
  },
  {
    rule: 'group-current',
    when: 'is content with five times 20 mA, exactly those 100 mA, where nothing has to be in hand',
    verdict: 'silent',
    text: onChip(lowerPortD('225 Ω'), { policy: 'classroom' }),
  },
  {
    rule: 'group-current',
    when: 'is thin at five times 16.1 mA, short of 20 % in hand',
    verdict: 'thin',
    text: onChip(lowerPortD('285 Ω')),
  },
  {
    rule: 'group-current',
    when: 'is content with five times 16 mA',
    verdict: 'silent',
    text: onChip(lowerPortD('287.5 Ω')),
  },
  {
    rule: 'total-current',
    when: 'breaks at two pins of 20 mA and 10 mA of the chip itself on supply pins for 49 mA',
    verdict: 'breach',
    text: onChip(TWO, { policy: 'classroom', limits: supplyPins('49 mA') }),
  },
  {
    rule: 'total-current',
    when: 'is content when those supply pins bear exactly 50 mA and nothing has to be in hand',
    verdict: 'silent',
    text: onChip(TWO, { policy: 'classroom', limits: supplyPins('50 mA') }),
  },
  {
    rule: 'total-current',
    when: 'is thin at 50 of 62 mA',
    verdict: 'thin',
    text: onChip(TWO, { limits: supplyPins('62 mA') }),
  },
  {
    rule: 'total-current',
    when: 'is content with 50 of 62.5 mA, 20 % in hand',
    verdict: 'silent',
    text: onChip(TWO, { limits: supplyPins('62.5 mA') }),
  },
  {
    rule: 'total-current',
    when: 'counts the most of pins and chip together: 2 x 5 V / (202.5 + 25) Ω and 30 mA are 73.96 of 73.5 mA',
    verdict: 'breach',
    text: onChip(SPREAD, { policy: 'classroom', limits: supplyPins('73.5 mA') }).replace(
      'active: 10 mA',
      'active: 10 to 30 mA',
    ),
  },
  {
    rule: 'total-current',
    when: 'is content with them on supply pins for 74.5 mA',
    verdict: 'silent',
    text: onChip(SPREAD, { policy: 'classroom', limits: supplyPins('74.5 mA') }).replace(
      'active: 10 mA',
      'active: 10 to 30 mA',
    ),
  },
];
