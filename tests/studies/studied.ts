/** Samples judged, with their data, for studies. */
import type { Judgement, JudgeOptions } from '../../src/checks/judge.js';
import { judge } from '../../src/checks/judge.js';
import { builtIn, read } from '../../src/index.js';
import type { Change } from '../../src/remedies/prove.js';
import { withChanges } from '../../src/remedies/change.js';
import { sampleText } from '../samples/audited.js';

export const SETTINGS: JudgeOptions = { catalogue: builtIn };

export function dataOf(text: string): unknown {
  const { document, errors } = read(text, 'case.yaml');
  if (document === undefined) throw new Error(errors.map((e) => `${e.line}: ${e.says}`).join('\n'));
  return document.data;
}

export const sampleData = (name: string): unknown => dataOf(sampleText(name));

/** Judges data with changes. @throws when it cannot be judged */
export function judgedWith(data: unknown, changes: readonly Change[] = []): Judgement {
  const judgement = judge(withChanges(data, changes), 'case.yaml', SETTINGS);
  if ('problems' in judgement)
    throw new Error(judgement.problems.map((p) => `${p.path.join('.')}: ${p.says}`).join('\n'));
  return judgement;
}
