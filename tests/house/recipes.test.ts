/** Recipes for build servers: the YAML parses, the shell does, and the command knows every word of what they run. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readArguments } from '../../src/cli/arguments.js';
import { commands } from '../../src/cli/commands.js';
import { sarifReport } from '../../src/reports/sarif.js';
import { gardenGate } from '../reports/fixtures/garden-gate.js';

interface Block {
  readonly language: string;
  readonly text: string;
}

const blocksOf = (file: string): readonly Block[] => {
  const text = readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
  return [...text.matchAll(/^```(\w*)\n([^]*?)^```$/gm)].map(([, language = '', block = '']) => ({
    language,
    text: block,
  }));
};
const PAGES = ['README.md', 'docs/ci.md'] as const;
const all = PAGES.flatMap(blocksOf);
const yaml = all.filter(({ language }) => language === 'yaml').map(({ text }) => (parse(text) ?? {}) as object);

/** Keys under which the recipes have shell. */
const SHELL = new Set(['run', 'script', 'entry', 'before_script']);

/** Every piece of shell in a recipe. */
function scripts(value: unknown, key = ''): readonly string[] {
  // Whoever runs an entry puts the names of files behind it.
  if (typeof value === 'string') return SHELL.has(key) ? [key === 'entry' ? `${value} projects/shed.yaml` : value] : [];
  if (Array.isArray(value)) return value.flatMap((each) => scripts(each, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => scripts(each, name));
}
const shell = [
  ...all.filter(({ language }) => language === 'sh').map(({ text }) => text),
  ...yaml.flatMap((each) => scripts(each)),
];

/** The words of each command line that runs ampledger, up to where its output goes. */
const runs = (text: string): readonly (readonly string[])[] =>
  text
    .split('\n')
    .flatMap((line) =>
      [...line.matchAll(/(?:^|\s)ampledger ((?:'[^']*'|"[^"]*"|[^'"|&>#])*)/g)].map(([, words = '']) =>
        [...words.matchAll(/(?:'[^']*'|"[^"]*"|[^\s'"])+/g)].map(([word]) =>
          word.replace(/^'([^']*)'$|^"([^"]*)"$/g, '$1$2'),
        ),
      ),
    );

describe('recipes', () => {
  it('are there, each with what it is for', () => {
    const text = shell.join('\n');
    for (const part of ['audit', '--part', 'merge', 'compare --from', '--output comment.md', '.sarif', '.xml'])
      expect(text).toContain(part);
    expect(yaml.length).toBeGreaterThanOrEqual(4);
  });

  it('run commands that there are, with options that they have', () => {
    // Plain blocks show commands, too, behind a dollar or bare.
    const found = [...shell, ...all.filter(({ language }) => language === '').map(({ text }) => text)].flatMap(runs);
    expect(found.length).toBeGreaterThan(12);
    for (const [name = '', ...words] of found) {
      expect(Object.keys(commands)).toContain(name);
      expect({ words, said: readArguments(words, commands[name]!) }).not.toHaveProperty('said.problem');
    }
  });

  it('are shell that parses', () => {
    // Expressions of a build server are put in before the shell sees them.
    const texts = shell.map((text) => text.replace(/\$\{\{.*?\}\}/g, '1'));
    const { status, stderr } = spawnSync('sh', ['-n'], { input: texts.join('\n'), encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  it('give no expression of theirs to a shell', () => {
    for (const text of shell) expect(text).not.toContain('${{');
  });

  it('make of SARIF what a merge request shows beside its lines', () => {
    const quality = (yaml as { gate?: { variables?: { QUALITY?: string } } }[]).find(({ gate }) => gate?.variables)!
      .gate!.variables!.QUALITY!;
    const other = JSON.parse(
      JSON.stringify(gardenGate).replaceAll(gardenGate.file, 'other gate.yaml'),
    ) as typeof gardenGate;
    const bench = mkdtempSync(join(tmpdir(), 'ampledger-recipe-'));
    try {
      const file = join(bench, 'gate.sarif');
      writeFileSync(file, sarifReport([gardenGate, other], '1'));
      const { stdout, stderr } = spawnSync(process.execPath, ['-e', quality, file], { encoding: 'utf8' });
      expect(stderr).toBe('');
      const issues = JSON.parse(stdout) as {
        fingerprint: string;
        severity: string;
        location: { path: string; lines: { begin: number } };
      }[];
      expect(issues).toHaveLength(2 * gardenGate.findings.filter(({ waiver }) => waiver === undefined).length);
      expect(new Set(issues.map(({ fingerprint }) => fingerprint)).size).toBe(issues.length);
      expect(issues[0]).toMatchObject({
        check_name: gardenGate.findings[0]!.rule,
        severity: { breach: 'major', strain: 'major', unproven: 'minor', thin: 'minor', note: 'info' }[
          gardenGate.findings[0]!.verdict
        ],
        location: { path: gardenGate.file, lines: { begin: gardenGate.findings[0]!.place.line } },
      });
      expect(issues.at(-1)!.location.path).toBe('other gate.yaml');
    } finally {
      rmSync(bench, { recursive: true, force: true });
    }
  });
});
