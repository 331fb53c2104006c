/** What would be right in the place of a word that nothing knows. */
import { nearestSpelling } from './nearest-spelling.js';
import { quote } from './visible.js';

/** The nearest of the words that are known; `otherwise` where none is near. */
export function didYouMean(word: string, known: Iterable<string>, otherwise: string): string {
  const nearest = nearestSpelling(word, known);
  return nearest === undefined ? otherwise : `did you mean ${quote(nearest)}?`;
}

/** The first few of the words that are known, as an advice. */
export const oneOf = (known: readonly string[]): string => `one of ${known.slice(0, 8).join(', ') || 'none'}`;
