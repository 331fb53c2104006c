/** Many files, in real processes: workers, parts, progress, watching. */
import { spawn, spawnSync } from 'node:child_process';
import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Report } from '../../src/reports/report.js';
import { ampledger, folder, needsBuild, program } from './program.js';

const sound = `ampledger: 1
title: Empty bench
supplies: { brick: { voltage: 5 V, current: 1 A } }
`;
const breach = `${sound}controllers: { main: { board: atmega328p-5v-board, powered: { 5v: brick } } }
loads: { latch: { part: relay-coil-5v-70r, pin: D9 } }
`;
const torn = sound.replace('current', 'currant');
/** The first takes longest, so that the others are there before it. */
const names = ['a slow.yaml', ...Array.from({ length: 7 }, (_, at) => `b${at}.yaml`), 'torn.yaml', 'z\n::x.yaml'];

let bench: ReturnType<typeof folder>;
const run = (...words: readonly string[]) => ampledger(words, { cwd: bench.path });
beforeAll(() => {
  needsBuild();
  bench = folder({ 'values.yaml': 'version: 2\n', 'torn.yaml': torn, 'z\n::x.yaml': sound, 'a slow.yaml': breach });
  for (const name of names.slice(1, 8)) writeFileSync(join(bench.path, name), sound);
  mkdirSync(join(bench.path, 'own'));
});
afterAll(() => bench?.remove());

it('are told a line each by workers, those that call for a change, in their order; a log has no progress', () => {
  const { status, out, err } = run('audit', '.', '--workers', '2', '--output', 'all.json');
  expect({ status, err }).toEqual({ status: 2, err: '' });
  expect(out.replace(/−\d+ %/, '−00 %')).toBe(`verdict   in hand  file         title
────────  ───────  ───────────  ────────────────────────────────────────────────
breach      −00 %  a slow.yaml  Empty bench
unread             torn.yaml    3:36 unknown key \`currant\` in supply \`brick\`

BREACH  10 files: 1 breach, 1 unread, 8 sound
The worst of them in full (all of them: --all):
$ ampledger audit 'a slow.yaml'
`);
  const reports = JSON.parse(readFileSync(join(bench.path, 'all.json'), 'utf8')) as Report[];
  expect(reports.map(({ file }) => file)).toEqual(names);
});

it('are the same in parts, put together', () => {
  run('audit', '*.yaml', '--part', '1/2', '--output', '1.part');
  run('audit', '*.yaml', '--part', '2/2', '--output', '2.part');
  const { status } = run('merge', '1.part', '2.part', '--output', 'merged.json');
  expect(status).toBe(2);
  expect(readFileSync(join(bench.path, 'merged.json'))).toEqual(readFileSync(join(bench.path, 'all.json')));
});

it('are each stopped in time, and the others told', () => {
  const { status, out } = run('audit', 'a slow.yaml', 'b1.yaml', '--time-limit', '1 ms', '--format', 'json');
  expect(status).toBe(2);
  const reports = JSON.parse(out) as { verdict: string; errors: { says: string }[] }[];
  expect(reports.map(({ verdict, errors }) => [verdict, errors[0]?.says])).toEqual(
    [1, 2].map(() => ['unread', 'its audit took more than 1 ms and was stopped; --time-limit gives it more']),
  );
});

const hasScript = spawnSync('script', ['--version']).status === 0;
it.skipIf(!hasScript)('have progress on a terminal', () => {
  const line = `"${process.execPath}" "${program}" audit . --workers 1 > /dev/null`;
  const env = { ...process.env, TERM: 'xterm' };
  const { stdout } = spawnSync('script', ['-qec', line, '/dev/null'], { cwd: bench.path, encoding: 'utf8', env });
  expect(stdout).toMatch(/ of 10 files/);
});

it('are watched: what is saved is audited again, until it is enough', async () => {
  const child = spawn(process.execPath, [program, 'audit', 'b0.yaml', 'b1.yaml', '--watch'], { cwd: bench.path });
  let said = '';
  const until = (words: RegExp): Promise<void> =>
    new Promise((done) => {
      const look = (): void => void (words.test(said) && done());
      for (const stream of [child.stdout, child.stderr])
        stream.on('data', (text: string) => {
          said += text;
          look();
        });
      look();
    });
  await until(/Waiting for changes in 2 files \(2 sound\)/);
  said = '';
  // Watching may begin a moment after it is said.
  const saving = setInterval(() => appendFileSync(join(bench.path, 'b1.yaml'), 'note: [\n'), 150);
  await until(/b1\.yaml was not audited[^]*Waiting for changes in 2 files \(1 unread, 1 sound\)/);
  clearInterval(saving);
  expect(said).not.toContain('\u001B');
  const ended = new Promise((done) => child.on('exit', done));
  child.kill('SIGINT');
  expect(await ended).toBe(2);
});
