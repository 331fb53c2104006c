import { describe, expect, it } from 'vitest';
import { junitReport } from '../../src/reports/junit.js';
import type { Report, UnreadReport } from '../../src/reports/report.js';
import { exitStatus, type FailAt } from '../../src/reports/severity.js';
import { attacks, markupAttacks, poisonedReport } from '../hostile/attacks.js';
import { gardenGate } from './fixtures/garden-gate.js';

const unread: UnreadReport = {
  ampledger: 1,
  file: 'torn.yaml',
  verdict: 'unread',
  errors: [{ file: 'torn.yaml', line: 3, column: 5, says: 'there is no key `currant`' }],
};

/** The elements in order, each tag held to be closed by its own; a reader of XML in little, for what we write. */
function elements(xml: string): readonly { readonly name: string; readonly attributes: string }[] {
  const found: { name: string; attributes: string }[] = [];
  const open: string[] = [];
  const body = xml.replace(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n/, '');
  const tag = /<(\/?)([a-z-]+)((?: [a-z]+="[^"<>]*")*)(\/?)>/g;
  for (const [, end, name = '', attributes = '', empty] of body.matchAll(tag)) {
    if (end) expect(open.pop()).toBe(name);
    else {
      found.push({ name, attributes });
      if (!empty) open.push(name);
    }
  }
  expect(open).toEqual([]);
  const rest = body.replace(tag, '');
  expect(rest).not.toMatch(/[<>]|&(?!(?:amp|lt|gt|quot|apos);)/);
  return found;
}
const names = (xml: string): readonly string[] =>
  elements(xml).flatMap(({ name, attributes }) =>
    name === 'testcase' ? [/ name="([^"]*)"/.exec(attributes)![1]!] : [],
  );
const total = (xml: string, what: string): number =>
  Number(new RegExp(`<testsuites [^>]*${what}="(\\d+)"`).exec(xml)?.[1]);

describe('a report as JUnit XML', () => {
  it('has a suite a file and a case an account, each with a name of its own', () => {
    const xml = junitReport([gardenGate], 'breach');
    expect(new Set(names(xml)).size).toBe(names(xml).length);
    for (const { id } of gardenGate.accounts) expect(xml).toContain(`(${id})`);
    for (const { says } of gardenGate.findings)
      expect(xml).toContain(says.replaceAll('&', '&amp;').replaceAll("'", '&apos;').replaceAll('"', '&quot;'));
    expect(total(xml, 'tests')).toBe(names(xml).length);
  });

  it.each(['breach', 'strain', 'unproven', 'thin', 'note', 'never'] as const)(
    'fails at %s when the command does',
    (failAt: FailAt) => {
      const aside = gardenGate.findings.map((each) => ({
        ...each,
        waiver: { reason: 'agreed', place: { file: 'x', line: 1, column: 1 } },
      }));
      const zero = { breach: 0, strain: 0, unproven: 0, thin: 0, note: 0 };
      const quiet: Report = { ...gardenGate, verdict: 'sound', counts: zero, findings: aside };
      for (const report of [gardenGate, quiet])
        expect(total(junitReport([report], failAt), 'failures') > 0).toBe(exitStatus(report, failAt) === 1);
      expect(total(junitReport([quiet], failAt), 'skipped') > 0).toBe(failAt !== 'never');
    },
  );

  it('keeps the names of accounts whatever their verdicts are', () => {
    const sound: Report = { ...gardenGate, findings: [] };
    const accounts = gardenGate.accounts.length;
    expect(names(junitReport([sound], 'breach'))).toEqual(
      names(junitReport([gardenGate], 'breach')).slice(0, accounts),
    );
  });

  it('has a file that could not be read as an error, in its place', () => {
    const xml = junitReport([unread, gardenGate], 'breach');
    expect(total(xml, 'errors')).toBe(1);
    expect(xml).toContain('<error type="unread" message="there is no key `currant`">torn.yaml:3:5: there is no key');
    expect(xml.indexOf('name="torn.yaml"')).toBeLessThan(xml.indexOf('name="garden-gate.yaml"'));
  });

  it('is the same each time', () => {
    expect(junitReport([gardenGate], 'thin')).toBe(junitReport([structuredClone(gardenGate)], 'thin'));
  });
});

it.each([...attacks, ...markupAttacks])('nothing breaks out of XML: %j', (attack) => {
  const clean = junitReport([poisonedReport(gardenGate, 'a name', ['id']), unread], 'note');
  const xml = junitReport([poisonedReport(gardenGate, attack, ['id']), poisonedUnread(attack)], 'note');
  expect(elements(xml).map(({ name }) => name)).toEqual(elements(clean).map(({ name }) => name));
  expect(xml.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\uFFFE\uFFFF]|\]\]>/u);
  expect(xml).not.toMatch(/^\s*::|##\w*\[/m);
});

const poisonedUnread = (attack: string): UnreadReport => ({
  ...unread,
  file: attack,
  errors: [{ ...unread.errors[0]!, file: attack, says: attack }],
});
