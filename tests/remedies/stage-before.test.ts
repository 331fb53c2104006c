/** An NPN before a driver that never lets go: offered where it cures, and proved. */
import { describe, expect, test } from 'vitest';
import type { Report } from '../../src/index.js';
import { audit, read } from '../../src/index.js';
import { sampleText } from '../samples/audited.js';

/** The report of a text, advice with it. */
function advised(text: string): Report {
  const { document } = read(text, 'case.yaml');
  const { report, errors } = audit(document!);
  if (report === undefined) throw new Error(errors.map((e) => e.says).join('\n'));
  return report;
}

const remediesOf = (report: Report, rule: string) => report.findings.find((f) => f.rule === rule)!.remedies;

const lamp = (driver: string): string => `ampledger: 1
title: Lamp
ambient: 25 °C
supplies: { bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 12.6 V, current: 5 A } }
controllers: { main: { chip: atmega328p, supply: bench, draws: { active: 10 mA } } }
loads: { a: { type: resistor, resistance: 120 Ω, power: 5 W, supply: brick, active: low, driver: { pin: PD2, ${driver} } } }
`;

describe('a driver at its supply on a pin below that', () => {
  test('gets an NPN before it, after which all is sound', () => {
    const [remedy] = remediesOf(advised(sampleText('yard-horn-high-side')), 'coil-release');
    expect(remedy!.title).toBe('Put an NPN before the driver of horn');
    expect(remedy!.after.verdict).toBe('sound');
    expect(remedy!.changes.map((c) => c.path)).toEqual(['loads.horn.driver']);
  });

  test('keeps its gate below what it bears, and its active level is turned over', () => {
    const [remedy] = remediesOf(advised(lamp('part: pmos-ao3401a, pull-up: 10 kΩ')), 'driver-release');
    expect(remedy!.changes.map(({ path, value }) => [path, value === null])).toEqual([
      ['loads.a.driver', false],
      ['loads.a.active', true],
    ]);
    expect(JSON.stringify(remedy!.changes)).toContain('"gate-resistor":"10 kΩ"');
    expect(remedy!.after.verdict).toBe('sound');
  });

  test('gets none where an NPN before it would not help', () => {
    // A pull that holds the gate where it conducts.
    const driver =
      'type: nmos, threshold: 1 to 2 V, on-resistance: { value: 1 Ω, at: 4.5 V }, maximum-current: 1 A, maximum-voltage: 30 V, gate-resistor: 100 kΩ, pull-up: 10 kΩ';
    const titles = remediesOf(advised(lamp(driver)), 'driver-release').map((r) => r.title);
    expect(titles.filter((title) => title.includes('an NPN before'))).toEqual([]);
  });
});
