import { quote } from './visible.js';

/** A value in words: the text itself, a list, a mapping, nothing. */
export function valueWords(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'a mapping' : quote(String(value));
}

/**
 * The types that a schema allows, in words: 'a quantity, { value, at } or a list'.
 *
 * @param types JSON Schema's names
 * @param keys what a mapping would hold, when the schema says
 */
export function typeWords(types: readonly string[], keys: readonly string[] | undefined): string {
  const has = (...wanted: string[]) => wanted.every((type) => types.includes(type));
  const words = [
    has('string', 'number') ? 'a quantity' : has('string', 'integer') ? 'a name' : has('string') ? 'a text' : '',
    has('string') ? '' : has('integer') ? 'a whole number' : has('number') ? 'a number' : '',
    has('boolean') ? 'true or false' : '',
    has('object') ? mappingWords(keys?.filter((key) => key !== 'note') ?? []) : '',
    has('array') ? 'a list' : '',
  ].filter((word) => word !== '');
  const last = words.pop() ?? '';
  return words.length > 0 ? `${words.join(', ')} or ${last}` : last;
}

function mappingWords(keys: readonly string[]): string {
  if (keys.length === 0) return 'keys with values';
  return `{ ${keys.slice(0, 4).join(', ')}${keys.length > 4 ? ', …' : ''} }`;
}
