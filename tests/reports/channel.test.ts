import { describe, expect, it } from 'vitest';
import { channelOf, channelOfAccount, fold, renamed } from '../../src/reports/channel.js';
import { gardenGate } from './fixtures/garden-gate.js';

const [some] = gardenGate.accounts;
if (!some) throw new Error('the fixture has no account');

const entry = (circuit: string) => ({ circuit, min: 0, typ: 0, max: 1 });

describe('a channel', () => {
  it('is a load with a number', () => {
    expect(channelOf('vents.2')).toEqual({ load: 'vents', name: 'vents.2' });
    expect(channelOf('vents')).toBeUndefined();
    expect(channelOf('main.board')).toBeUndefined();
  });

  it('has accounts under its own name and under that of its pin', () => {
    const account = (id: string, kind: typeof some.kind, ...circuits: readonly string[]) =>
      channelOfAccount({ ...some, id, kind, entries: circuits.map(entry) });
    expect(account('vents.2.coil', 'coil')).toEqual({ load: 'vents', name: 'vents.2' });
    expect(account('level.3', 'input')).toEqual({ load: 'level', name: 'level.3' });
    expect(account('main.D5', 'pin', 'vents.2')).toEqual({ load: 'vents', name: 'D5' });
    expect(account('main.P0.15', 'pin', 'vents.2')).toEqual({ load: 'vents', name: 'P0.15' });
    expect(account('main.D5', 'pin', 'horn')).toBeUndefined();
    expect(account('main.D5', 'pin', 'vents.2', 'lamps.1')).toBeUndefined();
    expect(account('main.5v', 'rail')).toBeUndefined();
  });

  it('is renamed where it stands by itself, and not inside another name', () => {
    expect(renamed('vents.1, vents.12 and vents.1.coil of old-vents.1', 'vents.1', '*')).toBe(
      '*, vents.12 and *.coil of old-vents.1',
    );
    expect(renamed('pin D1 and D13', 'D1', '$&')).toBe('pin $& and D13');
    expect(renamed('a(b.1', 'a(b.1', '*')).toBe('*');
  });
});

it('folds what is alike where the first of it stands', () => {
  expect(fold(['a1', 'b1', 'a2', 'c', 'c', 'b2'], (text) => (text === 'c' ? undefined : text.charAt(0)))).toEqual([
    ['a1', 'a2'],
    ['b1', 'b2'],
    ['c'],
    ['c'],
  ]);
});
