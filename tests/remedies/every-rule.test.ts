/**
 * What holds of the cures of every rule, read off the list of rules: one of its cases is cured, or what would cure it is said. Each
 * remedy is written into the text of the case, and the text judged anew.
 */
import { describe, expect, it } from 'vitest';
import { RULE_NAMES } from '../../src/checks/rules.js';
import { whyNoCure } from '../../src/wording/no-cure.js';
import { CASES } from '../checks/cases/all.js';
import { faultsOf, judgedText, remediesOf } from './cured.js';

/** Rules of which no case is cured here, each with its reason in words. */
const UNCURED = new Set([
  'coil-heat',
  'input-levels',
  'measured-disagrees',
  'no-source',
  'regulator-back-fed',
  'regulator-input',
]);
/** They only ever note or ask. */
const MILD = new Set(['pin-clamps', 'pin-drive', 'input-left-open', 'level-over']);

const fired = CASES.filter(({ verdict }) => verdict === 'breach' || verdict === 'strain' || verdict === 'thin');
const rules = RULE_NAMES.filter((rule) => !MILD.has(rule));
const cured = new Map<string, string[]>();

describe.each(rules)('%s', (rule) => {
  const cases = fired.filter((c) => c.rule === rule);

  it.each(cases)('$when: every remedy cures it and spoils nothing', ({ text, rule: of }) => {
    const before = judgedText(text);
    if (typeof before === 'string') throw new Error(before);
    for (const finding of before.findings.filter((f) => f.rule === of).slice(0, 2)) {
      const remedies = remediesOf(text, before)(finding);
      cured.set(of, [...(cured.get(of) ?? []), ...remedies.map((r) => r.title)]);
      expect(
        remedies.flatMap((r) => faultsOf(text, before, finding, r).map((fault) => `${r.title}: ${fault}`)),
      ).toEqual([]);
      for (const { title, steps, changes } of remedies) {
        expect(title).toMatch(/^\p{Lu}/u);
        expect(steps.length).toBeGreaterThan(0);
        expect(changes.length).toBeGreaterThan(0);
        expect(`${title} ${steps.join(' ')}`).not.toMatch(/undefined|NaN|null|\[object|Infinity/);
      }
      if (remedies.length === 0) expect(whyNoCure(finding)).not.toBe('no cure is known for it');
    }
  });

  it('is cured in one of its cases, unless it is known that none is', () => {
    if (cases.length === 0) return expect(UNCURED.has(rule)).toBe(true);
    expect((cured.get(rule) ?? []).length > 0).toBe(!UNCURED.has(rule));
  });
});
