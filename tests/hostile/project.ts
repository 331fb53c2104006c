/**
 * A project in which every text that its author is free to write attacks whatever shows it. Names of entries are letters, digits,
 * hyphens and underscores, and a control character in a value is refused by the reader; all else gets as far as the reports.
 */
import type { ProfileFolder } from '../../src/index.js';

/** What a reader of YAML lets through: commands to build servers, XML, HTML, Markdown, links, mentions, marks of direction. */
const PIECES = [
  '::error file=x::gone',
  '##[error]gone ##vso[task.complete] ##teamcity[x]',
  ']]></failure><testcase name="x"/><![CDATA[',
  '</details></pre><script>alert(1)</script><img src=x onerror=y> <!-- ',
  '| a | b |',
  '`c` ``d`` ` **e** ~~f~~ $g$ {0} {{1}} [h](1)',
  '![i](https://example.invalid/i.png) <https://example.invalid> www.example.invalid',
  '@everyone #1 someone@example.invalid :smile:',
  'right \u200Fto\u200E left \u061Cor\u200Bnot\u00AD \u{E0041}',
  '&amp; &#0; \\',
];

/** All of it on one line. */
export const line = PIECES.join(' ');

/** All of it on lines of its own, each of which begins with what it would do. */
export const lines = ['# heading', '- item', '1. item', '> quote', '```', '---', '    code', ...PIECES].join('\n');

const quoted = (text: string): string => JSON.stringify(text);

/** What the project has of each section; a study of many audits needs no more than it is about. */
const LOADS = {
  latch: (pin: string) => `  latch: { part: evil-coil, pin: ${pin}, note: ${quoted(lines)} }`,
  lamp: () => `  lamp: { part: own-led, pin: D3, series: 330 Ω ±5 %, note: ${quoted(line)} }`,
  vents: () => `  vents:
    part: relay-board-opto-low-5v-1
    inputs: { 1: D4 }
    supply: main.5v
    terminals: { ground: ${quoted(line)}, logic-supply: ${quoted(line)}, coil-supply: ${quoted(line)}, coil-ground: ${quoted(line)},
                 input: ${quoted(line)}, jumper: ${quoted(line)} }
    note: ${quoted(line)}
    contacts: { 1: { wired: normally-open, load-time: 20 h/day, safe-when: load-stopped,
                     load: { type: resistive, voltage: 230 V AC, current: 1 A } } }`,
};

/** @param of its loads @param pin of the coil */
export const hostile = (
  of: readonly (keyof typeof LOADS)[] = ['latch', 'lamp', 'vents'],
  pin = 'D9',
): string => `ampledger: 1
title: ${quoted(`::warning::${line}`)}
ambient: 5 to 40 °C
note: ${quoted(lines)}
catalogue: [ours]
supplies:
  laptop: { type: usb2-port, note: ${quoted(lines)} }
controllers:
  main: { board: atmega328p-5v-board, powered: { usb: laptop }, note: ${quoted(lines)} }
parts:
  own-led: { extends: led-red-5mm, title: ${quoted(line)}, colour: ${quoted(line)} }
loads:
${of.map((name) => LOADS[name](pin)).join('\n')}
${of.length < 3 ? '' : MORE}`;

const MORE = `measured:
  - { of: lamp, current: 90 mA, note: ${quoted(lines)} }
variants:
  other: { loads.lamp.series: 33 Ω }
waivers:
  - { rule: coil-no-clamp, about: latch, reason: ${quoted(lines)} }
`;

/** A profile of the project's own whose figures cite documents. */
export const evilCoil = `id: evil-coil
title: ${quoted(line)}
kind: load
type: coil
note: ${quoted(lines)}
documents:
  sheet: { title: ${quoted(line)}, publisher: ${quoted(line)}, number: ${quoted(line)}, year: 2021 }
voltage:    { value: 5 V, cite: [sheet, ${quoted(line)}] }
resistance: { value: 62 Ω ±10 %, cite: [sheet, ${quoted(line)}] }
power:      { value: 400 mW, cite: [sheet, ${quoted(line)}] }
pull-in:    { value: max 3.75 V, cite: [sheet, ${quoted(line)}] }
drop-out:   { value: min 0.5 V, cite: [practice, ${quoted(line)}] }
maximum:    { value: 6.5 V, at: 70 °C, cite: [memory, ${quoted(line)}] }
contact-rating:
  - { resistive: 10 A, voltage: 250 V AC, cite: [sheet, ${quoted(line)}] }
`;

export const folders: readonly ProfileFolder[] = [
  { name: 'ours', files: [{ file: 'ours/evil-coil.yaml', text: evilCoil }] },
];
