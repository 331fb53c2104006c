/** Findings of the limit rules: one for every account that is worse than sound. */
import type { Account } from '../ledger/account.js';
import type { Ledger } from '../ledger/ledger.js';
import type { Project } from '../project/project.js';
import type { Path } from '../source/place.js';
import type { Finding, Judged, LimitRule } from './finding.js';
import type { JudgedAccount } from './verdict.js';

/** Kinds of account whose id is a circuit's name and a part of it. */
const OF_A_CIRCUIT = new Set(['coil', 'driver', 'clamp', 'series', 'input', 'contact']);

export function limitFindings(judged: Judged, rules: readonly LimitRule[]): Finding[] {
  const promised = judged.accounts.flatMap((j) => (j.verdict === 'sound' ? [] : [finding(judged.ledger, rules, j)]));
  const beyond = judged.runaway.map((j) => ({
    ...finding(judged.ledger, rules, j),
    verdict: runawayVerdict(j),
    runaway: true as const,
  }));
  const noted = judged.noted.map((j) => finding(judged.ledger, rules, j));
  return [...promised, ...beyond, ...noted];
}

/** Wrong only when firmware keeps none of its promises: a strain where an absolute limit or heat is broken, else a note. */
const runawayVerdict = ({ by, account }: JudgedAccount): Finding['verdict'] =>
  by?.limit.grade === 'absolute' || account.quantity === 'temperature' ? 'strain' : 'note';

function finding(ledger: Ledger, rules: readonly LimitRule[], { account, verdict, by }: JudgedAccount): Finding {
  const { project } = ledger;
  const rule = rules.find((r) => r.claims(account));
  if (rule === undefined)
    throw new Error(`no rule claims the account '${account.id}' (${account.kind}, ${account.quantity})`);
  let names: Finding['names'] | undefined;
  return {
    rule: rule.name,
    family: rule.family,
    verdict: verdict as Finding['verdict'],
    about: aboutOf(account),
    path: placeOf(project, account),
    account,
    ...(by && { by }),
    // Cures judge a project again and again: what takes solving is found when it is told.
    get names() {
      return (names ??= rule.names?.(account, ledger) ?? {});
    },
    related: relatedTo(project, account),
  };
}

/** What an account is about: the circuit whose part it is, the only circuit on a pin, else itself. */
export function aboutOf(account: Account): string {
  if (account.reading) return account.reading.of.id;
  if (account.kind === 'pin' && account.entries.length === 1) return account.entries[0]!.circuit;
  if (!OF_A_CIRCUIT.has(account.kind)) return account.id;
  const stage = account.id.search(/\.stage-\d+(\.|$)/);
  if (stage > 0) return account.id.slice(0, stage);
  const dot = account.id.lastIndexOf('.');
  const part = account.id.slice(dot + 1);
  return dot > 0 && /^(?:other-|contact-)*[a-z]+$/.test(part) ? account.id.slice(0, dot) : account.id;
}

/** A pin's finding stands where the load names the pin, others where the account belongs. */
function placeOf(project: Project, account: Account): Path {
  // What is pushed into a pin stands where the file says what pushes it.
  if (account.kind !== 'pin' || account.direction === 'injected') return account.path;
  const use = project.uses.find((u) => u.pin === account.id);
  return use?.path ?? account.path;
}

/** The contributors of a sum, largest first, each at its own place. */
function relatedTo(project: Project, account: Account): Finding['related'] {
  if (account.entries.length < 2) return [];
  const places = new Map<string, Path>();
  for (const entry of account.entries) {
    const circuit = project.circuits.find((c) => c.id === entry.circuit);
    if (circuit && entry.max > 0 && !places.has(circuit.owner)) places.set(circuit.owner, ['loads', circuit.owner]);
  }
  return [...places].slice(0, 8).map(([name, path]) => ({ path, name }));
}
