/**
 * Which wire is which in two versions of a file. A wire without a name is called by its ends, so that its id changes with the
 * name of either, and with everything that is hung on it.
 */
import { field } from '../catalogue/profile.js';
import { wireId } from '../project/wires.js';
import { canonical } from './canonical.js';

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
  let fresh = wiresIn(after).map((wire) => ({ id: wireId(wire), wire }));
  const pairs: WirePair[] = [];
  for (const isSame of [isCalledTheSame, isTheSame, leadsTheSameWay, leadsToTheSame])
    old = old.filter((was) => {
      const is = fresh.find(({ wire }) => isSame(was.wire, wire));
      if (is === undefined) return true;
      fresh = fresh.filter((each) => each !== is);
      pairs.push({ was, is });
      return false;
    });
  return [...fresh.map((is) => ({ is })), ...pairs, ...old.map((was) => ({ was }))];
}

/** Ids of wires as they are now by what they were. */
export const wireNames = (pairs: readonly WirePair[]): ReadonlyMap<string, string> =>
  new Map(pairs.flatMap(({ was, is }) => (was && is ? [[was.id, is.id] as const] : [])));

/** The wires of a file that are mappings; what else stands there has no id. */
function wiresIn(data: unknown): readonly Wire[] {
  const wires = field(data, 'wires');
  return Array.isArray(wires) ? wires.filter((each): each is Wire => typeof each === 'object' && each !== null) : [];
}

type Likeness = (wire: Wire, other: Wire) => boolean;

const isCalledTheSame: Likeness = (wire, other) => wireId(wire) === wireId(other);

const isTheSame: Likeness = (wire, other) =>
  canonical({ ...wire, name: undefined }) === canonical({ ...other, name: undefined });

/** What hangs on it is more or less than before. */
const leadsTheSameWay: Likeness = (wire, other) => wire['from'] === other['from'] && leadsToTheSame(wire, other);

/** What hangs on it is fed from elsewhere. */
const leadsToTheSame: Likeness = (wire, other) => endsOf(wire['to']).some((end) => endsOf(other['to']).includes(end));

/** Where a wire leads: `to` of it, which is one name or several. */
export const endsOf = (to: unknown): readonly unknown[] => (Array.isArray(to) ? to : [to]);
