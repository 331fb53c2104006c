/**
 * The contact of a relay, and what hangs on it. Its load is booked on its supply while the contact is closed: behind a normally
 * open one while the coil is on, behind a normally closed one while it is off. A changeover may have a load on either side.
 */
import type { Figures } from '../figures.js';
import type { Bench, Lowered, NetworkSketch } from '../lowering.js';
import type { AccountPlan } from '../account-plan.js';
import type { BranchPlan, Member } from '../branch-plan.js';
import type { ContactPlan, ContactSide } from '../circuit-plan.js';
import { GROUND } from '../branch-plan.js';
import {
  currentAccount,
  drawUnknown,
  leastAccounts,
  lifeAccounts,
  loadUnknown,
  startUnknown,
} from './contact-accounts.js';
import { figuresWith, formOf } from './contact-figures.js';
import { dropAccounts, dropMember } from './contact-drop.js';
import type { ContactLoad } from './contact-load.js';
import { contactLoad, loadMember } from './contact-load.js';
import { ratingRows } from './contact-rating.js';
import { openAccounts, openLeak } from './open-contact.js';
import { switchDrop, switchHeat } from './solid-state.js';
import type { Suppression } from './suppression.js';
import { plannedOf, suppressionAccounts, suppressionOf } from './suppression.js';

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

/** What one side goes by in ids and sentences. */
interface Named {
  /** Between the circuit's name and what follows: '', or 'other-'. */
  readonly prefix: '' | 'other-';
  readonly words: string;
}
const OWN: Named = { prefix: '', words: 'contact' };
const OTHER: Named = { prefix: 'other-', words: 'other contact' };

/** A contact as it is reckoned: its side, its load, and what is stated of both. */
export interface Contact {
  readonly circuit: string;
  readonly side: Side;
  readonly load: ContactLoad;
  readonly path: AccountPlan['path'];
  readonly input: ContactInput;
  /** Part that carries the load's current, and its account: 'vents.1.contact'. */
  readonly part: string;
  /** 'contact of vents.1'. */
  readonly title: string;
  readonly suppression?: Suppression;
  /** The name of something else of this side: 'leak' → 'vents.1.leak'. */
  readonly named: (what: string) => string;
}

const NOTHING: LoweredContact = { networks: [], accounts: [] };

export function lowerContact(input: ContactInput): LoweredContact {
  const side = sideOf(input);
  if (side === undefined) return NOTHING;
  const both = input.contact.says('other-side');
  const own = lowerSide(input, side, { ...OWN, both });
  if (!both || !isChangeover(input)) return own;
  const contact = input.contact.within('other-side');
  const opposite = side === 'normally-open' ? 'normally-closed' : 'normally-open';
  const other = lowerSide({ ...input, contact }, opposite, { ...OTHER, both });
  const safe = contact.word('safe-when');
  const safeWhen = safe === 'load-stopped' || safe === 'load-running' ? safe : undefined;
  return {
    networks: [...own.networks, ...other.networks],
    accounts: [...own.accounts, ...other.accounts],
    ...(own.plan && {
      plan: { ...own.plan, ...(other.plan && { other: { ...other.plan, ...(safeWhen && { safeWhen }) } }) },
    }),
  };
}

/** @param both something hangs on either side of a changeover */
function lowerSide(
  input: ContactInput,
  side: Side,
  { prefix, words, both }: Named & { readonly both: boolean },
): LoweredContact {
  const { circuit, contact, bench, type } = input;
  const { path } = contact;
  const base = { kind: 'contact' as const, circuits: [circuit], path, ...(side === 'normally-closed' && WHILE_OFF) };
  const named = (what: string): string => `${circuit}.${prefix}${what}`;
  const called = { circuit, part: named('contact'), title: `${words} of ${circuit}` };
  if (!contact.says('load')) return { networks: [], accounts: [loadUnknown(base, called)] };
  const load = contactLoad(contact, { ...called, node: `${circuit}:${prefix}load-supply` }, bench);
  if (load === undefined) return NOTHING;
  const suppression = suppressionOf(contact, bench);
  const plan: ContactSide = {
    wired: side,
    ...(type === 'solid-state-relay' && { solidState: true }),
    kind: load.kind,
    volts: load.volts,
    waveform: load.waveform,
    ...(load.amps && { amps: load.amps }),
    ...(load.supply !== undefined && { supply: load.supply }),
    ...(suppression && { suppression: plannedOf(suppression) }),
    path,
  };
  if (load.amps === undefined) return { networks: [], accounts: [drawUnknown(base, called)], plan };
  const all: Contact = { ...called, side, load, path, input, named, ...(suppression && { suppression }) };
  const rows = ratingRows(figuresWith(input, 'contact-rating')).filter((r) => !(both && r.alone));
  return {
    networks: [networkOf(all, load.amps)],
    accounts: [
      currentAccount(base, all, rows),
      ...leastAccounts(base, all, rows),
      ...startUnknown(base, all),
      ...lifeAccounts(base, all, rows),
      ...openAccounts(base, all),
      ...dropAccounts(base, all),
      ...suppressionAccounts(base, all, rows),
      ...(type === 'solid-state-relay' ? switchHeat(base, all) : []),
    ],
    plan,
  };
}

const WHILE_OFF = { whileOff: true } as const;

/** What accounts of a contact have in common. */
export type ContactBase = Pick<AccountPlan, 'circuits' | 'path' | 'whileOff'> & { readonly kind: 'contact' };

/** Which of its contacts is used; undefined with a problem where the relay has no such contact. */
function sideOf(input: ContactInput): Side | undefined {
  const { circuit, type, contact } = input;
  const said = contact.word('wired');
  const form = formOf(input);
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
  if (form === undefined && (side === 'normally-closed' || contact.says('other-side')))
    contact.assume('the relay has a changeover contact (form C), since nobody states its form');
  return side;
}

/** Whether a relay has two sides for a load each; if not, a problem says so. */
function isChangeover(input: ContactInput): boolean {
  const { circuit, type, contact } = input;
  const form = formOf(input);
  const solid = type === 'solid-state-relay';
  if (!solid && (form === undefined || form === 'C')) return true;
  contact.problem(
    'other-side',
    `\`${circuit}\` has one contact and no other side: ${solid ? 'a solid-state relay is one switch' : `its contacts are of form ${form}`}`,
    'the load on a relay of its own, or a relay with a changeover contact (form C)',
  );
  return false;
}

/** The load on its supply while the contact is closed; while it is open, what it lets through all the same. */
function networkOf(contact: Contact, amps: NonNullable<ContactLoad['amps']>): NetworkSketch {
  const { circuit, side, load, input, part } = contact;
  const members: Member[] = [
    ...switchDrop(input),
    ...dropMember(contact),
    loadMember(load, amps, part, input.contact.within('load')),
  ];
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
