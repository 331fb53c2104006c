/**
 * What a closed contact keeps for itself. Its resistance is published for a new contact, as the most at a small current, so that
 * drop and heat are bounds; what the load gets is held against its window where it has one.
 */
import { closed } from '../../quantity/quantity.js';
import { formatValue } from '../../quantity/print.js';
import { assumed, functionOf } from '../limits.js';
import type { AccountPlan, LimitPlan, Reading } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import type { Contact, ContactBase } from './contact.js';
import { figuresWith } from './contact-figures.js';
import { MISFIT } from './contact-load.js';

const KEY = 'contact-resistance';

const figureOf = ({ input }: Contact) => figuresWith(input, KEY).figure(KEY, 'resistance');

/** The contact as a resistance before its load; none where nobody states it. */
export function dropMember(contact: Contact): Member[] {
  const figure = figureOf(contact);
  if (figure === undefined) return [];
  const ohms = closed(figure.quantity, { min: () => 0 });
  return [{ kind: 'resistance', part: contact.named(KEY), ohms, origin: figure.origin }];
}

/** The drop and the heat of the contact, and the voltage that its load gets. */
export function dropAccounts(base: ContactBase, contact: Contact): AccountPlan[] {
  const { part, title, named } = contact;
  const own = named(KEY);
  const stated = figureOf(contact) !== undefined;
  const drop: AccountPlan = {
    ...base,
    id: own,
    title: `${title}, drop`,
    quantity: 'voltage',
    direction: 'at-most',
    recipes: ['draw-most', 'draw-least', 'hottest'],
    read: (s) => s.across(own),
    limits: [],
    steps: (s) => [
      {
        name: 'V_contact',
        says: 'what the closed contact keeps at the load’s current: its resistance is stated for less of it, at which it is higher',
        formula: 'I * R_contact',
        with: { I: [s.current(part), 'A'], R_contact: [s.ohms(own), 'Ω'] },
        gives: [s.across(own), 'V'],
      },
    ],
  };
  const heats = (s: Reading): number => s.current(part) ** 2 * s.ohms(own);
  const heat: AccountPlan = {
    ...drop,
    title: `${title}, heat`,
    quantity: 'power',
    read: heats,
    steps: (s) => [
      {
        name: 'P_contact',
        says: 'what the closed contact turns into heat inside the relay: at the most, since its resistance falls with the current',
        formula: 'I^2 * R_contact',
        with: { I: [s.current(part), 'A'], R_contact: [s.ohms(own), 'Ω'] },
        gives: [heats(s), 'W'],
      },
    ],
  };
  return [...(stated ? [drop, heat] : []), ...windowAccounts(base, contact, stated)];
}

/** What stands at the load while its contact is closed, against the window in which it works. */
function windowAccounts(
  base: ContactBase,
  { load, title, part, named, input }: Contact,
  stated: boolean,
): AccountPlan[] {
  const figures = input.contact.within('load');
  const figure = figures.figure('supply-voltage', 'voltage');
  const volts = (s: Reading): number => s.across(part);
  const account = (direction: 'at-least' | 'at-most', limit: LimitPlan): AccountPlan => ({
    ...base,
    id: named('load'),
    title: `load on the ${title}, voltage`,
    quantity: 'voltage',
    direction,
    recipes: direction === 'at-least' ? ['starved', 'draw-most', 'flooded'] : ['flooded', 'lightest', 'starved'],
    read: volts,
    limits: [limit],
    steps: (s) => [
      {
        name: 'V_load',
        says: stated ? 'its supply, less what the contact keeps' : 'its supply',
        formula: 'V_supply - V_lost',
        with: { V_supply: [s.voltage(load.node), 'V'], V_lost: [s.voltage(load.node) - volts(s), 'V'] },
        gives: [volts(s), 'V'],
      },
    ],
  });
  if (figure === undefined) {
    const { rated } = load;
    if (load.supply === undefined || input.bench.window(load.node).max <= MISFIT.min * rated) return [];
    // Made for much less than its supply gives.
    const bears = { min: MISFIT.min * rated, typ: MISFIT.typ * rated, max: MISFIT.max * rated };
    const what = `what the load on the ${title} bears, which is made for ${formatValue(rated, 'voltage')}`;
    return [account('at-most', assumed(figures, what, bears, 'voltage', { margin: 'none' }))];
  }
  const { min, max } = figure.quantity;
  return [
    ...(min === undefined ? [] : [account('at-least', functionOf(figure, min, 'window'))]),
    ...(max === undefined ? [] : [account('at-most', functionOf(figure, max, 'window'))]),
  ];
}
