/** Plain data as a text that is the same whatever the order of its keys, and of lists whose order means nothing. */
export const canonical = (value: unknown): string =>
  JSON.stringify(value, (key, each: unknown) => {
    if (Array.isArray(each)) return UNORDERED.has(key) ? each.toSorted((a, b) => (text(a) < text(b) ? -1 : 1)) : each;
    return typeof each === 'object' && each !== null
      ? Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1)))
      : each;
  }) ?? '';

/** Keys of lists that say which, and not in which order; in `pins` a place is a circuit's number. */
const UNORDERED = new Set('active without asleep of from to removed'.split(' '));

const text = (value: unknown): string => String(value);

/** Puts a value with others of its likeness. */
export function put<T>(like: Map<string, T[]>, key: string, value: T): void {
  const there = like.get(key);
  if (there) there.push(value);
  else like.set(key, [value]);
}
