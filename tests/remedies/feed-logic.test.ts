/** A black box that misreads a level is fed from its pin's own rail, where that cures. */
import { describe, expect, test } from 'vitest';
import type { Report } from '../../src/index.js';
import { audit, read } from '../../src/index.js';

/** The report of a board whose inputs are fed with 5 V, on a pin of 3.3 V. */
function advised(levels: string): Report {
  const { document } = read(
    `ampledger: 1
title: Black box
ambient: 25 °C
supplies: { port: { type: usb2-port } }
controllers: { main: { board: rp2040-board, powered: { usb: port } } }
loads:
  pump: { type: relay-board, channels: 1, input: { active: low, ${levels}, current: 2 mA }, coil: { voltage: 5 V, resistance: 70 Ω ±10 % },
          inputs: { 1: GP15 }, logic-supply: main.vbus, coil-supply: main.vbus, jumper: fitted }
`,
    'case.yaml',
  );
  const { report, errors } = audit(document!);
  if (report === undefined) throw new Error(errors.map((e) => e.says).join('\n'));
  return report;
}

const misread = (report: Report) => report.findings.filter((f) => f.rule === 'input-levels');
const fedOf = (report: Report) =>
  misread(report).flatMap((f) => f.remedies.filter((r) => r.title.startsWith('Feed the inputs of pump')));

describe('a black box whose input is not let go of by a pin of 3.3 V', () => {
  // Fed with 5 V its input has 1.7 V across it while the pin is high, and it is sure to be off below 1 V only.
  const report = advised('on-above: 2 V, off-below: 1 V');

  test('is found, and offered its pin’s own rail', () => {
    expect(misread(report).map((f) => [f.verdict, f.about])).toEqual([['breach', 'pump.1']]);
    const [remedy] = fedOf(report);
    expect(remedy!.title).toBe('Feed the inputs of pump from main.3v3, jumper removed');
    expect(remedy!.changes.map((c) => [c.path, c.value])).toEqual([
      ['loads.pump.logic-supply', 'main.3v3'],
      ['loads.pump.coil-supply', 'main.vbus'],
      ['loads.pump.jumper', 'removed'],
    ]);
  });

  test('is sound after it', () => {
    expect(fedOf(report)[0]!.after.verdict).toBe('sound');
  });
});

describe('the same where 3.3 V do not turn it on', () => {
  test('is offered no such thing, which would only turn the fault round', () => {
    const report = advised('on-above: 4 V, off-below: 1 V');
    expect(misread(report)).not.toEqual([]);
    expect(fedOf(report)).toEqual([]);
  });
});

describe('the same with levels that a pin of 3.3 V keeps', () => {
  test('has nothing to be cured', () => {
    expect(misread(advised('on-above: 3 V, off-below: 2.5 V'))).toEqual([]);
  });
});
