/** The sums behind a name: an account, everything of a circuit, or the findings of a rule. */
import type { Judgement } from '../checks/judge.js';
import type { JudgedAccount, Verdict } from '../checks/verdict.js';
import type { Step } from '../loads/account-plan.js';
import { figure, limitFigure, percent } from '../wording/phrases.js';

export interface WorkingFor {
  readonly title: string;
  readonly steps: readonly Step[];
  /** The same steps by the account that they belong to. */
  readonly sections: readonly WorkingSection[];
  readonly found: boolean;
  /** Names that would have been found. */
  readonly known: readonly string[];
}

/** The sums behind one account. */
export interface WorkingSection {
  readonly title: string;
  readonly verdict: Verdict;
  /** What they come to: '4.37 V, needs 4.25 V, 2 % in hand'. */
  readonly comes: string;
  readonly steps: readonly Step[];
}

export function workingFor(judgement: Judgement, name: string): WorkingFor {
  const { accounts, findings, project } = judgement;
  const known = [
    ...new Set([
      ...accounts.map((j) => j.account.id),
      ...project.circuits.flatMap((c) => [c.id, c.owner]),
      ...findings.map((f) => f.rule),
    ]),
  ];
  const exact = accounts.filter((j) => j.account.id === name);
  const of = exact.length > 0 ? exact : aboutCircuit(judgement, name);
  const sections = [...of.map(sectionOf), ...(exact.length > 0 ? [] : choiceSections(judgement, name))];
  const [first] = sections;
  const title = sections.length === 1 && first ? first.title : name;
  return { title, steps: sections.flatMap(named), sections, found: known.includes(name), known };
}

/** The sums of findings that are no account's: what a coil takes a day, how long a clamp keeps it. */
const choiceSections = ({ findings }: Judgement, name: string): WorkingSection[] =>
  findings
    .filter((f) => f.steps !== undefined && f.steps.length > 0)
    .filter((f) => f.rule === name || f.about === name || f.about.startsWith(`${name}.`))
    .map((f) => ({
      title: `${f.rule.replaceAll('-', ' ')}, ${f.about}`,
      verdict: f.verdict,
      comes: '',
      steps: [...f.steps!],
    }));

/** Accounts of a circuit or load, and those that a rule found fault with. */
function aboutCircuit({ accounts, findings }: Judgement, name: string): JudgedAccount[] {
  const ruled = new Set(findings.flatMap((f) => (f.rule === name && f.account ? [f.account] : [])));
  if (ruled.size > 0)
    return [...ruled].map((account) => accounts.find((j) => j.account === account) ?? { account, verdict: 'unproven' });
  return accounts.filter(
    ({ account: a }) =>
      a.id.startsWith(`${name}.`) ||
      (a.kind === 'pin' && a.entries.some((e) => e.circuit === name || e.circuit.startsWith(`${name}.`))),
  );
}

function sectionOf(judged: JudgedAccount): WorkingSection {
  const { account, verdict } = judged;
  // What only names the account again says nothing.
  const steps = account
    .steps()
    .map(({ says, ...step }) => (says === account.title ? step : { ...step, ...(says !== undefined && { says }) }));
  return { title: account.title, verdict, comes: comesTo(judged), steps };
}

/** What an account comes to against the limit that decides. */
function comesTo({ account, by }: JudgedAccount): string {
  if (by === undefined) return account.missing ? 'unproven' : '';
  const [draw, limit] = [figure(account, by.draw), limitFigure(account, by.value)];
  const inHand = by.left >= 0 ? `${percent(by.left)} in hand` : 'beyond it';
  return account.direction === 'at-least'
    ? `${draw}, needs ${limit}, ${by.left >= 0 ? inHand : 'too little'}`
    : `${draw} of ${limit}, ${inHand}`;
}

/** Each account's first step says which account it is of, and what is worked out where that is another thing. */
const named = ({ title, steps }: WorkingSection): Step[] =>
  steps.map((step, k) =>
    k > 0 ? step : { ...step, says: step.says === undefined ? title : `${title}: ${step.says}` },
  );
