import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readOutputs } from '../../src/cli/outputs.js';
import { writeWhole } from '../../src/cli/write-whole.js';

let folder: string;
const inside = (name: string): string => join(folder, name);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ampledger-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('files to write into', () => {
  it('have their formats by their endings', () => {
    expect(readOutputs(['a.SARIF', 'b.sarif.json', 'c.json', 'd.txt'], ['shed.yaml', '-'])).toEqual({
      outputs: [
        { file: 'a.SARIF', format: 'sarif' },
        { file: 'b.sarif.json', format: 'sarif' },
        { file: 'c.json', format: 'json' },
        { file: 'd.txt', format: 'terminal' },
      ],
    });
  });

  it.each([
    [['report'], /^--output report: its ending says no format; it is \.txt, .* or /],
    [['a.json', './a.json'], /^--output \.\/a\.json: this file is written already/],
  ])('%j are refused', (files, problem) => {
    expect(readOutputs(files, ['shed.yaml'])).toMatchObject({ problem: expect.stringMatching(problem) as string });
  });

  it('are never what is audited, whatever its name is', () => {
    writeFileSync(inside('shed.json'), '');
    symlinkSync(inside('shed.json'), inside('link.json'));
    expect(readOutputs([inside('link.json')], [inside('shed.json')])).toMatchObject({
      problem: expect.stringContaining('this file is audited') as string,
    });
  });
});

describe('a file written whole', () => {
  it('may be new or there already, and nothing is left beside it', async () => {
    for (const text of ['one', 'two']) {
      expect(await writeWhole(inside('new.md'), text)).toBeUndefined();
      expect(readFileSync(inside('new.md'), 'utf8')).toBe(text);
    }
    expect(statSync(inside('new.md')).mode & 0o100).toBe(0);
    expect(readdirSync(folder).filter((name) => name.startsWith('new.md'))).toEqual(['new.md']);
  });

  it('is no device and in no folder that is not there', async () => {
    symlinkSync('/dev/null', inside('nowhere.md'));
    expect(await writeWhole(inside('nowhere.md'), 'x')).toMatch(/it is no plain file\.$/);
    expect(await writeWhole(inside('no/where.md'), 'x')).toMatch(/could not be written: no such file or directory\.$/);
  });
});
