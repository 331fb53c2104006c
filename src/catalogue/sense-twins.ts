/** Two profiles for one thing: whoever looks for it would find either, and a correction of one would leave the other. */
import { fault } from './stated.js';
import type { Problem } from '../source/place.js';
import { isFields, type Profile } from './profile.js';

/** What names a thing and its sources, and so may differ between two profiles of the same thing. */
const TOLD = new Set(['id', 'title', 'documents', 'note', 'cite']);

/** All figures and facts of a profile as one text, whoever states them. */
function facts(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(facts);
  if (!isFields(node)) return node;
  const kept = Object.entries(node).filter(([key]) => !TOLD.has(key));
  return kept.sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, value]) => [key, facts(value)]);
}

const plainTitle = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/**
 * Whether a profile is a twin of another: the same kind and type with the same title, or the same figures throughout.
 *
 * @param others profiles, completed; the profile itself may be among them
 */
export function senseTwins(profile: Profile, others: readonly Profile[]): readonly Problem[] {
  const mine = JSON.stringify(facts(profile));
  return others.flatMap((other): readonly Problem[] => {
    if (other.id === profile.id || other.kind !== profile.kind || other.type !== profile.type) return [];
    if (plainTitle(other.title) === plainTitle(profile.title))
      return [fault(['title'], `the profile \`${other.id}\` has the same title`, 'say in the title what is different')];
    return JSON.stringify(facts(other)) === mine
      ? [fault([], `the profile \`${other.id}\` states the same figures throughout`, 'one profile a thing')]
      : [];
  });
}
