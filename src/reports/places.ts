/** Places in a file as editors and terminals read them. */
import type { ReportPlace } from './report.js';

/** 'pond.yaml:41:3', and of others what differs: 'pond.yaml:41:3, 10, 42:3'. */
export function placeWords(first: ReportPlace, others: readonly ReportPlace[] = []): string {
  const whole = ({ file, line, column }: ReportPlace): string => `${file}:${line}:${column}`;
  const seen = new Set([whole(first)]);
  const words = [whole(first)];
  let last = first;
  for (const place of others) {
    if (seen.has(whole(place))) continue;
    seen.add(whole(place));
    words.push(place.file === last.file && place.line === last.line ? `${place.column}` : besides(place, last));
    last = place;
  }
  return words.join(', ');
}

/** A place beside one in the same file, which need not be said again: '9:3'. */
export const besides = (place: ReportPlace, first: ReportPlace): string =>
  place.file === first.file ? `${place.line}:${place.column}` : placeWords(place);
