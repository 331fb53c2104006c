/** What pins that have let go stand for: what takes a current from one pulls it down, and pushes nothing in. */
import { expect, test } from 'vitest';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { projectOf } from '../properties/projects.js';

const box = (input: object) => ({
  ampledger: 1,
  title: 'A box of which only the levels are known',
  supplies: { port: { type: 'usb2-port' } },
  controllers: { main: { board: 'atmega328p-5v-board', powered: { usb: 'port' } } },
  loads: {
    box: {
      type: 'relay-board',
      channels: 1,
      input,
      coil: { voltage: '5 V', resistance: '70 Ω ±10 %' },
      inputs: { 1: 'D4' },
      'logic-supply': 'main.5v',
      'coil-supply': 'main.5v',
      jumper: 'removed',
    },
  },
});

test.each([
  [
    'takes its current from the pin',
    { active: 'high', 'on-above': '2.4 V', 'off-below': '0.8 V', current: '2 to 4 mA' },
  ],
  ['gives its current to the pin', { active: 'low', 'on-above': '1.5 V', 'off-below': '0.5 V', current: '1 to 3 mA' }],
])('a black box that %s pushes nothing into a pin that has let go', (_, input) => {
  const { accounts } = ledgerOf(projectOf(box(input)));
  const pin = accounts.filter((a) => a.id === 'main.D4');
  expect(pin.filter((a) => a.direction === 'injected')).toEqual([]);
  expect(pin.some((a) => a.draw!.max > 1e-3)).toBe(true);
});
