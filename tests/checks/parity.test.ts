/**
 * What holds for every rule, read off the list of rules itself: it has a sentence, a case that fires it, and a case just
 * inside the limit (of a wiring rule: the nearest right wiring) that does not. A rule without them fails here.
 */
import { describe, expect, it } from 'vitest';
import { RULE_NAMES } from '../../src/checks/rules.js';
import { GROUNDS } from '../../src/wording/rule-help/grounds.js';
import { RULE_HELP } from '../../src/wording/rule-help/rule-help.js';
import { SENTENCES, asks, says } from '../../src/wording/sentences.js';
import { CASES } from './cases/all.js';
import { findingsOf } from './judged.js';

describe('rules', () => {
  it('have names of their own, each once', () => {
    expect(new Set(RULE_NAMES).size).toBe(RULE_NAMES.length);
  });

  it('have a sentence each, and no sentence is without a rule', () => {
    expect(Object.keys(SENTENCES).sort()).toEqual([...RULE_NAMES].sort());
  });

  it('have help each, in whole sentences, and no help is without a rule', () => {
    expect(Object.keys(RULE_HELP).sort()).toEqual([...RULE_NAMES].sort());
    for (const { title, means, todo } of Object.values(RULE_HELP)) {
      expect(title).toMatch(/^\p{Lu}[^.]*[^. ]$/u);
      for (const text of [means, todo]) expect(text).toMatch(/^\p{Lu}[^.]*\.$/u);
    }
    expect(new Set(Object.values(RULE_HELP).map(({ title }) => title)).size).toBe(RULE_NAMES.length);
  });

  it('have something that they rest on each', () => {
    expect(Object.keys(GROUNDS).sort()).toEqual([...RULE_NAMES].sort());
    for (const text of Object.values(GROUNDS)) expect(text).toMatch(/^\S.*\.$/);
  });

  it('have cases each, and no case is without a rule', () => {
    const [fires, keepsSilent] = [true, false].map((f) =>
      [...new Set(CASES.filter((c) => (c.verdict !== 'silent') === f).map((c) => c.rule))].sort(),
    );
    expect(fires).toEqual([...RULE_NAMES].sort());
    expect(keepsSilent).toEqual([...RULE_NAMES].sort());
  });
});

describe.each([...new Set(CASES.map((c) => c.rule))])('%s', (rule) => {
  const cases = CASES.filter((c) => c.rule === rule);

  it.each(cases.filter((c) => c.verdict !== 'silent'))('$when ($verdict)', ({ text, verdict }) => {
    const findings = findingsOf(text, rule);
    expect([...new Set(findings.map((f) => f.verdict))]).toEqual([verdict]);
    for (const f of findings) {
      const sentence = says(f);
      expect(sentence).toMatch(/^\p{Lu}.*[.?]$/u);
      expect(sentence).not.toMatch(/undefined|NaN|null|\[object|Infinity/);
      // What is missing is asked for, with the words of the file that would state it.
      expect(asks(f) === undefined).toBe(verdict !== 'unproven');
    }
  });

  it.each(cases.filter((c) => c.verdict === 'silent'))('$when', ({ text }) => {
    expect(findingsOf(text, rule).map((f) => `${f.verdict}: ${says(f)}`)).toEqual([]);
  });
});
