/**
 * The contact of a relay, and what hangs on it. Its load is booked on its supply while the contact is closed: behind a normally
 * open one while the coil is on, behind a normally closed one while it is off.
 */
import type { Figures } from '../figures.js';
import type { Bench, Lowered, NetworkSketch } from '../lowering.js';
import type { AccountPlan, BranchPlan, ContactPlan, Member, Reading, SuppressionType } from '../plan.js';
import { GROUND } from '../plan.js';
import { branchSteps } from '../branch-working.js';
import { unknownStart } from '../draw.js';
import type { ContactLoad } from './contact-load.js';
import { contactLoad, loadMember, startKey } from './contact-load.js';
import { currentLimits, leastOf, lifeRow } from './contact-limits.js';
import type { RatingRow } from './contact-rating.js';
import { ratingRows } from './contact-rating.js';
import { openAccounts, openLeak } from './open-contact.js';
import { switchDrop, switchHeat } from './solid-state.js';

export interface ContactInput {
  readonly circuit: string;
  /** Type of the load whose contact it is: 'coil', 'relay-board', 'solid-state-relay'. */
  readonly type: string;
  /** Figures of that load, and of its contact. */
  readonly relay: Figures;
  readonly contact: Figures;
  readonly bench: Bench;
}

export interface LoweredContact extends Pick<Lowered, 'networks' | 'accounts'> {
  readonly plan?: ContactPlan;
}

type Side = ContactPlan['wired'];

/** A contact as it is reckoned: its side, its load, and what is stated of both. */
export interface Contact {
  readonly circuit: string;
  readonly side: Side;
  readonly load: ContactLoad;
  readonly path: AccountPlan['path'];
  readonly input: ContactInput;
}

const NOTHING: LoweredContact = { networks: [], accounts: [] };

export function lowerContact(input: ContactInput): LoweredContact {
  const { circuit, contact, bench, type } = input;
  const side = sideOf(input);
  if (side === undefined) return NOTHING;
  const { path } = contact;
  const base = { kind: 'contact' as const, circuits: [circuit], path, ...(side === 'normally-closed' && WHILE_OFF) };
  if (!contact.says('load')) return { networks: [], accounts: [loadUnknown(base, circuit)] };
  const load = contactLoad(contact, circuit, bench);
  if (load === undefined) return NOTHING;
  const suppression = suppressionOf(contact);
  const plan: ContactPlan = {
    wired: side,
    ...(type === 'solid-state-relay' && { solidState: true }),
    kind: load.kind,
    volts: load.volts,
    waveform: load.waveform,
    ...(load.amps && { amps: load.amps }),
    ...(load.supply !== undefined && { supply: load.supply }),
    ...(suppression && { suppression }),
    path,
  };
  if (load.amps === undefined) return { networks: [], accounts: [drawUnknown(base, circuit)], plan };
  const all: Contact = { circuit, side, load, path, input };
  const rows = rowsOf(input);
  return {
    networks: [networkOf(all, load.amps)],
    accounts: [
      currentAccount(base, all, rows, suppression?.type === 'diode' && suppression.across === 'load'),
      ...leastAccounts(base, all, rows),
      ...startUnknown(base, all),
      ...lifeAccounts(base, all, rows),
      ...openAccounts(base, all),
      ...(type === 'solid-state-relay' ? switchHeat(base, all) : []),
    ],
    plan,
  };
}

const WHILE_OFF = { whileOff: true } as const;

/** What accounts of a contact have in common. */
export type ContactBase = Pick<AccountPlan, 'circuits' | 'path' | 'whileOff'> & { readonly kind: 'contact' };

/** Which of its contacts is used; undefined with a problem where the relay has no such contact. */
function sideOf({ circuit, type, relay, contact }: ContactInput): Side | undefined {
  const said = contact.word('wired');
  const form = formOf(relay);
  const has =
    form === 'A' || type === 'solid-state-relay' ? 'normally-open' : form === 'B' ? 'normally-closed' : 'both';
  const side: Side | undefined =
    said === 'normally-open' || said === 'normally-closed' ? said : has === 'both' ? undefined : has;
  if (side === undefined) {
    contact.assume('it is wired normally open, since the file does not say');
    return 'normally-open';
  }
  if (has !== 'both' && side !== has) {
    contact.problem(
      'wired',
      `\`${circuit}\` has no ${side} contact: ${type === 'solid-state-relay' ? 'a solid-state relay conducts while its input is on' : `its contacts are of form ${form}`}`,
      `\`wired: ${has}\``,
    );
    return undefined;
  }
  if (form === undefined && side === 'normally-closed')
    contact.assume('the relay has a changeover contact (form C), since nobody states its form');
  return side;
}

const formOf = (relay: Figures): string | undefined =>
  relay.word('contact-form') ?? relay.within('coil').word('contact-form');

/** Rows of the relay itself, or of the coil that a board carries. */
function rowsOf({ relay, bench }: ContactInput): readonly RatingRow[] {
  const own = ratingRows(relay);
  return own.length > 0 || !relay.says('coil') ? own : ratingRows(bench.behind(relay.within('coil'), 'load'));
}

