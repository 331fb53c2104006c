/**
 * All that must hold before a change is handed in, what is quick before what is slow, what needs one core side by side.
 * Stops where something fails.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { inRoot, root } from './build/files.mjs';

const scratch = mkdtempSync(join(tmpdir(), 'ampledger-test-'));
const counts = join(scratch, 'counts.json');
process.on('exit', () => rmSync(scratch, { recursive: true, force: true }));

const stages = [
  [{ name: 'build', run: [process.execPath, 'tools/build.mjs'] }],
  [
    { name: 'lint', run: ['oxlint'] },
    { name: 'format', run: ['prettier', '--check', '--log-level', 'warn', '.'] },
    // By its path: another compiler may own the name `tsc`.
    { name: 'types', run: [process.execPath, 'node_modules/typescript/bin/tsc', '--noEmit', '--project', '.'] },
    { name: 'unused', run: ['knip', '--treat-config-hints-as-errors'] },
  ],
  [
    {
      name: 'tests',
      run: ['vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${counts}`],
      open: true,
    },
  ],
  [{ name: 'pack', run: ['npm', 'pack', '--ignore-scripts', '--silent', '--pack-destination', scratch] }],
  [{ name: 'package', run: ({ pack }) => ['publint', 'run', '--strict', join(scratch, pack.trim())] }],
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
const failed = [];

/** Runs a step to its end, and tells how it went. */
function done({ name, run, open = false }) {
  const from = performance.now();
  const [command, ...words] = typeof run === 'function' ? run(outputs) : run;
  return new Promise((resolve) => {
    // Nothing asks: there may be nobody to answer.
    const child = spawn(command, words, {
      cwd: root,
      env,
      stdio: ['ignore', ...Array(2).fill(open ? 'inherit' : 'pipe')],
    });
    const told = { stdout: '', stderr: '' };
    for (const way of ['stdout', 'stderr']) child[way]?.setEncoding('utf8').on('data', (text) => (told[way] += text));
    // A program that is not there closes, too.
    child.on('error', ({ message }) => (told.stderr += message));
    child.on('close', (status) => {
      outputs[name] = told.stdout;
      if (status !== 0) failed.push(name);
      if (status !== 0 && !open) console.log([told.stdout, told.stderr].filter(Boolean).join('\n'));
      console.log(`${status === 0 ? 'ok    ' : 'FAILED'}  ${name.padEnd(8)}${seconds(from)}`);
      resolve();
    });
  });
}

for (const stage of stages) {
  await Promise.all(stage.map(done));
  if (failed.length > 0) break;
}

console.log(`${failed.length > 0 ? `Stopped at ${failed.join(', ')}` : 'All is well'} after ${seconds(start).trim()}`);
try {
  const { numPassedTests, numFailedTests, numPendingTests } = JSON.parse(readFileSync(counts, 'utf8'));
  console.log(`${numPassedTests} passed, ${numFailedTests} failed, ${numPendingTests} skipped`);
} catch {
  console.log('No test was run.');
}
process.exitCode = failed.length > 0 ? 1 : 0;
