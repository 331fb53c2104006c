/** What many files cost: on one worker and on two, in time and in memory, over what nobody can do without. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inRoot } from '../build/files.mjs';
import { projectText } from './projects.mjs';

const program = inRoot('dist/ampledger.cjs');

/** Writes the projects; gives the folder of all, and one of a tenth of them. */
export function writeProjects(scratch, count) {
  const [all, tenth] = ['all', 'tenth'].map((name) => join(scratch, name));
  for (const folder of [all, tenth]) mkdirSync(folder);
  for (let seed = 0; seed < count; seed += 1) {
    const name = `${String(seed).padStart(6, '0')}.yaml`;
    for (const folder of seed % 10 === 0 ? [all, tenth] : [all]) writeFileSync(join(folder, name), projectText(seed));
  }
  return { all, tenth };
}

/** Seconds and megabytes of an audit of a folder by the command. */
export function audited(folder, workers) {
  const words = ['--import', inRoot('tools/bench/peak.mjs'), program, 'audit', folder, '--workers', String(workers)];
  const from = performance.now();
  const { status, stderr, output } = spawnSync(process.execPath, words, {
    stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
  });
  if (status !== 0 && status !== 1) throw new Error(`node ${words.join(' ')}\n${stderr}`);
  return { seconds: (performance.now() - from) / 1000, megabytes: Number(output[3]) / 1024 };
}

/** Seconds that reading and schema check alone take for the same files. */
export function floorOf(folder, reading) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [inRoot('tools/bench/floor.mjs'), reading, folder], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(stderr);
  return Number(stdout) / 1000;
}
