/** The report's own words: what verdicts, grades and counts are called. The sentences of findings are in wording/. */
import type { Grade, Report, ReportCite, Verdict } from './report.js';

/** What a limit's grade means to somebody who has never read a data sheet. */
export const gradeWords: { readonly [grade in Grade]: string } = {
  absolute: 'damage limit',
  operating: 'working limit',
  characterised: 'as characterised',
  practice: 'common practice',
};

/** 'one thing', '2 things'. */
const things = (count: number): string => (count === 1 ? 'one thing' : `${count} things`);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What the headline says first, before the findings that led to it. */
export function verdictSentence(report: Report): string {
  const { counts, policy } = report;
  switch (report.verdict) {
    case 'breach':
      return `${capital(things(counts.breach))} must change before power goes on.`;
    case 'strain':
      return `It may well work on the desk. At the worst case, ${things(counts.strain)} ${are(counts.strain)} not promised.`;
    case 'unproven':
      return `Nothing is known to be wrong, but ${counts.unproven === 1 ? 'one question is' : `${counts.unproven} questions are`} open.`;
    case 'thin':
      return `Everything holds, but ${things(counts.thin)} ${has(counts.thin)} less in hand than the policy ‘${policy}’ asks.`;
    case 'note':
    case 'sound':
      return report.accounts.length === 0
        ? 'There is nothing to hold against a limit: the file names no load.'
        : 'Nothing needs to change: everything holds at its worst case.';
  }
}

const are = (count: number): string => (count === 1 ? 'is' : 'are');
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

/** Where a figure comes from: 'ATmega328P data sheet, Table 28-1', 'common practice: as boards are sold'. */
export function citeWords({ basis, document, where }: ReportCite): string {
  switch (basis) {
    case 'document':
      return where ? `${document}, ${where}` : document;
    case 'project':
      return where ? `this file, ${where}` : 'this file';
    case 'practice':
      return where ? `common practice: ${where}` : 'common practice';
    case 'memory':
      return where ? `from memory: ${where}` : 'from memory';
  }
}

/** 'a', 'a and b', 'a, b and c'. */
export const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** The first `most` of a list, and how many more there are. */
export const firstFew = (words: readonly string[], most: number): string =>
  words.length <= most + 1 ? joined(words) : joined([...words.slice(0, most), `${words.length - most} more`]);
