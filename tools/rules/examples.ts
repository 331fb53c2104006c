/**
 * The two examples of each rule, out of the cases that hold it: one that fires it, and one as near to that as there is that does
 * not. The cases are judged by `tests/checks/parity.test.ts`, so that what a page shows is what is tested.
 */
import { FAMILY_OF, RULE_NAMES } from '../../src/checks/rules.js';
import { CASES } from '../../tests/checks/cases/all.js';
import type { Case } from '../../tests/checks/cases/case.js';

export interface Example {
  readonly rule: string;
  readonly family: string;
  /** Fires the rule. */
  readonly fires: Case;
  /** Differs from it in as little as any case that does not. */
  readonly silent: Case;
  /** All cases of the rule, those that fire first. */
  readonly cases: readonly Case[];
}

/** One a rule, in the order of the rules. */
export const examples = (): readonly Example[] => RULE_NAMES.map(exampleOf);

function exampleOf(rule: string): Example {
  const cases = CASES.filter((each) => each.rule === rule);
  const firing = cases.filter(({ verdict }) => verdict !== 'silent');
  const silent = cases.filter(({ verdict }) => verdict === 'silent');
  const pairs = shown(firing).flatMap((fires) => shown(silent).map((quiet) => ({ fires, silent: quiet })));
  const [nearest] = [...pairs].sort((a, b) => apart(a.fires.text, a.silent.text) - apart(b.fires.text, b.silent.text));
  if (nearest === undefined) throw new Error(`${rule} has no case that fires it, or none that does not`);
  return { rule, family: FAMILY_OF.get(rule)!, ...nearest, cases: [...firing, ...silent] };
}

/** Those that are marked as the ones to show, or all. */
function shown(cases: readonly Case[]): readonly Case[] {
  const marked = cases.filter((each) => each.shown);
  return marked.length > 0 ? marked : cases;
}

/** Characters between the first and the last in which two texts differ. */
function apart(a: string, b: string): number {
  const most = Math.min(a.length, b.length);
  let from = 0;
  while (from < most && a[from] === b[from]) from++;
  let to = 0;
  while (to < most - from && a[a.length - 1 - to] === b[b.length - 1 - to]) to++;
  return Math.max(a.length, b.length) - from - to;
}
