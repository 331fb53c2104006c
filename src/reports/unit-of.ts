/** The unit that a report tells each quantity in: SI throughout, and degrees Celsius. */
import type { ReportAccount } from './report.js';

export const UNIT_OF: { readonly [quantity in ReportAccount['quantity']]: ReportAccount['unit'] } = {
  current: 'A',
  voltage: 'V',
  power: 'W',
  temperature: '°C',
  charge: 'C',
  energy: 'J',
  time: 's',
};
