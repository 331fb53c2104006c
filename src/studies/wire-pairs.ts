/**
 * Which wire is which in two versions of a file. A wire without a name is called by its ends, so that its id changes with the
 * name of either, and with everything that is hung on it.
 */
import { field } from '../catalogue/profile.js';
import { wireId } from '../project/wires.js';
import { canonical, put } from './canonical.js';

type Wire = Readonly<Record<string, unknown>>;

/** A wire of either version, or the same in both. */
export interface WirePair {
  /** With its id as it was, and with the names that its ends have now. */
  readonly was?: { readonly id: string; readonly wire: Wire };
  readonly is?: { readonly id: string; readonly wire: Wire };
}

/** @param before the former data @param called the same with the names that entries have now @param after the later data */
export function wirePairs(before: unknown, called: unknown, after: unknown): readonly WirePair[] {
  const former = wiresIn(before);
  let old = wiresIn(called).map((wire, at) => ({ id: wireId(former[at] ?? wire), wire }));
  const fresh = new Set(wiresIn(after).map((wire) => ({ id: wireId(wire), wire })));
  const pairs: WirePair[] = [];
  for (const likeness of [isCalled, is, leads, endsAt]) {
    const like = new Map<string, { readonly id: string; readonly wire: Wire }[]>();
    for (const each of fresh) for (const key of likeness(each.wire)) put(like, key, each);
    old = old.filter((was) => {
      const found = likeness(was.wire)
        .flatMap((key) => like.get(key) ?? [])
        .find((each) => fresh.has(each));
      if (found === undefined) return true;
      fresh.delete(found);
      pairs.push({ was, is: found });
      return false;
    });
  }
  return [...[...fresh].map((each) => ({ is: each })), ...pairs, ...old.map((was) => ({ was }))];
}

/** Ids of wires as they are now by what they were. */
export const wireNames = (pairs: readonly WirePair[]): ReadonlyMap<string, string> =>
  new Map(pairs.flatMap(({ was, is }) => (was && is ? [[was.id, is.id] as const] : [])));

/** The wires of a file that are mappings; what else stands there has no id. */
function wiresIn(data: unknown): readonly Wire[] {
  const wires = field(data, 'wires');
  return Array.isArray(wires) ? wires.filter((each): each is Wire => typeof each === 'object' && each !== null) : [];
}

/** Wires that have one of these in common are the same; the surest likeness is asked first. */
type Likeness = (wire: Wire) => readonly string[];

const isCalled: Likeness = (wire) => [wireId(wire)];

const is: Likeness = (wire) => [canonical({ ...wire, name: undefined })];

/** What hangs on it is more or less than before. */
const leads: Likeness = (wire) => endsOf(wire['to']).map((end) => canonical([wire['from'], end]));

/** What hangs on it is fed from elsewhere. */
const endsAt: Likeness = (wire) => endsOf(wire['to']).map(canonical);

/** Where a wire leads: `to` of it, which is one name or several. */
export const endsOf = (to: unknown): readonly unknown[] => (Array.isArray(to) ? to : [to]);
