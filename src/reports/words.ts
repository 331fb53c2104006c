/** The report's own words: what verdicts, grades and counts are called. The sentences of findings are in wording/. */
import { type Cause, count } from './causes.js';
import type { Grade, Report, Verdict } from './report.js';

/** What a limit's grade means to somebody who has never read a data sheet. */
export const gradeWords: { readonly [grade in Grade]: string } = {
  absolute: 'damage limit',
  operating: 'working limit',
  characterised: 'as characterised',
  practice: 'common practice',
};

/** The same where it stands beside the figure, under the head 'limit'. */
export const gradeWord: { readonly [grade in Grade]: string } = {
  absolute: 'damage',
  operating: 'working',
  characterised: 'as tested',
  practice: 'practice',
};

/** 'one thing', '2 things'. */
const things = (count: number): string => (count === 1 ? 'one thing' : `${count} things`);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What the headline says first, before the causes behind it. */
export function verdictSentence({ verdict, accounts, policy }: Report, causes: readonly Cause[]): string {
  const strained = count(causes, 'strain');
  switch (verdict) {
    case 'breach':
      return (
        `${capital(things(count(causes, 'breach')))} must change before power goes on` +
        (strained > 0 ? `; at the worst case ${strained} more ${is(strained)} not promised.` : '.')
      );
    case 'strain':
      return `It may well work on the desk. At the worst case, ${things(strained)} ${is(strained)} not promised.`;
    case 'unproven':
      return `Nothing is known to be wrong, but ${causes.length === 1 ? 'one question is' : `${causes.length} questions are`} open.`;
    case 'thin':
      return `Everything holds, but ${things(causes.length)} ${has(causes.length)} less in hand than the policy ‘${policy}’ asks.`;
    case 'note':
    case 'sound':
      return accounts.length === 0
        ? 'There is nothing to hold against a limit: the file names no load.'
        : 'Nothing needs to change: everything holds at its worst case.';
  }
}

const is = (count: number): string => (count === 1 ? 'is' : 'are');
const has = (count: number): string => (count === 1 ? 'has' : 'have');

/** '2 breaches, 1 strain, 3 thin', or 'no findings'. */
export function countWords(counts: Report['counts']): string {
  const words = [
    [counts.breach, 'breach', 'breaches'],
    [counts.strain, 'strain', 'strains'],
    [counts.unproven, 'unproven', 'unproven'],
    [counts.thin, 'thin', 'thin'],
    [counts.note, 'note', 'notes'],
  ] as const;
  const said = words.filter(([count]) => count > 0).map(([count, one, many]) => `${count} ${count === 1 ? one : many}`);
  return said.length === 0 ? 'no findings' : said.join(', ');
}

/** A headline of nothing but notes is a sound one. */
export const headline = (verdict: Verdict): Exclude<Verdict, 'note'> => (verdict === 'note' ? 'sound' : verdict);

/** When it is worst; nothing for a file without modes, where the circuits that are on are named instead. */
export function modeWords(mode: string): string {
  switch (mode) {
    case 'free':
      return '';
    case 'runaway':
      return 'when all is on that the wiring allows';
    case 'boot':
      return 'until the firmware runs';
    default:
      return `in mode ${mode}`;
  }
}

/** 'a', 'a and b', 'a, b and c'. */
export const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** The first `most` of a list, and how many more there are. */
export const firstFew = (words: readonly string[], most: number): string =>
  words.length <= most + 1 ? joined(words) : joined([...words.slice(0, most), `${words.length - most} more`]);
