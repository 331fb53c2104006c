import { type Fields, isFields } from './profile.js';

/**
 * One mapping laid over another, the way `extends` does it: mappings go together key by key, anything else takes the place
 * of what was there, and `null` takes away what was there. A figure (`{ value, cite }`) is one thing: laid over another it
 * leaves nothing of it, or a new value would keep an old source.
 * `overlay({ coil: { voltage: 5, power: 1 } }, { coil: { voltage: 6, power: null } })` → `{ coil: { voltage: 6 } }`.
 */
export function overlay(below: Fields, above: Fields): Fields {
  const merged = new Map<string, unknown>(Object.entries(below));
  for (const [key, value] of Object.entries(above)) {
    const under = merged.get(key);
    // A `null` over nothing is a slip (a comma in a flow mapping makes one); it stays, for the schema to find.
    if (value === null && merged.has(key)) merged.delete(key);
    else if (isFields(value) && isFields(under) && !('value' in value) && !('value' in under)) {
      merged.set(key, overlay(under, value));
    } else merged.set(key, value);
  }
  return Object.fromEntries(merged);
}
