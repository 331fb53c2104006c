/** Laws that hold of every ledger, whatever the project: what more load, more volts, fewer ohms or wider tolerances do. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Account } from '../../src/ledger/account.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { sized } from '../sizes.js';
import type { Data, Entry } from './projects.js';
import { projectOf, projects } from './projects.js';

/** Share of a figure that two solutions of the same may differ by: what the tangents of circuits not in question leave out. */
const ROOM = 1e-4;
/** Amperes, volts, watts or kelvins below which nothing is compared. */
const TRACE = 1e-6;

/** What is off elsewhere lets the shared feed sag less, so that a forbidden state may draw a thousandth more. */
const SAG = 10;

type Loads = Readonly<Record<string, Entry>>;

const loadsOf = (data: Data): Loads => data['loads'] as Loads;
const keyOf = (a: Account): string => `${a.kind} ${a.id} ${a.title} ${a.quantity} ${a.direction}`;

const booksOf = (data: Data): ReadonlyMap<string, Account> =>
  new Map(
    ledgerOf(projectOf(data))
      .accounts.filter((a) => a.draw !== undefined)
      .map((a) => [keyOf(a), a]),
  );

/** Accounts that two projects both have. */
const pairs = (before: Data, after: Data): { readonly key: string; readonly was: Account; readonly is: Account }[] => {
  const now = booksOf(after);
  return [...booksOf(before)].flatMap(([key, was]) => {
    const is = now.get(key);
    return is === undefined ? [] : [{ key, was, is }];
  });
};

/**
 * Heat is a product of what rises and what falls with a rail, and an undriven transistor loses the more the less is asked of
 * it: at the ends of the corners these are off by a little. Nothing else is.
 */
const LITTLE = 5e-3;
const room = (a: Account): number => {
  const share = a.quantity === 'temperature' || (a.kind === 'coil' && a.quantity === 'voltage') ? LITTLE : ROOM;
  return share * Math.max(Math.abs(a.draw!.min), Math.abs(a.draw!.max)) + TRACE;
};

/** The current of one circuit's own: that of an LED, a coupler, a driver, a clamp. */
const isOwnCurrent = (a: Account): boolean =>
  a.quantity === 'current' && a.direction === 'at-most' && ['input', 'driver', 'clamp'].includes(a.kind);

/** The same project with other texts in place of some, wherever they stand. */
const rewritten = (data: Data, change: (text: string) => string): Data =>
  JSON.parse(JSON.stringify(data), (_, value: unknown) => (typeof value === 'string' ? change(value) : value)) as Data;

/** Interlocks between the circuits of a project. */
const interlocks = (data: Data): fc.Arbitrary<readonly Entry[]> => {
  const circuits = projectOf(data).circuits.flatMap((c) => (c.always ? [] : [c.id]));
  if (circuits.length < 2) return fc.constant([]);
  const some = fc.uniqueArray(fc.constantFrom(...circuits), { minLength: 2, maxLength: 4 });
  const by = fc.constant('firmware');
  return fc.array(
    fc.oneof(
      fc.record({ 'at-most': fc.constant(1), of: some, by }),
      some.map(([a, b]) => ({ excludes: a, for: b, by: 'firmware' })),
    ),
    { minLength: 1, maxLength: 2 },
  );
};

const RUNS = { numRuns: sized(14, 600) };

/** On a regulated rail that gives way only in the weakest corner the pins bring the same whether its coil is on or not. */
const EITHER_WAY: Data = {
  ampledger: 1,
  title: 'Either way',
  ambient: '-10 to 60 °C',
  supplies: { port: { type: 'usb2-port' } },
  controllers: { main: { board: 'esp32-devkit', powered: { usb: 'port' } } },
  loads: {
    pump: {
      type: 'dc-motor',
      supply: 'main.5v',
      run: '60 to 120 mA',
      stall: '300 mA',
      driver: { part: 'nmos-ao3400a', pin: 'GPIO4', 'pull-down': '100 kΩ' },
      clamp: { part: 'diode-schottky-1a' },
    },
    coil: {
      part: 'relay-coil-5v-70r',
      supply: 'main.3v3',
      clamp: { part: 'diode-1n4148' },
      driver: { part: 'pnp-2n2907a', 'base-resistor': '680 Ω ±5 %', 'pull-up': '10 kΩ ±5 %', pin: 'GPIO5' },
    },
    lamp: { part: 'led-red-5mm', series: '82 Ω ±10 %', 'joined-pins': ['GPIO12', 'GPIO13'] },
  },
};

