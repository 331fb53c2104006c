/** Every format of an audit, as the command writes it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sarifFaults } from '../reports/sarif-schema.js';
import { ampledger, folder, needsBuild } from './program.js';

const gate = `ampledger: 1
title: Gate | latch <b>
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
  latch: { part: relay-coil-5v-70r, pin: D9 }
  bell: { part: relay-coil-5v-70r, pin: D8 }
waivers:
  - { rule: coil-on-pin, about: bell, reason: agreed & <tried>, accepts: damage }
`;
const torn = `ampledger: 1
title: Torn
supplies: { brick: { voltage: 5 V, currant: 1 A } }
`;

let bench: ReturnType<typeof folder>;
const run = (...words: readonly string[]) => ampledger(['audit', ...words], { cwd: bench.path });
const text = (name: string): string => readFileSync(join(bench.path, name), 'utf8');

beforeAll(() => {
  needsBuild();
  bench = folder({ 'gate.yaml': gate, 'torn.yaml': torn });
});
afterAll(() => bench?.remove());

const written = ['--output', 'all.sarif', '--output', 'all.xml', '--output', 'all.md', '--output', 'all.json'];

describe('an audit with files to write', () => {
  it('prints what it prints without them, and writes each, the same bytes each time', () => {
    const plain = run('gate.yaml', 'torn.yaml');
    expect(run('gate.yaml', 'torn.yaml', ...written)).toEqual(plain);
    const first = ['all.sarif', 'all.xml', 'all.md', 'all.json'].map(text);
    run('gate.yaml', 'torn.yaml', ...written);
    expect(['all.sarif', 'all.xml', 'all.md', 'all.json'].map(text)).toEqual(first);
    expect(readdirSync(bench.path).sort()).toEqual([
      ...['all.json', 'all.md', 'all.sarif', 'all.xml'],
      ...['gate.yaml', 'torn.yaml'],
    ]);
    for (const [format, content] of [
      ['sarif', first[0]],
      ['junit', first[1]],
      ['markdown', first[2]],
      ['json', first[3]],
    ] as const)
      expect(run('gate.yaml', 'torn.yaml', '--format', format).out).toBe(content);
  });

  it('tells in each what is set aside and what was not read', () => {
    const log = JSON.parse(text('all.sarif')) as { runs: { results: { suppressions: unknown[] }[] }[] };
    expect(sarifFaults(log)).toBeNull();
    expect(log.runs[0]?.results.flatMap(({ suppressions }) => suppressions)).toMatchObject([
      { justification: 'agreed & <tried>' },
    ]);
    expect(text('all.xml')).toContain('Set aside: agreed &amp; &lt;tried&gt;.');
    expect(text('all.xml')).toContain('<error type="unread"');
    expect(text('all.md')).toContain('## Gate \\| latch &lt;b&gt;');
    expect(text('all.md')).toContain('Set aside: agreed &amp; &lt;tried&gt;');
    expect(text('all.md')).toContain('**UNREAD**');
    expect(text('all.md')).toContain('currant');
  });
});

it.each([
  ['--output', 'gate.yaml'],
  ['--output', 'report'],
  ['--output', 'no/where.md'],
])('%s %s is refused, and the file that was audited stays', (...words) => {
  const { status, err } = run('gate.yaml', ...words);
  expect(status).toBe(2);
  expect(err).toMatch(/report|gate\.yaml|where\.md could not be written/);
  expect(text('gate.yaml')).toBe(gate);
});
