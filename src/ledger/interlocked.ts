/**
 * The heaviest states that interlocks allow, by branch and bound. Circuits that no chain of interlocks joins are searched
 * apart, and their states put together afterwards; what is still to come is bounded by groups of which only so many may be on.
 */
import { aheadOf, pricesFor } from './interlock-bounds.js';
import type { Dispute, Rule } from './interlock-rules.js';
import { breaks, concerning, count } from './interlock-rules.js';
import type { Prices } from './prices.js';

/** A state, and what its circuits in dispute weigh. */
export interface Weighed {
  readonly on: Uint8Array;
  readonly weight: number;
}

/** A search that visits more states than this is begun anew with prices, which take a while to find, and with those cut short. */
const FEW_VISITS = 2000;
const MOST_VISITS = 200_000;
/** The same of a search for those that are nearly as heavy: how heavy the heaviest is is known by then. */
const NEAR_VISITS = 10_000;

/**
 * The heaviest allowed states of what is in dispute, heaviest first.
 *
 * @param near how far below the heaviest others may lie, given its weight @param most how many of them are kept
 * @returns undefined when the search was cut short; none when no state is allowed
 */
export function heaviestStates(
  dispute: Dispute,
  near: (heaviest: number) => number,
  most: number,
): readonly Weighed[] | undefined {
  const parts = apart(dispute).map((disputed) => ({ ...dispute, disputed }));
  const best: Weighed[] = [];
  for (const part of parts) {
    const found = search(part, 0, 1);
    if (found === undefined) return undefined;
    if (found.length === 0) return [];
    best.push(found[0]!);
  }
  const room = near(best.reduce((sum, { weight }) => sum + weight, 0));
  let states: Weighed[] = [{ on: dispute.off, weight: 0 }];
  parts.forEach((part, k) => {
    // Cut short, the heaviest of them is known all the same.
    const own = search(part, room, most) ?? [best[k]!];
    states = states
      .flatMap((state) => own.map((each) => together(state, each)))
      .sort((a, b) => b.weight - a.weight)
      .slice(0, most);
    states = states.filter(({ weight }) => weight >= states[0]!.weight - room);
  });
  return states;
}

const together = (a: Weighed, b: Weighed): Weighed => ({
  on: a.on.map((state, k) => state | b.on[k]!),
  weight: a.weight + b.weight,
});

/** Circuits in dispute that interlocks tie to each other, directly or over others, heaviest first. */
function apart({ disputed, rules, sets }: Dispute): number[][] {
  const group = new Map(disputed.map((k) => [k, k]));
  const root = (k: number): number => (group.get(k) === k ? k : root(group.get(k)!));
  for (const rule of rules) {
    const [first, ...others] = [...rule.of, ...rule.when].map((k) => sets[k]![0]!).filter((k) => group.has(k));
    for (const other of others) group.set(root(other), root(first!));
  }
  return [...new Set(disputed.map(root))].map((of) => disputed.filter((k) => root(k) === of));
}

/** @param room how far below the heaviest others may lie @param most how many are kept @returns undefined when cut short */
function search(dispute: Dispute, room: number, most: number): readonly Weighed[] | undefined {
  const quick = searched(dispute, room, most, FEW_VISITS);
  if (!quick.cut) return quick.found;
  const known = quick.found[0]?.weight ?? 0;
  const prices = pricesFor(dispute, known);
  const size = (k: number): number => Math.abs(prices.left.get(k)!);
  // Those that the prices are surest of are decided first: what is against them is given up at once.
  const disputed = dispute.disputed.toSorted((a, b) => size(b) - size(a));
  const thorough = searched({ ...dispute, disputed }, room, most, most === 1 ? MOST_VISITS : NEAR_VISITS, prices);
  return thorough.cut ? undefined : thorough.found;
}

function searched(
  { disputed, weight, sets, rules, off }: Dispute,
  room: number,
  most: number,
  mostVisits: number,
  prices?: Prices,
): { readonly found: readonly Weighed[]; readonly cut: boolean } {
  const concerned = concerning({ disputed, sets, rules });
  const ahead = aheadOf(disputed, weight, concerned, sets);
  const open = disputed.map((_, d) => new Set(disputed.slice(d + 1).flatMap((k) => sets[k]!)));
  const left = disputed.map((k) => prices?.left.get(k) ?? 0);
  /** What is not decided yet may add at its prices, from each depth on. */
  const later = left.map((_, d) => left.slice(d).reduce((sum, w) => sum + Math.max(w, 0), 0));
  const standing = standingOf(concerned, sets);
  /** Most that was reached with the interlocks standing as they do: from there on all goes alike. */
  const known = new Map<string, number>();
  const found: Weighed[] = [];
  let best = -Infinity;
  let visits = 0;
  const on = off.slice();
  const put = (k: number, state: 0 | 1): void => {
    for (const c of sets[k]!) on[c] = state;
  };
  // Once there are enough of them, another has to outweigh the least of those that are kept.
  const hopeless = (atMost: number): boolean =>
    atMost < best - room || (found.length === most && atMost <= found.at(-1)!.weight);
  const visit = (depth: number, sum: number, priced: number): void => {
    if (visits++ > mostVisits) return;
    if (prices && hopeless(priced + (later[depth] ?? 0))) return;
    if (hopeless(sum + ahead(depth, on))) return;
    if (prices && most === 1 && depth < disputed.length) {
      const key = `${depth} ${standing(on, open[depth]!, disputed[depth]!)}`;
      const reached = known.get(key);
      if (reached !== undefined && reached >= sum) return;
      known.set(key, sum);
    }
    if (depth === disputed.length) {
      const place = found.findIndex((f) => f.weight < sum);
      found.splice(place < 0 ? found.length : place, 0, { on: on.slice(), weight: sum });
      if (found.length > most) found.pop();
      best = Math.max(best, sum);
      return;
    }
    const k = disputed[depth]!;
    for (const state of (prices ? left[depth]! : weight[k]!) > 0 ? ([1, 0] as const) : ([0, 1] as const)) {
      put(k, state);
      if (!concerned.some((r) => breaks(on, r, open[depth]!)))
        visit(depth + 1, sum + (state ? weight[k]! : 0), priced + (state ? left[depth]! : 0));
    }
    put(k, 0);
  };
  visit(0, 0, prices?.base ?? 0);
  return { found, cut: visits > mostVisits };
}

/**
 * How interlocks stand, as far as it matters to what is still open: two states that stand alike can go on alike.
 *
 * @returns a text of them @param next the circuit that is decided next, which is open, too
 */
function standingOf(rules: readonly Rule[], sets: readonly (readonly number[])[]) {
  return (on: Uint8Array, open: ReadonlySet<number>, next: number): string => {
    const isOpen = (k: number): boolean => open.has(k) || sets[next]!.includes(k);
    let text = '';
    for (const { kind, of, when, most } of rules) {
      if (kind === 'at-most') {
        const undecided = of.filter(isOpen).length;
        if (undecided > 0) text += `${Math.min(most - count(on, of), undecided)},`;
        continue;
      }
      if (!of.some(isOpen) && !when.some(isOpen)) continue;
      const asked = count(on, when) > 0;
      const barred = kind === 'needs' ? of.some((k) => on[k] === 0 && !isOpen(k)) : count(on, of) > 0;
      text += `${asked ? 1 : 0}${barred ? 1 : 0},`;
    }
    return text;
  };
}
