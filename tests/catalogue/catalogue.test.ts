import { describe, expect, test } from 'vitest';
import { catalogueOf } from '../../src/catalogue/catalogue.js';
import { overlay } from '../../src/catalogue/overlay.js';
import type { Fields } from '../../src/catalogue/profile.js';

const catalogue = (profiles: Record<string, Fields>, broken: Record<string, string> = {}) =>
  catalogueOf(
    { ...Object.fromEntries(Object.entries(profiles).map(([id, data]) => [id, JSON.stringify(data)])), ...broken },
    Object.entries(profiles).map(([id, { kind }]) => ({ id, kind: String(kind) })),
  );

const base = {
  id: 'base',
  title: 'Base',
  kind: 'load',
  type: 'coil',
  documents: { sheet: { title: 'S' } },
  channels: 1,
};

describe('a look-up', () => {
  test('gives the profile, and nothing for a name that is not there or that JavaScript knows', () => {
    const some = catalogue({ base });
    expect(some.profile('base')).toEqual(base);
    for (const name of ['bass', 'toString', '__proto__', 'constructor']) expect(some.profile(name)).toBeUndefined();
  });

  test('lists all ids, or those of a kind, without parsing any text', () => {
    const some = catalogue({ base, other: { ...base, id: 'other', kind: 'clamp' } }, { other: 'no JSON' });
    expect(some.ids()).toEqual(['base', 'other']);
    expect(some.ids('clamp')).toEqual(['other']);
    expect(some.profile('base')?.title).toBe('Base');
  });

  test('keeps what it has parsed', () => {
    const some = catalogue({ base });
    expect(some.profile('base')).toBe(some.profile('base'));
  });
});

describe('a profile that extends another', () => {
  test('takes over all that it does not say itself, but for the title', () => {
    const some = catalogue({ base, child: { id: 'child', extends: 'base', channels: 4 } });
    expect(some.profile('child')).toEqual({ ...base, id: 'child', title: 'child', channels: 4 });
    expect(some.profile('child')).not.toHaveProperty('extends');
  });

  test('may do so over several steps, and the nearest wins', () => {
    const some = catalogue({
      base,
      middle: { id: 'middle', title: 'Middle', extends: 'base', channels: 2, jumper: true },
      top: { id: 'top', title: 'Top', extends: 'middle', channels: 3 },
    });
    expect(some.profile('top')).toMatchObject({ title: 'Top', type: 'coil', channels: 3, jumper: true });
    expect(some.profile('base')).toEqual(base);
  });

  test('stops the build when it extends itself, directly or in a circle', () => {
    const some = catalogue({
      a: { id: 'a', extends: 'b' },
      b: { id: 'b', extends: 'a' },
      self: { id: 'self', extends: 'self' },
    });
    expect(() => some.profile('a')).toThrow('a, b, a');
    expect(() => some.profile('self')).toThrow('self, self');
  });

  test('stops the build when what it extends is not there', () => {
    expect(() => catalogue({ a: { id: 'a', extends: 'gone' } }).profile('a')).toThrow('a extends gone');
  });
});

describe('laying one mapping over another', () => {
  test('joins mappings, replaces everything else', () => {
    expect(
      overlay({ input: { series: 1, active: 'low' }, list: [1, 2] }, { input: { active: 'high' }, list: [3] }),
    ).toEqual({
      input: { series: 1, active: 'high' },
      list: [3],
    });
  });

  test('takes a figure as one thing, so that a new value never keeps an old source', () => {
    const below = { resistance: { value: '70 Ω', cite: ['sheet', 'Table 1'], note: 'at 20 °C' } };
    expect(overlay(below, { resistance: { value: '62 Ω' } })).toEqual({ resistance: { value: '62 Ω' } });
    expect(overlay(below, { resistance: '62 Ω' })).toEqual({ resistance: '62 Ω' });
  });

  test('takes away what is null', () => {
    const below = { input: { drop: 1, series: 2 }, output: 3 };
    expect(overlay(below, { input: { drop: null }, output: null })).toEqual({ input: { series: 2 } });
  });

  test('keeps a null that takes nothing away, so that the slip is found', () => {
    expect(overlay({ input: { series: 2 } }, { input: { 'of a note': null } })).toEqual({
      input: { series: 2, 'of a note': null },
    });
  });

  test('changes neither of the two, nor what all objects share', () => {
    const below = { input: { series: 1 } };
    const above = JSON.parse('{ "input": { "series": 2 }, "__proto__": { "polluted": true } }') as Fields;
    overlay(below, above);
    expect(below).toEqual({ input: { series: 1 } });
    expect(Object.hasOwn({}, 'polluted') || 'polluted' in {}).toBe(false);
  });
});
