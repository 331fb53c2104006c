/** The accounts of a contact that carries its load: its rating, the least that keeps it clean, how long it lasts, what nobody states. */
import { branchSteps } from '../branch-working.js';
import { unknownStart } from '../draw.js';
import type { AccountPlan, LimitPlan, Reading } from '../account-plan.js';
import type { Contact, ContactBase } from './contact.js';
import { startKey } from './contact-load.js';
import { currentLimits, leastOf, lifeRow } from './contact-limits.js';
import type { RatingRow } from './contact-rating.js';

/** A diode across the load takes its current over. */
const isClamped = ({ suppression }: Contact): boolean => suppression?.type === 'diode' && suppression.across === 'load';

export function currentAccount(base: ContactBase, contact: Contact, rows: readonly RatingRow[]): AccountPlan {
  const { circuit, side, load, part, title } = contact;
  const { limits, missing } = currentLimits(load, rows, side, { about: circuit, clamped: isClamped(contact) });
  return {
    ...base,
    id: part,
    title,
    quantity: 'current',
    direction: 'at-most',
    recipes: ['draw-most', 'draw-least'],
    read: (s) => s.current(part),
    limits,
    ...(missing && { missing }),
    books: [{ circuit, part }],
    steps: (s) => branchSteps(s.branch(part), 'what the load takes through the contact'),
  };
}

/** Electronics go out below a least current. */
export const HOLDS = 'what keeps its output on';

/** The least that keeps a contact clean: a current, and a voltage to break through what lies on it. */
export function leastAccounts(
  base: ContactBase,
  { circuit, side, load, part, title, input }: Contact,
  rows: readonly RatingRow[],
): AccountPlan[] {
  const { row, missing } = leastOf(load, rows, side, circuit);
  if (row === undefined && missing === undefined) return [];
  const plan = { ...base, id: part, title: `${title}, least load`, direction: 'at-least' as const };
  const limit = (value: number) => ({
    value,
    stated: row!.stated,
    grade: 'operating' as const,
    isFunction: true as const,
    margin: 'none' as const,
    origin: row!.origin,
    condition: input.type === 'solid-state-relay' ? HOLDS : 'what keeps the contact clean',
  });
  const volts = (s: Reading): number => s.voltage(load.node);
  const current: AccountPlan = {
    ...plan,
    quantity: 'current',
    recipes: ['draw-least', 'draw-most'],
    read: (s) => (missing ? undefined : s.current(part)),
    limits: row ? [limit(row.amps)] : [],
    ...(missing && { missing }),
    books: [{ circuit, part }],
    steps: (s) => branchSteps(s.branch(part), 'what the load takes through the contact'),
  };
  if (row?.volts === undefined || load.volts >= row.volts) return [current];
  return [
    current,
    {
      ...plan,
      quantity: 'voltage',
      recipes: ['draw-least', 'draw-most'],
      read: volts,
      limits: [limit(row.volts)],
      steps: (s) => [
        {
          name: 'V_contact',
          says: 'what stands across the open contact',
          formula: 'V_supply',
          with: { V_supply: [volts(s), 'V'] },
          gives: [volts(s), 'V'],
        },
      ],
    },
  ];
}

const DAY = 86_400;
/** Somebody looks after a build once a year; what wears out sooner does so unseen (common practice, no source). */
const YEAR: LimitPlan = {
  value: 365.25 * DAY,
  stated: 'a year',
  grade: 'practice',
  margin: 'none',
  origin: { document: 'common practice, no source', basis: 'practice' },
};

/** How long the contact lasts, where the file says how often it is switched: an operation is once on and once off. */
export function lifeAccounts(base: ContactBase, contact: Contact, rows: readonly RatingRow[]): AccountPlan[] {
  const { side, load, input, part, title } = contact;
  const { relay, type } = input;
  const perDay = (type === 'relay-board' ? relay.within('coil') : relay).interval('operations', 'times-per-day')?.max;
  if (perDay === undefined || perDay <= 0) return [];
  const row = lifeRow(load, rows, side, isClamped(contact));
  const seconds = row && (DAY * 2 * row.operations!) / perDay;
  return [
    {
      ...base,
      id: part,
      title: `${title}, life`,
      quantity: 'time',
      direction: 'at-least',
      recipes: ['draw-most'],
      read: () => seconds,
      limits: row ? [YEAR] : [],
      ...(row === undefined && {
        missing: {
          figure: 'operations',
          asks: `for how many operations is the ${title} good with its load (\`operations\` of a row of its \`contact-rating\`)?`,
        },
      }),
      steps: () =>
        row === undefined
          ? []
          : [
              {
                name: 't',
                says: `operations of its contact at ${row.stated}, one of them being once on and once off`,
                formula: 't_day * 2 * N / n',
                with: { t_day: [DAY, 's'], N: [row.operations!, ''], n: [perDay, ''] },
                gives: [seconds!, 's'],
              },
            ],
    },
  ];
}

/** A motor or a power supply whose start nobody states, on a supply that has to give it. */
export function startUnknown(base: ContactBase, { circuit, load, named }: Contact): AccountPlan[] {
  const { kind, peak, supply } = load;
  if (peak !== undefined || supply === undefined || (kind !== 'motor' && kind !== 'capacitive')) return [];
  const what = kind === 'motor' ? 'motor' : 'load';
  const plan = unknownStart(named('load'), circuit, base.path, what, startKey(kind));
  return [{ ...plan, ...(base.whileOff && { whileOff: true as const }) }];
}

type Called = Pick<Contact, 'circuit' | 'part' | 'title'>;

const nothingKnown = (base: ContactBase, { part, title }: Called, figure: string, asks: string): AccountPlan => ({
  ...base,
  id: part,
  title,
  quantity: 'current',
  direction: 'at-most',
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing: { figure, asks },
  steps: () => [],
});

export const loadUnknown = (base: ContactBase, called: Called): AccountPlan =>
  nothingKnown(
    base,
    called,
    'load',
    `what hangs on the ${called.title}: what kind of load, on what voltage, with what current (its \`load\`)?`,
  );

export const drawUnknown = (base: ContactBase, called: Called): AccountPlan =>
  nothingKnown(base, called, 'current', `what does the load on the ${called.title} take (its \`current\`)?`);
