/** A part comes from another machine, and may be anything. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { captured } from '../cli/captured.js';

const project = 'ampledger: 1\ntitle: Bench\nsupplies: { brick: { voltage: 5 V, current: 1 A } }\n';
let root: string;
let file: string;
let good: string;
const lines = (): string[] => good.split('\n');

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'ampledger-'));
  file = join(root, 'run.part');
  for (const name of ['a', 'b', 'c']) writeFileSync(join(root, `${name}.yaml`), project);
  await captured('audit', root, '--output', file);
  good = readFileSync(file, 'utf8');
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

async function merged(text: string | Uint8Array) {
  writeFileSync(file, text);
  return captured('merge', file, '--format', 'markdown');
}
const changed = (at: number, change: (value: Record<string, unknown>) => object): string =>
  lines()
    .map((line, number) => (number === at ? JSON.stringify(change(JSON.parse(line) as Record<string, unknown>)) : line))
    .join('\n');

describe('a part', () => {
  it('is put together when it is whole', async () => {
    expect(await merged(good)).toMatchObject({ status: 0, err: '' });
  });

  it.each([
    ['nothing', () => '', 'this is empty'],
    ['no JSON', () => 'ampledger: 1\n', 'this is no JSON'],
    ['a report', () => '{"ampledger":1,"file":"x"}\n', 'this is no part'],
    ['a report as it is printed', () => '[\n  { "ampledger": 1 }\n]\n', 'this is a finished report'],
    ['no text', () => new Uint8Array([0xff, 0xfe, 0, 10]), 'this is no JSON'],
    ['cut off in a line', () => good.slice(0, -20), 'it breaks off in the middle of a line'],
    ['cut off after a line', () => lines().slice(0, 3).join('\n') + '\n', 'this breaks off after 2 of its 3 files'],
    ['with a line twice', () => [...lines().slice(0, 4), lines()[3], ''].join('\n'), 'more than the 3 files'],
    [
      'in another order',
      () => [0, 2, 1, 3].map((at) => lines()[at]).join('\n') + '\n',
      'this is file 1 of the list, where 0',
    ],
    ['deep', () => `${lines()[0]}\n${'['.repeat(1e6)}\n`, 'line 2'],
    ['of a later version', () => changed(0, (head) => ({ ...head, version: '99.0.0' })), 'written by ampledger 99.0.0'],
    ['part 2 of 1', () => changed(0, (head) => ({ ...head, part: 2 })), 'part 2 of 1'],
    ['of too many files', () => changed(0, (head) => ({ ...head, files: 1e9 })), 'this breaks off after 3'],
    ['with more keys', () => changed(1, (line) => ({ ...line, more: 1 })), 'does not follow part.schema.json'],
    ['with a report that is none', () => changed(2, (line) => ({ ...line, report: { verdict: 'sound' } })), 'line 3'],
    [
      'with accounts that are none',
      () =>
        changed(2, ({ report, ...line }) => ({ ...line, report: { ...(report as object), accounts: [{ id: 'x' }] } })),
      'at /report/accounts/0',
    ],
  ])('that is %s is refused in words, and nothing is printed', async (_, text, words) => {
    const { status, out, err } = await merged(text());
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(words);
    expect(err.length).toBeLessThan(1000);
  });

  it('cannot act on what shows it', async () => {
    const attack = '\u001B[31m<script>\n::error::\u202Ex';
    const text = changed(2, ({ report, ...line }) => ({
      ...line,
      report: { ...(report as object), project: attack, file: attack },
    }));
    const { out, status } = await merged(text);
    expect(status).toBe(0);
    expect(out).toContain('## ␛\\[31m&lt;script&gt; ');
    expect(out).not.toMatch(/\u001B|^::|\u202E/m);
  });
});
