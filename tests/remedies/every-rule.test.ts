/**
 * What holds of the cures of every rule, over the cases that fire it: each remedy is written into the text of the case and the text
 * judged anew; where there is none, what would cure it is said.
 */
import { describe, expect, it } from 'vitest';
import { whyNoCure } from '../../src/wording/no-cure.js';
import { CASES } from '../checks/cases/all.js';
import { faultsOf, judgedText, remediesOf } from './cured.js';

/** Rules of which at least one case is cured; what no cure of here reaches says what would (`wording/no-cure.ts`). */
const CURED = [
  ...['coil-on-pin', 'coil-no-clamp', 'clamp-reversed', 'driver-inverted', 'clamp-tied-low', 'clamp-on-bridge'],
  ...['nothing-limits', 'leds-share-resistor', 'jumper-joins-supplies', 'supplies-joined', 'ground-missing'],
  ...['pin-used-twice', 'pins-joined', 'channel-used-twice', 'two-outputs', 'input-floats', 'rail-lifted'],
  ...['pin-input-only', 'pin-reserved', 'isolation-defeated', 'pin-injected', 'pin-current', 'level-high', 'level-low'],
  ...['bus-rise', 'bus-current', 'group-current', 'total-current', 'coil-pull-in', 'coil-voltage', 'coil-release'],
  ...['clamp-rating', 'driver-drive', 'driver-release', 'gate-voltage', 'driver-current', 'driver-voltage'],
  ...['driver-heat', 'load-voltage', 'load-needs', 'input-release', 'load-current', 'resistor-power', 'wire-current'],
  ...['series-current', 'fuse-holds', 'regulator-heat', 'regulator-current', 'regulator-dropout', 'regulator-starved'],
  ...['rail-current', 'rail-voltage', 'inlet-current', 'supply-current', 'supply-power', 'supply-capacitance'],
  ...['divider-sags', 'contact-arc', 'contact-leak', 'contact-heat', 'safe-state', 'dead-fed'],
];

const fired = CASES.filter(({ verdict }) => verdict === 'breach' || verdict === 'strain' || verdict === 'thin');
const cured = new Map<string, string[]>();

describe.each([...new Set(fired.map((c) => c.rule))])('%s', (rule) => {
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
});

it('at least these rules are cured', () => {
  expect(CURED.filter((rule) => !(cured.get(rule) ?? []).some((title) => title !== ''))).toEqual([]);
});
