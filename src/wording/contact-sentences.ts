/** What findings about contacts say. */
import type { Finding } from '../checks/finding.js';
import { HOLDS } from '../loads/contacts/contact-accounts.js';
import { atMost, figure, limitFigure, met, percent, sentence, when } from './phrases.js';

type Say = (f: Finding) => string;

/** Which contact a finding is about: a changeover may have a load on its other side, too. */
const contactOf = (f: Finding): string =>
  `${f.account?.title.startsWith('other ') || f.names['other'] ? 'other contact' : 'contact'} of ${f.about}`;

/** What a limit of a contact is, in words that follow 'where'. */
function allowed(f: Finding): string {
  const m = met(f)!;
  const { limit, value } = m.by;
  const may = limitFigure(m.account, value);
  const why = limit.condition === undefined ? '' : `: ${limit.condition}`;
  if (limit.grade === 'practice') return `practice allows ${may}, ${limit.stated}${why}`;
  return `it may switch ${may}${limit.stated.startsWith(may) ? '' : `, by ${limit.stated}`}${why}`;
}

const contactCurrent: Say = (f) => {
  const m = met(f);
  const missing = f.account?.missing?.figure;
  if (m === undefined && missing === 'load') return `Nothing says what hangs on the ${contactOf(f)}.`;
  if (m === undefined && missing === 'current') return `Nothing says what the load on the ${contactOf(f)} takes.`;
  if (m === undefined) {
    const draw = f.account?.draw;
    return draw
      ? `The ${contactOf(f)} carries up to ${figure(f.account!, draw.max)}, and nothing says what it may switch of that.`
      : `Nothing says what the ${contactOf(f)} may switch.`;
  }
  const takes = `${when(f)}the ${contactOf(f)} carries up to ${figure(m.account, m.by.draw)}`;
  if (f.verdict === 'thin')
    return sentence(
      `${takes} of ${limitFigure(m.account, m.by.value)} (${m.by.limit.stated}): ${percent(m.by.left)} in hand.`,
    );
  const { condition = '', grade, stated } = m.by.limit;
  const closes = /^it (closes on .*)/.exec(condition)?.[1];
  return sentence(
    closes === undefined
      ? `${takes} where ${allowed(f)}.`
      : `${takes} and ${closes}, where ${grade === 'practice' ? `practice allows ${stated}` : `it may switch ${stated}`}.`,
  );
};

const contactMinimum: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says how little the ${contactOf(f)} is good for.`;
  const { account, by } = m;
  const [gets, needs] = [figure(account, by.draw), limitFigure(account, by.value)];
  if (by.limit.condition === HOLDS)
    return sentence(
      `${when(f)}the output of ${f.about} gets as little as ${gets} and wants ${needs} to stay on: its load may flicker, or never come on.`,
    );
  return sentence(
    account.quantity === 'voltage'
      ? `${when(f)}the ${contactOf(f)} switches ${gets} and wants ${needs} to break through what settles on it: it is not sure to close.`
      : `${when(f)}the ${contactOf(f)} may carry as little as ${gets} and wants ${needs} to stay clean: it is not sure to close for long.`,
  );
};

const contactLeak: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says what gets through the open ${contactOf(f)}.`;
  const [leaks, off] = [figure(m.account, m.by.draw), limitFigure(m.account, m.by.value)];
  return sentence(
    `${when(f)}the open ${contactOf(f)} still lets ${leaks} through, and its load is sure to be off only below ${off}, a tenth of what it takes: it may glow, hum or stay on.`,
  );
};

const contactHeat: Say = (f) =>
  f.account?.missing?.figure === 'drop'
    ? `Nothing says what the output of ${f.about} keeps for itself, and so how hot it gets.`
    : atMost(f, `the output of ${f.about}`, 'reaches');

const contactArc: Say = (f) => {
  const { what, across, kind, rc, varistor, farads, waveform } = f.names;
  if (what === 'shorts')
    return `A diode lies across the ${across} of ${f.about}, which works on alternating voltage: it shorts every other half wave.`;
  if (what === 'small')
    return `The capacitor of ${farads} across the ${across} of ${f.about} is less than relay makers ask for: ${rc}.`;
  const diode =
    kind === 'motor'
      ? 'A diode across it does, its ring towards the plus, where it only ever turns one way.'
      : 'A diode across the load does, its ring towards the plus; the load then lets go later.';
  if (what === 'aside')
    return `A diode across the ${contactOf(f)} takes nothing over when that opens: it blocks, or it bridges the contact if it sits the other way round. ${diode}`;
  const says = `Nothing takes over the current of the ${kind === 'motor' ? 'motor' : 'inductive load'} on the ${contactOf(f)}: every opening draws an arc, which wears the contact.`;
  const element = rc === undefined ? 'an RC element' : `an RC element of ${rc}`;
  return waveform === 'AC'
    ? `${says} ${sentence(element)} across the load does, or a varistor${varistor === undefined ? '' : ` for ${varistor}`}.`
    : `${says} ${diode}`;
};

