import { describe, expect, it } from 'vitest';
import { print } from '../../src/cli/print.js';
import { columns } from '../../src/source/visible.js';
import { jsonReport } from '../../src/reports/json.js';
import { neutral } from '../../src/reports/neutral.js';
import type { Report } from '../../src/reports/report.js';
import { terminalReport } from '../../src/reports/terminal.js';
import { workingReport } from '../../src/reports/working.js';
import { attacks, poisonedReport } from './attacks.js';
import { gardenGate } from '../reports/fixtures/garden-gate.js';

const side = { verdict: 'breach', draw: 1, limit: 0.5, margin: -1 } as const;
const account = { account: 'x.1.coil', title: 'coil of x.1', quantity: 'current', direction: 'at-most' } as const;
const finding = { rule: 'coil-on-pin', about: 'x', verdict: 'breach', says: 'on a pin' } as const;
const withVariants: Report = {
  ...gardenGate,
  variant: 'other',
  variants: [
    {
      ...{ name: 'other', note: 'a note', verdict: 'breach', counts: gardenGate.counts },
      changes: [{ path: 'loads.x.pin', value: { pin: 'D4', of: ['D5'] } }],
      tightest: { ...account, ...side },
      better: [{ ...account, before: side, after: null }],
      worse: [{ ...account, before: null, after: side }],
      ...{ gone: [finding], new: [finding], place: { file: 'x.yaml', line: 1, column: 1 } },
    },
  ],
};

describe.each(attacks.map((attack) => [JSON.stringify(attack), attack]))('a file full of %s', (_, attack) => {
  const report = poisonedReport(withVariants, attack);

  it('cannot act on a terminal or a build server', () => {
    const steps = report.findings.flatMap(({ working }) => working);
    const texts = [
      print(terminalReport(report, { all: true }), { width: 80, colour: false }),
      print(workingReport({ title: attack, steps }, attack), { width: 80, colour: false }),
    ];
    for (const text of texts) {
      expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      expect(text).not.toMatch(/^\s*::/m);
      expect(text).not.toMatch(/##\w*\[/);
      expect(Math.max(...text.split('\n').map(columns))).toBeLessThanOrEqual(80);
    }
  });

  it('is harmless in JSON, where it reads back as it was', () => {
    const json = jsonReport([report]);
    expect(json.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
    expect(json).not.toMatch(/^\s*::/m);
    expect(json).not.toMatch(/##\w*\[/);
    expect((JSON.parse(json) as Report).project).toBe(attack);
  });
});

describe('a neutral text', () => {
  it('keeps its length, so that a marker under it still fits', () => {
    for (const attack of attacks) expect([...neutral(attack)]).toHaveLength([...attack].length);
  });

  it('leaves ordinary text alone, whatever its script', () => {
    const text = '4.7 kΩ ±5 % — Gewächshaus, 温室, теплица: #1 (a::b apart) ✓';
    expect(neutral(text)).toBe(text.replace('::', ':\u2236'));
  });
});
