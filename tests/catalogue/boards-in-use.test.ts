/** Every board of the catalogue at work: nothing on it is unproven for want of a figure, from whichever inlet it is fed. */
import { expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { type Fields, field } from '../../src/catalogue/profile.js';
import { judged } from '../checks/judged.js';

const keys = (of: unknown): readonly string[] => Object.keys((of ?? {}) as Fields);

/** Pins of the header that anybody may drive. */
function freePins(id: string): readonly string[] {
  const board = builtIn.profile(id)!;
  const chip = builtIn.profile(String(board['chip']))!;
  const taken = new Set([
    ...keys(board['reserved']),
    ...keys(chip['reserved']),
    ...[board, chip].flatMap((of) => (of['input-only'] ?? []) as readonly string[]),
  ]);
  const header = (board['pins'] ?? {}) as Readonly<Record<string, string>>;
  return keys(header).filter((name) => !taken.has(name) && !taken.has(header[name]!));
}

/** A relay board with couplers on four pins and LEDs on two more; where there are no six, on as many as there are. */
function project(id: string, inlet: string): string {
  const pins = freePins(id);
  const rail = String(field(builtIn.profile(id), 'chip-supply'));
  const channels = pins.length >= 6 ? 4 : 1;
  const inputs = pins.slice(0, channels).map((pin, i) => `${i + 1}: ${pin}`);
  const lamps = pins.slice(channels, channels + 2);
  return `ampledger: 1
title: ${id} from ${inlet}
supplies: { feed: { ${inlet === 'usb' ? 'type: usb2-port' : 'voltage: 9 V ±5 %, current: 1 A'} }, brick: { voltage: 5 V ±4 %, current: 2 A } }
controllers: { main: { board: ${id}, powered: { ${inlet}: feed } } }
loads:
  relays: { part: relay-board-opto-low-5v-${channels}, inputs: { ${inputs.join(', ')} },
            logic-supply: main.${rail}, coil-supply: brick, jumper: removed }
  lamps: { part: led-red-5mm, pins: [${lamps.join(', ')}], series: 2.2 kΩ ±5 % }
`;
}

const fed = builtIn
  .ids('controller')
  .flatMap((id) => keys(builtIn.profile(id)!['inlets']).map((inlet) => [id, inlet] as const));

test.each(fed)('%s fed at its %s', (id, inlet) => {
  const { accounts, findings } = judged(project(id, inlet));
  expect(accounts.filter((a) => a.verdict === 'unproven').map((a) => a.account.id)).toEqual([]);
  expect(findings.filter((f) => f.verdict === 'unproven')).toEqual([]);
  // Every pin in use has a limit, and the board is fed.
  const kinds = new Set(accounts.filter((a) => a.account.limits.length > 0).map((a) => a.account.kind));
  for (const kind of ['pin', 'inlet'] as const) expect(kinds).toContain(kind);
});
