import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { builtIn } from '../../src/catalogue/built-in.js';
import { headline } from '../../src/catalogue/headline.js';
import type { Profile } from '../../src/catalogue/profile.js';
import { sense } from '../../src/catalogue/sense.js';
import { senseTwins } from '../../src/catalogue/sense-twins.js';
import { checkProfile } from '../../src/source/check-profile.js';

const boards = new URL('../../boards/', import.meta.url).pathname;
const files = readdirSync(boards, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.yaml'));

/** Ids that samples, lessons and outside programs rely on. */
const promised = (
  'atmega328p-5v-board atmega2560-5v-board rp2040-board esp32-devkit esp8266-board stm32f103-board ' +
  'atmega328p atmega2560 rp2040 esp32 esp8266ex stm32f103c8 nrf52840 74hc595 mcp23017 ' +
  'relay-coil-5v-70r relay-coil-12v-400mw npn-2n2222a nmos-ao3400a darlington-array-7 opto-817 diode-1n4148 diode-1n4007 ' +
  'led-red-5mm led-green-5mm led-yellow-5mm led-blue-5mm led-white-5mm sensor-bme280 ' +
  'relay-board-opto-low-5v-1 relay-board-opto-low-5v-2 relay-board-opto-low-5v-4 relay-board-opto-low-5v-8 ' +
  'relay-board-opto-low-5v-1-no-indicator relay-board-transistor-high-5v-1 ' +
  'usb2-port usb3-port usb-c-default-port usb-c-1a5-port usb-c-3a-port everyday'
).split(' ');

describe('the files of boards/', () => {
  test('each bears the name of what it describes, and no name comes twice', () => {
    const ids = files.map((file) => (parse(readFileSync(join(boards, file), 'utf8')) as { id: string }).id);
    expect(ids).toEqual(files.map((file) => basename(file, '.yaml')));
    expect(new Set(ids).size).toBe(files.length);
  });

  test('all of them are in the built catalogue', () => {
    expect([...builtIn.ids()].sort()).toEqual(files.map((file) => basename(file, '.yaml')).sort());
  });

  test('the ids that others rely on are there', () => {
    expect(promised.filter((id) => builtIn.profile(id)?.id !== id)).toEqual([]);
  });
});

describe('boards/README.md', () => {
  const page = readFileSync(join(boards, 'README.md'), 'utf8');
  const lines = page.split('\n').filter((line) => line.startsWith('| ['));

  test('lists every profile once, with its file, title and headline figures, and nothing else', () => {
    const told = files.map((file) => {
      const { id, title, type, ...rest } = builtIn.profile(basename(file, '.yaml'))!;
      const what = [title, type ?? '', headline({ id, title, ...(type !== undefined && { type }), ...rest })];
      return `| [\`${id}\`](${file}) | ${what.join(' | ')} |`;
    });
    expect([...lines].sort()).toEqual(told.sort());
    expect(page).toContain(`\n${files.length} profiles.\n`);
  });

  test('shows figures of almost everything', () => {
    expect(lines.filter((line) => line.endsWith('|  |'))).toEqual([]);
  });
});

describe('every profile', () => {
  const all = builtIn.ids().flatMap((id) => builtIn.profile(id) ?? []);

  // A test for each would cost more than what it tests: what is wrong names its profile instead.
  const wrong = (found: (profile: Profile) => readonly unknown[]): readonly object[] =>
    all.flatMap((profile) => found(profile).map((fault) => ({ id: profile.id, fault })));

  test('is the only one of its thing', () => {
    expect(wrong((profile) => senseTwins(profile, all))).toEqual([]);
  });

  test('makes sense: quantities, sources, pins, rails, physics', () => {
    expect(wrong((profile) => sense(profile, builtIn.profile))).toEqual([]);
  });

  test('fits the schema of its kind', () => {
    expect(wrong(checkProfile)).toEqual([]);
  });
});

describe('relay boards of one family', () => {
  const channelsOf = (id: string): unknown => builtIn.profile(id)?.['channels'];

  const families = builtIn.ids().filter((id) => /^relay-board-.*-1(-|$)/.test(id));

  test.each(families)('%s and its kin differ in their channels only', (id) => {
    const base = builtIn.profile(id)!;
    for (const channels of [2, 4, 8, 16]) {
      const board = builtIn.profile(id.replace(/-1(?=-|$)/, `-${channels}`));
      if (!board) continue;
      const terminals = board['terminals'] as object;
      expect({ ...board, id, title: base.title, channels: 1, terminals: { ...terminals, input: undefined } }).toEqual({
        ...base,
        terminals: { ...(base['terminals'] as object), input: undefined },
      });
      expect(channelsOf(board.id)).toBe(channels);
      expect(board.title).not.toBe(base.title);
      expect(terminals).toMatchObject({ input: 'IN{n}' });
    }
  });

  test('bear their coils’ voltage in their names', () => {
    for (const id of families)
      expect(builtIn.profile(id)?.['coil']).toMatchObject({ voltage: { value: `${/-(\d+)v-/.exec(id)?.[1]} V` } });
  });

  test('without the indicator keep the coupler, without the coupler keep neither', () => {
    const bare = builtIn.profile('relay-board-opto-low-5v-1-no-indicator')!;
    expect(bare['input']).toMatchObject({ active: 'low', coupling: 'opto', indicator: 'none' });
    expect(bare['input']).not.toHaveProperty('indicator-drop');
    const transistor = builtIn.profile('relay-board-transistor-high-5v-1')!;
    expect(transistor['input']).toMatchObject({ active: 'high', coupling: 'transistor', indicator: 'none' });
    expect(transistor['input']).not.toHaveProperty('led-drop');
    expect(transistor.documents).not.toHaveProperty('coupler');
  });
});
