/** What no audit can do without: the YAML library's document, and the compiled schema check of it and of its entries. */
import { LineCounter, parseDocument } from 'yaml';
import { known } from '../../src/source/generated/validators.js';

const { validators } = known();

const entries = {
  supplies: 'entry-supply',
  controllers: 'entry-controller',
  expanders: 'entry-expander',
  arrays: 'entry-array',
  loads: 'entry-load',
};

export function run(text) {
  const data = parseDocument(text, { lineCounter: new LineCounter() }).toJS();
  let valid = validators.frame(data);
  for (const [section, name] of Object.entries(entries)) {
    for (const entry of Object.values(data[section] ?? {})) valid = validators[name](entry) && valid;
  }
  return valid;
}
