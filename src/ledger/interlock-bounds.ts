/** How much what is not decided yet can still weigh under interlocks: by counting, and by prices. */
import type { Dispute, Rule } from './interlock-rules.js';
import { concerning, count } from './interlock-rules.js';
import type { Prices, Row } from './prices.js';
import { pricesOf } from './prices.js';

/** Prices of the interlocks as rows of sums; what is on anyhow counts against what a row lets. */
export function pricesFor(dispute: Dispute, known: number): Prices {
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
export function aheadOf(
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
