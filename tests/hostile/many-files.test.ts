/** Several hostile projects in files of hostile names: told in lines, in parts and merged, all as the command writes it. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { sarifFaults } from '../reports/sarif-schema.js';
import { ampledger } from '../commands/program.js';
import { expectMarkdown, expectPage, expectQuiet, expectXml } from './harmless.js';
import { evilCoil, hostile } from './project.js';

const NAMES = ['::error::`a` | b <b> @all #1.yaml', '##[error]c & "d" \u202Ee\u001B[31m.yaml', '\n::warning::f.yaml'];

it('the audit of many files, its parts and their merging are harmless', () => {
  const root = mkdtempSync(join(tmpdir(), 'ampledger-hostile-'));
  try {
    mkdirSync(join(root, 'ours'));
    writeFileSync(join(root, 'ours/evil-coil.yaml'), evilCoil);
    for (const name of NAMES) writeFileSync(join(root, name), hostile(['latch']));
    writeFileSync(join(root, NAMES[2]!), 'ampledger: 1\ntitle: x\n"::error::g": 1\n');
    const kinds = ['part', 'md', 'xml', 'sarif', 'json'];
    const run = ampledger(['audit', '.', ...kinds.flatMap((kind) => ['--output', `all.${kind}`])], { cwd: root });
    expect(run.status).toBe(2);
    expectPage(run.out);
    expectQuiet(run.err);
    const text = (kind: string): string => readFileSync(join(root, `all.${kind}`), 'utf8');
    expectQuiet(text('part'));
    expectQuiet(text('json'));
    expect((JSON.parse(text('json')) as { file: string }[]).map(({ file }) => file).sort()).toEqual([...NAMES].sort());
    expectMarkdown(text('md'));
    expectXml(text('xml'));
    expectQuiet(text('sarif'));
    expect(sarifFaults(JSON.parse(text('sarif')))).toBeNull();
    const merged = ampledger(['merge', 'all.part', '--all'], { cwd: root });
    expectPage(merged.out);
    expectQuiet(merged.err);
    expect(merged.status).toBe(2);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
});
