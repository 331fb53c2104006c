/** The sums behind a name: an account, everything of a circuit, or the findings of a rule. */
import type { Judgement } from '../checks/judge.js';
import type { Account } from '../ledger/account.js';
import type { Step } from '../loads/plan.js';

export interface WorkingFor {
  readonly title: string;
  readonly steps: readonly Step[];
  readonly found: boolean;
  /** Names that would have been found. */
  readonly known: readonly string[];
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
  const exact = accounts.filter((j) => j.account.id === name).map((j) => j.account);
  const of = exact.length > 0 ? exact : aboutCircuit(judgement, name);
  return { title: titleOf(of, name), steps: of.flatMap(named), found: known.includes(name), known };
}

/** Accounts of a circuit or load, and those that a rule found fault with. */
function aboutCircuit({ accounts, findings }: Judgement, name: string): Account[] {
  const ruled = findings.flatMap((f) => (f.rule === name && f.account ? [f.account] : []));
  if (ruled.length > 0) return [...new Set(ruled)];
  return accounts
    .map((j) => j.account)
    .filter(
      (a) =>
        a.id.startsWith(`${name}.`) ||
        (a.kind === 'pin' && a.entries.some((e) => e.circuit === name || e.circuit.startsWith(`${name}.`))),
    );
}

const titleOf = (accounts: readonly Account[], name: string): string =>
  accounts.length === 1 ? accounts[0]!.title : name;

/** Each account's first line says which account it is of, and what is worked out where that is another thing. */
const named = ({ title, steps }: Account): Step[] =>
  steps().map((step, k) => {
    if (k > 0) return step;
    const { says = title } = step;
    return { ...step, says: says === title ? title : `${title}: ${says}` };
  });
