/**
 * Writes docs/rules/: a page a rule, from the checks, their words and their cases.
 *
 * `node tools/rules.mjs` writes them, `node tools/rules.mjs --check` says whether they are up to date.
 */
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { inRoot, writeIfChanged } from './build/files.mjs';
import { evaluate } from './build/in-memory.mjs';

const folder = 'docs/rules';
const { rulePages } = await evaluate(`export { rulePages } from './tools/rules/pages.js';`, 'node');
const pages = rulePages();
const there = readdirSync(inRoot(folder), { withFileTypes: true }).flatMap((each) =>
  each.isFile() ? [each.name] : [],
);

if (process.argv.includes('--check')) {
  const stale = [...new Set([...there, ...pages.keys()])].filter(
    (name) => !there.includes(name) || readFileSync(inRoot(folder, name), 'utf8') !== pages.get(name),
  );
  if (stale.length > 0) {
    console.error(`docs/rules/ is not up to date (${stale.join(', ')}): node tools/rules.mjs`);
    process.exit(1);
  }
} else {
  for (const name of there) if (!pages.has(name)) rmSync(inRoot(folder, name));
  for (const [name, text] of pages) writeIfChanged(`${folder}/${name}`, text);
}
