/** From text to findings: an audit but for its cures, each of which is an audit more. */
import { builtIn } from '../../src/catalogue/built-in.ts';
import { judge } from '../../src/checks/judge.ts';
import { readDocument } from '../../src/source/read.ts';

export function run(text) {
  const { document, errors } = readDocument(text, 'bench.yaml');
  if (!document) throw new Error(errors[0].says);
  const judged = judge(document.data, 'bench.yaml', { catalogue: builtIn });
  if ('problems' in judged) throw new Error(judged.problems[0].says);
  return judged.findings;
}
