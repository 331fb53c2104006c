/** Two versions of a project held against each other, from their texts to the report of the change. */
import { compare, read } from '../../dist/index.js';

/** The text with another title: everything else is found to be the same, which takes as long as if it were not. */
const changed = (text) => text.replace(/^title:.*$/m, 'title: As it is now');

export function run(text) {
  const [before, after] = [text, changed(text)].map((each) => read(each, 'bench.yaml').document);
  const { report, errors } = compare(before, after, { file: 'bench.yaml' });
  if (!report) throw new Error([...errors.before, ...errors.after][0].says);
  return report;
}