const contactSuppression: Say = (f) => {
  const title = f.account?.title ?? '';
  const missing = f.account?.missing?.figure;
  if (missing === 'working-voltage')
    return `Nothing says for what voltage the suppression on the ${contactOf(f)} is made.`;
  if (missing === 'resistance')
    return `Nothing says what resistor limits the current with which the ${contactOf(f)} closes on its capacitor.`;
  const m = met(f);
  if (m === undefined) return `Nothing says what the suppression on the ${contactOf(f)} bears.`;
  if (f.verdict === 'unproven')
    return `What takes over the current of the load on the ${contactOf(f)} may have to take ${figure(m.account, m.by.draw)} each time, past ${limitFigure(m.account, m.by.value)}.`;
  if (/closing/.test(title)) return atMost(f, `the ${contactOf(f)}, closing on its capacitor,`, 'carries');
  if (/switching off/.test(title)) return atMost(f, `the ${contactOf(f)}, just opened,`, 'bears');
  const part = `the suppression on the ${contactOf(f)}`;
  return atMost(
    f,
    part,
    f.account?.quantity === 'current' ? 'takes over' : f.account?.quantity === 'energy' ? 'takes' : 'bears',
  );
};

const contactDrop: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says what the ${contactOf(f)} leaves its load.`;
  const [gets, works] = [figure(m.account, m.by.draw), limitFigure(m.account, m.by.value)];
  return sentence(
    f.account?.direction === 'at-least'
      ? `${when(f)}the load on the ${contactOf(f)} gets as little as ${gets}, and works from ${works} on.`
      : `${when(f)}the load on the ${contactOf(f)} gets up to ${gets}, and works up to ${works}.`,
  );
};

const contactSides: Say = ({ about, names }) => {
  const both = `The two sides of ${about} switch ${names['one']} and ${names['two']}`;
  if (names['what'] === 'meets')
    return `${both}: they meet at its common terminal, and the dangerous one reaches all that hangs on the other. Each wants a relay of its own.`;
  if (names['what'] === 'mixed')
    return `${both}: one common terminal cannot carry both, unless the two supplies are joined.`;
  return `The changeover of ${about} breaks one side some milliseconds before it makes the other, when neither load is fed; with nothing across an inductive load an arc may burn as long, and join the two sides.`;
};

const contactLife: Say = (f) => {
  const m = met(f);
  return m === undefined
    ? `Nothing says for how many operations the ${contactOf(f)} is good with its load.`
    : `Switched so often, the ${contactOf(f)} is worn out by its load after ${figure(m.account, m.by.draw)}: nobody looks for that within a year.`;
};

const BREAKS: { readonly [kind: string]: string } = {
  inductive: 'an inductive load',
  motor: 'a motor',
  lamp: 'a lamp',
  capacitive: 'a capacitive load',
};

const contactSlow: Say = ({ about, names }) =>
  `Its clamp keeps the current of the coil of ${about} going for up to ${names['slow']}, so that the contact opens slowly on ${BREAKS[names['kind'] ?? ''] ?? 'its load'} and wears: a zener of ${names['zener']} in series with the diode makes it ${names['fast']}${names['bears'] === undefined ? ', where the driver bears that much more' : `, and its driver then bears ${names['bears']}`}.`;

const coilOneWay: Say = ({ about }) =>
  `Current one way through the coil of ${about} sets its relay, and current the other way resets it: what switches it lets current flow one way only, so that once set it stays so.`;

const coilHeldOn: Say = ({ about, names }) =>
  `The coil of ${about} is made for pulses of ${names['pulse']}: if firmware never ends one, it takes ${names['watts']} for good.`;

export const CONTACT_SENTENCES: { readonly [rule: string]: Say } = {
  'contact-suppression': contactSuppression,
  'contact-drop': contactDrop,
  'contact-sides': contactSides,
  'contact-life': contactLife,
  'coil-held-on': coilHeldOn,
  'coil-one-way': coilOneWay,
  'contact-slow': contactSlow,
  'contact-current': contactCurrent,
  'contact-minimum': contactMinimum,
  'contact-leak': contactLeak,
  'contact-heat': contactHeat,
  'contact-arc': contactArc,
};
