/** A whole audit as the library gives it, from text to report, cures proved. */
import { audit, read } from '../../dist/index.js';

export function run(text) {
  const { document, errors } = read(text, 'bench.yaml');
  if (!document) throw new Error(errors[0].says);
  const { report, errors: more } = audit(document);
  if (!report) throw new Error(more[0].says);
  return report;
}
