/**
 * What an audit costs, as ratios measured in one run, so that they mean the same on any machine. It informs: exit status 0.
 *
 *   node tools/bench.mjs [FILE] [--files N]
 *
 * Of many files there are 10 000, and as they are audited three times over that takes long; with --files 0 there are none.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { audited, floorOf, writeProjects } from './bench/fleet.mjs';
import { build } from 'esbuild';
import { inRoot, root } from './build/files.mjs';
import { yamlModule } from './build/in-memory.mjs';

const { values, positionals } = parseArgs({ allowPositionals: true, options: { files: { type: 'string' } } });
const many = Number(values.files ?? 10_000);
const file = resolve(positionals[0] ?? inRoot('samples/seedling-house.yaml'));
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

function tell(what, [mine, theirs], aim, { unit = 'ms', least = false } = {}) {
  const ratio = mine / theirs;
  const met = least ? ratio >= aim : ratio <= aim;
  const against = aim === undefined ? '' : `  aim ${least ? '≥ ' : ''}${aim.toFixed(1)}, ${met ? 'met' : 'NOT MET'}`;
  const figures = `${mine.toFixed(1)} / ${theirs.toFixed(1)} ${unit}`;
  console.log(`${what.padEnd(56)}${ratio.toFixed(2).padStart(7)}  (${figures})${against}`);
}

const paths = await Promise.all(['findings', 'report', 'reading', 'comparing'].map(bundled));
const modules = await Promise.all(paths.map((path) => import(pathToFileURL(path).href)));
const warm = modules.map(({ run }) => timed(() => run(text)));
const cold = paths.map(first);

console.log(`${relative(root, file)}, ${(text.length / 1000).toFixed(1)} kB\n`);
const [findings, report, reading, comparing] = warm;
for (const task of warm) medians([task], 100);
tell('text to findings, over reading and schema check alone', medians([findings, reading], 100), 2.5);
tell('  text to report, its cures proved by audits more', medians([report, reading], 100));
const [compared, read] = medians([comparing, reading], 100);
tell('two versions compared, over reading and checking both', [compared, 2 * read]);
const [firstFindings, firstReport, firstReading] = cold;
tell('  to findings in a fresh process, loading included', medians([firstFindings, firstReading], 15));
tell('  to the report in a fresh process', medians([firstReport, firstReading], 15));

const bare = started('-e', '0');
tell('the command, over a bare start of node', medians([started(program, 'audit', file), bare], 15), 2.4);
const json = started(program, 'audit', '--format', 'json', file);
tell('  the same with a report in JSON', medians([json, bare], 15));

if (many >= 10) {
  const { all, tenth } = writeProjects(scratch, many);
  const [, , reading] = paths;
  // In turns, the shorter ones first: what else the machine does falls on all of them.
  const floor = floorOf(all, reading);
  const few = audited(tenth, 2);
  const one = audited(all, 1);
  const two = audited(all, 2);
  const rate = ({ seconds }) => many / seconds;
  const count = `${many} files`;
  console.log(`\n${count}, generated`);
  tell('whole audit on one worker, over reading and schema check', [one.seconds, floor], 2, { unit: 's' });
  tell('files a second, on two workers over one', [rate(two), rate(one)], 1.7, { unit: 'a second', least: true });
  tell(`most memory, ${count} over a tenth of them`, [two.megabytes, few.megabytes], 1.3, { unit: 'MB' });
}
