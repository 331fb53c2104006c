import type { Problem } from '../source/place.js';
import { type Fields, isFields, PROFILE_KINDS, type Profile } from './profile.js';
import { senseBoard } from './sense-boards.js';
import { senseFigures, senseSources } from './sense-figures.js';
import { senseParts } from './sense-parts.js';
import { sensePins } from './sense-pins.js';
import { textOf } from './stated.js';

/**
 * What a schema cannot see in a profile: figures that are no quantities, uncited or out of order, pins and rails that do
 * not exist, parts whose figures contradict one another. Paths lead from the profile's root.
 *
 * @param look finds other profiles, completed
 */
export function sense(profile: Profile, look: (id: string) => Profile | undefined): readonly Problem[] {
  return [
    ...senseIdentity(profile),
    ...senseFigures(profile),
    ...senseSources(profile),
    ...(profile.kind === 'chip' || profile.kind === 'expander' ? sensePins(profile) : []),
    ...(profile.kind === 'controller' ? senseBoard(profile, look) : []),
    ...senseParts(profile),
  ];
}

/** It has a name and a kind, and its documents can be found by whoever wants to check them. */
function senseIdentity(profile: Profile): readonly Problem[] {
  const documents: Fields = isFields(profile.documents) ? profile.documents : {};
  const nameless = Object.entries(documents).filter(([, document]) => {
    if (!isFields(document)) return true;
    const edition = document['number'] ?? document['revision'] ?? document['year'];
    return typeof document['title'] !== 'string' || typeof document['publisher'] !== 'string' || edition === undefined;
  });
  return [
    ...(PROFILE_KINDS.includes(profile.kind)
      ? []
      : [{ path: ['kind'], on: 'value', says: `\`${textOf(profile.kind)}\` is no kind of profile` } as const]),
    ...(profile.title.trim() === '' || profile.title === profile.id
      ? [{ path: ['title'], on: 'value', says: 'a profile needs a title' } as const]
      : []),
    ...nameless.map(([key]): Problem => ({
      path: ['documents', key],
      on: 'value',
      says: 'a document needs a title, a publisher, and a number, revision or year',
    })),
  ];
}
