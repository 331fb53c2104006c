/**
 * What an audit costs, as ratios measured in one run, so that they mean the same on any machine. It informs: exit status 0.
 *
 *   node tools/bench.mjs [FILE]
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { inRoot, root } from './build/files.mjs';
import { yamlModule } from './build/in-memory.mjs';

const file = resolve(process.argv[2] ?? inRoot('samples/seedling-house.yaml'));
const text = readFileSync(file, 'utf8');
const once = inRoot('tools/bench/once.mjs');
const program = inRoot('dist/ampledger.cjs');

const scratch = mkdtempSync(join(tmpdir(), 'ampledger-bench-'));
process.on('exit', () => rmSync(scratch, { recursive: true, force: true }));

/** All sides are bundled alike. */
async function bundled(name) {
  const outfile = join(scratch, `${name}.mjs`);
  const entryPoints = [inRoot(`tools/bench/${name}.mjs`)];
  await build({ entryPoints, outfile, bundle: true, minify: true, format: 'esm', target: 'node20', alias: yamlModule });
  return outfile;
}

const medianOf = (numbers) => numbers.toSorted((a, b) => a - b)[numbers.length >> 1];

/** Rounds go on until there are enough of them, or this many milliseconds are over and five rounds made. */
const patience = 10_000;

/** Medians of tasks that take turns, so that whatever else the machine does falls on all alike. */
function medians(tasks, enough) {
  const times = tasks.map(() => []);
  const end = performance.now() + patience;
  for (let round = 0; round < enough && (round < 5 || performance.now() < end); round += 1) {
    tasks.forEach((task, at) => times[at].push(task()));
  }
  return times.map(medianOf);
}

const timed = (run) => () => {
  const from = performance.now();
  run();
  return performance.now() - from;
};
/** What a fresh process prints. Status 1 with an answer is one: something was found. */
function output(...words) {
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
  if (status !== 0 && (status !== 1 || stdout === '')) throw new Error(`node ${words.join(' ')}\n${stderr}`);
  return stdout;
}
const started = (...words) => timed(() => output(...words));
/** Milliseconds of the first run in a fresh process, loading included, as that process measures them. */
const first = (module) => () => Number(output(once, module, file));

function tell(what, [mine, theirs], aim) {
  const ratio = mine / theirs;
  const against = aim === undefined ? '' : `  aim ${aim.toFixed(1)}, ${ratio <= aim ? 'met' : 'NOT MET'}`;
  const times = `${mine.toFixed(1)} / ${theirs.toFixed(1)} ms`;
  console.log(`${what.padEnd(56)}${ratio.toFixed(2).padStart(7)}  (${times})${against}`);
}

const paths = await Promise.all(['findings', 'report', 'reading'].map(bundled));
const modules = await Promise.all(paths.map((path) => import(pathToFileURL(path).href)));
const warm = modules.map(({ run }) => timed(() => run(text)));
const cold = paths.map(first);

console.log(`${relative(root, file)}, ${(text.length / 1000).toFixed(1)} kB\n`);
const [findings, report, reading] = warm;
for (const task of warm) medians([task], 100);
tell('text to findings, over reading and schema check alone', medians([findings, reading], 100), 2.5);
tell('  text to report, its cures proved by audits more', medians([report, reading], 100));
const [firstFindings, firstReport, firstReading] = cold;
tell('  to findings in a fresh process, loading included', medians([firstFindings, firstReading], 15));
tell('  to the report in a fresh process', medians([firstReport, firstReading], 15));

const bare = started('-e', '0');
tell('the command, over a bare start of node', medians([started(program, 'audit', file), bare], 15), 2.4);
const json = started(program, 'audit', '--format', 'json', file);
tell('  the same with a report in JSON', medians([json, bare], 15));
