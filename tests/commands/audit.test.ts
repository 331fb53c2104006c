import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Report, UnreadReport } from '../../src/reports/report.js';
import { ampledger, folder, needsBuild, program } from './program.js';

const sound = `ampledger: 1
title: Empty bench
supplies: { brick: { voltage: 5 V, current: 1 A } }
`;
const breach = `ampledger: 1
title: Gate latch
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
  latch: { part: relay-coil-5v-70r, pin: D9 }
`;
const misspelt = `ampledger: 1
title: Gate latch
supplies: { brick: { voltage: 5 V, currant: 1 A } }
`;

let bench: ReturnType<typeof folder>;
const run = (...words: readonly string[]) => ampledger(words, { cwd: bench.path });

beforeAll(() => {
  needsBuild();
  bench = folder({ 'sound.yaml': sound, 'breach.yaml': breach, 'misspelt.yaml': misspelt, 'my gate.yaml': breach });
});
afterAll(() => bench?.remove());

describe('the exit status of an audit', () => {
  it.each([
    [0, ['sound.yaml']],
    [1, ['breach.yaml']],
    [0, ['breach.yaml', '--fail-at', 'never']],
    [2, ['misspelt.yaml']],
    [2, ['misspelt.yaml', '--fail-at', 'never']],
    [1, ['sound.yaml', 'breach.yaml']],
    [2, ['misspelt.yaml', 'breach.yaml', 'sound.yaml']],
    [2, ['nowhere.yaml']],
    [2, ['.']],
    [2, []],
    [2, ['sound.yaml', '--format', 'jsn']],
    [2, ['sound.yaml', '--ambient', 'warm']],
  ])('is %i for %j', (status, words) => {
    expect(run('audit', ...words).status).toBe(status);
    expect(run('audit', '--format', 'json', ...words).status).toBe(status);
  });
});

