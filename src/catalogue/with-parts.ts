import type { Path, Problem } from '../source/place.js';
import { nearestSpelling } from '../source/nearest-spelling.js';
import type { Catalogue } from './catalogue.js';
import { takeOver, type Resolved } from './extends.js';
import { type Fields, field, isFields, PROFILE_KINDS, type Profile, type ProfileKind } from './profile.js';

/** A catalogue with own profiles on top, and what was wrong with these. */
export interface Layered {
  readonly catalogue: Catalogue;
  readonly problems: readonly Problem[];
}

/** What a `type` says of the kind, when `kind` is not given; any other type is a load's. */
const KIND_OF_TYPE: Readonly<Record<string, ProfileKind>> = {
  ...Object.fromEntries(
    ['npn', 'pnp', 'nmos', 'pmos', 'opto', 'h-bridge', 'chopper', 'open-drain', 'gate-driver'].map((type) => [
      type,
      'driver',
    ]),
  ),
  ...Object.fromEntries(
    ['diode', 'schottky', 'zener', 'diode-zener', 'tvs', 'varistor'].map((type) => [type, 'clamp']),
  ),
  ...Object.fromEntries(
    ['linear-regulator', 'switching-regulator', 'fuse', 'limiter', 'switch'].map((type) => [type, 'supply-part']),
  ),
};

/**
 * Lays a project's own profiles over a catalogue. They may extend its profiles and one another, but not take a name that
 * is there already: a figure of the catalogue is never changed in silence.
 *
 * @param own profiles by id, as the project file or a folder of its own states them
 * @param at where they stand, for the problems
 */
export function withParts(catalogue: Catalogue, own: unknown, at: Path = ['parts']): Layered {
  const problems: Problem[] = [];
  const parts = new Map<string, Fields>();
  for (const [id, data] of isFields(own) ? Object.entries(own) : []) {
    if (!isFields(data)) continue; // the schema says so already
    if (catalogue.profile(id)) {
      const says = `the catalogue has a profile \`${id}\` already`;
      problems.push({
        path: [...at, id],
        on: 'key',
        says,
        expected: `give it a name of its own, with \`extends: ${id}\``,
      });
    } else parts.set(id, data);
  }

  const complete = new Map<string, Profile>();
  const known = [...catalogue.ids(), ...parts.keys()];
  for (const id of parts.keys()) {
    const resolved = takeOver(id, (each) => parts.get(each) ?? catalogue.profile(each));
    if (!('fields' in resolved)) problems.push(whyNot(resolved, [...at, id, 'extends'], known));
    else {
      const kind = kindOf(resolved.fields);
      if (kind) complete.set(id, { documents: {}, ...resolved.fields, kind } as Profile);
      else {
        const says = `part \`${id}\` does not say what it is`;
        problems.push({ path: [...at, id], on: 'key', says, expected: 'add `extends`, `kind` or `type`' });
      }
    }
  }

  return {
    problems,
    catalogue: {
      profile: (id) => complete.get(id) ?? catalogue.profile(id),
      ids: (kind) => [
        ...catalogue.ids(kind),
        ...[...complete.values()].filter((part) => kind === undefined || part.kind === kind).map(({ id }) => id),
      ],
    },
  };
}

function kindOf(fields: Fields): ProfileKind | undefined {
  const kind = field(fields, 'kind');
  if (kind !== undefined) return PROFILE_KINDS.find((each) => each === kind);
  const type = field(fields, 'type');
  if (typeof type !== 'string') return undefined;
  return (Object.hasOwn(KIND_OF_TYPE, type) ? KIND_OF_TYPE[type] : undefined) ?? 'load';
}

function whyNot(resolved: Exclude<Resolved, { fields: Fields }>, path: Path, known: readonly string[]): Problem {
  if ('cycle' in resolved) return { path, on: 'value', says: `these extend each other: ${resolved.cycle.join(', ')}` };
  if ('deeperThan' in resolved)
    return { path, on: 'value', says: `extends more than ${resolved.deeperThan} others, one after another` };
  const nearest = nearestSpelling(resolved.missing, known);
  const says = `there is no profile \`${resolved.missing}\``;
  return { path, on: 'value', says, ...(nearest === undefined ? {} : { expected: `did you mean \`${nearest}\`?` }) };
}
