/** docs/rules/ is what the checks, their words and their cases make of it: no page drifts from what the program says. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { ruleParts } from '../../src/reports/rule-page.js';
import { rulePages } from '../../tools/rules/pages.js';

const folder = fileURLToPath(new URL('../../docs/rules/', import.meta.url));
const committed = new Map(readdirSync(folder).map((name) => [name, readFileSync(folder + name, 'utf8')]));

it('the pages of the rules are up to date (node tools/rules.mjs)', () => {
  const pages = rulePages();
  expect([...pages].filter(([name, text]) => committed.get(name) !== text).map(([name]) => name)).toEqual([]);
  expect([...committed.keys()].sort()).toEqual([...pages.keys()].sort());
});

it('links of the index lead to pages', () => {
  const links = [...committed.get('README.md')!.matchAll(/\]\(([^)]+)\)/g)].map(([, to]) => to!);
  expect(links.length).toBeGreaterThan(50);
  expect(links.filter((to) => !committed.has(to))).toEqual([]);
});

it('a page in a terminal keeps its code as it is, and nothing of Markdown besides', () => {
  const text = committed.get('coil-on-pin.md')!;
  const parts = ruleParts(text);
  const code = parts.filter((part) => typeof part === 'string');
  expect(code).toHaveLength(text.split('```').length >> 1);
  for (const each of code) expect(text).toContain(`\n${each}\`\`\``);
  const running = JSON.stringify(parts.filter((part) => typeof part !== 'string'));
  expect(running).toContain('A coil hangs straight on a pin');
  expect(running).not.toMatch(/`|\*\*|\]\(|\|/);
});
