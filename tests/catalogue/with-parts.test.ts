import { describe, expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { withParts } from '../../src/catalogue/with-parts.js';

describe("a project's own parts", () => {
  test('take over the rest of the profile they extend', () => {
    const { catalogue, problems } = withParts(builtIn, {
      'gate-relay': { extends: 'relay-coil-5v-70r', resistance: '62 Ω ±10 %' },
    });
    expect(problems).toEqual([]);
    const part = catalogue.profile('gate-relay');
    expect(part).toMatchObject({
      id: 'gate-relay',
      title: 'gate-relay',
      kind: 'load',
      type: 'coil',
      resistance: '62 Ω ±10 %',
    });
    expect(part?.['pull-in']).toEqual(builtIn.profile('relay-coil-5v-70r')?.['pull-in']);
    expect(builtIn.profile('gate-relay')).toBeUndefined();
  });

  test('stand beside the catalogue in every list', () => {
    const { catalogue } = withParts(builtIn, { mine: { extends: 'diode-1n4148' } });
    expect(catalogue.ids()).toEqual([...builtIn.ids(), 'mine']);
    expect(catalogue.ids('clamp')).toEqual([...builtIn.ids('clamp'), 'mine']);
    expect(catalogue.profile('usb2-port')).toBe(builtIn.profile('usb2-port'));
  });

  test('may extend one another, in any order', () => {
    const { catalogue, problems } = withParts(builtIn, {
      top: { extends: 'middle', voltage: '6 V' },
      middle: { extends: 'relay-coil-5v-70r', resistance: '100 Ω' },
    });
    expect(problems).toEqual([]);
    expect(catalogue.profile('top')).toMatchObject({ type: 'coil', voltage: '6 V', resistance: '100 Ω' });
  });

  test('need no `kind` where their type tells it', () => {
    const own = { coil: { type: 'coil' }, fet: { type: 'nmos' }, snub: { type: 'tvs' }, port: { kind: 'supply' } };
    const { catalogue, problems } = withParts(builtIn, own);
    expect(problems).toEqual([]);
    expect(Object.keys(own).map((id) => catalogue.profile(id)?.kind)).toEqual(['load', 'driver', 'clamp', 'supply']);
  });

  test('are refused under a name that the catalogue has, and leave it as it was', () => {
    const { catalogue, problems } = withParts(builtIn, { 'usb2-port': { kind: 'supply', current: '5 A' } });
    expect(problems).toMatchObject([
      { path: ['parts', 'usb2-port'], on: 'key', expected: expect.stringContaining('extends') },
    ]);
    expect(catalogue.profile('usb2-port')).toBe(builtIn.profile('usb2-port'));
  });

  test('are refused when they extend what is not there, with the nearest name', () => {
    const { catalogue, problems } = withParts(builtIn, { mine: { extends: 'relay-coil-5v-70' } });
    expect(problems).toMatchObject([
      { path: ['parts', 'mine', 'extends'], on: 'value', expected: 'did you mean `relay-coil-5v-70r`?' },
    ]);
    expect(catalogue.profile('mine')).toBeUndefined();
  });

  test('are refused when they extend each other', () => {
    const { catalogue, problems } = withParts(builtIn, { a: { extends: 'b' }, b: { extends: 'a' } });
    expect(problems.map(({ path }) => path)).toEqual([
      ['parts', 'a', 'extends'],
      ['parts', 'b', 'extends'],
    ]);
    expect(problems[0]?.says).toContain('a, b, a');
    expect(catalogue.profile('a')).toBeUndefined();
  });

  test('are refused when nothing says what they are', () => {
    const { problems } = withParts(builtIn, { thing: { resistance: '5 Ω' } }, ['our-boards']);
    expect(problems).toMatchObject([{ path: ['our-boards', 'thing'], on: 'key' }]);
  });

  test('that form a very long chain end in a problem, soon', () => {
    const own = Object.fromEntries(Array.from({ length: 2000 }, (_, i) => [`p${i}`, { extends: `p${i + 1}` }]));
    const { problems } = withParts(builtIn, { ...own, p2000: { type: 'coil' } });
    expect(problems.length).toBeGreaterThan(1900);
    expect(problems[0]?.says).toContain('more than');
  });

  test('that are no mapping are left to the schema', () => {
    for (const own of [undefined, null, 'text', [1], { mine: 'text' }])
      expect(withParts(builtIn, own).problems).toEqual([]);
  });
});
