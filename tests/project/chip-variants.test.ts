/** Chips whose pins are not all alike, and whose limits go by their package. */
import { describe, expect, test } from 'vitest';
import { judged } from '../checks/judged.js';

const project = (controller: string, pins: string): string => `ampledger: 1
title: LEDs on a bare chip
supplies: { brick: { voltage: 5 V ±1 %, current: 1 A }, logic: { voltage: 3.3 V ±1 %, current: 1 A } }
controllers: { main: ${controller} }
loads: { lamp: { part: led-red-5mm, pins: [${pins}], series: 1 kΩ } }
`;
const most = (text: string, id: string): number => {
  const { accounts } = judged(text);
  return accounts.find((a) => a.account.id === id && a.account.quantity === 'current')!.account.draw!.max;
};

test('a pin with rows of its own has a resistance of its own: the reset pin of an ATtiny85 gives less', () => {
  const text = project('{ chip: attiny85, supply: brick }', 'PB0, PB5');
  // VOH at least 3.2 V at 0.2 mA: 9 kΩ at most, a quarter of it at least.
  expect(most(text, 'main.PB5')).toBeLessThan((5.05 - 1.4) / (1000 + 9000 / 4));
  expect(most(text, 'main.PB0')).toBeGreaterThan((5.05 - 2.1) / (1000 + 112.5));
});

describe('packages', () => {
  const groups = (controller: string): readonly string[] =>
    judged(project(controller, 'PA12, PB10')).accounts.flatMap(({ account }) =>
      account.id.includes('cluster') && account.direction === 'source' ? [account.id] : [],
    );

  test('the sums of the chosen package hold, and without a choice those of all', () => {
    expect(groups('{ chip: atsamd21, package: 48-pin, supply: logic }')).toEqual(['main.cluster-3-of-48-pins']);
    expect(groups('{ chip: atsamd21, package: 64-pin, supply: logic }')).toEqual(['main.cluster-4-of-64-pins']);
    expect([...groups('{ chip: atsamd21, supply: logic }')].sort()).toEqual([
      'main.cluster-3-of-48-pins',
      'main.cluster-4-of-64-pins',
    ]);
  });

  test('one that no limit is for is an error', () => {
    expect(() => judged(project('{ chip: atsamd21, package: TQFP48, supply: logic }', 'PA12'))).toThrow(
      /controllers.main.package: the limits of ATSAMD21 name no package `TQFP48`/,
    );
  });
});
