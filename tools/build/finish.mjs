/**
 * Finishing touches to an authored schema, the same everywhere: a mapping knows no keys but its own and `note`, and
 * every key has a title. In a profile a mapping may carry `cite`, and must where the fragment says `cite: needed`; what
 * stands under a schema's `profile` joins in, and examples of figures get a source.
 */
import { figureNames } from './fragments.mjs';
import { ref } from './shapes.mjs';

/** Keywords that hold a schema or a list of them. */
const nested = [
  'items',
  'additionalProperties',
  'propertyNames',
  'if',
  'then',
  'else',
  'not',
  'allOf',
  'anyOf',
  'oneOf',
  'prefixItems',
];

/** @param style 'project' or 'profile' @param note whether mappings get a `note` (the root has its own) */
export function finish(schema, style, { note = true } = {}) {
  if (Array.isArray(schema)) return schema.map((item) => finish(item, style));
  if (typeof schema !== 'object' || schema === null) return schema;
  const { cite, profile = {}, ...authored } = schema;
  const merged = style === 'project' ? authored : join(authored, profile);
  const out = {};
  for (const [keyword, value] of Object.entries(merged)) {
    if (keyword === 'properties') out.properties = titled(value, style);
    else out[keyword] = nested.includes(keyword) ? finish(value, style) : value;
  }
  if (style === 'profile' && out.examples && isFigure(out.$ref)) out.examples = out.examples.map(withSource);
  const isMapping = [merged.type].flat().includes('object');
  if (!isMapping) return out;
  if (out.properties && out.additionalProperties === undefined) {
    out.additionalProperties = false;
    if (note) out.properties.note ??= ref('note');
    if (style === 'profile') out.properties.cite ??= ref('cite');
  }
  if (style === 'profile' && cite === 'needed') {
    out.properties = { ...out.properties, cite: ref('cite') };
    out.required = [...(out.required ?? []), 'cite'];
  }
  return out;
}

const join = (schema, more) => ({
  ...schema,
  ...more,
  ...(more.properties ? { properties: { ...schema.properties, ...more.properties } } : {}),
});

const isFigure = (pointer = '') => figureNames.includes(pointer.replace('#/$defs/', '').replace(/-points$/, ''));

/** `5 V` → `{ value: 5 V, cite: [datasheet, Table 3] }`. */
function withSource(example) {
  if (Array.isArray(example)) return example.map(withSource);
  return { ...(typeof example === 'object' ? example : { value: example }), cite: ['datasheet', 'Table 3'] };
}

const titled = (properties, style) =>
  Object.fromEntries(
    Object.entries(properties).map(([key, schema]) => [
      key,
      schema === true ? true : { title: words(key), ...finish(schema, style) },
    ]),
  );

const words = (key) => key.charAt(0).toUpperCase() + key.slice(1).replaceAll('-', ' ');
