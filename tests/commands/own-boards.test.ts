/** Folders of own profiles at the command line: seen by every command, read inside the project's root and nowhere else. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ampledger } from './program.js';

const project = (folder = './our-boards', more = ''): string => `ampledger: 1
title: Gate
catalogue: [${folder}]
supplies: { brick: { voltage: 5 V ±4 %, current: 2 A } }
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
  gate: { part: gate-coil, pin: D9 }
  vents: { part: house-board, inputs: { 1: D4 }, supply: main.5v }
variants: { apart: { loads.vents.coil-supply: brick } }
${more}`;
const coil = `id: gate-coil
title: Gate coil
kind: load
extends: relay-coil-5v-70r
documents: { sheet: { title: Gate relay, publisher: us, year: 2026 } }
resistance: { value: 62 Ω ±10 %, cite: [sheet, p. 1] }
power: null
`;
const board = `id: house-board
title: The board of the house
kind: load
extends: relay-board-opto-low-5v-1
input: { series: { value: 820 Ω ±5 %, cite: [practice, read off the board] } }
`;

let root: string;
const write = (files: Readonly<Record<string, string | Uint8Array>>): void => {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  }
};
const run = (...words: readonly string[]) => ampledger(words, { cwd: join(root, 'p') });
/** What is said of the project when its folder is that. */
const refused = (folder: string): string => {
  write({ 'p/gate.yaml': project(folder) });
  const { status, out, err } = run('audit', 'gate.yaml');
  expect({ status, out }).toEqual({ status: 2, out: '' });
  return err;
};

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'ampledger-own-'));
  write({
    'p/gate.yaml': project(),
    'p/our-boards/coils/gate-coil.yaml': coil,
    'p/our-boards/house-board.yaml': board,
  });
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

describe('a folder of own profiles', () => {
  it.each([
    ['audit', 'gate.yaml', '--fail-at', 'never'],
    ['audit', 'gate.yaml', '--variant', 'apart', '--fail-at', 'never'],
    ['working', 'gate.yaml', 'gate.coil'],
    ['options', 'gate.yaml'],
    ['headroom', 'gate.yaml', '--more', 'gate'],
    ['advise', 'gate.yaml'],
  ])('is seen by %s', (...words) => {
    write({ 'p/our-boards/README.md': 'no profile', 'p/our-boards/.hidden.yaml': 'id: [' });
    const { status, out, err } = run(...words);
    expect({ err, status }).toEqual({ err: '', status: 0 });
    expect(out).not.toBe('');
  });

  it('keeps its profiles when advice is written into the file', () => {
    const { status, err } = run('advise', 'gate.yaml', '--into-file');
    expect({ status, err }).toEqual({ status: 0, err: 'gate.yaml is written.\n' });
  });

  it('is looked for beside the file, wherever the command runs, and of standard input where it runs', () => {
    const fromAbove = ampledger(['audit', 'p/gate.yaml', '--fail-at', 'never'], { cwd: root });
    const fromInput = ampledger(['audit', '-', '--fail-at', 'never'], { cwd: join(root, 'p'), input: project() });
    expect([fromAbove.err, fromInput.err]).toEqual(['', '']);
  });

  it('tells what is wrong in its profiles at their own places, in lines and as data', () => {
    write({ 'p/our-boards/coils/gate-coil.yaml': coil.replace('62 Ω', '62 V').concat('oops: 1\n') });
    const { status, err } = run('audit', 'gate.yaml');
    expect(status).toBe(2);
    expect(err).toContain(`our-boards/coils/gate-coil.yaml:6:13  \`62 V\` is a voltage
   6 | resistance: { value: 62 V ±10 %, cite: [sheet, p. 1] }
     |             ^`);
    expect(err).toContain('our-boards/coils/gate-coil.yaml:8:1  unknown key `oops`');
    const { out } = run('audit', 'gate.yaml', '--format', 'json');
    expect((JSON.parse(out) as { errors: { file: string; line: number }[] }).errors).toMatchObject([
      { file: 'our-boards/coils/gate-coil.yaml', line: 6 },
      { file: 'our-boards/coils/gate-coil.yaml', line: 8 },
    ]);
  });
});

