import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArguments } from '../../src/cli/arguments.js';
import { commands } from '../../src/cli/commands.js';
import { readConditions } from '../../src/cli/conditions.js';
import { commandHelp, generalHelp } from '../../src/cli/help.js';
import { version } from '../../src/cli/version.js';

const { audit } = commands;
if (!audit) throw new Error('there is no audit');

describe('the command line of a command', () => {
  it.each([
    [['a.yaml'], { operands: ['a.yaml'], options: {} }],
    [['a.yaml', 'b.yaml', '--all'], { operands: ['a.yaml', 'b.yaml'], options: { all: true } }],
    [['--format', 'json', '-'], { operands: ['-'], options: { format: 'json' } }],
    [['--format=json', 'a'], { operands: ['a'], options: { format: 'json' } }],
    [['a', '--ambient', '-10 to 40 °C'], { operands: ['a'], options: { ambient: '-10 to 40 °C' } }],
    [
      ['a', '--output', 'a.sarif', '--output=b.json'],
      { operands: ['a'], options: { output: 'b.json' }, repeated: { output: ['a.sarif', 'b.json'] } },
    ],
    [['--', '--all'], { operands: ['--all'], options: {} }],
    [['--help'], { operands: [], options: { help: true } }],
  ])('%j is read', (argv, given) => {
    expect(readArguments(argv, audit)).toEqual(given);
  });

  it.each([
    [[], 'FILE… is missing.'],
    [['a', '--formt', 'json'], 'There is no option --formt.'],
    [['a', '-x'], 'There is no option -x.'],
    [['a', '--format'], '--format needs a value: --format FORMAT.'],
    [['a', '--all=yes'], '--all takes no value.'],
    [['a', '--format', 'jsn'], '--format is one of terminal, json, sarif, junit, markdown, part; not jsn.'],
    [['a', '--fail-at', 'sound'], '--fail-at is one of breach, strain, unproven, thin, note, never; not sound.'],
    [['a', '--constructor'], 'There is no option --constructor.'],
  ])('%j is refused', (argv, problem) => {
    expect(readArguments(argv, audit)).toMatchObject({ problem });
  });
});

describe('the conditions', () => {
  const conditions = (options: { readonly [name: string]: string }) => readConditions({ operands: [], options });

  it('are an ambient in °C, a mode and the day', () => {
    expect(conditions({ ambient: '-10 to 40 °C', mode: 'parked' })).toEqual({
      ambient: { min: -10, typ: 15, max: 40 },
      mode: 'parked',
      today: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) as string,
    });
    expect(conditions({})).not.toHaveProperty('ambient');
  });

  it('are refused when the ambient is none', () => {
    expect(conditions({ ambient: '5 V' })).toMatchObject({ problem: expect.stringMatching(/^--ambient: /) as string });
  });
});

describe('the help', () => {
  it('names every command, and of each every option with an example', () => {
    for (const [name, command] of Object.entries(commands)) {
      expect(generalHelp()).toContain(`  ${name} `);
      const help = commandHelp(name, command);
      for (const option of Object.keys(command.options)) expect(help).toContain(`--${option}`);
      expect(help).toMatch(new RegExp(`Examples:\\n.*\\n {2}.*ampledger ${name}`));
    }
  });

  it('fits 80 columns', () => {
    const texts = [generalHelp(), ...Object.entries(commands).map(([name, command]) => commandHelp(name, command))];
    for (const line of texts.join('').split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });
});

it('has the version of the package', () => {
  const manifest = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  expect((JSON.parse(manifest) as { version: string }).version).toBe(version);
});
