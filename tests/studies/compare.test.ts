import { describe, expect, it } from 'vitest';
import { withChanges } from '../../src/remedies/change.js';
import type { Comparison } from '../../src/studies/compare.js';
import { bringsWorse, comparisonOf } from '../../src/studies/compare.js';
import { dataOf, judgedWith } from './studied.js';

const BASE = `ampledger: 1
title: Shed
ambient: 25 °C
supplies: { laptop: { type: usb2-port }, brick-5v: { voltage: 5 V ±4 %, current: 1 A } }
controllers: { main: { board: atmega328p-5v-board, powered: { usb: laptop } } }
loads:
  lamp: { part: led-red-5mm, pin: D3, series: 330 Ω ±5 % }
  fan:
    part: relay-coil-5v-70r
    supply: brick-5v
    driver: { part: npn-2n2222a, pin: D8, base-resistor: 470 Ω ±5 %, pull-down: 10 kΩ ±5 % }
    clamp: { part: diode-1n4148 }
`;
const HORN = '  horn: { part: relay-coil-5v-70r, pin: D9 }\n';

const version = (text: string, changes: Parameters<typeof withChanges>[1] = []) => {
  const data = dataOf(text);
  return { data: withChanges(data, changes), judgement: judgedWith(data, changes) };
};
const compared = (before: string, after: string): Comparison => comparisonOf(version(before), version(after));
const findings = (c: Comparison, way: string) =>
  c.findings.filter((f) => f.way === way).map((f) => `${(f.after ?? f.before)!.rule} ${(f.after ?? f.before)!.about}`);