describe('an audit', () => {
  it('says the verdict first, on standard output, without colour where no terminal is', () => {
    const { out, err } = run('audit', 'breach.yaml');
    expect(out.split('\n')[0]).toMatch(/^Gate latch +breach\.yaml, 10 to 40 °C$/);
    expect(out.split('\n')[2]).toMatch(/^BREACH {2}/);
    expect(out).toContain('coil-on-pin');
    expect(out).not.toContain('\u001B');
    expect(err).toBe('');
  });

  it('keeps to 80 columns', () => {
    const { out } = run('audit', '--all', 'breach.yaml');
    expect(Math.max(...out.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(80);
  });

  it('prints commands that can be copied, whatever the file is called', () => {
    expect(run('audit', 'my gate.yaml').out).toMatch(/ampledger working 'my gate\.yaml' \S+/);
  });

  it('audits every file, whatever becomes of the others, and sums them up', () => {
    const { out, err } = run('audit', 'misspelt.yaml', 'sound.yaml', 'nowhere.yaml', 'breach.yaml');
    expect(out).toMatch(
      /unread +misspelt\.yaml +not audited\nsound +sound\.yaml .*\nunread +nowhere\.yaml .*\nbreach +breach\.yaml/,
    );
    expect(err).toContain('misspelt.yaml');
    expect(err).toContain('nowhere.yaml: there is no such file');
  });

  it('shows an error with its line and a marker under it', () => {
    const { err, out } = run('audit', 'misspelt.yaml');
    expect(out).toBe('');
    expect(err).toContain('misspelt.yaml:3:36');
    const lines = err.split('\n');
    const at = lines.findIndex((line) => line.includes('supplies: { brick'));
    expect(lines[at + 1]?.indexOf('^')).toBe(lines[at]?.indexOf('currant'));
    expect(err).toContain('current');
  });

  it('reads standard input', () => {
    expect(ampledger(['audit', '-', '--format', 'json'], { input: breach })).toMatchObject({ status: 1 });
    const report = JSON.parse(ampledger(['audit', '-', '--format', 'json'], { input: breach }).out) as Report;
    expect(report).toMatchObject({ file: '-', project: 'Gate latch', verdict: 'breach' });
  });

  it('takes the ambient from the command line', () => {
    const report = JSON.parse(
      run('audit', 'breach.yaml', '--format', 'json', '--ambient', '-5 to 60 °C').out,
    ) as Report;
    expect(report.ambient).toEqual({ min: -5, max: 60 });
  });
});

describe('an audit as JSON', () => {
  const schema = JSON.parse(
    readFileSync(new URL('../../schemas/report.schema.json', import.meta.url), 'utf8'),
  ) as object;
  const valid = new Ajv2020({ strict: true }).compile(schema);

  it('follows the schema, audited or not, one file or several', () => {
    for (const words of [
      ['breach.yaml'],
      ['misspelt.yaml'],
      ['sound.yaml', 'nowhere.yaml', 'misspelt.yaml', 'breach.yaml'],
    ]) {
      const { out, err } = run('audit', '--format', 'json', ...words);
      valid(JSON.parse(out));
      expect(valid.errors).toBeNull();
      expect(err).toBe('');
    }
  });

  it('names the place of each error as the file was named', () => {
    const path = join(bench.path, 'misspelt.yaml');
    const unread = JSON.parse(run('audit', '--format', 'json', path).out) as UnreadReport;
    expect(unread).toMatchObject({ file: path, verdict: 'unread', errors: [{ file: path, line: 3, column: 36 }] });
  });

  it.each([
    ['the table library', 'colWidths'],
    ['the colour library', 'bgBlackBright'],
  ])('leaves %s asleep, which only a terminal needs', (_, word) => {
    // What runs is known from the engine's own count of how often each function of the bundle was called.
    expect(ranWhere(word, 'json')).toBe(false);
    expect(ranWhere(word, 'terminal')).toBe(true);
  });
});

/** Whether an audit in this format ran any function of the bundle in which `word` stands. */
function ranWhere(word: string, format: string): boolean {
  interface Coverage {
    readonly result: readonly {
      readonly url: string;
      readonly functions: readonly {
        readonly ranges: readonly {
          readonly startOffset: number;
          readonly endOffset: number;
          readonly count: number;
        }[];
      }[];
    }[];
  }
  const counts = mkdtempSync(join(tmpdir(), 'ampledger-counts-'));
  ampledger(['audit', '-', '--format', format], { input: sound, env: { NODE_V8_COVERAGE: counts } });
  const { result } = JSON.parse(readFileSync(join(counts, readdirSync(counts)[0] ?? ''), 'utf8')) as Coverage;
  rmSync(counts, { recursive: true });
  const ranges = result
    .filter(({ url }) => url === pathToFileURL(program).href)
    .flatMap(({ functions }) => functions.flatMap((each) => each.ranges));
  return [...readFileSync(program, 'utf8').matchAll(new RegExp(word, 'g'))].some(({ index }) => {
    const around = ranges.filter(({ startOffset, endOffset }) => startOffset <= index && index < endOffset);
    const [innermost] = around.sort((a, b) => a.endOffset - a.startOffset - (b.endOffset - b.startOffset));
    return innermost !== undefined && innermost.count > 0;
  });
}

describe('input that is none', () => {
  it.each([
    ['a file that is not there', 'nowhere.yaml', 'there is no such file'],
    ['a path through a file', 'sound.yaml/x.yaml', 'there is no such file'],
  ])('is named in plain words: %s', (_, file, words) => {
    const { err, status } = run('audit', file);
    expect(err).toContain(`${file}: ${words}`);
    expect(err).not.toMatch(/\bat .*:\d+:\d+/);
    expect(status).toBe(2);
  });

  it.skipIf(process.getuid?.() === 0)('is named in plain words: a file that may not be read', () => {
    const closed = folder({ 'closed.yaml': sound });
    chmodSync(join(closed.path, 'closed.yaml'), 0);
    expect(run('audit', join(closed.path, 'closed.yaml')).err).toContain('permissions');
    closed.remove();
  });

  it('is not read to its end when it has none', () => {
    expect(run('audit', '/dev/zero')).toMatchObject({ status: 2 });
    const large = folder({ 'large.yaml': new Uint8Array(1 << 24).fill(0x23) });
    expect(run('audit', join(large.path, 'large.yaml'))).toMatchObject({ status: 2 });
    large.remove();
    expect(ampledger(['audit', '-'], { input: new Uint8Array(1 << 24).fill(0x23) })).toMatchObject({ status: 2 });
  });

  it('cannot act on the terminal by its name', () => {
    mkdirSync(join(bench.path, 'x'), { recursive: true });
    const { err } = run('audit', 'x/\u001B[31mred\u009B0m\n::error::y.yaml');
    expect(err.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
    expect(err).not.toMatch(/^\s*::/m);
  });
});

it('ends quietly when its reader has seen enough', () => {
  const script = `"${process.execPath}" "${program}" audit --all "${join(bench.path, 'breach.yaml')}" | head -n 1`;
  const { stdout, stderr } = spawnSync('sh', ['-c', script], { encoding: 'utf8' });
  expect(stdout).toMatch(/^Gate latch/);
  expect(stderr).toBe('');
  // A reader that reads nothing at all.
  expect(execFileSync('sh', ['-c', `${script.replace('head -n 1', 'true')} 2>&1`], { encoding: 'utf8' })).toBe('');
});

describe('colour', () => {
  /** Runs under a terminal of its own; `script` is part of every Linux. */
  const inTerminal = (env: { readonly [name: string]: string }): string => {
    const line = `"${process.execPath}" "${program}" audit "${join(bench.path, 'breach.yaml')}"`;
    return spawnSync('script', ['-qec', line, '/dev/null'], {
      encoding: 'utf8',
      input: '',
      env: { ...process.env, FORCE_COLOR: undefined, NO_COLOR: undefined, CI: undefined, TERM: 'xterm', ...env },
    }).stdout;
  };
  const hasScript = spawnSync('script', ['--version']).status === 0;

  it.skipIf(!hasScript)('is there in a terminal, and gone with NO_COLOR', () => {
    expect(inTerminal({})).toContain('\u001B[');
    expect(inTerminal({ NO_COLOR: '1' })).not.toContain('\u001B[');
    expect(inTerminal({ NO_COLOR: '1', FORCE_COLOR: '1' })).not.toContain('\u001B[');
  });

  it('is there in a pipe when it is forced, as for a pager that shows it', () => {
    const piped = (env: { readonly [name: string]: string }): string =>
      ampledger(['audit', '-'], { input: sound, env }).out;
    expect(piped({ FORCE_COLOR: '1' })).toContain('\u001B[');
    expect(piped({ FORCE_COLOR: '0' })).not.toContain('\u001B[');
    expect(piped({ FORCE_COLOR: '1', NO_COLOR: '1' })).not.toContain('\u001B[');
  });

  it.skipIf(!hasScript)('is not there in a terminal that knows none', () => {
    expect(inTerminal({ TERM: 'dumb' })).not.toContain('\u001B[');
  });
});
