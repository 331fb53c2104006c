/** Small shapes of JSON Schema that the assembly is made of. */

export const ref = (name) => ({ $ref: `#/$defs/${name}` });

export const mapValues = (record, change) =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value, key)]));

export const prefixed = (prefix, record) =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [prefix + key, value]));

/** A mapping with a fragment's words. */
export const mapping = ({ title, description }, properties, more = {}) => ({
  title,
  description,
  type: 'object',
  properties,
  ...more,
});

/** One of these keys has to be there. */
export const needsOne = (names) => (names ? { anyOf: names.map((name) => ({ required: [name] })) } : {});

/** The keys of several mappings together; where two mean different things by a key, either meaning will do. */
export function unionOf(mappings) {
  const meanings = new Map();
  for (const { properties } of mappings)
    for (const [key, schema] of Object.entries(properties)) {
      const found = meanings.get(key) ?? new Map();
      meanings.set(key, found.set(JSON.stringify(schema), schema));
    }
  return Object.fromEntries([...meanings].map(([key, found]) => [key, either([...found.values()])]));
}

function either(schemas) {
  if (schemas.length === 1) return schemas[0];
  const described = schemas.find(({ description }) => description);
  return { ...(described ? { description: described.description } : {}), anyOf: schemas };
}

/** Names of the definitions that a schema refers to. */
export function* referred(schema) {
  if (typeof schema !== 'object' || schema === null) return;
  if (typeof schema.$ref === 'string') yield schema.$ref.replace('#/$defs/', '');
  for (const value of Object.values(schema)) yield* referred(value);
}

/** The definitions that a schema needs, directly or through others. Throws when one is missing. */
export function needed(schema, defs) {
  const kept = new Set();
  const visit = (part) => {
    for (const name of referred(part)) {
      if (kept.has(name)) continue;
      if (!defs[name]) throw new Error(`schemas/fragments: nothing is called ${name}`);
      kept.add(name);
      visit(defs[name]);
    }
  };
  visit(schema);
  return Object.fromEntries(Object.entries(defs).filter(([name]) => kept.has(name)));
}
