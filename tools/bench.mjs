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
const started = (...words) =>
  timed(() => {
    const { status, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
    if (status === null || status > 1) throw new Error(`node ${words.join(' ')}\n${stderr}`);
  });
/** Milliseconds of the first run in a fresh process, loading included, as that process measures them. */
const first = (module) => () => Number(spawnSync(process.execPath, [once, module, file], { encoding: 'utf8' }).stdout);

function tell(what, mine, theirs, aim) {
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
medians(warm, 20);
const [findings, report, reading] = medians(warm, 100);
tell('text to findings, over reading and schema check alone', findings, reading, 2.5);
tell('  text to report, its cures proved by audits more', report, reading);
const [firstFindings, firstReport, firstReading] = medians(cold, 11);
tell('  the same in a fresh process, loading included', firstFindings, firstReading);
tell('  to the report', firstReport, firstReading);

const words = [
  [program, 'audit', file],
  [program, 'audit', '--format', 'json', file],
  ['-e', '0'],
];
const [terminal, json, bare] = medians(
  words.map((each) => started(...each)),
  15,
);
tell('the command, over a bare start of node', terminal, bare, 2.4);
tell('  the same with a report in JSON', json, bare);
