import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findProjects } from '../../src/cli/find-projects.js';

const project = '# a project\nampledger: 1\ntitle: Bench\n';
let root: string;
const inside = (name: string): string => join(root, name);
const write = (name: string, text: string): void => {
  mkdirSync(dirname(inside(name)), { recursive: true });
  writeFileSync(inside(name), text);
};
/** What is found, by names as they are below the root. */
async function found(...names: readonly string[]): Promise<readonly string[] | string> {
  const all = await findProjects(
    names.map((name) => (name.startsWith('!') ? `!${inside(name.slice(1))}` : inside(name))),
  );
  return 'problem' in all ? all.problem.replaceAll(root, '') : all.files.map((file) => file.slice(root.length + 1));
}

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'ampledger-'));
  for (const name of ['b.yaml', 'a/z.yml', 'a/new\nline/\r.yaml', 'a/deep/er/x.yaml', 'B.yaml', 'a/[odd].yaml'])
    write(name, project);
  for (const name of ['node_modules/p/x.yaml', '.git/x.yaml', '.hidden/x.yaml', 'a/node_modules/x.yaml', 'a/x.txt'])
    write(name, project);
  write('a/our-boards/relay.yaml', 'id: our-relay\n');
  write('other/values.yaml', 'version: 2\n');
  write('empty/readme.md', '');
  mkdirSync(inside('a/folder.yaml'));
  symlinkSync(inside('a'), inside('a/deep/loop'));
  symlinkSync(inside('b.yaml'), inside('a/link.yaml'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('what names stand for', () => {
  it('is every project below a folder, by name, and no link, profile or package', async () => {
    expect(await found('')).toEqual(
      ['B.yaml', 'a/[odd].yaml', 'a/deep/er/x.yaml', 'a/new\nline/\r.yaml', 'a/z.yml', 'b.yaml'].sort(),
    );
    expect(await found('.hidden')).toEqual(['.hidden/x.yaml']);
  });

  it('is what a pattern matches and what of it is left out', async () => {
    expect(await found('*.yaml')).toEqual(['B.yaml', 'b.yaml']);
    expect(await found('a/**/*.{yaml,yml}', '!a/deep/**')).toEqual(['a/[odd].yaml', 'a/new\nline/\r.yaml', 'a/z.yml']);
    expect(await found('a', '!a/deep/**')).toEqual(['a/[odd].yaml', 'a/new\nline/\r.yaml', 'a/z.yml']);
    expect(await found('a/**', '!**/x.yaml', '!a/[odd].yaml')).toEqual(['a/new\nline/\r.yaml', 'a/x.txt', 'a/z.yml']);
    expect(await found('a/*.txt')).toEqual(['a/x.txt']);
  });

  it('is each file once, in the order of the names, and one named outright whatever is in it', async () => {
    expect(await found('b.yaml', 'other/values.yaml', '*.yaml', 'b.yaml')).toEqual([
      ...['b.yaml', 'other/values.yaml'],
      ...['B.yaml', 'b.yaml'],
    ]);
    expect(await found('a/[odd].yaml')).toEqual(['a/[odd].yaml']);
    expect(await found('nowhere.yaml', 'b.yaml/x.yaml')).toEqual(['nowhere.yaml', 'b.yaml/x.yaml']);
  });

  it.each([
    [['nowhere/*.yaml'], '/nowhere/*.yaml: no file matches this.'],
    [['empty'], '/empty: there is no YAML file in this folder.'],
    [['other'], '/other: the one file in this folder does not begin with `ampledger:`, as projects do.'],
    [['b.yaml', '{a,other}/our*/*.yaml'], '.yaml: the one file that this matches does not begin'],
    [['**/values.yaml'], '/**/values.yaml: the one file that this matches does not begin'],
    [['!a/**'], 'leaves files out, and nothing says of which.'],
    [['*.yaml', '!*.yaml'], '/*.yaml: no file matches this.'],
  ])('is nothing for %j, which is said', async (names, problem) => {
    expect(await found(...names)).toContain(problem);
  });

  it.each([
    [['b.yaml'], 'one'],
    [['b.yaml', 'B.yaml'], 'several'],
    [Array.from({ length: 8 }, () => 'b.yaml'), 'several'],
    [Array.from({ length: 9 }, () => 'b.yaml'), 'fleet'],
    [['B*.yaml'], 'fleet'],
    [['.hidden'], 'fleet'],
  ])('is told by how many they are and how they were named: %j', async (names, shown) => {
    expect(await findProjects(names.map(inside))).toMatchObject({ shown });
  });

  it.skipIf(process.getuid?.() === 0)('has what may not be read in it: it may be a project', async () => {
    const closed = mkdtempSync(join(tmpdir(), 'ampledger-'));
    for (const name of ['open.yaml', 'closed.yaml']) writeFileSync(join(closed, name), project);
    mkdirSync(join(closed, 'shut'));
    chmodSync(join(closed, 'closed.yaml'), 0);
    chmodSync(join(closed, 'shut'), 0);
    const all = await findProjects([closed]);
    expect(all).toMatchObject({ files: ['closed.yaml', 'open.yaml', 'shut'].map((name) => join(closed, name)) });
    chmodSync(join(closed, 'shut'), 0o700);
    rmSync(closed, { recursive: true });
  });
});
