/** Cases of the rules about what the file itself says. */
import type { Case } from './case.js';
import { onSupplies } from './case.js';

/** Exactly 100 Ω on 4.9 to 5.1 V at 20 °C. */
const read = (reading: string): string =>
  onSupplies(
    'cell: { voltage: 4.9 to 5.1 V, current: 1 A }',
    'a: { type: resistor, resistance: 100 Ω, power: 1 W, supply: cell }',
    { ambient: '20 °C', more: `measured: [ { of: ${reading} } ]` },
  );

export const DATA: readonly Case[] = [
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
    text: read('a, current: 48 mA'),
  },
  { rule: 'measured-disagrees', when: 'is content with 49 mA', verdict: 'silent', text: read('a, current: 49 mA') },
];