const SUPPRESSION: readonly SuppressionType[] = ['diode', 'zener', 'diode-zener', 'tvs', 'varistor', 'rc'];

/** What takes the load's kick: across the load unless the file says across the contact. */
function suppressionOf(contact: Figures): ContactPlan['suppression'] {
  if (!contact.says('suppression')) return undefined;
  const figures = contact.within('suppression');
  const type = SUPPRESSION.find((each) => each === figures.word('type'));
  return type && { type, across: figures.word('across') === 'contact' ? 'contact' : 'load' };
}

/** The load on its supply while the contact is closed; while it is open, what it lets through all the same. */
function networkOf(contact: Contact, amps: NonNullable<ContactLoad['amps']>): NetworkSketch {
  const { circuit, side, load, input } = contact;
  const part = `${circuit}.contact`;
  const members: Member[] = [...switchDrop(input), loadMember(load, amps, part, input.contact.within('load'))];
  const closed: BranchPlan = { from: load.node, to: GROUND, members, circuit };
  const leak = openLeak(contact);
  const open: BranchPlan[] = leak ? [{ from: load.node, to: GROUND, members: [leak], circuit }] : [];
  const isOpen = side === 'normally-open';
  return {
    id: part,
    circuits: [circuit],
    side: 'load',
    inner: [],
    hooks: [],
    on: isOpen ? [closed] : open,
    off: isOpen ? open : [closed],
    contact: true,
  };
}

const titleOf = (circuit: string): string => `contact of ${circuit}`;

function currentAccount(
  base: ContactBase,
  { circuit, side, load }: Contact,
  rows: readonly RatingRow[],
  clamped: boolean,
): AccountPlan {
  const part = `${circuit}.contact`;
  const { limits, missing } = currentLimits(load, rows, side, { about: circuit, clamped });
  return {
    ...base,
    id: part,
    title: titleOf(circuit),
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

/** The least that keeps a contact clean: a current, and a voltage to break through what lies on it. */
function leastAccounts(base: ContactBase, { circuit, side, load }: Contact, rows: readonly RatingRow[]): AccountPlan[] {
  const part = `${circuit}.contact`;
  const { row, missing } = leastOf(load, rows, side, circuit);
  if (row === undefined && missing === undefined) return [];
  const plan = {
    ...base,
    id: part,
    title: `${titleOf(circuit)}, least load`,
    direction: 'at-least' as const,
  };
  const limit = (value: number) => ({
    value,
    stated: row!.stated,
    grade: 'operating' as const,
    isFunction: true as const,
    margin: 'none' as const,
    origin: row!.origin,
    condition: 'what keeps the contact clean',
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

/** How long the contact lasts, where the file says how often it is switched: an operation is once on and once off. */
function lifeAccounts(
  base: ContactBase,
  { circuit, side, load, input }: Contact,
  rows: readonly RatingRow[],
): AccountPlan[] {
  const { relay, type } = input;
  const perDay = (type === 'relay-board' ? relay.within('coil') : relay).interval('operations', 'times-per-day')?.max;
  if (perDay === undefined || perDay <= 0) return [];
  const row = lifeRow(load, rows, side);
  const seconds = row && (DAY * 2 * row.operations!) / perDay;
  return [
    {
      ...base,
      id: `${circuit}.contact`,
      title: `${titleOf(circuit)}, life`,
      quantity: 'time',
      direction: 'at-least',
      recipes: ['draw-most'],
      read: () => seconds,
      limits: [],
      ...(row === undefined && {
        missing: {
          figure: 'operations',
          asks: `for how many operations is the contact of ${circuit} good with its load (\`operations\` of a row of its \`contact-rating\`)?`,
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
function startUnknown(base: ContactBase, { circuit, load }: Contact): AccountPlan[] {
  const { kind, peak, supply } = load;
  if (peak !== undefined || supply === undefined || (kind !== 'motor' && kind !== 'capacitive')) return [];
  const what = kind === 'motor' ? 'motor' : 'load';
  const plan = unknownStart(`${circuit}.load`, circuit, base.path, what, startKey(kind));
  return [{ ...plan, ...(base.whileOff && WHILE_OFF) }];
}

const nothingKnown = (base: ContactBase, circuit: string, figure: string, asks: string): AccountPlan => ({
  ...base,
  id: `${circuit}.contact`,
  title: titleOf(circuit),
  quantity: 'current',
  direction: 'at-most',
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing: { figure, asks },
  steps: () => [],
});

const loadUnknown = (base: ContactBase, circuit: string): AccountPlan =>
  nothingKnown(
    base,
    circuit,
    'load',
    `what hangs on the contact of ${circuit}: what kind of load, on what voltage, with what current (its \`load\`)?`,
  );

const drawUnknown = (base: ContactBase, circuit: string): AccountPlan =>
  nothingKnown(base, circuit, 'current', `what does the load on the contact of ${circuit} take (its \`current\`)?`);
