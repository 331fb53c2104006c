/** What is alike is reckoned once and told under each name: here each is reckoned by itself and comes to the same. */
import { describe, expect, test } from 'vitest';
import { likenessOf } from '../../src/ledger/likeness.js';
import { loadQuestions } from '../../src/ledger/load-questions.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { modesOf } from '../../src/ledger/moments.js';
import { pinQuestions } from '../../src/ledger/pin-questions.js';
import { settleAccount } from '../../src/ledger/settle.js';
import { solver } from '../../src/ledger/solver.js';
import type { Data } from '../properties/projects.js';
import { projectOf } from '../properties/projects.js';

const controllers = { main: { board: 'atmega328p-5v-board', powered: { usb: { type: 'usb2-port' } } } };
const lamp = (pin: string, more: object = {}) => ({ part: 'led-red-5mm', pin, series: '330 Ω ±5 %', ...more });
const valve = (pin: string, more: object = {}) => ({
  part: 'relay-coil-5v-70r',
  supply: 'main.5v',
  driver: { part: 'npn-2n2222a', pin, 'base-resistor': '1 kΩ', 'pull-down': '10 kΩ' },
  clamp: { part: 'diode-1n4148' },
  ...more,
});

const project = (interlocks: readonly object[], loads: object = {}) => ({
  ampledger: 1,
  title: 'Three of each',
  ambient: '5 to 45 °C',
  controllers,
  loads: { a: lamp('D2'), b: lamp('D3'), c: lamp('D4'), v: valve('D5'), w: valve('D6'), x: valve('D7'), ...loads },
  interlocks,
});

const CASES = {
  'without interlocks': project([]),
  'of which some may be on': project([{ 'at-most': 2, of: ['a', 'v', 'w', 'x'], by: 'wiring' }]),
  'of which one needs another': project([{ needs: 'v', for: 'w', by: 'wiring' }]),
  'of which one keeps another off': project([{ excludes: 'a', for: 'x', by: 'firmware' }]),
  'of which one has another limit': project([], { c: lamp('D4', { 'maximum-current': '10 mA' }) }),
  'of which one has another resistor': project([], { c: lamp('D4', { series: '150 Ω ±5 %' }) }),
  'of which one is in a place of its own': {
    ...project([], { x: valve('D7', { place: 'box' }) }),
    places: { box: { ambient: '40 to 70 °C' } },
  },
};

describe('circuits that are alike', () => {
  test.each(Object.entries(CASES))('%s', (_, data) => {
    const resolved = projectOf(data);
    const ledger = ledgerOf(resolved);
    const bench = solver(resolved);
    const modes = modesOf(resolved).filter((m) => m.name !== 'runaway');
    const alone = (circuit: number): string => String(circuit);
    for (const question of [...pinQuestions(bench, alone), ...loadQuestions(bench, alone)]) {
      const told = ledger.accounts.find(
        (a) => a.id === question.id && a.quantity === question.quantity && a.direction === question.direction,
      );
      const own = settleAccount(bench, question, modes, false);
      if (told === undefined) continue;
      for (const end of ['min', 'typ', 'max'] as const)
        expect(told.draw![end], `${question.id} ${question.direction}, ${end}`).toBeCloseTo(own!.draw![end], 8);
      expect(told.limits.map(({ limit }) => [limit.stated, limit.origin])).toEqual(
        own!.limits.map(({ limit }) => [limit.stated, limit.origin]),
      );
      told.limits.forEach(({ left }, k) => expect(left).toBeCloseTo(own!.limits[k]!.left, 7));
      expect(told.moment.length, `${question.id}: those on in the worst moment`).toBe(own!.moment.length);
    }
  });

  test('are those whose entries say the same but for the pins, whatever they are called', () => {
    const likes = (data: Data): number => {
      const bench = solver(projectOf(data));
      const likeness = likenessOf(bench.circuitry, modesOf(projectOf(data)));
      return new Set(bench.circuitry.project.circuits.map((_, k) => likeness(k))).size;
    };
    const always = likes({ ...project([]), loads: {} });
    const sorts = Object.values(CASES).map((data) => likes(data) - always);
    expect(sorts).toEqual([2, 3, 4, 4, 3, 3, 3]);
  });
});
