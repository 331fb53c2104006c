/** Variants at the command line: shown beside the file, and each in its place when it is asked for. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Report } from '../../src/reports/report.js';
import { sampleText } from '../samples/audited.js';
import { ampledger, folder, needsBuild } from './program.js';

const schema = JSON.parse(readFileSync(new URL('../../schemas/report.schema.json', import.meta.url), 'utf8')) as object;
const valid = new Ajv2020({ strict: true }).compile(schema);

const vents = `ampledger: 1
title: Vents
supplies: { laptop: { type: usb2-port } }
controllers: { main: { board: atmega328p-5v-board, powered: { usb: laptop } } }
loads:
  vents: { part: relay-board-opto-low-5v-1, inputs: { 1: D4 }, logic-supply: main.5v, coil-supply: main.5v, jumper: fitted }
variants:
  half-done: { loads.vents.coil-supply: brick, supplies.brick: { voltage: 5 V ±4 %, current: 1 A } }
`;

let bench: ReturnType<typeof folder>;
const run = (...words: readonly string[]) => ampledger(words, { cwd: bench.path });

beforeAll(() => {
  needsBuild();
  bench = folder({ 'fan.yaml': sampleText('loft-fan-four-ways'), 'vents.yaml': vents });
});
afterAll(() => bench?.remove());

describe('an audit of a file with variants', () => {
  it('shows them side by side after the file, at 80 columns', () => {
    const { out } = run('audit', 'fan.yaml');
    for (const line of out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    expect(out).toMatch(/^4 variants\nvariant +verdict +findings +tightest +in hand\n/m);
    expect(out).toMatch(/^\(as it stands\) +strain +1 strain +coil of fan-relay, pull-in +−4 %$/m);
    expect(out).toMatch(/^more-base +sound +no findings/m);
    expect(out).toMatch(/^ +better +coil of fan-relay, pull-in: strain \(−4 %\), then sound$/m);
    expect(out).toMatch(/^ +new +fan-relay: nothing clamps the winding \(breach\)$/m);
    expect(out.indexOf('1  strain')).toBeLessThan(out.indexOf('4 variants'));
  });

  it('follows the schema as JSON', () => {
    const report = JSON.parse(run('audit', 'fan.yaml', '--format', 'json').out) as Report;
    valid(report);
    expect(valid.errors).toBeNull();
    expect(report.variants!.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['own-supply', 'strain'],
      ['more-base', 'sound'],
      ['mosfet', 'sound'],
      ['no-diode', 'breach'],
    ]);
    expect(report.variants![3]!.changes).toEqual([{ path: 'loads.fan-relay.clamp', value: null }]);
  });

  it('goes by the file as it stands, and by a variant where one is asked for', () => {
    expect(run('audit', 'fan.yaml').status).toBe(0);
    expect(run('audit', 'fan.yaml', '--fail-at', 'strain').status).toBe(1);
    expect(run('audit', 'fan.yaml', '--variant', 'no-diode').status).toBe(1);
    expect(run('audit', 'fan.yaml', '--variant', 'mosfet', '--fail-at', 'thin').status).toBe(0);
    expect(run('audit', '--help').out).toContain('The exit status goes by the file as it stands');
  });

  it('has one of them in full', () => {
    const { out } = run('audit', 'fan.yaml', '--variant', 'no-diode');
    expect(out).toMatch(/^ +variant no-diode$/m);
    expect(out).toMatch(/^1 +breach/m);
    expect(out).not.toContain('4 variants');
    expect(out).toMatch(/^\$ ampledger working fan\.yaml \S+ --variant no-diode$/m);
    const report = JSON.parse(run('audit', 'fan.yaml', '--variant', 'no-diode', '--format', 'json').out) as Report;
    valid(report);
    expect(valid.errors).toBeNull();
    expect(report).toMatchObject({ variant: 'no-diode', verdict: 'breach' });
    expect(report.variants).toBeUndefined();
  });

  it('says which there are when it is asked for another', () => {
    const { status, out, err } = run('audit', 'fan.yaml', '--variant', 'no-diod');
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('there is no variant `no-diod`');
    expect(err).toContain('did you mean `no-diode`?');
  });
});

describe('the other commands on a variant', () => {
  it('show its sums', () => {
    const { out } = run('working', 'fan.yaml', 'fan-relay.coil', '--variant', 'more-base');
    expect(out).toMatch(/^fan-relay\.coil +fan\.yaml, variant more-base$/m);
    expect(out).toMatch(/^Coil of fan-relay, pull-in +4\.49 V of 4\.40 V|4\.4\d V, needs 4\.\d+ V, \d+ % in hand/m);
    expect(out).not.toBe(run('working', 'fan.yaml', 'fan-relay.coil').out);
  });

  it('look at its options', () => {
    const options = (...words: string[]) =>
      (
        JSON.parse(run('options', 'vents.yaml', '--format', 'json', ...words).out) as {
          boards: { options: { coil: string | null; present: boolean }[] }[];
        }
      ).boards[0]!.options.find((o) => o.present)?.coil;
    expect(options()).toBe('main.5v');
    expect(options('--variant', 'half-done')).toBe('brick');
  }, 60_000);

  it('count its room, and advise on it', () => {
    expect(run('headroom', 'fan.yaml', '--more', 'fan-relay', '--variant', 'mosfet').out).toContain('variant mosfet');
    const { out, status } = run('advise', 'fan.yaml', '--variant', 'no-diode');
    expect({ status, clamped: out.includes('Clamp fan-relay with a diode') }).toEqual({ status: 0, clamped: true });
  }, 60_000);

  it('leave a file as it is whose variants would not fit the changes', () => {
    const text = `ampledger: 1
title: Gate latch
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
  latch: { part: relay-coil-5v-70r, pin: D9, active: high }
variants:
  other-pin: { loads.latch.active: null }
`;
    const { path, remove } = folder({ 'gate.yaml': text });
    const { status, err } = ampledger(['advise', 'gate.yaml', '--into-file'], { cwd: path });
    expect(status).toBe(2);
    expect(err).toContain('gate.yaml stays as it is: with these changes it could not be audited any more.');
    expect(err).toContain('there is no `active` in `loads.latch` to take out');
    expect(readFileSync(join(path, 'gate.yaml'), 'utf8')).toBe(text);
    remove();
  });

  it('write nothing of it into the file', () => {
    const before = readFileSync(join(bench.path, 'fan.yaml'), 'utf8');
    const { status, err } = run('advise', 'fan.yaml', '--variant', 'no-diode', '--into-file');
    expect({ status, err }).toEqual({
      status: 2,
      err: expect.stringContaining('--into-file does not go with --variant'),
    });
    expect(readFileSync(join(bench.path, 'fan.yaml'), 'utf8')).toBe(before);
  });
});
