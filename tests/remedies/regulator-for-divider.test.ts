/** A regulator in place of a divider: offered where it cures, and proved. */
import { expect, test } from 'vitest';
import { audit, read } from '../../src/index.js';

const remediesOf = (upper: string) => {
  const { document } = read(
    `ampledger: 1
title: Divider
ambient: 25 °C
supplies:
  bench: { voltage: 5 V, current: 1 A }
  half: { from: bench, type: divider, upper: ${upper}, lower: 1 kΩ }
loads: { a: { type: constant-current, current: 20 mA, supply: half } }
`,
    'case.yaml',
  );
  return audit(document!).report!.findings.find((f) => f.rule === 'divider-sags')!.remedies;
};

test('2.5 V of two equal resistors on 5 V come from a regulator instead', () => {
  const [remedy] = remediesOf('1 kΩ');
  expect(remedy!.title).toBe('Put a linear regulator for 2.5 V in place of the divider half');
  expect(remedy!.after.verdict).toBe('sound');
});

test('for 4.5 V of 5 V no fixed regulator is found', () => {
  // 1 kΩ / 1.111 kΩ x 5 V are 4.5 V, near to no fixed voltage below 5 V but to 5 V itself, which 5 V cannot give.
  expect(remediesOf('111 Ω')).toEqual([]);
});

test('3.3 V of 5 V leave more than the usual kind needs', () => {
  const [remedy] = remediesOf('500 Ω');
  expect(JSON.stringify(remedy!.changes)).toContain('"voltage":"3.3 V ±2 %"');
  expect(JSON.stringify(remedy!.changes)).toContain('"dropout":"1.2 V"');
});
