/** What findings about the choice of a contact say. */
import type { Finding } from '../checks/finding.js';

type Say = (f: Finding) => string;

const OTHER: { readonly [side: string]: string } = {
  'normally-open': 'normally closed',
  'normally-closed': 'normally open',
};
const plain = (side: string | undefined): string => (side ?? '').replace('-', ' ');

const safeState: Say = ({ about, names }) => {
  const runs = names['left'] === 'load-running';
  const load = names['other'] ? `the load on the other side of ${about}` : `the load of ${about}`;
  if (names['left'] === 'stays')
    return `When power fails the latching relay ${about} stays as it is, and its load is safe only ${names['safe'] === 'load-running' ? 'while it runs' : 'when it is stopped'}.`;
  if (names['diesWith'] !== undefined && names['safe'] === names['left'])
    return `The load on the contact of ${about} is safe only while it runs, and ${names['diesWith']} feeds it and the coil alike: when that dies it stops, whichever contact it hangs on.`;
  const solid = names['fixed'] === 'solid-state';
  const hangs = solid
    ? 'a solid-state relay, which conducts only while its input is on'
    : `the ${plain(names['wired'])} contact${names['fixed'] ? `, and its relay has no ${OTHER[names['wired'] ?? '']} one: it wants another relay` : ''}`;
  const says = `When ${solid ? 'its input' : 'its coil'} has no power ${load} ${runs ? 'runs' : 'stops'}, and it is safe only ${names['safe'] === 'load-running' ? 'while it runs' : 'when it is stopped'}: it hangs on ${hangs}.`;
  const { otherHours, otherDay, nowHours, nowDay } = names;
  if (otherHours === undefined || otherDay === undefined) return says;
  return `${says} On the other one the coil is on for ${otherHours} a day in place of ${nowHours}, and takes ${otherDay} in place of ${nowDay}.`;
};

const contactChoice: Say = ({ about, names }) => {
  const heat = names['heat'] === undefined ? '' : `, with ${names['heat']} of heat in it`;
  const takes = `The coil of ${about} is on for ${names['nowHours']} a day${heat}, and takes ${names['nowDay']} a day, ${names['nowYear']} a year`;
  const other = OTHER[names['wired'] ?? ''];
  if (names['safe'] === undefined)
    return `${takes}: ${names['fixed'] ? `on a relay with a ${other} contact` : other}, its load would run as long with the coil on for ${names['otherHours']} a day, and ${names['saved']} a year would be saved. Nothing says in which state that load does no harm, and that goes first.`;
  return `${takes}. ${names['fixed'] ? `A ${other} contact, which its relay lacks,` : `The ${other} contact`} would save ${names['saved']} of it, and leave its load ${names['safe'] === 'load-stopped' ? 'running' : 'stopped'} when power fails: the safe state goes first. A latching relay would take ${names['pulses']} pulses of ${names['pulse']}, ${names['latching']} a day, but stays as it is when power fails.`;
};

export const CHOICE_SENTENCES: { readonly [rule: string]: Say } = {
  'safe-state': safeState,
  'contact-choice': contactChoice,
};
