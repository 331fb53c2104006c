/** A pull request may hold links and, on a machine that is used twice, pipes: none is followed out, and none waited for. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ampledger, needsBuild, type Run } from '../commands/program.js';

const SECRET = 'token-of-the-machine';
const PROJECT = 'ampledger: 1\ntitle: Bench\nsupplies: { brick: { voltage: 5 V, current: 1 A } }\n';
let root: string;
const inside = (name: string): string => join(root, name);
const run = (...words: readonly string[]): Run => ampledger(words, { cwd: inside('work') });

beforeAll(() => {
  needsBuild();
  root = mkdtempSync(join(tmpdir(), 'ampledger-'));
  mkdirSync(inside('work/.git'), { recursive: true });
  writeFileSync(inside('secret'), SECRET);
  writeFileSync(inside('work/.git/config'), SECRET);
  writeFileSync(inside('work/bench.yaml'), PROJECT);
  symlinkSync('../secret', inside('work/out.yaml'));
  symlinkSync('.git/config', inside('work/hidden.yaml'));
  symlinkSync('bench.yaml', inside('work/in.yaml'));
  symlinkSync('round.yaml', inside('work/round.yaml'));
  symlinkSync('../secret', inside('work/out.md'));
  execFileSync('mkfifo', [inside('work/pipe.yaml')]);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

it.each([
  ['out.yaml', 'leads this out of the folder'],
  ['hidden.yaml', 'leads this to what is hidden'],
  ['round.yaml', 'leads round in a circle'],
  ['pipe.yaml', 'this is a named pipe'],
])('%s is not read', (file, says) => {
  const { status, out, err } = run('compare', 'bench.yaml', file);
  expect([status, err]).toEqual([2, expect.stringContaining(says)]);
  expect(out + err).not.toContain(SECRET);
});

it('what stays inside is read, and what leads out is not written over', () => {
  expect(run('audit', 'in.yaml').status).toBe(0);
  const { status, err } = run('audit', 'bench.yaml', '--output', 'out.md');
  expect([status, err]).toEqual([2, expect.stringContaining('out.md could not be written: a symbolic link leads')]);
  expect(readFileSync(inside('secret'), 'utf8')).toBe(SECRET);
});
