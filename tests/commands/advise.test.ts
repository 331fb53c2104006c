/** The way from breach to sound at the command line: audit, options, advise --into-file, audit. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { sampleText } from '../samples/audited.js';
import { ampledger, folder, needsBuild } from './program.js';

beforeAll(needsBuild);

describe('a project on its way from breach to sound', () => {
  it('is audited, advised into its file and audited again, and then stays', () => {
    const { path, remove } = folder({ 'gate.yaml': sampleText('gate-latch-on-pin') });
    const at = { cwd: path };
    const text = (): string => readFileSync(join(path, 'gate.yaml'), 'utf8');
    const before = text();
    expect(ampledger(['audit', 'gate.yaml'], at).status).toBe(1);
    const plain = ampledger(['advise', 'gate.yaml'], at);
    expect(plain.status).toBe(0);
    expect(plain.out).toContain('After it: SOUND');
    expect(text()).toBe(before);
    const written = ampledger(['advise', 'gate.yaml', '--into-file', '--keep'], at);
    expect(written).toMatchObject({
      status: 0,
      err: 'gate.yaml is written; its former text is in gate.yaml.before.\n',
    });
    expect(readFileSync(join(path, 'gate.yaml.before'), 'utf8')).toBe(before);
    expect(ampledger(['audit', 'gate.yaml', '--fail-at', 'thin'], at).status).toBe(0);
    const after = text();
    const again = ampledger(['advise', 'gate.yaml', '--into-file'], at);
    expect(again.err).toBe('gate.yaml stays as it is: there is nothing to write.\n');
    expect(text()).toBe(after);
    remove();
  });

  it.each([
    [['advise', '-', '--into-file'], 'standard input cannot be written to'],
    [['advise', 'x.yaml', '--keep'], '--keep goes with --into-file'],
    [['headroom', 'x.yaml'], '--more is missing'],
  ])('refuses %j', (words, hint) => {
    const { status, err } = ampledger(words);
    expect({ status, said: err.includes(hint) }).toEqual({ status: 2, said: true });
  });
});

describe('options and headroom', () => {
  it('answer at 80 columns', () => {
    const { path, remove } = folder({ 'vents.yaml': sampleText('greenhouse-vents-usb') });
    const at = { cwd: path };
    const options = ampledger(['options', 'vents.yaml'], at);
    expect(options.out).toContain('2 of them sound');
    for (const line of options.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(ampledger(['options', 'vents.yaml', 'vent'], at)).toMatchObject({ status: 2, out: '' });
    remove();
  }, 120_000);

  it('say how many more fit', () => {
    const { path, remove } = folder({ 'gate.yaml': sampleText('gate-latch-on-pin') });
    const at = { cwd: path };
    expect(ampledger(['headroom', 'gate.yaml', '--more', 'latch'], at).out).toContain('1 more like latch fits');
    remove();
  }, 120_000);
});
