import { describe, within } from './entry.js';
import { knownKeys, locate, type Fault, type Located, type Subject } from './fault.js';
import { didYouMean } from './did-you-mean.js';
import { nearestSpelling } from './nearest-spelling.js';
import type { Problem } from './place.js';
import { unknownKey } from './unknown-key.js';
import { typeWords, valueWords } from './value-words.js';
import { quote, quoteList } from './visible.js';

/** More problems than this say nothing new. */
const mostProblems = 200;

/** What the faults of a validator mean to the author of the file. A fault that only follows from another is left out. */
export function explain(faults: readonly Fault[], subject: Subject): Problem[] {
  const problems = new Map<string, Problem>();
  const first = faults.slice(0, mostProblems);
  for (const fault of first) {
    // The branches of a choice speak only through the whole.
    if (/\/(?:anyOf|oneOf)\/\d+\//.test(fault.schemaPath)) continue;
    if (isMisspelled(fault, first)) continue;
    const problem = byKeyword[fault.keyword]?.(locate(fault, subject));
    if (problem) problems.set(JSON.stringify([problem.path, problem.says]), problem);
  }
  return [...problems.values()];
}

/** A missing key that stands there with a slip in it: the unknown key says all. */
function isMisspelled({ keyword, instancePath, params }: Fault, faults: readonly Fault[]): boolean {
  if (keyword !== 'required') return false;
  const missing = String(params['missingProperty']);
  return faults.some(
    (other) =>
      other.keyword === 'additionalProperties' &&
      other.instancePath === instancePath &&
      nearestSpelling(String(other.params['additionalProperty']), knownKeys(other)) === missing,
  );
}

/** One explanation a keyword. `if` is missing: it only says that something inside it failed. */
const byKeyword: Readonly<Record<string, (located: Located) => Problem | undefined>> = {
  additionalProperties: (located) => unknownKey(String(located.fault.params['additionalProperty']), located),
  required: missingKey,
  type: wrongType,
  enum: notAmong,
  const: notThe,
  not: notAllowed,
  pattern: notOfForm,
  propertyNames: notAName,
  minimum: (located) => outside(located, 'at least'),
  maximum: (located) => outside(located, 'at most'),
  minItems: (located) =>
    onValue(located, `${name(located)} has too few entries`, `at least ${String(located.fault.params['limit'])}`),
  maxItems: (located) =>
    onValue(located, `${name(located)} has too many entries`, `at most ${String(located.fault.params['limit'])}`),
  minProperties: (located) => onValue(located, `${name(located)} is empty`, 'at least one key'),
  maxProperties: (located) =>
    onValue(located, `${name(located)} has too many entries`, `at most ${String(located.fault.params['limit'])}`),
  additionalItems: (located) =>
    onValue(located, `${name(located)} has too many entries`, `at most ${String(located.fault.params['limit'])}`),
  anyOf: saysNotWhat,
  oneOf: (located) => ({
    ...onValue(
      located,
      `${describe(located.path)} is of no known form`,
      located.path[0] === 'incoming'
        ? 'one of `voltage: 5 V`, `from:` another pin, or `type: contact` with `closes-to: ground` or `supply`'
        : '{ at-most: 1, of: [a, b] }, { needs: a, for: b } or { excludes: a, for: b }',
    ),
    on: 'key',
  }),
};

const name = ({ path }: Located): string => quote(path.findLast((step) => typeof step === 'string') ?? 'file');

const onValue = ({ path }: Located, says: string, expected?: string): Problem => ({
  path,
  on: 'value',
  says,
  ...(expected === undefined ? {} : { expected }),
});

function cannotBe(located: Located, expected?: string): Problem {
  const { path, value } = located;
  const what = typeof path.at(-1) === 'number' ? describe(path) : `${name(located)} ${within(path.slice(0, -1))}`;
  return onValue(located, `${what} cannot be ${valueWords(value)}`, expected);
}

function missingKey(located: Located): Problem {
  const missing = String(located.fault.params['missingProperty']);
  const says = `${quote(missing)} is missing ${within(located.path)}`;
  return {
    ...onValue(located, says, missing === 'ampledger' ? 'the file begins with `ampledger: 1`' : undefined),
    on: 'key',
  };
}

function wrongType(located: Located): Problem {
  const { fault, path, value } = located;
  const types = [fault.params['type']].flat().flatMap((type) => String(type).split(','));
  const expected = typeWords(types, knownKeys(fault));
  if (value === null)
    return {
      ...onValue(located, `${name(located)} ${within(path.slice(0, -1))} has no value`, `it wants ${expected}`),
      on: 'key',
    };
  const glued = typeof value === 'string' && types.includes('object') && /^([\w-]+):(\S.*)$/s.exec(value);
  if (glued) return cannotBe(located, `a space belongs after the colon: ${quote(`${glued[1]}: ${glued[2]}`)}`);
  const quotes = types.length === 1 && types[0] === 'string' && typeof value !== 'object';
  return cannotBe(located, quotes ? 'it wants a text: put it in quotes' : `it wants ${expected}`);
}

function notAmong(located: Located): Problem {
  const { fault, value } = located;
  const allowed = (fault.params['allowedValues'] as readonly unknown[]).map(String);
  const among = `it is ${quoteList(allowed)}`;
  return cannotBe(located, typeof value === 'string' ? didYouMean(value, allowed, among) : among);
}

function notThe(located: Located): Problem {
  if (located.path.at(-1) !== 'ampledger')
    return cannotBe(located, `it is ${quote(String(located.fault.params['allowedValue']))}`);
  return onValue(located, `this version reads format 1, not ${valueWords(located.value)}`, 'write `ampledger: 1`');
}

function notAllowed(located: Located): Problem | undefined {
  // About a key: see notAName.
  return typeof located.value === 'string' ? cannotBe(located) : undefined;
}

function notOfForm(located: Located): Problem | undefined {
  const { value } = located;
  if (typeof value !== 'string') return undefined; // about a key: see notAName
  return value.trim() === '' ? onValue(located, `${name(located)} is empty`) : cannotBe(located);
}

function notAName({ fault, path }: Located): Problem {
  const key = String(fault.params['propertyName']);
  const problem = (says: string, expected: string): Problem => ({ path: [...path, key], on: 'key', says, expected });
  if (path.at(-1) === 'inputs' || path.at(-1) === 'contacts')
    return problem(`${quote(key)} is no channel ${within(path)}`, 'channels are numbered: 1, 2, 3');
  if (/^[\p{L}\p{N}][\p{L}\p{N}_-]*$/u.test(key))
    return problem(`${quote(key)} is a name with a meaning of its own`, 'choose another');
  return problem(
    `${quote(key)} cannot be a name ${within(path)}`,
    'a name has letters, digits, hyphens and underscores',
  );
}

const outside = (located: Located, side: string): Problem =>
  cannotBe(located, `${side} ${String(located.fault.params['limit'])}`);

/** Keys of which an entry needs one, by its section or its own key. */
const neededBy: Readonly<Record<string, string>> = {
  loads: '`part`, `type` or `like`',
  driver: '`part`, `type` or `array`',
  clamp: '`part` or `type`',
  supplies: '`type`, or its `voltage`',
  controllers: '`board` or `chip`',
  expanders: '`chip` or `part`',
  arrays: '`part`, or its figures',
  documents: '`number`, `revision` or `year`',
};

/** An entry has to say what it is; the schema names the keys that would. */
function saysNotWhat(located: Located): Problem {
  const { path } = located;
  const keys = neededBy[String(path.at(-1))] ?? neededBy[String(path.at(-2))] ?? 'one of its keys';
  return { ...onValue(located, `${describe(path)} does not say what it is`, `it needs ${keys}`), on: 'key' };
}
