/** Variants: where their paths lead, what is said of those that lead nowhere, and that each is audited as the changed file would be. */
import { describe, expect, it } from 'vitest';
import { audit, read } from '../../src/index.js';
import type { Report } from '../../src/index.js';
import { variantsOf } from '../../src/studies/variant-changes.js';
import { marked } from '../source/marked.js';

const project = (variants: string): string => `ampledger: 1
title: Case
supplies:
  port:  { type: usb2-port }
  brick: { voltage: 5 V ±3 %, current: 2 A }
controllers:
  main: { board: atmega328p-5v-board, powered: { usb: port } }
loads:
  bell:
    part: relay-coil-5v-70r
    supply: main.5v
    driver: { part: npn-2n2222a, pin: D8, base-resistor: 390 Ω, pull-down: 10 kΩ }
    clamp: { part: diode-1n4148 }
  lamp: { part: led-red-5mm, pin: D3, series: 330 Ω }
wires:
  - { name: lead, from: port, to: main.usb, length: 1 m, gauge: AWG 24 }
${variants}`;

const one = (changes: string): string => project(`variants:\n  other: ${changes}\n`);

function audited(text: string, variant?: string) {
  const { document, errors } = read(text, 'case.yaml');
  if (document === undefined) return { errors };
  const { report, errors: more } = audit(document, { advice: false, variant });
  return { report, errors: [...errors, ...more] };
}

function reportOf(text: string, variant?: string): Report {
  const { report, errors } = audited(text, variant);
  expect(errors).toEqual([]);
  return report!;
}

const said = (text: string, variant?: string): string[] =>
  audited(text, variant).errors.map((e) => `${marked(e)}${e.expected === undefined ? '' : ` (${e.expected})`}`);

describe('a variant', () => {
  it.each([
    ['a key inside', '{ loads.lamp.series: 1 kΩ }', (s: string) => s.replace('series: 330 Ω', 'series: 1 kΩ')],
    [
      'a key taken out',
      '{ loads.bell.clamp: null }',
      (s: string) => s.replace('    clamp: { part: diode-1n4148 }\n', ''),
    ],
    [
      'a key that was not there',
      '{ loads.bell.driver.maximum-voltage: 30 V }',
      (s: string) => s.replace('pull-down: 10 kΩ }', 'pull-down: 10 kΩ, maximum-voltage: 30 V }'),
    ],
    ['an entry of a list', '{ wires.0.gauge: AWG 28 }', (s: string) => s.replace('AWG 24', 'AWG 28')],
    [
      'an entry whole, and a key inside it',
      '{ loads.spare.series: 470 Ω, loads.spare: { part: led-red-5mm, pin: D4, series: 220 Ω } }',
      (s: string) => s.replace('wires:', '  spare: { part: led-red-5mm, pin: D4, series: 470 Ω }\nwires:'),
    ],
    [
      'a section that was not there',
      '{ modes.resting: { active: [lamp] } }',
      (s: string) => `${s}modes: { resting: { active: [lamp] } }\n`,
    ],
    [
      'an entry whole, with a key inside it after it',
      '{ controllers.main.pins: { PD5: { pull: up } }, controllers.main.pins.PD5.pull: down }',
      (s: string) => s.replace('usb: port } }', 'usb: port }, pins: { PD5: { pull: down } } }'),
    ],
  ])('is what the file would be with %s', (_, changes, edit) => {
    const { variants = [], ...base } = reportOf(one(changes));
    const whole = reportOf(one(changes), 'other');
    const edited = reportOf(edit(project('')));
    expect({ ...base, variants: undefined }).toEqual({ ...reportOf(project('')), variants: undefined });
    const figures = (r: Report) => r.accounts.map(({ place: _p, ...a }) => a);
    expect(figures(whole)).toEqual(figures(edited));
    expect(whole.findings.map((f) => f.says)).toEqual(edited.findings.map((f) => f.says));
    expect(variants[0]).toMatchObject({ name: 'other', verdict: edited.verdict, counts: edited.counts });
  });

  it('is found by its place: what it sets stands in it, all else where it stood', () => {
    const text = one('{ loads.lamp.series: 1 Ω }');
    const { findings } = reportOf(text, 'other');
    const line = text.split('\n').findIndex((l) => l.startsWith('  lamp:')) + 1;
    const pin = findings.find((f) => f.rule === 'nothing-limits')!;
    expect(pin.place).toMatchObject({ line });
    expect(said(one('{ loads.lamp.series: 1 ohmm }'))).toEqual([
      expect.stringMatching(/^18:31 \[1 ohmm\] in the variant `other`: /),
    ]);
  });

  it('tells what it makes better and worse', () => {
    const { variants } = reportOf(one('{ loads.lamp.series: 33 Ω, loads.bell.clamp: null }'));
    expect(variants![0]!.worse.map((c) => [c.account, c.before?.verdict, c.after?.verdict])).toContainEqual([
      'main.D3',
      'sound',
      'breach',
    ]);
    expect(variants![0]!.new).toContainEqual(
      expect.objectContaining({ rule: 'coil-no-clamp', about: 'bell', verdict: 'breach' }),
    );
    const back = reportOf(
      project('').replace('series: 330', 'series: 33') + 'variants: { a: { loads.lamp.series: 330 Ω } }\n',
    );
    expect(back.variants![0]!.better.map((c) => c.account)).toContain('main.D3');
    expect(back.variants![0]!.worse).toEqual([]);
  });
});

