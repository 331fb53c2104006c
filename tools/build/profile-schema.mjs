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
  const typed = (kind, fragments, but) =>
    Object.fromEntries(
      Object.entries(fragments)
        .filter(([type]) => type !== but)
        .map(([type, fragment]) => [`profile-${kind}-${type}`, profileOf(profile, fragment, type)]),
    );
  return {
    ...typed('load', loads, 'other'),
    ...typed('driver', drivers, 'array'),
    ...prefixed('profile-', mapValues(things, (fragment) => profileOf(profile, fragment))),
  };
}

/** The condition under which a profile is of the kind that a definition is for. */
function isOf(name) {
  const [, typedKind, type, kind] = /^profile-(?:(load|driver)-(.+)|(.+))$/.exec(name);
  const properties = typedKind ? { kind: { const: typedKind }, type: { const: type } } : { kind: { const: kind } };
  return { properties, required: Object.keys(properties) };
}

export function profileSchema(all) {
  const { clamp } = all.things;
  const part = { description: 'A profile from the catalogue.', type: 'string' };
  const profiles = profileDefs(all);
  const defs = mapValues(
    { ...commonDefs(all, 'profile'), clamp: mapping(clamp, { ...clamp.properties, ...clamp.profile, part }), ...profiles },
    (schema) => finish(schema, 'profile'),
  );
  const frame = { ...finish(all.profile, 'project', { note: false }), type: 'object', additionalProperties: true };
  // What extends another profile is held against the schema of its kind only with all that it takes over (in the build).
  const byKind = {
    if: { required: ['extends'] },
    else: { required: ['documents'], allOf: Object.keys(profiles).map((name) => ({ if: isOf(name), then: ref(name) })) },
  };
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:ampledger:profile:1',
    ...frame,
    ...byKind,
    $defs: { ...needed({ frame, byKind }, defs) },
  };
}

/** The same for our own validators, which look at `kind` and `type` themselves. */
export function profileCheckerSchema(all) {
  const { $schema: _, $id, $defs, if: _if, else: _else, ...frame } = profileSchema(all);
  return { $id, $defs: { frame, ...$defs } };
}
