/** What a board's file leaves open (rule 9): judged under every answer, and what only one of them brings about is unproven. */
import { describe, expect, it } from 'vitest';
import { asks, says } from '../../src/wording/sentences.js';
import { judged } from './judged.js';

/** A 5 V board on a 3.3 V controller, its parts those of the usual board; a coil that lets go for certain below 6.5 mA. */
const board = (input: string, dropOut = '10 %', resistor = '1 kΩ ±5 %'): string => `ampledger: 1
title: Case
ambient: 10 to 35 °C
policy: everyday
supplies: { laptop: { type: usb2-port } }
controllers: { main: { board: rp2040-board, powered: { usb: laptop } } }
loads:
  a:
    type: relay-board
    channels: 1
    input: { coupling: opto, series: ${resistor}, led-maximum-current: 50 mA, ${input} }
    output: { type: npn, gain: 120 / 200 / 400, base-resistor: 1 kΩ, maximum-current: 500 mA, maximum-voltage: 25 V, thermal-resistance: 300 K/W }
    coil: { voltage: 5 V, resistance: 70 Ω ±10 %, pull-in: typ 65 % max 75 %, drop-out: min ${dropOut} typ 20 %, maximum: 6 V }
    clamp: { part: diode-1n4148 }
    inputs: { 1: GP15 }
    supply: main.vbus
    grounds: joined
`;
const LED = 'led-drop: [{ value: 0.95 / 1.05 / 1.2 V, at: 1 mA }, { value: 1 / 1.12 / 1.3 V, at: 5 mA }]';
const RED = 'indicator-drop: [{ value: 1.55 / 1.7 / 1.9 V, at: 1 mA }, { value: 1.65 / 1.8 / 2.05 V, at: 5 mA }]';

const told = (text: string) => judged(text).findings.map((f) => `${f.verdict} ${f.rule}`);

describe('an indicator of which nobody says where it sits', () => {
  const open = board(`active: low, ${LED}, ${RED}`);

  it('leaves unproven what only one answer brings about', () => {
    expect(told(board(`active: low, indicator: none, ${LED}`))).toContain('breach coil-release');
    expect(told(board(`active: low, indicator: in-series, ${LED}, ${RED}`)).join()).not.toContain('coil-release');
    const { findings, verdict, accounts } = judged(open);
    expect(verdict).toBe('unproven');
    expect(findings.map((f) => `${f.verdict} ${f.rule}`)).toEqual(
      expect.arrayContaining(['unproven coil-release', 'unproven input-left-open']),
    );
    const release = findings.find((f) => f.rule === 'coil-release')!;
    expect(says(release)).toMatch(
      /^If no indicator sits in series with the couplers of a: switched off, the coil of a\.1 may still/,
    );
    expect(asks(release)).toMatch(/indicator/);
    expect(accounts.find(({ account: a }) => a.id === 'a.1.coil' && a.quantity === 'current')?.verdict).toBe(
      'unproven',
    );
  });

  it('asks once, with what each answer would mean in numbers', () => {
    const [question, ...others] = judged(open).findings.filter((f) => f.rule === 'input-left-open');
    expect(others).toEqual([]);
    expect(says(question!)).toMatch(
      /^Nothing says whether .* If none does: an input draws [\d.]+ to [\d.]+ mA and turns on; switched off, its coil may carry 8\d\.\d mA and lets go only below 6\.49 mA\. If one does: .* may carry [123]\.\d\d mA and lets go below 6\.49 mA\.$/,
    );
  });

  it('leaves what every answer comes to as it is, and as the milder of them', () => {
    // A coil that holds on to 50 µA is let go of by neither.
    const both = board(`active: low, ${LED}, ${RED}`, '0.1 %');
    expect(told(both).filter((t) => t.endsWith('coil-release'))).toEqual(['strain coil-release']);
  });
});

describe('an input of which nobody says which level switches it on', () => {
  it('is judged both ways: a high one has nothing left when it is off', () => {
    const open = board(`indicator: none, ${LED}`);
    expect(told(open)).toEqual(expect.arrayContaining(['unproven coil-release', 'unproven input-left-open']));
    expect(says(judged(open).findings.find((f) => f.rule === 'coil-release')!)).toMatch(
      /^If a low input switches a on: /,
    );
  });
});
