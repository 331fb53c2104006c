/** Loads that stand in a file under another name than before: the same figures and wiring, and only the name is new. */
import { field } from '../catalogue/profile.js';
import { canonical } from './canonical.js';

/** New names by old ones. Of several that are alike the first goes with the first, in the order of the file. */
export function renamedLoads(before: unknown, after: unknown): ReadonlyMap<string, string> {
  const [was, is] = [loadsIn(before), loadsIn(after)];
  const fresh = [...is].filter(([name]) => !was.has(name));
  const renames = new Map<string, string>();
  for (const [name, body] of was) {
    if (is.has(name)) continue;
    const at = fresh.findIndex(([, other]) => other === body);
    const [found] = at < 0 ? [] : fresh.splice(at, 1);
    if (found) renames.set(name, found[0]);
  }
  return renames;
}

/** Ids of what was renamed, `old.coil`, as they are now. */
export const renamedId =
  (renames: ReadonlyMap<string, string>) =>
  (id: string): string => {
    const dot = id.indexOf('.');
    const owner = dot < 0 ? id : id.slice(0, dot);
    return (renames.get(owner) ?? owner) + id.slice(owner.length);
  };

function loadsIn(data: unknown): ReadonlyMap<string, string> {
  const loads = field(data, 'loads');
  return new Map(
    typeof loads === 'object' && loads !== null
      ? Object.entries(loads).map(([name, body]) => [name, canonical(withoutNote(body))])
      : [],
  );
}

/** What a builder remarks about a load makes it no other load. */
function withoutNote(body: unknown): unknown {
  if (typeof body !== 'object' || body === null || Array.isArray(body)) return body;
  return Object.fromEntries(Object.entries(body).filter(([key]) => key !== 'note'));
}
