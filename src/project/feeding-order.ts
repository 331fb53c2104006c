/** The order in which supplies and boards are put into the tree: what feeds others comes before them. */
import { isMapping } from '../loads/figures.js';
import type { Path } from '../source/place.js';
import { feedsOf } from './derived-supplies.js';
import type { Gathered } from './remarks.js';

type Raw = Readonly<Record<string, unknown>>;

/** An entry that stands in the tree. */
export interface TreeEntry {
  readonly section: 'supplies' | 'controllers' | 'expanders';
  readonly id: string;
  readonly raw: unknown;
  readonly path: Path;
  /** It would feed itself, so nothing feeds it. */
  readonly circular?: true;
}

const SECTIONS = ['supplies', 'controllers', 'expanders'] as const;

/**
 * All entries, those first that feed others; otherwise in the order of the file. A circle is a problem, and cut where it
 * closes.
 */
export function feedingOrder(data: Raw, remarks: Gathered): readonly TreeEntry[] {
  const entries = SECTIONS.flatMap((section) =>
    Object.entries(isMapping(data[section]) ? data[section] : {}).map(([id, raw]): TreeEntry => ({
      section,
      id,
      raw,
      path: [section, id],
    })),
  );
  const byName = new Map(entries.map((e) => [e.id.toLowerCase(), e]));
  const [only, ...others] = entries.filter((e) => e.section === 'controllers');
  /** The entry that a name belongs to: a supply, the board of a rail, or the one controller whose name may be left off. */
  const ownerOf = (name: string): TreeEntry | undefined => {
    const low = name.toLowerCase();
    const named = byName.get(low) ?? byName.get(low.slice(0, Math.max(low.indexOf('.'), 0)));
    return named ?? (others.length === 0 ? only : undefined);
  };
  const order: TreeEntry[] = [];
  const state = new Map<TreeEntry, 'asked' | 'placed'>();
  const circular = new Set<TreeEntry>();
  // Deep chains are walked without recursion: a file may come from a stranger.
  for (const first of entries) {
    const stack: { readonly entry: TreeEntry; readonly needs: { name: string; path: Path }[] }[] = [];
    const enter = (entry: TreeEntry): void => {
      state.set(entry, 'asked');
      stack.push({ entry, needs: [...needsOf(entry)] });
    };
    if (!state.has(first)) enter(first);
    while (stack.length > 0) {
      const { entry, needs } = stack.at(-1)!;
      const need = needs.shift();
      if (need === undefined) {
        state.set(entry, 'placed');
        order.push(circular.has(entry) ? { ...entry, circular: true } : entry);
        stack.pop();
        continue;
      }
      const owner = ownerOf(need.name);
      if (owner === undefined || state.get(owner) === 'placed') continue;
      if (!state.has(owner)) {
        enter(owner);
        continue;
      }
      circular.add(entry);
      const circle = stack.slice(stack.findIndex((s) => s.entry === owner)).map((s) => s.entry.id);
      remarks.problem({
        path: need.path,
        on: 'value',
        says: `\`${owner.id}\` feeds itself: ${[...circle, owner.id].join(' feeds from ')}`,
        expected: 'a supply that does not hang on it',
      });
    }
  }
  return order;
}

/** The names of what feeds an entry. */
function needsOf({ section, raw, path }: TreeEntry): readonly { readonly name: string; readonly path: Path }[] {
  if (!isMapping(raw)) return [];
  if (section === 'supplies') return feedsOf(raw, path);
  const powered = Object.entries(isMapping(raw['powered']) ? raw['powered'] : {}).flatMap(([inlet, source]) => {
    const at = [...path, 'powered', inlet];
    return typeof source === 'string' ? [{ name: source, path: at }] : feedsOf(source, at);
  });
  const { supply } = raw;
  return typeof supply === 'string' ? [...powered, { name: supply, path: [...path, 'supply'] }] : powered;
}