describe('a ledger', () => {
  test('gives a source no less to do when a load is added', () => {
    fc.assert(
      fc.property(projects({ most: 5 }), fc.nat(100), (data, pick) => {
        const names = Object.keys(loadsOf(data));
        const added = names[pick % names.length]!;
        const before = {
          ...data,
          loads: Object.fromEntries(Object.entries(loadsOf(data)).filter(([n]) => n !== added)),
        };
        for (const { key, was, is } of pairs(before, data))
          if (is.kind === 'supply')
            expect(is.draw!.max, `${key}, with ${added}`).toBeGreaterThanOrEqual(was.draw!.max - room(was));
      }),
      RUNS,
    );
  });

  test('lets no inlet and no fuse on a stiff port carry less when a load is added', () => {
    fc.assert(
      fc.property(projects({ most: 5, boards: ['usb'] }), fc.nat(100), (data, pick) => {
        const names = Object.keys(loadsOf(data));
        const added = names[pick % names.length]!;
        const before = {
          ...data,
          loads: Object.fromEntries(Object.entries(loadsOf(data)).filter(([n]) => n !== added)),
        };
        for (const { key, was, is } of pairs(before, data))
          if (is.kind === 'inlet' || is.kind === 'fuse')
            expect(is.draw!.max, `${key}, with ${added}`).toBeGreaterThanOrEqual(was.draw!.max - room(was));
      }),
      RUNS,
    );
  });

  test('lets no circuit draw less of its own from higher supplies', () => {
    const higher = (text: string): string =>
      text
        .replace('5 V ±4 %', '5.1 V ±4 %')
        .replace('12 V ±5 %', '12.3 V ±5 %')
        .replace('9 V ±10 %', '9.2 V ±10 %')
        .replace('6 to 7.4 V', '6.1 to 7.5 V');
    fc.assert(
      // Of several things on one pin each lowers what is left for the others; a constant power is less current at more volts.
      fc.property(projects({ most: 5, without: ['shared', 'lit', 'converter'] }), (data) => {
        for (const { key, was, is } of pairs(data, rewritten(data, higher))) {
          if (!isOwnCurrent(is)) continue;
          expect(is.draw!.max, key).toBeGreaterThanOrEqual(was.draw!.max - room(was));
          expect(is.draw!.min, key).toBeGreaterThanOrEqual(was.draw!.min - room(was));
        }
      }),
      RUNS,
    );
  });

  test('lets no LED draw less behind a lower series resistance', () => {
    const lower = (text: string): string =>
      text
        .replace(/^(82|220|330|470) Ω/, (_, ohms: string) => `${Math.round(0.8 * Number(ohms))} Ω`)
        .replace(/^1 kΩ ±1/, '0.8 kΩ ±1');
    fc.assert(
      fc.property(projects({ most: 5 }), fc.nat(100), (data, pick) => {
        const leds = Object.entries(loadsOf(data)).filter(([, e]) => 'series' in e);
        fc.pre(leds.length > 0);
        const [name, entry] = leds[pick % leds.length]!;
        const changed = { ...entry, series: lower(String(entry['series'])) };
        for (const { key, was, is } of pairs(data, { ...data, loads: { ...loadsOf(data), [name]: changed } })) {
          if (!isOwnCurrent(is) || is.id !== name) continue;
          expect(is.draw!.max, key).toBeGreaterThan(was.draw!.max - room(was));
          expect(is.draw!.min, key).toBeGreaterThan(was.draw!.min - room(was));
        }
      }),
      RUNS,
    );
  });

  test('is narrowed in no account by a wider tolerance', () => {
    const wider = (text: string): string => text.replace(/±(\d+) %$/, (_, share: string) => `±${2 * Number(share)} %`);
    fc.assert(
      // Of several things on one pin each lowers what is left for the others.
      fc.property(projects({ most: 5, without: ['shared', 'lit'] }), (data) => {
        for (const { key, was, is } of pairs(data, rewritten(data, wider))) {
          // A part that is not driven all the way is hottest somewhere between its ends.
          if (is.quantity === 'temperature') continue;
          // A wider supply may be another regulator's worst input: what is judged is the end towards the limit.
          if (is.direction === 'at-least') expect(is.draw!.min, key).toBeLessThanOrEqual(was.draw!.min + room(was));
          else expect(is.draw!.max, key).toBeGreaterThanOrEqual(was.draw!.max - room(was));
        }
      }),
      RUNS,
    );
  });

  test('is the same whatever order the loads are written in', () => {
    fc.assert(
      fc.property(projects({ most: 6 }), (data) => {
        const turned = { ...data, loads: Object.fromEntries(Object.entries(loadsOf(data)).toReversed()) };
        const [before, after] = [booksOf(data), booksOf(turned)];
        expect([...after.keys()].sort()).toEqual([...before.keys()].sort());
        for (const [key, was] of before)
          for (const end of ['min', 'typ', 'max'] as const)
            expect(Math.abs(after.get(key)!.draw![end] - was.draw![end]), `${key}, ${end}`).toBeLessThanOrEqual(
              room(was),
            );
      }),
      { ...RUNS, examples: [[EITHER_WAY]] },
    );
  });

  test('books entries that add up to both ends of every sum of currents', () => {
    let booked = 0;
    fc.assert(
      fc.property(projects(), (data) => {
        for (const [key, { entries, draw }] of booksOf(data)) {
          if (entries.length === 0) continue;
          booked++;
          for (const end of ['min', 'max'] as const) {
            const sum = entries.reduce((amps, e) => amps + e[end], 0);
            expect(Math.abs(sum - draw![end]), `${key}, ${end}`).toBeLessThanOrEqual(
              1e-9 * Math.abs(draw![end]) + 1e-12,
            );
          }
        }
      }),
      { numRuns: sized(64, 1500) },
    );
    expect(booked).toBeGreaterThan(1000);
  });

  test('has no worse worst case for an interlock', () => {
    const locked = projects({ most: 5 }).chain((data) =>
      fc.record({ data: fc.constant(data), rules: interlocks(data) }),
    );
    fc.assert(
      fc.property(locked, ({ data, rules }) => {
        for (const { key, was, is } of pairs(data, { ...data, interlocks: rules })) {
          if (is.direction === 'at-least')
            expect(is.draw!.min, key).toBeGreaterThanOrEqual(was.draw!.min - SAG * room(was));
          else expect(is.draw!.max, key).toBeLessThanOrEqual(was.draw!.max + SAG * room(was));
        }
      }),
      { numRuns: sized(20, 900) },
    );
  });

  test('has in the runaway state no account that is better than what firmware promises', () => {
    let runaway = 0;
    const locked = projects({ most: 6 }).chain((data) =>
      fc.record({ data: fc.constant(data), rules: interlocks(data) }),
    );
    fc.assert(
      fc.property(locked, ({ data, rules }) => {
        const ledger = ledgerOf(projectOf({ ...data, interlocks: rules }));
        const promised = new Map(ledger.accounts.map((a) => [keyOf(a), a]));
        for (const a of ledger.runaway) {
          const p = promised.get(keyOf(a));
          if (a.draw === undefined || p?.draw === undefined) continue;
          runaway++;
          if (a.direction === 'at-least') expect(a.draw.min, keyOf(a)).toBeLessThanOrEqual(p.draw.min + room(p));
          else expect(a.draw.max, keyOf(a)).toBeGreaterThanOrEqual(p.draw.max - room(p));
        }
      }),
      { numRuns: sized(30, 900) },
    );
    expect(runaway).toBeGreaterThan(20);
  });
});
