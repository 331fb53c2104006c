/** Small texts judged: the findings of one rule, or all. */
import type { Judgement } from '../../src/checks/judge.js';
import { judge } from '../../src/checks/judge.js';
import type { Finding } from '../../src/checks/finding.js';
import { builtIn, read } from '../../src/index.js';

/** The day of the cases. */
const TODAY = '2026-11-25';

/** Judges a text that has to be in order. @throws with all that is wrong with it */
export function judged(text: string, mode?: string): Judgement {
  const { document, errors } = read(text, 'case.yaml');
  if (document === undefined) throw new Error(errors.map((e) => `${e.line}: ${e.says}`).join('\n'));
  const judgement = judge(document.data, 'case.yaml', {
    catalogue: builtIn,
    today: TODAY,
    ...(mode !== undefined && { mode }),
  });
  if ('problems' in judgement)
    throw new Error(judgement.problems.map((p) => `${p.path.join('.')}: ${p.says}`).join('\n'));
  return judgement;
}

export const findingsOf = (text: string, rule: string): readonly Finding[] =>
  judged(text).findings.filter((f) => f.rule === rule);

/** 'verdict rule about' of every finding worse than a note, sorted. */
export const told = ({ findings }: Judgement): string[] =>
  findings
    .filter((f) => f.verdict !== 'note')
    .map((f) => `${f.verdict} ${f.rule} ${f.about}`)
    .sort();
