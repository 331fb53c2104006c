/** The report's own words: what verdicts, grades and counts are called. The sentences of findings are in wording/. */
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
