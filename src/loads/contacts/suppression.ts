/**
 * What takes over a load's current when its contact opens, so that no arc has to: what stands across it while it waits, and what it
 * takes then.
 */
import { releaseTime } from '../../circuit/release.js';
import type { Figure, Figures } from '../figures.js';
import { rating } from '../limits.js';
import type { Bench } from '../lowering.js';
import type { AccountPlan, LimitPlan, Reading, Step } from '../account-plan.js';
import type { ContactSide, SuppressionType } from '../circuit-plan.js';
import { branchSteps } from '../branch-working.js';
import type { Contact, ContactBase } from './contact.js';
import type { RatingRow } from './contact-rating.js';
import { ROOT, highest, highestStep } from './line-voltage.js';
import { closing, thrown } from './suppression-at-contact.js';
import { energyAccounts } from './suppression-energy.js';

export interface Suppression {
  readonly type: SuppressionType;
  readonly across: NonNullable<ContactSide['suppression']>['across'];
  readonly figures: Figures;
}

const TYPES: readonly SuppressionType[] = ['diode', 'zener', 'diode-zener', 'tvs', 'varistor', 'rc'];

/** Across the load unless the file says across the contact. */
export function suppressionOf(contact: Figures, bench: Bench): Suppression | undefined {
  if (!contact.says('suppression')) return undefined;
  const figures = bench.behind(contact.within('suppression'), 'clamp');
  const said = figures.word('type');
  const type = TYPES.find((each) => each === (said === 'schottky' ? 'diode' : said));
  return type && { type, across: figures.word('across') === 'contact' ? 'contact' : 'load', figures };
}

/** The same as rules need to know it. */
export function plannedOf({ type, across, figures }: Suppression): NonNullable<ContactSide['suppression']> {
  const farads = type === 'rc' ? figures.interval('capacitance', 'capacitance')?.max : undefined;
  return { type, across, ...(farads !== undefined && { farads }) };
}

/** From so many volts on a part across them has to be rated for them, or somebody is in danger. */
const TOUCHABLE = 50;

const idOf = ({ named }: Contact): string => named('suppression');

export function suppressionAccounts(base: ContactBase, contact: Contact, rows: readonly RatingRow[]): AccountPlan[] {
  const { suppression } = contact;
  if (suppression === undefined) return [];
  return [
    ...standing(base, contact, suppression),
    ...takesOver(base, contact, suppression),
    ...energyAccounts({ ...base, id: idOf(contact) }, contact, suppression),
    ...closing(base, contact, suppression, rows),
    ...thrown(base, contact, suppression),
  ];
}

/** What it is made to bear for ever, by its type: the key, and whether peaks count of an alternating voltage. */
const BEARS: { readonly [T in SuppressionType]: { readonly keys: readonly string[]; readonly peak: boolean } } = {
  varistor: { keys: ['working-voltage'], peak: false },
  rc: { keys: ['working-voltage'], peak: false },
  tvs: { keys: ['working-voltage', 'reverse-voltage', 'zener-voltage'], peak: true },
  zener: { keys: ['working-voltage', 'zener-voltage'], peak: true },
  'diode-zener': { keys: ['working-voltage', 'reverse-voltage'], peak: true },
  diode: { keys: ['working-voltage', 'reverse-voltage'], peak: true },
};

