/** Cases of the rules about what the file itself says. */
import type { Case } from './case.js';
import { onSupplies } from './case.js';

/** Exactly 100 Ω on 4.9 to 5.1 V at 20 °C. */
const read = (reading: string): string =>
  onSupplies(
    'cell: { voltage: 4.9 to 5.1 V, current: 1 A }',
    'lamp: { type: resistor, resistance: 100 Ω, power: 1 W, supply: cell }',
    { ambient: '20 °C', more: `measured: [ { of: ${reading} } ]` },
  );

/** 0.5 W in a resistor that bears 0.25 W, and what is said of it. */
const setAside = (waiver: string, power = '0.25 W'): string =>
  onSupplies(
    'cell: { voltage: 5 V, current: 1 A }',
    `lamp: { type: resistor, resistance: 50 Ω, power: ${power}, supply: cell }`,
    { more: `waivers: [ { rule: resistor-power, about: lamp, reason: it is on for a second, ${waiver} } ]` },
  );

export const DATA: readonly Case[] = [
  {
    rule: 'waiver-expired',
    when: 'weighs as much as what it set aside, the day after its last one',
    verdict: 'breach',
    text: setAside('until: 2026-11-24'),
  },
  {
    rule: 'waiver-expired',
    when: 'is content on the last day',
    verdict: 'silent',
    text: setAside('until: 2026-11-25'),
  },
  {
    rule: 'waiver-unused',
    when: 'notes a waiver of what is not there',
    verdict: 'note',
    text: setAside('until: 2026-12-24', '1 W'),
  },
  {
    rule: 'waiver-unused',
    when: 'is content while it sets something aside',
    verdict: 'silent',
    text: setAside('until: 2026-12-24'),
  },
  {
    rule: 'measured-disagrees',
    when: 'leaves unproven what stands at 5.11 V on a supply of at most 5.1 V',
    verdict: 'unproven',
    text: read('cell, voltage: 5.11 V'),
  },
  {
    rule: 'measured-disagrees',
    when: 'is content with 5.1 V',
    verdict: 'silent',
    text: read('cell, voltage: 5.1 V'),
  },
  {
    rule: 'measured-disagrees',
    when: 'is content with 5.2 V on a meter that may be off by 2 %',
    verdict: 'silent',
    text: read('cell, voltage: 5.2 V ±2 %'),
  },
  {
    rule: 'measured-disagrees',
    when: 'leaves unproven 48 mA in a resistor that takes at least 49',
    verdict: 'unproven',
    text: read('lamp, current: 48 mA'),
  },
  { rule: 'measured-disagrees', when: 'is content with 49 mA', verdict: 'silent', text: read('lamp, current: 49 mA') },
];
