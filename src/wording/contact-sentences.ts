/** What findings about contacts say. */
import type { Finding } from '../checks/finding.js';
import { atMost, figure, limitFigure, met, percent, sentence, when } from './phrases.js';

type Say = (f: Finding) => string;

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
  if (m === undefined && missing === 'load') return `Nothing says what hangs on the contact of ${f.about}.`;
  if (m === undefined && missing === 'current') return `Nothing says what the load on the contact of ${f.about} takes.`;
  if (m === undefined) {
    const draw = f.account?.draw;
    return draw
      ? `The contact of ${f.about} carries up to ${figure(f.account!, draw.max)}, and nothing says what it may switch of that.`
      : `Nothing says what the contact of ${f.about} may switch.`;
  }
  const takes = `${when(f)}the contact of ${f.about} carries up to ${figure(m.account, m.by.draw)}`;
  if (f.verdict === 'thin')
    return sentence(
      `${takes} of ${limitFigure(m.account, m.by.value)} (${m.by.limit.stated}): ${percent(m.by.left)} in hand.`,
    );
  return sentence(`${takes} where ${allowed(f)}.`);
};

const contactMinimum: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says how little the contact of ${f.about} is good for.`;
  const { account, by } = m;
  const [gets, needs] = [figure(account, by.draw), limitFigure(account, by.value)];
  return sentence(
    account.quantity === 'voltage'
      ? `${when(f)}the contact of ${f.about} switches ${gets} and wants ${needs} to break through what settles on it: it is not sure to close.`
      : `${when(f)}the contact of ${f.about} may carry as little as ${gets} and wants ${needs} to stay clean: it is not sure to close for long.`,
  );
};

const contactLeak: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says what gets through the open contact of ${f.about}.`;
  const [leaks, off] = [figure(m.account, m.by.draw), limitFigure(m.account, m.by.value)];
  return sentence(
    `${when(f)}the open contact of ${f.about} still lets ${leaks} through, and its load is sure to be off only below ${off}, a tenth of what it takes: it may glow, hum or stay on.`,
  );
};

const contactHeat: Say = (f) =>
  f.account?.missing?.figure === 'drop'
    ? `Nothing says what the output of ${f.about} keeps for itself, and so how hot it gets.`
    : atMost(f, `the output of ${f.about}`, 'reaches');

const contactArc: Say = (f) =>
  f.verdict === 'breach'
    ? `A diode lies across the ${f.names['across']} of ${f.about}, which works on alternating voltage: it shorts every other half wave.`
    : `Nothing takes over the current of the ${f.names['kind'] === 'motor' ? 'motor' : 'inductive load'} on the contact of ${f.about}: every opening draws an arc, which wears the contact.`;

const contactLife: Say = (f) => `Nothing says for how many operations the contact of ${f.about} is good with its load.`;

const BREAKS: { readonly [kind: string]: string } = {
  inductive: 'an inductive load',
  motor: 'a motor',
  lamp: 'a lamp',
  capacitive: 'a capacitive load',
};

const contactSlow: Say = ({ about, names }) =>
  `Its clamp keeps the current of the coil of ${about} going for up to ${names['slow']}, so that the contact opens slowly on ${BREAKS[names['kind'] ?? ''] ?? 'its load'} and wears: a zener of ${names['zener']} in series with the diode makes it ${names['fast']}, where the driver bears that much more.`;

const coilHeldOn: Say = ({ about, names }) =>
  `The coil of ${about} is made for pulses of ${names['pulse']}: if firmware never ends one, it takes ${names['watts']} for good.`;

export const CONTACT_SENTENCES: { readonly [rule: string]: Say } = {
  'contact-life': contactLife,
  'coil-held-on': coilHeldOn,
  'contact-slow': contactSlow,
  'contact-current': contactCurrent,
  'contact-minimum': contactMinimum,
  'contact-leak': contactLeak,
  'contact-heat': contactHeat,
  'contact-arc': contactArc,
};