it('reads dots as part of a key where such a key is there', () => {
  const data = {
    controllers: { main: { pins: { 'P0.15': { pull: 'up' }, P0: {} } } },
    variants: { a: { 'controllers.main.pins.P0.15.pull': 'down' } },
  };
  const { variants, problems } = variantsOf(data);
  expect(problems).toEqual([]);
  expect(variants[0]!.changes.map((c) => c.path)).toEqual([['controllers', 'main', 'pins', 'P0.15', 'pull']]);
});

describe('a path that leads nowhere', () => {
  it.each([
    [
      '{ lods.lamp.series: 1 Ω }',
      '[lods.lamp.series] in the variant `other`: unknown key `lods` at the top level (did you mean `loads`?)',
    ],
    ['{ loads.lmap.series: 1 Ω }', '[loads.lmap.series] there is no load `lmap` (did you mean `lamp`?)'],
    [
      '{ loads.lamp.seris: 1 Ω }',
      '[loads.lamp.seris] in the variant `other`: unknown key `seris` in load `lamp` (did you mean `series`?)',
    ],
    ['{ supplies.brik: null }', '[supplies.brik] there is no `brik` in `supplies` to take out (did you mean `brick`?)'],
    [
      '{ loads.lamp.series.power: 1 W }',
      '[loads.lamp.series.power] `loads.lamp.series` holds a plain value, with no `power` inside (set the whole of it, as a mapping)',
    ],
    [
      '{ wires.1.gauge: AWG 20 }',
      '[wires.1.gauge] `wires` is a list, and `1` is none of its entries (they are numbered from 0 to 0)',
    ],
    ['{ wires.0: null }', '[wires.0] an entry of a list cannot be taken out by itself (set the whole of `wires`)'],
    ['{ loads.: 1 }', '[loads.] `loads.` is no path (keys joined by dots, as in `loads.pump.supply`)'],
    [
      '{ variants.other: 1 }',
      '[variants.other] a variant cannot change `variants` (it changes the project: its supplies, loads, modes)',
    ],
    [
      '{ loads.lamp.__proto__.x: 1 }',
      '[loads.lamp.__proto__.x] in the variant `other`: unknown key `__proto__` in load `lamp`',
    ],
  ])('%s', (changes, expected) => {
    expect(said(one(changes))).toEqual([expect.stringContaining(expected)]);
  });

  it('is told with its place also where only something else goes wrong by it', () => {
    expect(said(one('{ supplies.port: null }'))).toEqual([
      expect.stringMatching(/^18:3 \[other\] in the variant `other`, at `controllers\.main\.powered\.usb`: /),
      expect.stringMatching(/^18:3 \[other\] in the variant `other`, at `wires\.0\.from`: /),
    ]);
  });

  it('keeps no other variant from being audited by itself', () => {
    const text = project('variants:\n  good: { loads.lamp.series: 1 kΩ }\n  bad: { loads.lamp.supply: nowhere }\n');
    expect(said(text)).toHaveLength(1);
    expect(reportOf(text, 'good')).toMatchObject({ variant: 'good', verdict: 'sound' });
    expect(said(text, 'god')).toEqual([expect.stringContaining('there is no variant `god` (did you mean `good`?)')]);
  });
});

describe('hostile variants', () => {
  it.each([
    ['an escape', '"\\u001b[31mred": { title: x }'],
    ['a line end', '"a\\nb": { title: x }'],
    ['a direction override', '"a\u202eb": { title: x }'],
    ['a path with an escape', 'other: { "loads.lamp.\\u001b[2J": 1 }'],
  ])('cannot be named with %s', (_, entry) => {
    const { report, errors } = audited(project(`variants:\n  ${entry}\n`));
    expect(report).toBeUndefined();
    expect(errors.length).toBeGreaterThan(0);
    for (const e of errors) expect(`${e.says} ${e.expected} ${e.excerpt?.text}`).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });

  it('are no more than 32, whatever a file has', () => {
    const many = (count: number): string =>
      project(
        `variants:\n${Array.from({ length: count }, (_, k) => `  v${k}: { loads.lamp.series: ${330 + k} Ω }\n`).join('')}`,
      );
    const start = performance.now();
    expect(said(many(1000))).toEqual([expect.stringContaining('`variants` has too many entries (at most 32)')]);
    expect(performance.now() - start).toBeLessThan(3000);
    expect(reportOf(many(32)).variants).toHaveLength(32);
  });

  it('with a path of a hundred thousand keys cost nothing', () => {
    const start = performance.now();
    expect(said(one(`{ ${'a.'.repeat(100_000)}b: 1 }`))).toEqual([expect.stringContaining('is no path')]);
    expect(performance.now() - start).toBeLessThan(2000);
  });
});