describe('a comparison', () => {
  it('of a project with itself has nothing to say', () => {
    const same = compared(BASE + HORN, BASE + HORN);
    expect(same.way).toBe('same');
    expect(same.wiring).toEqual([]);
    expect(new Set(same.accounts.map((a) => a.way))).toEqual(new Set(['same']));
    expect(bringsWorse(same, 'note')).toBe(false);
  });

  it('finds what a new load brings, worst first', () => {
    const c = compared(BASE, BASE + HORN);
    expect(c.way).toBe('worse');
    expect(findings(c, 'new')).toContain('coil-on-pin horn');
    expect(c.accounts[0]!.after!.account.id).toBe('main.D9');
    expect(c.accounts[0]).toMatchObject({ way: 'worse', after: { verdict: 'breach' } });
    expect(c.accounts[0]!.before).toBeUndefined();
    expect(c.wiring).toMatchObject([
      { section: 'loads', name: 'horn', change: 'added' },
      { section: 'pins', name: 'main.D9', change: 'added' },
    ]);
    expect(bringsWorse(c, 'breach')).toBe(true);
  });

  it('and the same the other way about is better', () => {
    const c = compared(BASE + HORN, BASE);
    expect(c.way).toBe('better');
    expect(findings(c, 'gone')).toContain('coil-on-pin horn');
    expect(bringsWorse(c, 'note')).toBe(false);
  });

  it('knows a load under another name, with its findings and accounts', () => {
    const c = compared(BASE + HORN, BASE + HORN.replace('horn:', 'gate-bell:'));
    expect([...c.renames]).toEqual([['horn', 'gate-bell']]);
    expect(c.way).toBe('changed');
    expect(new Set(c.findings.map((f) => f.way))).toEqual(new Set(['same']));
    expect(c.accounts.filter((a) => a.way !== 'same')).toEqual([]);
    expect(c.wiring).toMatchObject([{ section: 'loads', name: 'gate-bell', was: 'horn', change: 'renamed' }]);
  });

  it('knows a supply and a controller under other names, with all that refers to them', () => {
    const text = `${BASE}modes: { dry: { active: [fan], supplies: { laptop: suspended } } }
wires: [ { name: lead, from: brick-5v, to: fan, length: 1 m, gauge: AWG 20 } ]
`;
    const renamed = text.replaceAll('brick-5v', 'adapter').replaceAll('laptop', 'usb').replace('main:', 'uno:');
    const c = compared(text, renamed);
    expect([...c.renames]).toEqual([
      ['laptop', 'usb'],
      ['brick-5v', 'adapter'],
      ['main', 'uno'],
    ]);
    expect(c.way).toBe('changed');
    expect(c.accounts.filter((a) => a.way !== 'same')).toEqual([]);
    expect(new Set(c.findings.map((f) => f.way)).size).toBeLessThanOrEqual(1);
    expect(c.wiring.map(({ section, name, was, change }) => [section, name, was, change])).toEqual([
      ['supplies', 'usb', 'laptop', 'renamed'],
      ['supplies', 'adapter', 'brick-5v', 'renamed'],
      ['controllers', 'uno', 'main', 'renamed'],
    ]);
  });

  it('follows wires that are called by their ends, and loads at their pins', () => {
    const text = `${BASE}wires: [ { from: brick-5v, to: [fan], length: 1 m, gauge: AWG 24 } ]\n`;
    const wire = (c: Comparison) =>
      c.accounts
        .filter((a) => (a.after ?? a.before)!.account.kind === 'wire')
        .map((a) => [a.way, a.before?.account.id, a.after?.account.id]);
    const told = (c: Comparison) =>
      c.wiring.map(
        ({ change, section, name, settings }) => `${change} ${section} ${name} ${settings.map((s) => s.path).join()}`,
      );
    const ends = compared(text, text.replaceAll('fan', 'blower').replaceAll('brick-5v', 'adapter'));
    expect(wire(ends)).toEqual([['same', 'brick-5v-fan', 'adapter-blower']]);
    expect(told(ends)).toEqual(['renamed loads blower ', 'renamed supplies adapter ']);
    const name = compared(text, text.replace('{ from', '{ name: lead, from'));
    expect(wire(name)).toEqual([['same', 'brick-5v-fan', 'lead']]);
    expect(told(name)).toEqual(['renamed wires lead ']);
    const thinner = compared(text, text.replace('AWG 24', 'AWG 28').replace('to: [fan]', 'to: [main.5v, fan]'));
    expect(told(thinner)).toEqual(['changed wires brick-5v-main.5v-fan to,gauge']);
    const elsewhere = compared(
      text,
      text.replace('from: brick-5v', 'from: laptop').replace('supply: brick-5v', 'supply: laptop'),
    );
    expect(told(elsewhere)).toContain('moved wires laptop-fan from');
    const other = compared(text, text.replaceAll('fan', 'blower').replace('470 Ω', '390 Ω'));
    expect(told(other)).toEqual(['renamed loads blower driver.base-resistor']);
  });

  it('is not moved by another order, but in what a circuit is numbered by', () => {
    const modes = (list: string) => `${BASE}modes: { all: { active: [${list}] } }\n`;
    expect(compared(modes('lamp, fan'), modes('fan, lamp')).way).toBe('same');
    const pins = (list: string) => BASE.replace('pin: D3', `pins: [${list}]`);
    expect(compared(pins('D3, D5'), pins('D5, D3')).wiring[0]).toMatchObject({ name: 'lamp', change: 'moved' });
  });

  it('puts first what loses the largest share of what it had', () => {
    const c = compared(BASE, BASE.replace('25 °C', '25 to 50 °C').replace('330 Ω ±5 %', '320 Ω ±5 %'));
    const shares = c.accounts.filter((a) => a.way === 'less').map((a) => a.after!.margin! / a.before!.margin!);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.length).toBeGreaterThan(5);
  });

  it('takes a word of the format for no name, and a supply of other figures for another one', () => {
    const odd = `${BASE.replaceAll('brick-5v', 'coil')}  bell: { type: coil, voltage: 5 V, resistance: 70 Ω, supply: coil }\n`;
    const brick = odd.replace('coil: {', 'brick: {').replaceAll('supply: coil', 'supply: brick');
    expect(compared(odd, brick).wiring).toMatchObject([
      { section: 'supplies', name: 'brick', was: 'coil', change: 'renamed', settings: [] },
    ]);
    const other = compared(BASE, BASE.replaceAll('brick-5v', 'adapter').replace('current: 1 A', 'current: 2 A'));
    expect(other.renames.size).toBe(0);
    expect(other.wiring.map(({ change, name }) => `${change} ${name}`)).toContain('removed brick-5v');
  });

  it('takes another pin for a move, and no name for the same load', () => {
    const c = compared(BASE, BASE.replace('pin: D3', 'pin: D5').replace('lamp:', 'light:'));
    expect(c.renames.size).toBe(0);
    const moved = compared(BASE, BASE.replace('pin: D3', 'pin: D5'));
    expect(moved.wiring).toMatchObject([
      { section: 'loads', name: 'lamp', change: 'moved', settings: [{ path: 'pin', before: 'D3', after: 'D5' }] },
      { section: 'pins', name: 'main.D3', change: 'removed', settings: [{ before: 'lamp' }] },
      { section: 'pins', name: 'main.D5', change: 'added', settings: [{ after: 'lamp' }] },
    ]);
  });

  it('fails for an old breach only when it gets worse', () => {
    const more = BASE.replace('330 Ω ±5 %', '300 Ω ±5 %');
    expect(bringsWorse(compared(BASE + HORN, more + HORN), 'breach')).toBe(false);
    const colder = compared(BASE + HORN, BASE.replace('25 °C', '-10 to 25 °C') + HORN);
    expect(findings(colder, 'worse')).toContain('pin-current horn');
    expect(bringsWorse(colder, 'breach')).toBe(true);
  });

  it('tells a smaller margin from a lost one', () => {
    const c = compared(BASE, BASE.replace('330 Ω ±5 %', '300 Ω ±5 %'));
    expect(c.way).toBe('changed');
    const pin = c.accounts.find((a) => a.after?.account.id === 'main.D3');
    expect(pin?.way).toBe('less');
    expect(pin!.after!.margin!).toBeLessThan(pin!.before!.margin!);
  });

  it('tells a finding that is set aside from one that is gone, and is new when it no longer is', () => {
    const waived = `${BASE}${HORN}waivers:
  - { rule: coil-on-pin, about: horn, reason: bench use, accepts: damage }
`;
    const horn = { rule: 'coil-on-pin', about: 'horn' };
    const c = compared(BASE + HORN, waived);
    expect(c.findings[0]).toMatchObject({ way: 'set-aside', before: horn, after: horn });
    expect([c.way, bringsWorse(c, 'note')]).toEqual(['changed', false]);
    // What comes together with its waiver is told, too.
    const both = compared(BASE, waived).findings.find((f) => f.way === 'set-aside');
    expect(both).toMatchObject({ after: horn });
    expect(both).not.toHaveProperty('before');
    const same = compared(waived, waived);
    expect(same.findings.every((f) => f.way === 'same')).toBe(true);
    const back = compared(waived, BASE + HORN);
    expect(back.findings[0]).toMatchObject({ way: 'new', after: horn });
    expect(bringsWorse(back, 'breach')).toBe(true);
  });

  it('of a file that was added or removed has one side', () => {
    const added = comparisonOf(undefined, version(BASE + HORN));
    expect([added.way, bringsWorse(added, 'breach')]).toEqual(['worse', true]);
    const removed = comparisonOf(version(BASE + HORN), undefined);
    expect([removed.way, bringsWorse(removed, 'note')]).toEqual(['better', false]);
  });

  it('bears entries that are called as members of an object are', () => {
    const c = compared(BASE, `${BASE}  constructor: { part: led-red-5mm, pin: D6, series: 330 Ω ±5 % }\n`);
    expect(c.wiring[0]).toMatchObject({ section: 'loads', name: 'constructor', change: 'added' });
  });
});
