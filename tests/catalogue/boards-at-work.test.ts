/** Every board at work, fed through each of its inlets: a relay and two LEDs on it leave nothing of its own unproven or broken. */
import { describe, expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { pinsIn } from '../../src/catalogue/pin-range.js';
import { type Fields, isFields, type Profile } from '../../src/catalogue/profile.js';
import { judge } from '../../src/checks/judge.js';
import { parseQuantity } from '../../src/quantity/parse.js';

const keys = (value: unknown): readonly string[] => Object.keys(isFields(value) ? value : {});
const names = (value: unknown): readonly string[] => (Array.isArray(value) ? pinsIn(value) : []);

/** Header pins that can be outputs, those with no job of their own first. */
function outputs(board: Profile, chip: Profile): readonly string[] {
  const of = (pins: (profile: Profile) => readonly string[]): readonly string[] => [board, chip].flatMap(pins);
  const inputs = of((profile) => names(profile['input-only']));
  const busy = of((profile) => [...keys(profile['reserved']), ...keys(profile['strapping'])]);
  const lit = Object.values(isFields(board['pin-leds']) ? board['pin-leds'] : {}).map((led) => (led as Fields)['pin']);
  const header = Object.entries(board['pins'] as Fields).map((each) => each.map(String));
  const can = header.filter((own) => !own.some((name) => inputs.includes(name)));
  const free = can.filter((own) => !own.some((name) => busy.includes(name) || lit.includes(name)));
  return [...free, ...can.filter((own) => !free.includes(own))].map(([name]) => name!);
}

/** Volts that suit an inlet: 5 V, 9 V where it takes more than any USB port gives, 3.3 V where it bears no more. */
function volts(inlet: unknown): string {
  const stated = isFields(inlet) && isFields(inlet['voltage']) ? inlet['voltage']['value'] : undefined;
  const window = stated === undefined ? undefined : parseQuantity(stated as string, 'voltage');
  const most = window && 'quantity' in window ? window.quantity.max : undefined;
  if (most === undefined || most > 6) return '9 V ±2 %';
  return most < 4 ? '3.3 V ±2 %' : '5 V ±2 %';
}

const fed = builtIn.ids('controller').flatMap((id) => keys(builtIn.profile(id)!['inlets']).map((inlet) => [id, inlet]));

describe('a board at work', () => {
  test.each(fed)('%s, fed through %s', (id, inlet) => {
    const board = builtIn.profile(id!)!;
    const chip = builtIn.profile(String(board['chip']))!;
    const [relay, high, low] = outputs(board, chip);
    const judged = judge(
      {
        ampledger: 1,
        title: 'A board at work',
        supplies: {
          feed: { voltage: volts((board['inlets'] as Fields)[inlet!]), current: '3 A' },
          coils: { voltage: '5 V ±2 %', current: '1 A' },
        },
        controllers: { main: { board: id, powered: { [inlet!]: 'feed' } } },
        loads: {
          lamp: {
            part: 'relay-board-opto-low-5v-1',
            inputs: { 1: relay },
            'logic-supply': `main.${String(board['chip-supply'])}`,
            'coil-supply': 'coils',
            jumper: 'removed',
          },
          high: { part: 'led-red-5mm', pin: high, series: '1.5 kΩ ±5 %' },
          low: { part: 'led-red-5mm', pin: low, series: '1.5 kΩ ±5 %', active: 'low' },
        },
      },
      'board.yaml',
      { catalogue: builtIn },
    );
    if ('problems' in judged) throw new Error(JSON.stringify(judged.problems, null, 1));
    const own = judged.accounts.filter(({ account }) => account.id.startsWith('main.'));
    const open = own
      .filter(({ verdict }) => verdict === 'unproven')
      .map(({ account }) => `${account.id} ${account.quantity}`);
    expect(open).toEqual([]);
    expect(judged.findings.filter(({ verdict }) => verdict === 'unproven')).toEqual([]);
    // So little is too much for no board.
    expect(own.filter(({ verdict }) => verdict === 'breach').map(({ account }) => account.id)).toEqual([]);
    const limited = own.filter(
      ({ account }) => account.kind === 'pin' && account.quantity === 'current' && account.limits.length > 0,
    );
    // The board is fed, and what feeds it has its limit.
    expect(own.some(({ account }) => account.kind === 'inlet' && account.limits.length > 0)).toBe(true);
    const used = [relay, high, low].map((pin) => `main.${pin}`);
    expect([...new Set(limited.map(({ account }) => account.id))].filter((pin) => used.includes(pin)).sort()).toEqual(
      [...used].sort(),
    );
  });
});