/** The voltage of its load's supply stands across it for as long as the contact is open, or closed. */
function standing(base: ContactBase, contact: Contact, { type, figures }: Suppression): AccountPlan[] {
  const { circuit, load, title } = contact;
  const { keys, peak } = BEARS[type];
  const key = keys.find((each) => figures.says(each) && !figures.masked(each));
  const stated = key === undefined ? undefined : figures.figure(key, 'voltage');
  const asksFor = type === 'varistor' || ((type === 'rc' || type === 'tvs') && load.volts >= TOUCHABLE);
  if (stated === undefined && !asksFor) return [];
  const rms = stated?.quantity.waveform === 'AC';
  const byPeak = load.waveform === 'AC' && (peak || stated?.quantity.waveform === 'DC');
  const volts = (s: Reading): number => highest(contact)(s) * (byPeak && !rms ? ROOT : 1);
  const limit = stated && key !== undefined ? voltageLimit(figures, key, stated, load.waveform) : undefined;
  return [
    {
      ...base,
      id: idOf(contact),
      title: `suppression on the ${title}, voltage`,
      quantity: 'voltage',
      direction: 'at-most',
      recipes: ['lightest', 'starved'],
      read: (s) => (limit ? volts(s) : undefined),
      limits: limit ? [limit] : [],
      ...(!limit && {
        missing: {
          figure: 'working-voltage',
          asks: `what voltage is what lies across the ${across(contact)} of ${circuit} made for (its \`working-voltage\`)?`,
        },
      }),
      steps: (s) => [
        highestStep(contact, s),
        ...(byPeak && !rms
          ? [
              {
                name: 'V_peak',
                says: 'its peak',
                formula: 'V_line * sqrt(2)',
                with: { V_line: [highest(contact)(s), 'V'] },
                gives: [volts(s), 'V'],
              } satisfies Step,
            ]
          : []),
      ],
    },
  ];
}

const across = ({ suppression }: Contact): string => (suppression?.across === 'contact' ? 'contact' : 'load');

function voltageLimit(figures: Figures, key: string, { quantity }: Figure, waveform: 'AC' | 'DC'): LimitPlan {
  const rated = rating(figures, key, 'voltage', { margin: 'none', grade: 'operating' })!;
  return quantity.waveform === 'AC' && waveform === 'DC'
    ? { ...rated, condition: 'stated for an alternating voltage; of a direct one it bears no less' }
    : rated;
}

/** So much of its current is left when a load surely lets go (common practice, no source). */
const LETS_GO = 0.1;

/** How long a load on direct voltage keeps its current going through a plain diode, which drops next to nothing. */
function lingers({ load, part, input }: Contact, { type, across: over }: Suppression, s: Reading): Step[] {
  const inductance = input.contact.within('load').interval('inductance', 'inductance');
  const amps = s.current(part);
  if (inductance === undefined || type !== 'diode' || over !== 'load' || load.waveform === 'AC' || amps <= 0) return [];
  const henries = s.typical ? inductance.typ : inductance.max;
  const ohms = s.across(part) / amps;
  return [
    {
      name: 't_load',
      says: 'how much later its load lets go at the longest: until its current has fallen to a tenth (log is the natural logarithm)',
      formula: 'L / R * log(1 / x)',
      with: { L: [henries, 'H'], R: [ohms, 'Ω'], x: [LETS_GO, ''] },
      gives: [releaseTime(henries, ohms, amps, LETS_GO * amps, 0), 's'],
    },
  ];
}

/** A diode carries what its load carried, once each time the contact opens. */
function takesOver(base: ContactBase, contact: Contact, suppression: Suppression): AccountPlan[] {
  const { type, figures } = suppression;
  if (type === 'rc' || type === 'varistor') return [];
  const { circuit, part, title, input } = contact;
  const limit = rating(figures, 'peak-current', 'current') ?? rating(figures, 'current', 'current');
  if (limit === undefined && !(type === 'diode' && input.contact.within('load').says('inductance'))) return [];
  return [
    {
      ...base,
      id: idOf(contact),
      title: `suppression on the ${title}`,
      quantity: 'current',
      direction: 'at-most',
      recipes: ['draw-most', 'draw-least'],
      peaks: true,
      read: (s) => s.current(part),
      limits: limit ? [limit] : [],
      books: [{ circuit, part }],
      steps: (s) => [
        ...branchSteps(s.branch(part), 'when the contact opens it takes over what the load carried'),
        ...lingers(contact, suppression, s),
      ],
    },
  ];
}
