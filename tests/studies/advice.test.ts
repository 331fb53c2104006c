/** Advice: what it says is sound is sound when it is written into the file and audited, and nothing got worse. */
import { describe, expect, test } from 'vitest';
import { advise, audit, read } from '../../src/index.js';
import { worse } from '../../src/checks/verdict.js';
import { sampleText, worseThanNote } from '../samples/audited.js';

function advised(text: string) {
  const { document, errors } = read(text, 'case.yaml');
  if (document === undefined) throw new Error(JSON.stringify(errors));
  const { advice, text: edited, errors: more } = advise(document);
  if (advice === undefined) throw new Error(JSON.stringify(more));
  return { advice, edited };
}

function verdictOf(text: string) {
  const { document, errors } = read(text, 'case.yaml');
  expect(errors).toEqual([]);
  const { report, errors: more } = audit(document!, { advice: false });
  expect(more).toEqual([]);
  return report!;
}

const frame = (loads: string, more = ''): string => `ampledger: 1
title: Case
ambient: 10 to 40 °C
supplies:
  port:  { type: usb2-port }
  brick: { voltage: 5 V ±3 %, current: 2 A }   # spare
controllers:
  main: { board: atmega328p-5v-board, powered: { usb: port } }
${more}loads:
${loads}`;

const CASES: readonly (readonly [string, string, RegExp])[] = [
  ['four relays on a laptop’s port', sampleText('greenhouse-vents-usb'), /Feed the coils of vents/],
  ['a coil on a pin', sampleText('gate-latch-on-pin'), /Drive latch with an NPN 2N2222A, clamp it/],
  ['a relay that never lets go', sampleText('workshop-fan-3v3-no-indicator'), /Feed the inputs of fan from main.3v3/],
  [
    'a winding that nothing clamps',
    frame(
      `  bell: { part: relay-coil-5v-70r, supply: brick, driver: { part: npn-2n2222a, pin: D8, base-resistor: 390 Ω, pull-down: 10 kΩ } }\n`,
    ),
    /^Clamp bell with a diode 1N4148$/,
  ],
  [
    'a clamp the wrong way round',
    frame(
      `  bell: { part: relay-coil-5v-70r, supply: brick, driver: { part: npn-2n2222a, pin: D8, base-resistor: 390 Ω, pull-down: 10 kΩ }, clamp: { part: diode-1n4148, fitted: reversed } }\n`,
    ),
    /^Turn the clamp of bell round$/,
  ],
  [
    'a base that gets too little',
    frame(
      `  bell: { part: relay-coil-5v-70r, supply: brick, driver: { part: npn-2n2222a, pin: D8, base-resistor: 10 kΩ ±5 %, pull-down: 10 kΩ }, clamp: { part: diode-1n4148 } }\n`,
    ),
    /^Drive bell harder: [\d.]+ k?Ω ±5 % at the base$/,
  ],
  [
    'a lamp with too small a resistor',
    frame(`  lamp: { part: led-red-5mm, pin: D5, series: 47 Ω ±5 % }\n`),
    /in series with lamp$/,
  ],
  ['a lamp with none', frame(`  lamp: { part: led-red-5mm, pin: D5 }\n`), /in series with lamp$/],
  [
    'a pin that two things use',
    frame(
      `  lamp: { part: led-red-5mm, pin: D5, series: 470 Ω }\n  sounder: { part: led-green-5mm, pin: D5, active: low, series: 470 Ω }\n`,
    ),
    /^Move (lamp|sounder) from D5 to /,
  ],
  [
    'a jumper between two supplies',
    frame(
      `  fan: { part: relay-board-opto-low-5v-1, inputs: { 1: D4 }, logic-supply: main.5v, coil-supply: brick, jumper: fitted }\n`,
    ),
    /^Take the jumper of fan off$/,
  ],
  [
    'grounds that have to join',
    frame(
      `  fan: { part: relay-board-transistor-high-5v-1, inputs: { 1: D4 }, coil-supply: brick, grounds: separate }\n`,
    ),
    /^Join the ground of fan and the controller’s$/,
  ],
  [
    'a supply that is asked for too much',
    frame(`  heater: { type: constant-current, current: 1.9 A, supply: brick }\n`),
    /^Get a supply of 2.5 A for brick$/,
  ],
  [
    'a resistor that gets too hot',
    frame(`  lamp: { part: led-red-5mm, supply: lantern, series: 1.2 kΩ }\n`).replace(
      'controllers:',
      '  lantern: { voltage: 24 V, current: 1 A }\ncontrollers:',
    ),
    /^Fit a series resistor of (0.5|1) W for lamp$/,
  ],
];

describe.each(CASES)('%s', (_, text, title) => {
  const { advice, edited } = advised(text);
  test('is cured in so many words', () => {
    expect(
      advice.steps.map((s) => s.cure.title).some((t) => title.test(t)),
      advice.steps.map((s) => s.cure.title).join(),
    ).toBe(true);
    expect(worse(advice.before.verdict, 'note')).toBe(true);
    expect(advice.after.verdict).toBe('sound');
  });

  test('is sound once the advice is written into the file', () => {
    const report = verdictOf(edited);
    expect(worseThanNote(report)).toEqual([]);
  });

  test('stays as it is when it is advised again', () => {
    const again = advised(edited);
    expect(again.advice.steps).toEqual([]);
    expect(again.edited).toBe(edited);
  });

  test('keeps every account as good as it was', () => {
    const was = new Map(verdictOf(text).accounts.map((a) => [`${a.id} ${a.quantity} ${a.direction}`, a.verdict]));
    const worsened = verdictOf(edited).accounts.filter((a) =>
      worse(a.verdict, was.get(`${a.id} ${a.quantity} ${a.direction}`) ?? 'breach'),
    );
    expect(worsened.map((a) => a.id)).toEqual([]);
  });

  test('keeps its comments', () => {
    const comments = (t: string): string[] => t.split('\n').filter((l) => /^\s*#/.test(l));
    expect(comments(edited)).toEqual(comments(text));
  });
});

test('what cannot be cured is named, with the reason', () => {
  const { advice } = advised(`ampledger: 1
title: Nobody knows
supplies: { brick: { voltage: 5 V } }
loads: { probe: { type: constant-current, current: 90 mA, supply: brick } }
`);
  expect(advice.steps).toEqual([]);
  expect(advice.left).toMatchObject([
    {
      finding: { rule: 'supply-current', verdict: 'unproven' },
      why: 'it is a question, and an answer settles it: what current can the supply brick give (its `current`)',
    },
  ]);
});

test('a meter’s reading of the wiring as it is stands in no cure’s way', () => {
  const text = `${sampleText('greenhouse-vents-usb')}measured:\n  - { of: vents.1.coil, voltage: 4.2 V ±1 % }\n`;
  const { advice } = advised(text);
  expect(advice.steps.map((s) => s.cure.title).join()).toMatch(/Feed the coils of vents/);
});
