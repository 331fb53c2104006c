import { within } from './entry.js';
import { knownKeys, valueAt, type Located } from './fault.js';
import { nearestSpelling } from './nearest-spelling.js';
import type { Problem } from './place.js';
import { quote, quoteList } from './visible.js';

/** Beginnings of what stands after a comma that should not be there: `62 Ω, ±10 %`, `5 V, typ 4.9 V`. */
const quantityTail = /^(?:[±+\-−<>]|\d|(?:typ|min|max|to)\b)/;

/** Keys that people look for under another name. */
const elsewhere: Readonly<Record<string, string>> = {
  'relay-board pin': 'a relay board has its pins under `inputs`, by channel: inputs: { 1: D4 }',
  'relay-board pins': 'a relay board has its pins under `inputs`, by channel: inputs: { 1: D4 }',
  'relay-board active': 'the level that pulls a relay in is `active` of its `input`',
};

/** What to say of a key that nothing here knows; nothing when another key of the same entry says it already. */
export function unknownKey(key: string, located: Located): Problem | undefined {
  const { fault, subject, path } = located;
  const known = knownKeys(fault);
  const problem = (says: string, expected?: string): Problem => ({
    path: [...path, key],
    on: 'key',
    says,
    ...(expected === undefined ? {} : { expected }),
  });

  const slip = typingSlip(key, known, located);
  if (slip) return problem(slip.says, slip.expected);

  const says = `unknown key ${quote(key)} ${within(path)}`;
  const own = path.length === subject.path.length;
  const hint = own ? elsewhere[`${subject.type} ${key}`] : undefined;
  if (hint) return problem(says, hint);
  const types = own ? typesThatKnow(key, located) : [];
  if (types.length > 0) {
    const one = types.length === 1 ? `${article(types[0]!)} ${quote(types[0]!)}` : quoteList(types, 'and');
    const this_ = subject.type === undefined ? '' : `, and this is ${article(subject.type)} ${quote(subject.type)}`;
    return problem(says, `${quote(key)} belongs to ${one}${this_}`);
  }
  const near = nearestSpelling(key, known);
  if (near) return problem(says, `did you mean ${quote(near)}?`);
  const some = known.filter((each) => each !== 'note');
  return problem(says, some.length > 0 && some.length <= 12 ? `known here: ${some.join(', ')}` : undefined);
}

/** A comma or a missing space that made one key out of what should be something else. */
function typingSlip(
  key: string,
  known: readonly string[],
  { value, path }: Located,
): { says: string; expected: string } | undefined {
  if (valueAt(value, [key]) !== null) return undefined;
  if (quantityTail.test(key)) {
    const keys = Object.keys(value as object);
    const before = keys[keys.indexOf(key) - 1];
    const whole = before === undefined ? '' : valueAt(value, [before]);
    const repaired =
      typeof whole === 'string' && whole !== '' ? `: write ${quote(`${before}: ${whole} ${key}`, 80)}` : '';
    return {
      says: `${quote(key)} stands ${within(path)} like a key`,
      expected: `a comma ends a value inside braces${repaired}`,
    };
  }
  const glued = /^([\w-]+):(\S.*)$/s.exec(key);
  if (glued && known.includes(glued[1]!))
    return {
      says: `${quote(key)} is read as one key ${within(path)}`,
      expected: `a space belongs after the colon: ${quote(`${glued[1]}: ${glued[2]}`)}`,
    };
  // Words with spaces are no key anybody meant: a text went on after a comma.
  if (/\s/.test(key) && nearestSpelling(key, known) === undefined)
    return {
      says: `${quote(key)} stands ${within(path)} like a key`,
      expected: 'a comma ends a text inside braces: put the text in quotes',
    };
  return undefined;
}

/** Other types of the same sort of entry that have the key. */
function typesThatKnow(key: string, { subject }: Located): string[] {
  const prefix = `entry-${subject.sort}-`;
  return Object.entries(subject.known.keys)
    .filter(([name, keys]) => name.startsWith(prefix) && keys.includes(key))
    .map(([name]) => name.slice(prefix.length))
    .filter((type) => type !== subject.type && type !== 'other');
}

const article = (word: string): string => (/^(?:[aeio]|led|npn|nmos)/.test(word) ? 'an' : 'a');
