/** Goes through the findings in their order and remembers where each thing is told first. */
import { type Before, remedyKey } from './before.js';
import { citesOf } from './finding-facts.js';
import { accountKey, type Lookup } from './lookup.js';
import type { Numbered } from './numbered.js';

/** For each finding what has been told before it. Of its remedies the first is told in full, with `all` every one. */
export function toldBefore(findings: readonly Numbered[], lookup: Lookup, all: boolean): (told: Numbered) => Before {
  const firsts = new Map<string, Numbered>();
  const note = (told: Numbered, kind: string, key: string): void => {
    if (!firsts.has(kind + key)) firsts.set(kind + key, told);
  };
  for (const told of findings) {
    const { remedies } = told.finding;
    for (const remedy of remedies) note(told, 'title', remedyKey(remedy));
    for (const remedy of all ? remedies : remedies.slice(0, 1)) note(told, 'remedy', remedyKey(remedy));
    for (const source of citesOf(told.finding, lookup)) note(told, 'source', source);
    if (lookup.account(told.finding)) note(told, 'account', accountKey(told.finding));
  }
  return (told) => {
    const earlier = (kind: string, key: string): string | undefined => {
      const first = firsts.get(kind + key);
      return first && Number(first.number) < Number(told.number) ? first.number : undefined;
    };
    return {
      remedy: (remedy, inFull) => earlier(inFull ? 'remedy' : 'title', remedyKey(remedy)),
      account: (finding) => earlier('account', accountKey(finding)),
      source: (source) => earlier('source', source),
    };
  };
}
