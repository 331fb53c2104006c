/** profile.schema.json: one thing of the catalogue, its kinds told apart by `kind` and `type`. */
import { commonDefs } from './definitions.mjs';
import { finish } from './finish.mjs';
import { mapping, mapValues, needed, prefixed, ref } from './shapes.mjs';

/** A whole profile of one kind and type. */
function profileOf({ properties, required }, fragment, type) {
  const { extends: _, ...identity } = properties;
  const typed = type === undefined ? {} : { type: { description: 'Its type within the kind.', const: type } };
  return mapping(
    fragment,
    { ...identity, ...typed, ...fragment.properties, ...fragment.profile },
    { required: [...required, 'documents', ...Object.keys(typed)] },
  );
}

/** Definitions of all kinds of profile: `profile-load-led`, `profile-clamp`. */
function profileDefs({ loads, drivers, things, profile }) {
  const typed = (kind, fragments) =>
    Object.fromEntries(
      Object.entries(fragments)
        .filter(([type, { only }]) => only !== 'entry' && type !== 'other')
        .map(([type, fragment]) => [`profile-${kind}-${type}`, profileOf(profile, fragment, type)]),
    );
  return {
    ...typed('load', loads),
    ...typed('driver', drivers),
    ...prefixed(
      'profile-',
      mapValues(things, (fragment) => profileOf(profile, fragment)),
    ),
  };
}

/** The condition under which a profile is of the kind that a definition is for. */
function isOf(name) {
  const [, typedKind, type, kind] = /^profile-(?:(load|driver)-(.+)|(.+))$/.exec(name);
  const properties = typedKind ? { kind: { const: typedKind }, type: { const: type } } : { kind: { const: kind } };
  return { properties, required: Object.keys(properties) };
}

/** Loads and drivers have a type, and one that there is. */
const typeOf = (kind, names) => ({
  if: { properties: { kind: { const: kind } }, required: ['kind'] },
  then: {
    properties: {
      type: {
        description: 'Its type within the kind.',
        enum: names.filter((name) => name.startsWith(`profile-${kind}-`)).map((name) => name.split(`-${kind}-`)[1]),
      },
    },
    required: ['type'],
  },
});

/** The root and the definitions, for editors and for our own validators. */
function piecesOf(all) {
  const { clamp } = all.things;
  const part = { description: 'A profile from the catalogue.', type: 'string' };
  const profiles = profileDefs(all);
  const defs = {
    ...commonDefs(all, 'profile'),
    clamp: mapping(clamp, { ...clamp.properties, ...clamp.profile, part }),
    ...profiles,
  };
  // What a profile that extends another leaves to it, and takes away from it with null, is seen when both are joined.
  const { documents } = all.profile.properties;
  const loose = { ...all.profile.properties, documents: { description: documents.description, type: 'object' } };
  const names = Object.keys(profiles);
  return {
    names,
    types: [typeOf('load', names), typeOf('driver', names)],
    root: {
      ...finish({ ...all.profile, properties: loose }, 'project', { note: false }),
      type: 'object',
      additionalProperties: true,
    },
    defs: mapValues(defs, (schema) => finish(schema, 'profile')),
  };
}

export function profileSchema(all) {
  const { names, types, root, defs } = piecesOf(all);
  // What extends another profile is held against the schema of its kind only with all that it takes over (in the build).
  const byKind = {
    if: { required: ['extends'] },
    else: {
      required: ['documents'],
      allOf: [...types, ...names.map((name) => ({ if: isOf(name), then: ref(name) }))],
    },
  };
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:ampledger:profile:1',
    ...root,
    ...byKind,
    $defs: needed({ root, byKind }, defs),
  };
}

/** The same for our own validators, which look at `kind` and `type` themselves, and at the frame when these are wrong. */
export function profileCheckerSchema(all) {
  const { names, types, root, defs } = piecesOf(all);
  const used = needed(names.map(ref), defs);
  return { $id: 'urn:ampledger:profile-checker:1', $defs: { frame: { ...root, allOf: types }, ...used } };
}
