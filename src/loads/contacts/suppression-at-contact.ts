/** What suppression does to the contact itself: the surge of its capacitor as it closes, and what stands across it as it opens. */
import { closed } from '../../quantity/quantity.js';
import type { AccountPlan, Reading } from '../account-plan.js';
import { rating } from '../limits.js';
import type { Contact, ContactBase } from './contact.js';
import { figuresWith } from './contact-figures.js';
import { closingLimit } from './contact-limits.js';
import type { RatingRow } from './contact-rating.js';
import { ROOT, highest, highestStep } from './line-voltage.js';
import type { Suppression } from './suppression.js';

/** A capacitor is charged, or emptied, through its resistor and the contact that closes. */
export function closing(
  base: ContactBase,
  contact: Contact,
  { type, figures, across: over }: Suppression,
  rows: readonly RatingRow[],
): AccountPlan[] {
  if (type !== 'rc') return [];
  const { circuit, load, side, title } = contact;
  const resistance = figures.figure('resistance', 'resistance');
  const ohms = resistance && closed(resistance.quantity);
  const row = closingLimit(load, rows, side);
  if (row === undefined) return [];
  const peak = (s: Reading): number => highest(contact)(s) * (load.waveform === 'AC' ? ROOT : 1);
  const least = (s: Reading): number => (s.typical ? ohms!.typ : ohms!.min);
  return [
    {
      ...base,
      id: contact.named('suppression'),
      title: `${title}, closing on its capacitor`,
      quantity: 'current',
      direction: 'at-most',
      recipes: ['lightest', 'starved'],
      read: (s) => (ohms === undefined || ohms.min <= 0 ? undefined : peak(s) / least(s)),
      limits: ohms === undefined ? [] : [row],
      ...(ohms === undefined && {
        missing: {
          figure: 'resistance',
          asks: `what resistor is in series with the capacitor across the ${over} of ${circuit} (its \`resistance\`)?`,
        },
      }),
      steps: (s) =>
        ohms === undefined
          ? []
          : [
              highestStep(contact, s),
              {
                name: 'I_closing',
                says: 'what the capacitor gives or takes in the moment in which the contact closes',
                formula: load.waveform === 'AC' ? 'V_line * sqrt(2) / R' : 'V_line / R',
                with: { V_line: [highest(contact)(s), 'V'], R: [least(s), 'Ω'] },
                gives: [peak(s) / least(s), 'A'],
              },
            ],
    },
  ];
}

/** What stands across the contact when it has opened: what clamps, and its supply as well where that lies across the load. */
export function thrown(
  base: ContactBase,
  contact: Contact,
  { type, figures, across: over }: Suppression,
): AccountPlan[] {
  const { load, title, input, named } = contact;
  const relay = figuresWith(input, 'contact-withstand');
  const limit = rating(relay, 'contact-withstand', 'voltage', { margin: 'none', grade: 'operating' });
  const clamp = figures.curve(
    figures.says('clamping-voltage') ? 'clamping-voltage' : 'zener-voltage',
    'voltage',
    'current',
  );
  if (limit === undefined || clamp === undefined || type === 'zener' || type === 'diode') return [];
  const inPeaks = relay.figure('contact-withstand', 'voltage')?.quantity.waveform === 'AC';
  const value = limit.value;
  const clamps = (s: Reading): number => (s.typical ? clamp.points[0]!.value.typ : clamp.points.at(-1)!.value.max);
  const supply = (s: Reading): number =>
    over === 'contact' ? 0 : highest(contact)(s) * (load.waveform === 'AC' ? ROOT : 1);
  return [
    {
      ...base,
      id: named('contact'),
      title: `${title}, voltage at switching off`,
      quantity: 'voltage',
      direction: 'at-most',
      recipes: ['lightest', 'starved'],
      read: (s) => supply(s) + clamps(s),
      limits: [
        {
          ...limit,
          value: inPeaks ? (s) => ROOT * (typeof value === 'number' ? value : value(s)) : value,
          condition: `between its open contacts${inPeaks ? ', as a peak' : ''}`,
        },
      ],
      steps: (s) => [
        {
          name: 'V_contact',
          says:
            over === 'contact'
              ? 'what lies across it clamps at so much'
              : 'its supply at its peak, and on top of that what lies across the load',
          formula: over === 'contact' ? 'V_clamp' : 'V_supply + V_clamp',
          with: { V_clamp: [clamps(s), 'V'], ...(over !== 'contact' && { V_supply: [supply(s), 'V'] as const }) },
          gives: [supply(s) + clamps(s), 'V'],
        },
      ],
    },
  ];
}
