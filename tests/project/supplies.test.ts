/** Supplies that nothing can hang on are told where they stand in the file. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/checks/judge.js';
import { builtIn, read } from '../../src/index.js';

/** What is wrong with a project of one supply, as 'path: sentence'. */
function wrong(voltage: string): readonly string[] {
  const { document } = read(
    `ampledger: 1\ntitle: t\nsupplies: { s: { voltage: ${voltage}, current: 1 A } }\n`,
    'a.yaml',
  );
  const judged = judge(document!.data, 'a.yaml', { catalogue: builtIn });
  return 'problems' in judged ? judged.problems.map((p) => `${p.path.join('.')}: ${p.says}`) : [];
}

describe('a supply', () => {
  // A transistor to ground whose load is fed from below ground never lets go: its own junctions conduct.
  it.each(['-12 V', '-12 V ±5 %', '0 V', '0 to 12 V'])('of %s is none that is reckoned with', (voltage) => {
    expect(wrong(voltage)).toEqual(['supplies.s.voltage: supply `s` has to stand above ground']);
  });

  it.each(['12 V', '0.1 to 12 V'])('of %s is one', (voltage) => {
    expect(wrong(voltage)).toEqual([]);
  });
});
