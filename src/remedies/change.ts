/** Changes applied to checked data, leaving the original as it is. */
import { isMapping } from '../loads/figures.js';
import type { Change } from './prove.js';

/** A copy of the data with each change's value at its path; `undefined` takes the key away, missing mappings are made. */
export function withChanges(data: unknown, changes: readonly Change[]): unknown {
  return changes.reduce((changed, { path, value }) => put(changed, path, value), data);
}

function put(data: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(data)) return data.map((item: unknown, k) => (k === Number(key) ? put(item, rest, value) : item));
  const map = new Map(Object.entries(isMapping(data) ? data : {}));
  if (value === undefined && !map.has(String(key))) return data;
  const next = put(map.get(String(key)), rest, value);
  if (next === undefined) map.delete(String(key));
  else map.set(String(key), next);
  return Object.fromEntries(map);
}
