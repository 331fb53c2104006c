/** All that must hold before a change is handed in, what is quick before what is slow. Stops at the first that fails. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { inRoot, root } from './build/files.mjs';

const scratch = mkdtempSync(join(tmpdir(), 'ampledger-test-'));
const counts = join(scratch, 'counts.json');
process.on('exit', () => rmSync(scratch, { recursive: true, force: true }));

const steps = [
  { name: 'build', run: [process.execPath, 'tools/build.mjs'] },
  { name: 'lint', run: ['oxlint'] },
  { name: 'format', run: ['prettier', '--check', '--log-level', 'warn', '.'] },
  // By its path: another compiler may own the name `tsc`.
  { name: 'types', run: [process.execPath, 'node_modules/typescript/bin/tsc', '--noEmit', '--project', '.'] },
  { name: 'unused', run: ['knip', '--treat-config-hints-as-errors'] },
  {
    name: 'tests',
    run: ['vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${counts}`],
    open: true,
  },
  { name: 'pack', run: ['npm', 'pack', '--ignore-scripts', '--silent', '--pack-destination', scratch] },
  { name: 'package', run: ({ pack }) => ['publint', 'run', '--strict', join(scratch, pack.trim())] },
];

const env = {
  ...process.env,
  PATH: [inRoot('node_modules/.bin'), process.env.PATH].join(delimiter),
  // Some tools take a log for a terminal where CI is set.
  ...(process.stdout.isTTY ? {} : { NO_COLOR: '1' }),
};
const seconds = (from) => `${((performance.now() - from) / 1000).toFixed(1).padStart(6)} s`;
const start = performance.now();
const outputs = {};
let failed;

for (const { name, run, open = false } of steps) {
  const from = performance.now();
  const [command, ...words] = typeof run === 'function' ? run(outputs) : run;
  // Nothing asks: there may be nobody to answer.
  const stdio = ['ignore', open ? 'inherit' : 'pipe', open ? 'inherit' : 'pipe'];
  const { status, stdout, stderr, error } = spawnSync(command, words, { cwd: root, env, stdio, encoding: 'utf8' });
  outputs[name] = stdout;
  if (status !== 0) failed = name;
  if (failed && !open) console.log([stdout, stderr, error?.message].filter(Boolean).join('\n'));
  console.log(`${failed ? 'FAILED' : 'ok    '}  ${name.padEnd(8)}${seconds(from)}`);
  if (failed) break;
}

console.log(`${failed ? `Stopped at ${failed}` : 'All is well'} after ${seconds(start).trim()}`);
try {
  const { numPassedTests, numFailedTests, numPendingTests } = JSON.parse(readFileSync(counts, 'utf8'));
  console.log(`${numPassedTests} passed, ${numFailedTests} failed, ${numPendingTests} skipped`);
} catch {
  console.log('No test was run.');
}
process.exitCode = failed ? 1 : 0;
