/** What is different between two values of a project file: the leaves that were set, changed or taken out. */
import { canonical } from './canonical.js';

/** One value that was set, changed or taken out; a side without it lacks the key. */
export interface Setting {
  /** Below the entry: `driver.pin`; empty when the entry itself is the value. */
  readonly path: string;
  readonly before?: unknown;
  readonly after?: unknown;
}

/** The leaves that differ. Lists of one-line entries differ as whole entries, whatever their order. */
export function settingsOf(before: unknown, after: unknown, path = ''): readonly Setting[] {
  // Under its key a list is known for one whose order means nothing.
  const key = path.slice(path.lastIndexOf('.') + 1);
  if (canonical({ [key]: before }) === canonical({ [key]: after })) return [];
  if (isMapping(before ?? after) && isMapping(after ?? before)) {
    const [was, is] = [mapping(before), mapping(after)];
    return [...new Set([...Object.keys(was), ...Object.keys(is)])].flatMap((each) =>
      settingsOf(was[each], is[each], path === '' ? each : `${path}.${each}`),
    );
  }
  if (isListOfMappings(before ?? after) && isListOfMappings(after ?? before)) {
    const [was, is] = [listed(before), listed(after)];
    return [
      ...missing(was, is).map((b): Setting => ({ path, before: b })),
      ...missing(is, was).map((a): Setting => ({ path, after: a })),
    ];
  }
  return [{ path, ...(before !== undefined && { before }), ...(after !== undefined && { after }) }];
}

/** What is in one list and not in the other. */
const missing = (one: readonly unknown[], other: readonly unknown[]): readonly unknown[] => {
  const there = new Set(other.map(canonical));
  return one.filter((each) => !there.has(canonical(each)));
};

export type Mapping = { readonly [key: string]: unknown };

export const isMapping = (value: unknown): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Without a prototype, so that an entry may be called as one of its members is. */
const EMPTY = Object.freeze(Object.create(null) as Mapping);

export const mapping = (value: unknown): Mapping => (isMapping(value) ? value : EMPTY);

const isListOfMappings = (value: unknown): boolean => Array.isArray(value) && value.some(isMapping);

export const listed = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
