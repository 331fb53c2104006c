/** What a stranger gets: the package as it would be published, installed into a project with nothing else in it. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { needsBuild } from './program.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const description = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  readonly version: string;
  readonly dependencies?: object;
};

let project: string;
let packed: readonly string[];
const installed = (path: string): string => join(project, 'node_modules/ampledger', path);

/** Runs a command in the project. Asking is all: nothing may come from a registry. */
function run(name: string, ...words: readonly string[]): { readonly status: number | null; readonly out: string } {
  const { status, stdout, stderr } = spawnSync(name, words, { cwd: project, encoding: 'utf8', env: offline });
  return { status, out: stdout + stderr };
}
const offline = { ...process.env, npm_config_offline: 'true', npm_config_update_notifier: 'false' };

beforeAll(() => {
  needsBuild();
  project = mkdtempSync(join(tmpdir(), 'ampledger-package-'));
  const words = ['pack', '--json', '--ignore-scripts', '--pack-destination', project];
  const [pack] = JSON.parse(execFileSync('npm', words, { cwd: root, encoding: 'utf8', env: offline })) as {
    readonly filename: string;
    readonly files: readonly { readonly path: string }[];
  }[];
  packed = (pack?.files ?? []).map(({ path }) => path);
  writeFileSync(join(project, 'package.json'), '{ "private": true }');
  execFileSync('npm', ['install', '--no-audit', '--no-fund', `./${pack?.filename}`], { cwd: project, env: offline });
});
afterAll(() => rmSync(project, { recursive: true, force: true }));

describe('the package', () => {
  it('brings no other package with it', () => {
    expect(description.dependencies).toBeUndefined();
    expect(readdirSync(join(project, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual(['ampledger']);
  });

  it('holds what people use, and nothing of how it is made', () => {
    for (const path of [
      'dist/profile-validators.cjs',
      'LICENSE',
      'docs/rules/coil-on-pin.md',
      'README.md',
      'schemas/project.schema.json',
      'dist/third-party-licences.txt',
    ])
      expect(packed).toContain(path);
    const known =
      /^(package\.json|LICENSE|README\.md|dist\/|docs\/rules\/[a-zA-Z-]+\.md$|schemas\/[a-z-]+\.schema\.json$|samples\/)/;
    expect(packed.filter((path) => !known.test(path) || path.includes('/.'))).toEqual([]);
  });

  it('names the licence of everything that is bundled in it', () => {
    const licences = readFileSync(installed('dist/third-party-licences.txt'), 'utf8');
    for (const name of [
      'yaml',
      'chalk',
      'cli-table3',
      'cli-progress',
      'tinyglobby',
      'fdir',
      'picomatch',
      'workerpool',
      'chokidar',
    ])
      expect(licences).toMatch(new RegExp(`^${name} \\d`, 'm'));
    expect(licences).not.toContain('No licence file');
  });
});

describe('the installed command', () => {
  it('says its version', () => {
    expect(run('npx', 'ampledger', '--version')).toEqual({ status: 0, out: `${description.version}\n` });
  });

  it('audits a sample that came with it', () => {
    const [sample] = readdirSync(installed('samples')).filter((name) => name.endsWith('.yaml'));
    const { status, out } = run('npx', 'ampledger', 'audit', '--fail-at', 'never', installed(`samples/${sample}`));
    expect(out).toMatch(/^(BREACH|STRAIN|UNPROVEN|THIN|SOUND)\b/m);
    expect(status).toBe(0);
  });
});

describe('the installed library', () => {
  const script = `
import { audit, read } from 'ampledger';
const text = \`ampledger: 1
title: Gate latch
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
  latch: { part: relay-coil-5v-70r, pin: D9 }
\`;
const { document, errors } = read(text, 'gate.yaml');
if (!document) throw new Error(errors.map(({ says }) => says).join());
const { report } = audit(document);
`;

  it('audits a text, asked for by its name', () => {
    writeFileSync(join(project, 'use.mjs'), `${script}console.log(report?.verdict);`);
    expect(run(process.execPath, 'use.mjs')).toEqual({ status: 0, out: 'breach\n' });
  });

  it('has declarations that stand alone, without the types of Node or of any other package', () => {
    writeFileSync(
      join(project, 'use.mts'),
      `${script}const verdict: string | undefined = report?.verdict; export { verdict };`,
    );
    const settings = ['--noEmit', '--strict', '--module', 'nodenext', '--target', 'es2023', '--lib', 'es2023'];
    const tsc = join(root, 'node_modules/typescript/bin/tsc');
    expect(run(process.execPath, tsc, ...settings, 'use.mts')).toEqual({ status: 0, out: '' });
  });

  it('gives its schemas to whoever asks for them', () => {
    writeFileSync(
      join(project, 'schema.mjs'),
      `console.log(import.meta.resolve('ampledger/schemas/project.schema.json'));`,
    );
    expect(run(process.execPath, 'schema.mjs').out).toMatch(/schemas\/project\.schema\.json\n$/);
  });
});
