/** What is offered, and what is not: wires that follow, promises of the firmware told as such, questions that no part answers. */
import { describe, expect, it } from 'vitest';
import type { Judgement } from '../../src/checks/judge.js';
import type { Remedy } from '../../src/remedies/prove.js';
import { CASES } from '../checks/cases/all.js';
import { sampleText } from '../samples/audited.js';
import { faultsOf, judgedText, remediesOf } from './cured.js';

function offered(text: string, rule: string): { readonly before: Judgement; readonly remedies: readonly Remedy[] } {
  const before = judgedText(text);
  if (typeof before === 'string') throw new Error(before);
  const finding = before.findings.find((f) => f.rule === rule);
  if (finding === undefined) throw new Error(`no ${rule}: ${before.findings.map((f) => f.rule).join()}`);
  const remedies = remediesOf(text, before)(finding);
  expect(remedies.flatMap((r) => faultsOf(text, before, finding, r))).toEqual([]);
  return { before, remedies };
}

const vents = sampleText('greenhouse-vents-usb');
const fan = sampleText('loft-fan-four-ways').replace(/^variants:[^]*/m, '');
const withWire = (to: string, more = ''): string =>
  fan.replace(/\n$/, more) + `\nwires:\n  - { name: lead, from: main.5v, to: ${to}, length: 2 m, gauge: AWG 24 }\n`;

describe('a wire of the file', () => {
  it('begins at the new supply once its load is fed from there', () => {
    const { remedies } = offered(withWire('fan-relay'), 'coil-pull-in');
    const apart = remedies.find((r) => r.title.startsWith('Feed the coils of fan-relay'))!;
    expect(apart.changes).toContainEqual({ path: 'wires.0.from', value: 'coil-supply' });
  });

  it('that others share loses the load that is fed apart', () => {
    const probe = '\n  probe: { type: constant-current, current: 5 mA, supply: main.5v }';
    const { remedies } = offered(withWire('[fan-relay, probe]', probe), 'coil-pull-in');
    const apart = remedies.find((r) => r.title.startsWith('Feed the coils of fan-relay'))!;
    expect(apart.changes).toContainEqual({ path: 'wires.0.to', value: ['probe'] });
  });

  it('stays where it still feeds the inputs of a board', () => {
    const wired = `${vents}wires:\n  - { name: lead, from: main.5v, to: vents, length: 2 m, gauge: AWG 24 }\n`;
    const { remedies } = offered(wired, 'coil-pull-in');
    const apart = remedies.find((r) => r.title.startsWith('Feed the coils of vents'))!;
    expect(apart.changes.filter(({ path }) => path.startsWith('wires'))).toEqual([]);
    expect(apart.steps.join(' ')).toContain('leave VCC on main.5v');
  });

  it('that is too thin for what a coil needs is run thicker', () => {
    const { remedies } = offered(sampleText('roof-drier-long-cable'), 'coil-pull-in');
    expect(remedies[0]).toMatchObject({
      title: 'Run the wire roof-cable in AWG 22',
      changes: [{ path: 'wires.0.gauge', value: 'AWG 22' }],
      after: { verdict: 'sound' },
    });
  });

  it('of the catalogue is replaced by the next gauge with fewer ohms', () => {
    const text = `ampledger: 1
title: Thin
ambient: 20 °C
supplies: { brick: { voltage: 12 V, current: 5 A } }
loads: { a: { type: constant-current, current: 3 A, supply: brick, supply-voltage: 11 to 13 V } }
wires:
  - { from: brick, to: a, length: 2 m, part: wire-awg24-pvc, name: lead }
`;
    const { remedies } = offered(text, 'load-voltage');
    expect(remedies[0]).toMatchObject({
      title: 'Run the wire lead in AWG 22',
      changes: [
        { path: 'wires.0.part', value: null },
        { path: 'wires.0.gauge', value: 'AWG 22' },
      ],
      after: { verdict: 'sound' },
    });
  });
});

describe('an interlock', () => {
  it('by firmware is told for what it is', () => {
    const { remedies } = offered(vents, 'fuse-holds');
    const fewer = remedies.find((r) => r.title.startsWith('Let no more than'))!;
    expect(fewer.title).toBe('Let no more than 3 of vents.1, vents.2, vents.3 and vents.4 on at a time, by firmware');
    expect(fewer.steps.join(' ')).toContain('Nothing holds it but the firmware');
  });

  it('by firmware is none where a slip of it would break something', () => {
    const { text } = CASES.find((c) => c.rule === 'total-current' && c.verdict === 'breach')!;
    const { remedies } = offered(text, 'total-current');
    const fewer = remedies.filter((r) => r.title.startsWith('Let no more than'));
    expect(fewer.length).toBeGreaterThan(0);
    for (const { changes } of fewer) expect(JSON.stringify(changes)).toContain('"by":"wiring"');
  });

  it('is none where the file says itself what is on together', () => {
    const modes = `${vents}modes: { noon: { active: [vents.*] } }\n`;
    for (const { title } of offered(modes, 'fuse-holds').remedies) expect(title).not.toContain('Let no more than');
  });
});

describe('no cure is', () => {
  it('a transistor in place of a bridge, which turns its motor either way', () => {
    const text = `ampledger: 1
title: Case
supplies: { bench: { voltage: 5 V, current: 5 A } }
controllers: { main: { chip: atmega328p, supply: bench } }
loads:
  a: { type: dc-motor, supply: bench, run: 1 A, stall: 1 A, stall-time: 2 s, driver: { type: h-bridge, pins: [PB1, PB2], maximum-current: 3 A, on-resistance: 1 Ω, thermal-resistance: 200 K/W } }
`;
    for (const { title } of offered(text, 'driver-heat').remedies) expect(title).not.toContain('MOSFET');
  });

  it('another part where a figure is missing: that is a question', () => {
    const text = `ampledger: 1
title: Case
supplies: { brick: { voltage: 5 V } }
loads: { a: { type: constant-current, current: 90 mA, supply: brick } }
`;
    expect(offered(text, 'supply-current').remedies).toEqual([]);
  });
});

describe('a burst that a supply does not carry', () => {
  // The sample's own sum: behind 470 µF the burst takes 49 mV out of the capacitor, and the rail stands at 1.91 V.
  it('is carried by a capacitor first, and only then by another supply', () => {
    const cell = sampleText('meadow-sensor-coin-cell').replace(/^variants:[^]*/m, '');
    const { remedies } = offered(cell, 'load-voltage');
    expect(remedies.map((r) => r.title.split(' (')[0])).toEqual([
      'Put 470 µF across coin, in place of 100 µF',
      'Feed radio from a supply of its own',
    ]);
    expect(remedies[0]!.after.verdict).toBe('sound');
  });
});
