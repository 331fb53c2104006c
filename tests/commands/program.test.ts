import { beforeAll, describe, expect, it } from 'vitest';
import { ampledger, folder, needsBuild } from './program.js';

beforeAll(needsBuild);

describe('the program', () => {
  it('answers for itself on standard output', () => {
    for (const words of [
      ['--help'],
      ['help'],
      ['-h'],
      ['--version'],
      ['audit', '--help'],
      ['help', 'audit'],
      ['working', '-h'],
    ]) {
      const { status, out, err } = ampledger(words);
      expect({ words, status, err }).toEqual({ words, status: 0, err: '' });
      expect(out).not.toBe('');
    }
    expect(ampledger(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it.each([
    [['adit'], 'Do you mean audit?'],
    [['audit', 'x.yaml', '--formt', 'json'], 'Do you mean --format?'],
    [['audit', 'x.yaml', '--fail-at', 'breech'], 'Do you mean breach?'],
    [['shed.yaml'], 'Do you mean: ampledger audit shed.yaml'],
    [['--format', 'json'], 'the command comes first'],
    [['working', 'x.yaml'], 'NAME is missing.'],
    [['catalogue', 'npn-2n2222'], 'Do you mean npn-2n2222a?'],
    [['constructor'], 'There is no command constructor.'],
    [[], 'Usage: ampledger COMMAND'],
  ])('refuses %j with what was meant', (words, hint) => {
    const { status, out, err } = ampledger(words);
    expect(err).toContain(hint);
    expect({ status, out }).toEqual({ status: 2, out: '' });
  });
});

describe('the working', () => {
  const file = `ampledger: 1
title: Gate latch
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
  latch: { part: relay-coil-5v-70r, pin: D9 }
`;

  it.each(['main.D9', 'latch', 'coil-on-pin'])('of %s has its formulas, numbers and results', (name) => {
    const { path, remove } = folder({ 'gate.yaml': file });
    const { status, out } = ampledger(['working', 'gate.yaml', name], { cwd: path });
    const json = ampledger(['working', 'gate.yaml', name, '--format', 'json'], { cwd: path });
    remove();
    expect(status).toBe(0);
    expect(out).toMatch(/^\s*1 /m);
    expect(out).toMatch(/= .*Ω/);
    const { steps } = JSON.parse(json.out) as { steps: { formula: string; gives: [number, string] }[] };
    expect(steps.length).toBeGreaterThan(0);
    expect(steps.every(({ gives: [value] }) => Number.isFinite(value))).toBe(true);
  });

  it('of a name that is none says which come near', () => {
    const { path, remove } = folder({ 'gate.yaml': file });
    const { status, out, err } = ampledger(['working', 'gate.yaml', 'main.D99'], { cwd: path });
    remove();
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('Nothing in gate.yaml is called main.D99.');
  });
});
