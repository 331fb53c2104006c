import { expect, test } from 'vitest';
import { audit, read } from '../../src/index.js';

/** A project whose supply, behind its own resistance, cannot give what is asked of it. */
const project = (board: string, rail: string, ohms: number, amps: number): string => `
ampledger: 1
title: collapse
supplies: { port: { voltage: 5 V ±5 %, current: 500 mA, resistance: ${ohms} Ω } }
controllers: { main: { board: ${board}, powered: { usb: port } } }
loads:
  big: { type: constant-current, current: ${amps} A, supply: main.${rail} }
`;

const verdictOf = (text: string) => {
  const { document, errors } = read(text, 'collapse.yaml');
  expect(errors).toEqual([]);
  const { report, errors: more } = audit(document!, { advice: false });
  expect(more).toEqual([]);
  return report!;
};

test.each([
  ['atmega328p-5v-board', '5v'],
  ['atmega328p-5v-board', '3v3'],
  ['rp2040-board', '3v3'],
  ['rp2040-board', 'vsys'],
  ['esp32-devkit', '3v3'],
])('a %s that asks more of its port than it can give is a breach, never a fault of the program (%s)', (board, rail) => {
  for (const ohms of [0.1, 0.5, 1, 2, 5, 20])
    for (const amps of [1, 2, 3, 10]) {
      const report = verdictOf(project(board, rail, ohms, amps));
      const port = report.accounts.find((a) => a.id === 'port')!;
      expect(report.verdict).toBe('breach');
      expect(port.verdict).toBe('breach');
      expect(port.draw!.max).toBeGreaterThan(0.5);
    }
});

test('more resistance in the way of a converter never lowers what it takes', () => {
  const drawn = [0, 0.2, 0.5, 1, 1.5].map((ohms) => {
    const text = project('rp2040-board', '3v3', ohms, 0.6).replace(', resistance: 0 Ω', '');
    return verdictOf(text).accounts.find((a) => a.id === 'port')!.draw!.max;
  });
  drawn.slice(1).forEach((amps, k) => expect(amps).toBeGreaterThanOrEqual(drawn[k]! * (1 - 1e-9)));
});

// 5 V behind 1 Ω with 1 Ω across it is 2.5 V behind 0.5 Ω, which gives 2 W at 2 V: (2.5 + √(2.5² − 4 · 0.5 · 2)) / 2.
test('a constant power that others pull below half of what its source stands at takes what it asks for', () => {
  const report = verdictOf(`
ampledger: 1
title: below half
supplies: { port: { voltage: 5 V, current: 500 mA, resistance: 1 Ω } }
loads:
  heater: { type: resistor, resistance: 1 Ω, power: 20 W, supply: port }
  sender: { type: constant-power, power: 2 W, supply: port }
`);
  const port = report.accounts.find((a) => a.id === 'port' && a.quantity === 'current')!;
  expect(port.draw!.max).toBeCloseTo(3, 9);
  expect(port.entries.find((e) => e.circuit === 'sender')!.max).toBeCloseTo(1, 9);
});
