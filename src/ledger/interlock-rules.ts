/** Interlocks by the numbers of their circuits, what they allow, and what is in dispute under them. */
import type { InterlockPlan, Project } from '../project/project.js';

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

export const count = (on: Uint8Array, of: readonly number[]): number => {
  let sum = 0;
  for (const k of of) sum += on[k]!;
  return sum;
};

/** Whether a whole state keeps every interlock. */
export const allowed = (on: Uint8Array, rules: readonly Rule[]): boolean => !rules.some((r) => breaks(on, r, NONE));

const NONE: ReadonlySet<number> = new Set();

/** Whether a state breaks an interlock, whatever becomes of the circuits that are still open, which are off in it. */
export function breaks(on: Uint8Array, r: Rule, open: ReadonlySet<number>): boolean {
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

/** The interlocks that say anything of what is in dispute. */
export function concerning({ disputed, sets, rules }: Pick<Dispute, 'disputed' | 'sets' | 'rules'>): Rule[] {
  const own = new Set(disputed);
  return rules.filter((r) => [...r.of, ...r.when].some((k) => own.has(sets[k]![0]!)));
}
