/**
 * The heaviest states that interlocks allow, by branch and bound. Circuits that no chain of interlocks joins are searched
 * apart, and their states put together afterwards; what is still to come is bounded by groups of which only so many may be on.
 */
import type { InterlockPlan, Project } from '../project/project.js';
import type { Prices, Row } from './prices.js';
import { pricesOf } from './prices.js';

/** An interlock with its circuits' numbers. */
export interface Rule {
  readonly kind: InterlockPlan['kind'];
  readonly most: number;
  readonly of: readonly number[];
  readonly when: readonly number[];
}

export function rulesOf(project: Project, interlocks: readonly InterlockPlan[]): Rule[] {
  const index = new Map(project.circuits.map((c, k) => [c.id, k]));
  const numbers = (ids: readonly string[]): number[] => ids.map((id) => index.get(id)!);
  return interlocks.map((i) => ({ kind: i.kind, most: i.most ?? 0, of: numbers(i.of), when: numbers(i.when ?? []) }));
}

const count = (on: Uint8Array, of: readonly number[]): number => {
  let sum = 0;
  for (const k of of) sum += on[k]!;
  return sum;
};

/** Whether a whole state keeps every interlock. */
export const allowed = (on: Uint8Array, rules: readonly Rule[]): boolean => !rules.some((r) => breaks(on, r, NONE));

const NONE: ReadonlySet<number> = new Set();

/** Whether a state breaks an interlock, whatever becomes of the circuits that are still open, which are off in it. */
function breaks(on: Uint8Array, r: Rule, open: ReadonlySet<number>): boolean {
  switch (r.kind) {
    case 'at-most':
      return count(on, r.of) > r.most;
    case 'needs':
      return count(on, r.when) > 0 && r.of.some((k) => on[k] === 0 && !open.has(k));
    case 'excludes':
      return count(on, r.when) > 0 && count(on, r.of) > 0;
    default:
      return r.kind satisfies never;
  }
}

/** What is to be decided: the circuits in dispute, each the first of those that are on together, heaviest first. */
export interface Dispute {
  readonly disputed: readonly number[];
  /** Weight of each circuit with those that are on with it. */
  readonly weight: readonly number[];
  /** Circuits that are on together, by circuit. */
  readonly sets: readonly (readonly number[])[];
  readonly rules: readonly Rule[];
  /** The state in which everything in dispute is off. */
  readonly off: Uint8Array;
}

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

/** The interlocks that say anything of what is in dispute. */
function concerning({ disputed, sets, rules }: Pick<Dispute, 'disputed' | 'sets' | 'rules'>): Rule[] {
  const own = new Set(disputed);
  return rules.filter((r) => [...r.of, ...r.when].some((k) => own.has(sets[k]![0]!)));
}

/** Prices of the interlocks as rows of sums; what is on anyhow counts against what a row lets. */
function pricesFor(dispute: Dispute, known: number): Prices {
  const { disputed, weight, sets, off } = dispute;
  const own = new Set(disputed);
  const row = (terms: readonly (readonly [number, number])[], most: number): Row => {
    const times = new Map<number, number>();
    let less = 0;
    for (const [k, by] of terms) {
      const head = sets[k]![0]!;
      if (own.has(head)) times.set(head, (times.get(head) ?? 0) + by);
      else less += by * off[k]!;
    }
    return { terms: [...times].map(([circuit, by]) => ({ circuit, times: by })), most: most - less };
  };
  const rules = concerning(dispute);
  const foes = foesOf(disputed, rules, sets);
  const rows = [
    ...rules.flatMap(({ kind, of, when, most }): Row[] => {
      if (kind === 'at-most')
        return [
          row(
            of.map((k) => [k, 1] as const),
            most,
          ),
        ];
      return when.flatMap((w) =>
        of.map((o) =>
          row(
            [
              [w, 1],
              [o, kind === 'needs' ? -1 : 1],
            ],
            kind === 'needs' ? 0 : 1,
          ),
        ),
      );
    }),
    ...cliquesOf(disputed, weight, foes)
      .filter((clique) => clique.length > 2)
      .map((clique) =>
        row(
          clique.map((k) => [k, 1] as const),
          1,
        ),
      ),
  ];
  return pricesOf(new Map(disputed.map((k) => [k, weight[k]!])), rows, known);
}

/** Circuits of which only so many may be on. */
interface Group {
  readonly most: number;
  readonly of: readonly number[];
}

/**
 * The most that what is not decided yet can add from a depth on: nothing of what something that is on keeps off, and of each
 * group no more than may still be on, the heaviest of them.
 */
function aheadOf(
  disputed: readonly number[],
  weight: readonly number[],
  rules: readonly Rule[],
  sets: readonly (readonly number[])[],
): (depth: number, on: Uint8Array) => number {
  const foes = foesOf(disputed, rules, sets);
  const groups: Group[] = rules.filter((r) => r.kind === 'at-most').map(({ most, of }) => ({ most, of }));
  const limits = disputed.map((k) => groups.flatMap((g, n) => (sets[k]!.some((c) => g.of.includes(c)) ? [n] : [])));
  const cliques = cliquesOf(disputed, weight, foes);
  // Of a clique one may be on: that bounds more than an at-most of several does.
  const counted = disputed.map((k, d) => {
    const clique = cliques.findIndex((each) => each.length > 1 && each.includes(k));
    return clique >= 0 ? groups.length + clique : (limits[d]![0] ?? -1);
  });
  const heavy = [...disputed.keys()]
    .filter((d) => weight[disputed[d]!]! > 0)
    .sort((a, b) => weight[disputed[b]!]! - weight[disputed[a]!]!);
  const bounds = [...groups, ...cliques.map((of) => ({ most: 1, of }))];
  return (depth, on) => {
    const left = bounds.map((g) => g.most - count(on, g.of));
    const full = groups.map((_, n) => left[n]! <= 0);
    let sum = 0;
    for (const d of heavy) {
      const w = weight[disputed[d]!]!;
      if (d < depth || limits[d]!.some((n) => full[n]) || foes[d]!.some((k) => on[k] === 1)) continue;
      const group = counted[d]!;
      if (group < 0 || left[group]!-- > 0) sum += w;
    }
    return sum;
  };
}

/** For each circuit in dispute those that it is never on with: excluded either way, or one of which there is only one. */
function foesOf(disputed: readonly number[], rules: readonly Rule[], sets: readonly (readonly number[])[]): number[][] {
  const pairs = rules.flatMap((r): (readonly [number, number])[] => {
    if (r.kind === 'excludes') return r.when.flatMap((a) => r.of.map((b) => [a, b] as const));
    if (r.kind === 'at-most' && r.most === 1) return r.of.flatMap((a) => r.of.map((b) => [a, b] as const));
    return [];
  });
  const head = (k: number): number => sets[k]![0]!;
  return disputed.map((k) => [
    ...new Set(
      pairs.flatMap(([a, b]) => (head(a) === k ? [head(b)] : head(b) === k ? [head(a)] : [])).filter((o) => o !== k),
    ),
  ]);
}

/** Circuits of which each keeps all the others off, gathered greedily, heaviest first. */
function cliquesOf(disputed: readonly number[], weight: readonly number[], foes: readonly number[][]): number[][] {
  const cliques: number[][] = [];
  disputed.forEach((k, d) => {
    if (weight[k]! <= 0) return;
    const mine = cliques.find((clique) => clique.every((other) => foes[d]!.includes(other)));
    if (mine) mine.push(k);
    else cliques.push([k]);
  });
  return cliques;
}
