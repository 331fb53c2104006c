/** What is different in a file, in words: an entry's name, and what happened to it. */
import { rendered } from '../source/edit.js';
import type { WiringReport } from './compare-report.js';
import { joined } from './words.js';

/** Characters of a value that are shown. */
const LONGEST = 60;

/** Settings of one entry that are told one by one. */
const MOST_SETTINGS = 8;

const SINGULAR: { readonly [section: string]: string } = {
  loads: 'load',
  supplies: 'supply',
  controllers: 'controller',
  expanders: 'expander',
  arrays: 'array',
  parts: 'part',
  modes: 'mode',
  places: 'place',
  variants: 'variant',
  wires: 'wire',
  waivers: 'waiver',
  measured: 'reading',
  pins: 'pin',
};

/** 'load', 'incoming' with the entry's name; a section that is one value has no other name. */
export const wiringName = ({ section, name, was }: WiringReport): string =>
  [SINGULAR[section] ?? section, name, ...(was === undefined ? [] : [`(was ${was})`])]
    .filter((w) => w !== '')
    .join(' ');

/** What happened to it, in words that follow its name and what was done to it. */
export function wiringWords({ change, settings, section }: WiringReport): string {
  if (section === 'pins') {
    const [setting] = settings;
    const [b, a] = [valueWords(setting?.before), valueWords(setting?.after)];
    return change === 'added' ? `${a}, free before` : change === 'removed' ? `free, ${b} before` : `${a}, ${b} before`;
  }
  const shown = settings.slice(0, MOST_SETTINGS).map(change === 'removed' ? formerWords : settingWords);
  const more = settings.length - shown.length;
  const words = [...shown, ...(more > 0 ? [`and ${more} more`] : [])].join('; ');
  return change === 'renamed' ? (words === '' ? 'renamed, otherwise the same' : `renamed; ${words}`) : words;
}

type Setting = WiringReport['settings'][number];

const keyOf = ({ path }: Setting): string => (path === '' ? '' : `${path}: `);

const formerWords = (setting: Setting): string => keyOf(setting) + valueWords(setting.before);

function settingWords(setting: Setting): string {
  const { path, before, after } = setting;
  if (before === null) return keyOf(setting) + valueWords(after);
  if (after === null) return `without ${path === '' ? valueWords(before) : path}`;
  return keyOf(setting) + (listWords(before, after) ?? `${valueWords(before)} → ${valueWords(after)}`);
}

/** 'with vent-5, without vent-2' of two lists that have something in common. */
function listWords(before: unknown, after: unknown): string | undefined {
  const [was, is] = [setOf(before), setOf(after)];
  const [fresh, gone] = [[...is].filter((each) => !was.has(each)), [...was].filter((each) => !is.has(each))];
  if (fresh.length === is.size) return undefined;
  if (fresh.length + gone.length === 0) return 'in another order';
  return [
    ...(fresh.length > 0 ? [`with ${joined(fresh)}`] : []),
    ...(gone.length > 0 ? [`without ${joined(gone)}`] : []),
  ].join(', ');
}

const setOf = (list: unknown): ReadonlySet<string> => new Set(Array.isArray(list) ? list.map(valueWords) : []);

function valueWords(value: unknown): string {
  const text = typeof value === 'string' ? value : rendered(value);
  const characters = [...text.slice(0, 2 * LONGEST)];
  return characters.length > LONGEST || text.length > 2 * LONGEST
    ? `${characters.slice(0, LONGEST - 1).join('')}…`
    : text;
}
