/** Remedies tried from outside: written into the text as a person would, the text read and judged anew. */
import type { Finding } from '../../src/checks/finding.js';
import { findingKey } from '../../src/checks/finding.js';
import type { Judgement } from '../../src/checks/judge.js';
import { judge } from '../../src/checks/judge.js';
import type { Verdict } from '../../src/checks/verdict.js';
import { accountKey, worse } from '../../src/checks/verdict.js';
import { builtIn, read } from '../../src/index.js';
import { curesFor } from '../../src/remedies/cures.js';
import type { Remedy } from '../../src/remedies/prove.js';
import { editedText } from '../../src/source/edit.js';

/** Judges a text. @returns the judgement, or what is wrong with the text */
export function judgedText(text: string): Judgement | string {
  const { document, errors } = read(text, 'case.yaml');
  if (document === undefined || errors.length > 0) return errors.map((e) => `${e.line}: ${e.says}`).join('\n');
  const judgement = judge(document.data, 'case.yaml', { catalogue: builtIn });
  if ('problems' in judgement) return judgement.problems.map((p) => `${p.path.join('.')}: ${p.says}`).join('\n');
  return judgement;
}

/** The remedies of each finding of a judged text. */
export function remediesOf(text: string, judgement: Judgement): (f: Finding) => readonly Remedy[] {
  const { document } = read(text, 'case.yaml');
  return curesFor(document!.data, 'case.yaml', { catalogue: builtIn }, judgement);
}

/** The text with a remedy's changes written in. */
export const remedied = (text: string, { changes }: Remedy): string =>
  editedText(
    text,
    changes.map(({ path, value }) => ({ path: path.split('.'), value: value ?? undefined })),
  );

/** What a remedy does that none may do; empty when it is one. */
export function faultsOf(text: string, before: Judgement, finding: Finding, remedy: Remedy): readonly string[] {
  const after = judgedText(remedied(text, remedy));
  if (typeof after === 'string') return [`cannot be read: ${after}`];
  const was = new Map<string, Verdict>(before.accounts.map((j) => [accountKey(j), j.verdict]));
  const had = new Map<string, Verdict>(before.findings.map((f) => [findingKey(f), f.verdict]));
  return [
    ...(after.verdict === remedy.after.verdict
      ? []
      : [`is ${after.verdict} where ${remedy.after.verdict} was promised`]),
    ...after.findings
      .filter((f) => f.verdict !== 'note' && findingKey(f) === findingKey(finding))
      .map((f) => `leaves ${findingKey(f)}`),
    ...after.accounts
      .filter((j) => worse(j.verdict, was.get(accountKey(j)) ?? j.verdict))
      .map((j) => `makes ${accountKey(j)} ${j.verdict}, which was ${was.get(accountKey(j))}`),
    ...after.findings
      .filter((f) => !had.has(findingKey(f)) && !worse(finding.verdict, f.verdict))
      .map((f) => `brings ${f.verdict} ${findingKey(f)}`),
  ];
}
