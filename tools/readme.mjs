/**
 * Puts the program's real output into the README, between the marks that name the command:
 *
 *   <!-- output: audit samples/x.yaml --> … <!-- end -->
 *
 * `node tools/readme.mjs` rewrites it, `node tools/readme.mjs --check` says whether it is up to date.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { inRoot } from './build/files.mjs';

const file = inRoot('README.md');
const marked = /<!-- output: (.+?) -->[^]*?<!-- end -->/g;

/** The words of a command, those in quotes without them. */
const wordsOf = (line) => line.split(' ').map((word) => word.replace(/^'(.*)'$/, '$1'));

/** What a command prints, on an 80-column page without colour. */
function output(words) {
  const { stdout, stderr } = spawnSync(process.execPath, [inRoot('dist/ampledger.cjs'), ...wordsOf(words)], {
    cwd: inRoot('.'),
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1', COLUMNS: '80', FORCE_COLOR: undefined },
  });
  return `${stdout}${stderr}`.trimEnd();
}

const now = readFileSync(file, 'utf8');
const next = now.replace(
  marked,
  (_, words) => `<!-- output: ${words} -->\n\n\`\`\`\n$ ampledger ${words}\n${output(words)}\n\`\`\`\n\n<!-- end -->`,
);

if (process.argv.includes('--check')) {
  if (now !== next) {
    console.error('README.md shows other output than the program prints: node tools/readme.mjs');
    process.exit(1);
  }
} else writeFileSync(file, next);
