/**
 * What takes over a load's current when its contact opens, so that no arc has to: what stands across it while it waits, what it
 * takes then, and what the contact bears meanwhile.
 */
import { closed } from '../../quantity/quantity.js';
import type { Figure, Figures } from '../figures.js';
import { rating } from '../limits.js';
import type { Bench } from '../lowering.js';
import type { AccountPlan, LimitPlan, Reading, Step } from '../account-plan.js';
import type { ContactSide, SuppressionType } from '../circuit-plan.js';
import { branchSteps } from '../branch-working.js';
import type { Contact, ContactBase } from './contact.js';
import { figuresWith } from './contact-figures.js';
import { closingLimit } from './contact-limits.js';
import type { RatingRow } from './contact-rating.js';
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

/** The mains may stand so much above its nominal voltage (EN 50160, 230 V ±10 %). */
const HIGH_LINE = 1.1;
const ROOT = Math.SQRT2;
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

/** Volts of the load's supply at their highest: root mean square of an alternating one. */
const highest =
  ({ load }: Contact) =>
  (s: Reading): number =>
    s.voltage(load.node) * (load.waveform === 'AC' && load.exact && !s.typical ? HIGH_LINE : 1);

function highestStep(contact: Contact, s: Reading): Step {
  const { load } = contact;
  const V = [s.voltage(load.node), 'V'] as const;
  const gives = [highest(contact)(s), 'V'] as const;
  return gives[0] === V[0]
    ? { name: 'V_line', says: 'what stands across it', formula: 'V', with: { V }, gives }
    : {
        name: 'V_line',
        says: 'what stands across it where the mains is a tenth above its nominal voltage',
        formula: 'V * x',
        with: { V, x: [HIGH_LINE, ''] },
        gives,
      };
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

/** A diode carries what its load carried, once each time the contact opens. */
function takesOver(base: ContactBase, contact: Contact, { type, figures }: Suppression): AccountPlan[] {
  if (type === 'rc' || type === 'varistor') return [];
  const { circuit, part, title } = contact;
  const limit = rating(figures, 'peak-current', 'current') ?? rating(figures, 'current', 'current');
  if (limit === undefined) return [];
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
      limits: [limit],
      books: [{ circuit, part }],
      steps: (s) => branchSteps(s.branch(part), 'when the contact opens it takes over what the load carried'),
    },
  ];
}

/** A capacitor is charged, or emptied, through its resistor and the contact that closes. */
function closing(
  base: ContactBase,
  contact: Contact,
  { type, figures }: Suppression,
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
      id: idOf(contact),
      title: `${title}, closing on its capacitor`,
      quantity: 'current',
      direction: 'at-most',
      recipes: ['lightest', 'starved'],
      read: (s) => (ohms === undefined || ohms.min <= 0 ? undefined : peak(s) / least(s)),
      limits: ohms === undefined ? [] : [row],
      ...(ohms === undefined && {
        missing: {
          figure: 'resistance',
          asks: `what resistor is in series with the capacitor across the ${across(contact)} of ${circuit} (its \`resistance\`)?`,
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
function thrown(base: ContactBase, contact: Contact, { type, figures, across: over }: Suppression): AccountPlan[] {
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
