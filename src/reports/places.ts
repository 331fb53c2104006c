/** Places in a file as editors and terminals read them. */
import type { ReportPlace } from './report.js';

/** 'pond.yaml:41:3', and of more places in the same file what differs: 'pond.yaml:41:3, 10, 42:3'. */
export function placeWords(first: ReportPlace, others: readonly ReportPlace[] = []): string {
  const words = [`${first.file}:${first.line}:${first.column}`];
  let last = first;
  for (const place of others) {
    words.push(
      place.file !== last.file
        ? placeWords(place)
        : place.line !== last.line
          ? `${place.line}:${place.column}`
          : `${place.column}`,
    );
    last = place;
  }
  return words.filter((word, at) => word !== words[at - 1]).join(', ');
}

/** A place beside one in the same file, which need not be said again: '9:3'. */
export const besides = (place: ReportPlace, first: ReportPlace): string =>
  place.file === first.file ? `${place.line}:${place.column}` : placeWords(place);
