/** The energy that an inductive load leaves to what clamps it, each time its contact opens. */
import { alternatingEnergy, directEnergy } from '../../circuit/inductive-load.js';
import { storedEnergy } from '../../circuit/release.js';
import { rating } from '../limits.js';
import type { AccountPlan, Reading, Step } from '../account-plan.js';
import type { Contact, ContactBase } from './contact.js';
import type { Suppression } from './suppression.js';

/** Hertz: the lower mains frequency stores more at the same current. */
const HERTZ = 50;
const ROOT = Math.SQRT2;
/** Power factor that makers rate contacts for inductive loads at (Omron, contact ratings: cos φ = 0.4). */
const POWER_FACTOR = 0.4;

export function energyAccounts(
  base: ContactBase & { readonly id: string },
  { circuit, load, part, title, input }: Contact,
  { type, figures }: Suppression,
): AccountPlan[] {
  const limit = rating(figures, 'energy', 'energy');
  if (limit === undefined || type === 'rc' || (load.kind !== 'inductive' && load.kind !== 'motor')) return [];
  const about = input.contact.within('load');
  const inductance = about.interval('inductance', 'inductance');
  if (inductance === undefined)
    about.assume(
      load.waveform === 'AC'
        ? `what it stores: that of a load of a power factor of ${POWER_FACTOR}, since nobody states its inductance`
        : 'what it stores: that of an electromagnet by IEC 60947-5-1, DC-13, since nobody states its inductance',
    );
  const amps = (s: Reading): number => Math.abs(s.current(part)) * (load.waveform === 'AC' ? ROOT : 1);
  const step = (s: Reading): Step => {
    if (inductance !== undefined) {
      const henries = s.typical ? inductance.typ : inductance.max;
      return {
        name: 'E',
        says: 'energy that the load stores at its current’s peak',
        formula: 'L * I^2 / 2',
        with: { L: [henries, 'H'], I: [amps(s), 'A'] },
        gives: [storedEnergy(henries, amps(s)), 'J'],
      };
    }
    const [V, I] = [s.across(part), Math.abs(s.current(part))];
    return load.waveform === 'AC'
      ? {
          name: 'E',
          says: `energy that a load of a power factor of ${POWER_FACTOR} stores at its current’s peak`,
          formula: 'V * I * sqrt(1 - x^2) / (2 * 3.14159265358979 * f)',
          with: { V: [V, 'V'], I: [I, 'A'], x: [POWER_FACTOR, ''], f: [HERTZ, 'Hz'] },
          gives: [alternatingEnergy(V, I, POWER_FACTOR, HERTZ), 'J'],
        }
      : {
          name: 'E',
          says: 'energy of an electromagnet whose current comes to 95 % within 6 ms a watt, 300 ms at the most',
          formula: 'min(0.006 * V * I, 0.3) / 6 * V * I',
          with: { V: [V, 'V'], I: [I, 'A'] },
          gives: [directEnergy(V * I), 'J'],
        };
  };
  return [
    {
      ...base,
      title: `suppression on the ${title}, energy`,
      quantity: 'energy',
      direction: 'at-most',
      recipes: ['draw-most', 'draw-least', 'lightest'],
      read: (s) => step(s).gives[0],
      limits: [
        inductance === undefined
          ? { ...limit, asks: `what is the inductance of the load on the contact of ${circuit} (its \`inductance\`)?` }
          : limit,
      ],
      steps: (s) => [step(s)],
    },
  ];
}
