/** The formats of an audit's report: what files of each end in. Plain names, so that asking for help loads no report. */

/** By the ending of a file; the longest that fits counts. */
export const ENDINGS = {
  '.txt': 'terminal',
  '.json': 'json',
  '.sarif': 'sarif',
  '.sarif.json': 'sarif',
  '.xml': 'junit',
  '.md': 'markdown',
  '.part': 'part',
} as const;

export type Format = (typeof ENDINGS)[keyof typeof ENDINGS];

export const FORMATS: readonly Format[] = [...new Set(Object.values(ENDINGS))];

/** '.txt, .json or .sarif': of each format the first ending. */
export const endingWords = (formats: readonly Format[]): string =>
  formats
    .map(endingOf)
    .join(', ')
    .replace(/, (?=[^,]*$)/, ' or ');

function endingOf(format: Format): string {
  return Object.entries(ENDINGS).find(([, each]) => each === format)?.[0] ?? '';
}

/** The format of a file by its ending, capitals or not. */
export function formatOf(file: string): Format | undefined {
  const fits = Object.entries(ENDINGS).filter(([ending]) => file.toLowerCase().endsWith(ending));
  return fits.sort(([a], [b]) => b.length - a.length)[0]?.[1];
}