describe("a stranger's file reads nothing outside its root:", () => {
  it.each([
    ['/etc', 'no folder inside'],
    ['..', 'leads out of'],
    ['our-boards/../..', 'leads out of'],
    ['./nothing', 'there is no such folder'],
    ['gate.yaml', 'this is a file'],
    ["'our\\boards'", 'backslashes'],
    ["''", 'needs a name'],
  ])('%s', (folder, says) => {
    const err = refused(folder);
    expect(err).toContain('gate.yaml:3:13');
    expect(err).toContain(says);
  });

  it('a folder that is a symbolic link to one outside', () => {
    write({ 'outside/gate-coil.yaml': 'secret: text' });
    symlinkSync(join(root, 'outside'), join(root, 'p/linked'));
    const err = refused('./linked');
    expect(err).toContain('a symbolic link leads this folder out of the project');
    expect(err).not.toContain('secret');
    mkdirSync(join(root, 'p/deep'));
    symlinkSync(join(root), join(root, 'p/deep/up'));
    expect(refused('deep/up/outside')).toContain('a symbolic link leads');
  });

  it('a file or folder in it that is a symbolic link', () => {
    write({ 'outside/other.yaml': 'secret: text' });
    symlinkSync(join(root, 'outside/other.yaml'), join(root, 'p/our-boards/other.yaml'));
    const err = refused('./our-boards');
    expect(err).toContain('our-boards/other.yaml is a symbolic link');
    expect(err).not.toContain('secret');
  });

  it('a pipe, a file too large, and one that is not text', () => {
    execFileSync('mkfifo', [join(root, 'p/our-boards/pipe.yaml')]);
    expect(refused('./our-boards')).toContain('our-boards/pipe.yaml:1:1  this is no plain file');
    write({ 'p/large/huge.yaml': '#'.repeat(200_000), 'p/odd/odd.yaml': new Uint8Array([0xff, 0xfe, 0x41, 0]) });
    expect(refused('./large')).toContain('large/huge.yaml:1:1  this has more than 100 kB');
    expect(refused('./odd')).toContain('odd/odd.yaml:1:1  the file is text in UTF-16');
  });

  it('a folder with more in it than is sensible', () => {
    write(Object.fromEntries(Array.from({ length: 401 }, (_, i) => [`p/many/p${i}.yaml`, 'id: x'])));
    expect(refused('./many')).toContain('more than 400 profiles');
    write(Object.fromEntries(Array.from({ length: 2001 }, (_, i) => [`p/more/p${i}`, ''])));
    expect(refused('./more')).toContain('more than 2000 files');
    write({ 'p/deep/1/2/3/4/5/6/x.yaml': 'id: x' });
    expect(refused('./deep')).toContain('more than 5 deep');
    const filling = `note: ${'x'.repeat(90_000)}\n`;
    write(Object.fromEntries(Array.from({ length: 23 }, (_, i) => [`p/big/p${i}.yaml`, filling])));
    expect(refused('./big')).toContain('more than 2 MB of profiles');
  });
});

describe('catalogue prove', () => {
  const own = 'our-boards/coils/gate-coil.yaml';

  it('says of a profile that holds what it is and where its figures come from', () => {
    const { status, out, err } = run('catalogue', 'prove', own);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^Gate coil +our-boards\/coils\/gate-coil\.yaml$/m);
    expect(out).toMatch(/^coil gate-coil: 5 V, 62 Ω ±10 %$/m);
    expect(out).toMatch(/^\d+ figures: \d+ from documents, \d+ common practice/m);
    expect(out).toMatch(/^PROVED/m);
  });

  it('takes several files, and folders for all in them, which may extend one another', () => {
    write({
      'p/our-boards/third.yaml':
        'id: third\ntitle: Third\nkind: load\nextends: gate-coil\nvoltage: { value: 6 V, cite: [practice, ours] }\n',
    });
    expect(run('catalogue', 'prove', 'our-boards').out).toContain('All 3 stand');
    expect(run('catalogue', 'prove', own, 'our-boards/third.yaml').status).toBe(0);
    expect(run('catalogue', 'prove', 'our-boards/third.yaml').err).toContain('there is no profile `gate-coil`');
  });

  it('says all that is wrong at once, with its place, and exits with 2', () => {
    write({
      'p/bad.yaml': coil
        .replace('gate-coil', 'bad')
        .replace(', year: 2026', '')
        .replace('power: null', 'power: { value: 1 W, cite: [practice, x] }'),
    });
    const { status, out, err } = run('catalogue', 'prove', 'bad.yaml');
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('bad.yaml:5:14');
    expect(err).toContain('bad.yaml:7:8  5 V across 62 Ω ±10 % is 403 mW, not 1 W');
    expect(err).toContain('2 errors: bad.yaml is not proved.');
    expect(run('catalogue', 'prove', 'nothing.yaml')).toMatchObject({ status: 2 });
    mkdirSync(join(root, 'p/empty'));
    expect(run('catalogue', 'prove', 'empty').err).toContain('no profile in empty');
    expect(run('catalogue', 'prove').err).toContain('FILE is missing');
  });

  it('finds a profile of a thing that the catalogue has', () => {
    write({ 'p/twin.yaml': 'id: twin\ntitle: Twin\nkind: load\nextends: relay-coil-5v-70r\n' });
    expect(run('catalogue', 'prove', 'twin.yaml').err).toContain('`relay-coil-5v-70r` states the same figures');
  });
});
