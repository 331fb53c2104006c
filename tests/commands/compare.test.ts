/** Two revisions of a repository of three projects, one of which gets a fifth relay on a branch. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sampleText } from '../samples/audited.js';
import { ampledger, needsBuild } from './program.js';

const RELAY = (n: number, pin: string): string =>
  `  relay-${n}: { part: own-relay, supply: main.5v, driver: { part: npn-2n2222a, pin: ${pin}, base-resistor: 1 kΩ ±5 %, pull-down: 10 kΩ }, clamp: { part: diode-1n4148 } }\n`;
const four = `# Four relays on a port.
ampledger: 1
title: Four vents
ambient: 20 to 30 °C
catalogue: [./parts]
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
${['D4', 'D5', 'D6', 'D7'].map((pin, i) => RELAY(i + 1, pin)).join('')}`;
const own = (ohms: number): string => `id: own-relay
title: Our relay
kind: load
extends: relay-coil-5v-70r
documents: { sheet: { title: Our relay, publisher: us, year: 2026 } }
resistance: { value: ${ohms} Ω ±10 %, cite: [sheet, p. 1] }
power: null
`;

let root: string;
function git(...words: readonly string[]): void {
  const identity = ['-c', 'user.name=a', '-c', 'user.email=a@example.com', '-c', 'commit.gpgsign=false'];
  const { status, stderr } = spawnSync('git', [...identity, ...words], { cwd: root, encoding: 'utf8' });
  if (status !== 0) throw new Error(`git ${words.join(' ')}: ${stderr}`);
}

beforeAll(() => {
  needsBuild();
  root = mkdtempSync(join(tmpdir(), 'ampledger-'));
  mkdirSync(join(root, 'vents/parts'), { recursive: true });
  writeFileSync(join(root, 'vents/four.yaml'), four);
  writeFileSync(join(root, 'vents/parts/own-relay.yaml'), own(70));
  writeFileSync(join(root, 'gate.yaml'), sampleText('gate-latch-on-pin'));
  writeFileSync(join(root, 'fan.yaml'), sampleText('attic-fan-economiser'));
  writeFileSync(join(root, 'settings.yaml'), 'colour: green\n');
  git('init', '-q', '-b', 'main');
  git('add', '-A');
  git('commit', '-qm', 'four');
  git('checkout', '-qb', 'fifth');
  writeFileSync(join(root, 'vents/four.yaml'), four + RELAY(5, 'D8'));
  git('commit', '-qam', 'five');
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

interface Said {
  readonly change: string;
  readonly fails: boolean;
  readonly unchanged: number;
  readonly files: readonly {
    readonly file: string;
    readonly state: string;
    readonly change: string;
    readonly findings: readonly { readonly change: string; readonly rule: string; readonly after: string }[];
    readonly accounts: readonly { readonly account: string; readonly change: string }[];
    readonly wiring: readonly { readonly section: string; readonly name: string; readonly change: string }[];
  }[];
}
const compare = (...words: readonly string[]) => ampledger(['compare', ...words], { cwd: join(root, 'vents') });
function said(...words: readonly string[]): Said {
  const { out } = compare(...words, '--format', 'json');
  const data: unknown = JSON.parse(out);
  const schemaOf = (name: string): object =>
    JSON.parse(readFileSync(new URL(`../../schemas/${name}.schema.json`, import.meta.url), 'utf8')) as object;
  const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true });
  ajv.addSchema(schemaOf('report'));
  const valid = ajv.compile(schemaOf('compare'));
  valid(data);
  expect(valid.errors).toBe(null);
  return data as Said;
}

describe('compare', () => {
  it('of a branch finds what the fifth relay does to the port, and nothing in old findings', () => {
    const report = said('--from', 'main', '--to', 'fifth');
    expect(report.files.map((f) => f.file)).toEqual(['vents/four.yaml']);
    expect(report.unchanged).toBe(2);
    const [file] = report.files;
    expect(file!.wiring).toMatchObject([
      { section: 'loads', name: 'relay-5', change: 'added' },
      { section: 'pins', name: 'main.D8', change: 'added' },
    ]);
    expect(file!.change).toBe('worse');
    expect(file!.accounts[0]!.change).toBe('worse');
    const run = compare('--from', 'main', '--to', 'fifth');
    expect(run.status).toBe(report.fails ? 1 : 0);
    expect(compare('--from', 'main', '--to', 'fifth', '--fail-at', 'thin').status).toBe(1);
    expect(compare('--from', 'main', '--to', 'fifth', '--fail-at', 'never').status).toBe(0);
    expect(compare('--from', 'fifth', '--to', 'main', '--fail-at', 'note').status).toBe(0);
    expect(compare('--from', 'main', '--to', 'fifth', '--output', 'c.md', '--output', 'c.sarif')).toEqual(run);
    const page = compare('--from', 'main', '--to', 'fifth', '--format', 'markdown');
    expect(readFileSync(join(root, 'vents/c.md'), 'utf8')).toBe(page.out);
    expect(readFileSync(join(root, 'vents/c.sarif'), 'utf8')).toContain('"uri": "vents/four.yaml"');
    for (const name of ['c.md', 'c.sarif']) rmSync(join(root, 'vents', name));
  });

  it('takes the working tree unless told otherwise, with profiles as they are there, and one file when asked', () => {
    writeFileSync(join(root, 'vents/parts/own-relay.yaml'), own(40));
    try {
      const report = said('--from', 'fifth');
      expect(report.files.map((f) => [f.file, f.state])).toEqual([['vents/four.yaml', 'compared']]);
      expect(report).toMatchObject({ change: 'worse', fails: true });
      expect(said('--from', 'fifth', '../gate.yaml')).toMatchObject({ change: 'same', unchanged: 1, files: [] });
    } finally {
      git('checkout', '-q', '.');
    }
  });

  it('tells files that were added, and those that cannot be read', () => {
    writeFileSync(join(root, 'new.yaml'), sampleText('gate-latch-on-pin'));
    writeFileSync(join(root, 'wrong.yaml'), 'ampledger: 1\ntitel: x\n');
    try {
      expect(said('--from', 'fifth', '../new.yaml')).toMatchObject({ fails: true, files: [{ state: 'added' }] });
      const run = compare('--from', 'fifth', '--format', 'markdown');
      expect(run.status).toBe(2);
      expect(run.out).toContain('wrong.yaml');
      expect(run.err).toContain('did you mean `title`?');
    } finally {
      git('clean', '-qfd');
    }
  });

  it('of a file that could not be read before counts all that is in it, and of one that is gone nothing', () => {
    writeFileSync(join(root, 'fan.yaml'), 'ampledger: 1\ntitel: Fan\n');
    git('commit', '-qam', 'broken');
    try {
      expect(compare('--from', 'fifth~', '--to', 'fifth').status).toBe(2);
      const back = said('--from', 'fifth', '--to', 'fifth~');
      expect(back.files).toMatchObject([{ file: 'fan.yaml', state: 'repaired', unread: [{ side: 'before' }] }]);
      rmSync(join(root, 'fan.yaml'));
      expect(said('--from', 'fifth')).toMatchObject({ fails: false, files: [{ file: 'fan.yaml', state: 'removed' }] });
    } finally {
      git('reset', '-q', '--hard', 'HEAD~');
    }
  });

  it('takes a file that was moved, and not much else, for the same one', () => {
    renameSync(join(root, 'gate.yaml'), join(root, 'vents/gate.yaml'));
    try {
      expect(compare('--from', 'fifth').out).toContain('gate.yaml is now vents/gate.yaml.');
      const text = readFileSync(join(root, 'vents/gate.yaml'), 'utf8');
      writeFileSync(join(root, 'vents/gate.yaml'), text.replace(/^title: .*$/m, 'title: Another gate'));
      expect(said('--from', 'fifth').files).toMatchObject([{ was: 'gate.yaml', change: 'changed', state: 'compared' }]);
      writeFileSync(join(root, 'vents/gate.yaml'), text);
      const report = said('--from', 'fifth', '--fail-at', 'note');
      expect(report).toMatchObject({ change: 'same', fails: false, unchanged: 2 });
      expect(report.files).toMatchObject([{ file: 'vents/gate.yaml', was: 'gate.yaml', state: 'compared' }]);
    } finally {
      renameSync(join(root, 'vents/gate.yaml'), join(root, 'gate.yaml'));
    }
  });

  it.each([
    [['--from', 'main', '--output', 'x.xml'], 'it is .txt, .json, .md or .sarif'],
    [['--from', '-x'], 'is no revision'],
    [['--from', '--output=x'], 'is no revision'],
    [['--from', 'nowhere'], 'There is no revision `nowhere`'],
    [['--from', 'main', '../../x.yaml'], 'is not in this repository'],
    [['--from', 'main', 'x.yaml'], 'There is no file x.yaml'],
    [['--from', 'main', '../settings.yaml'], 'this is no project file'],
    [['--from', 'main..fifth'], 'A revision is one branch, tag or commit.'],
    [['--to', 'main'], '--to needs --from'],
    [['four.yaml'], 'NEW is missing'],
    [['--from', 'main', '--mode', 'x'], '--mode goes with two files'],
  ])('%j is refused', (words, says) => {
    const { status, out, err } = compare(...words);
    expect(status).toBe(2);
    expect(out).not.toContain('fifth');
    expect(err).toContain(says);
  });

  it('takes a folder for the projects in it, and a repository without a working tree or without history as it is', () => {
    expect(said('--from', 'main', '--to', 'fifth', '.').files).toMatchObject([{ file: 'vents/four.yaml' }]);
    const clone = (name: string, ...words: readonly string[]): string => {
      git('clone', '-q', ...words, `file://${root}`, join(root, name));
      return join(root, name);
    };
    try {
      const bare = clone('bare', '--bare');
      const words = ['compare', '--from', 'main', '--format', 'json'];
      expect(JSON.parse(ampledger([...words, '--to', 'fifth'], { cwd: bare }).out)).toMatchObject({ unchanged: 2 });
      expect(ampledger(words, { cwd: bare }).err).toContain('no working tree');
      const shallow = clone('shallow', '--depth', '1');
      expect(ampledger(['compare', '--from', 'HEAD~1'], { cwd: shallow }).err).toContain('git fetch --unshallow');
    } finally {
      for (const name of ['bare', 'shallow']) rmSync(join(root, name), { recursive: true, force: true });
    }
  });
});
