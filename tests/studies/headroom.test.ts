/** Headroom: n more fit and n + 1 do not, by audits of projects that have as many. */
import { describe, expect, test } from 'vitest';
import type { Headroom } from '../../src/studies/headroom.js';
import { headroomOf } from '../../src/studies/headroom.js';
import { originalOf } from '../../src/studies/one-more.js';
import { SETTINGS, dataOf, judgedWith, sampleData } from './studied.js';

function headroom(data: unknown, load: string): Headroom {
  const judgement = judgedWith(data);
  const original = originalOf(judgement.project, data, load);
  if (original === undefined) throw new Error(`no ${load}`);
  return headroomOf(data, 'case.yaml', SETTINGS, judgement, original);
}

const failing = (data: unknown): string[] =>
  judgedWith(data)
    .findings.filter((f) => f.verdict === 'breach' || f.verdict === 'strain')
    .map((f) => f.rule);

/** So many lamps on the pins of a list. */
const lamps = (pins: readonly string[], limits = ''): unknown =>
  dataOf(`ampledger: 1
title: Lamps
ambient: 20 °C
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } }${limits} } }
loads:
${pins.map((pin, k) => `  lamp-${k + 1}: { part: led-red-5mm, pin: ${pin}, series: 220 Ω }`).join('\n')}
`);

describe('lamps on one controller', () => {
  const one = headroom(lamps(['D2']), 'lamp-1');

  test('so many more fit as an audit with all of them allows, and not one more', () => {
    expect(one.fits).toBeGreaterThan(4);
    const pins = ['D2', ...one.placed];
    expect(failing(lamps(pins))).toEqual([]);
    const stop = one.stops[0];
    if (stop === undefined) expect(one.ended).toBe('no-pin');
    else expect(stop.fits).toBe(one.fits);
  });

  test('are spread over the groups of pins, so that no group breaks while another has room', () => {
    const inOneGroup = ['D2', 'D0', 'D1', 'D3', 'D4', 'A0', 'A1', 'A2', 'A3', 'A4', 'A5'];
    const broken = inOneGroup.findIndex((_, k) => failing(lamps(inOneGroup.slice(0, k + 1))).length > 0);
    if (broken >= 0) expect(one.fits + 1).toBeGreaterThanOrEqual(broken);
    expect(new Set(one.placed).size).toBe(one.placed.length);
    expect(one.placed).not.toContain('D2');
  });

  test('hang where the sums of the pins have the most room', () => {
    // D8 to D12 and D2 to D4, A0 to A5 are two sums.
    const crowded = headroom(lamps(['D8', 'D9', 'D10', 'D11', 'D2']), 'lamp-1');
    expect(crowded.placed.slice(0, 2).filter((pin) => /^(?:D[0-4]|A[0-5])$/.test(pin))).toHaveLength(2);
  });

  test('but not on a pin that bears less, where another one breaks nothing', () => {
    // Of the roomy sum only analog pins are free.
    const weak = ', limits: [{ applies-to: { each: [PC0..PC5] }, source: 5 mA, grade: operating }]';
    const { placed, fits, stops } = headroom(
      lamps(['D2', 'D3', 'D4', 'D8', 'D9', 'D10', 'D11', 'D12'], weak),
      'lamp-1',
    );
    expect(fits).toBeGreaterThan(0);
    expect(placed.filter((pin) => pin.startsWith('A'))).toEqual([]);
    // What is done to each copy alike is said once.
    const said = stops.flatMap(({ lifts }) => lifts).filter((lift) => lift.includes('those added'));
    expect(said.length).toBeGreaterThan(0);
    for (const lift of said)
      expect(lift.match(/with those added/g) ?? []).toHaveLength(lift.includes('with those added') ? 1 : 0);
  });

  test('the first thin finding comes before the first limit', () => {
    expect(one.withMargin).toBeLessThanOrEqual(one.fits);
    const kept = judgedWith(lamps(['D2', ...one.placed.slice(0, one.withMargin)]));
    expect(kept.findings.filter((f) => f.verdict !== 'note')).toEqual([]);
  });
});

describe('relay boards on a laptop’s port', () => {
  // In a stated mode there is no worst one to search for, which takes a while among so many boards.
  const data: unknown = {
    ...(sampleData('workshop-fan-3v3-logic-5v') as object),
    modes: { busy: { active: ['fan'] } },
  };
  const found = headroom(data, 'fan');
  const fans = (pins: readonly string[]): unknown => ({
    ...(data as object),
    loads: {
      ...((data as { loads: object }).loads as object),
      ...Object.fromEntries(
        pins.map((pin, k) => [
          `fan-${k + 2}`,
          {
            part: 'relay-board-opto-low-5v-1',
            inputs: { 1: pin },
            'logic-supply': 'main.vbus',
            'coil-supply': 'main.vbus',
            jumper: 'fitted',
            grounds: 'joined',
            isolation: 'not-needed',
          },
        ]),
      ),
    },
  });

  test('three more fit; the fourth asks more of the port than its 500 mA', () => {
    // By hand: 92 to 95 mA a board beside what the controller draws; the port gives 500 mA.
    expect(found.fits).toBe(3);
    expect(found.stops[0]).toMatchObject({ fits: 3, finding: { rule: 'supply-current', about: 'laptop' } });
    expect(failing(fans(['GP0', 'GP1', 'GP2']))).toEqual([]);
    expect(failing(fans(['GP0', 'GP1', 'GP2', 'GP3']))).toContain('supply-current');
  });

  test('what lifts the limit is told, and how far the next one is', () => {
    expect(found.stops[0]!.lifts.join()).toContain('Feed the coils of fan and those added from a supply of their own');
    expect(found.stops[1]!.fits).toBeGreaterThan(found.fits);
  });
});

test('the fifth relay of four on a laptop’s port does not fit', () => {
  const found = headroom(sampleData('greenhouse-vents-usb'), 'vents.1');
  expect(found.fits).toBe(0);
  expect(found.stops[0]!.finding.rule).toBe('supply-current');
  // The coils that are not sure to pull in are so without a fifth.
  expect(found.broken.map((f) => f.rule)).toEqual(Array(4).fill('coil-pull-in'));
});

test('a copy is on in the modes in which its original is', () => {
  const data = sampleData('seedling-house');
  const found = headroom(data, 'drip-valve');
  expect(found.ended).toBe('no-pin');
  expect(found.placed).toEqual(['A0', 'A1', 'A2', 'A3']);
});

test('a load that is always on has no pins to run out of', () => {
  const data = dataOf(`ampledger: 1
title: Sensors
supplies: { brick: { voltage: 5 V, current: 100 mA } }
loads:
  probe: { type: constant-current, current: 9 mA, supply: brick }
`);
  const found = headroom(data, 'probe');
  // 11 x 9 mA = 99 mA; 8 x 9 mA = 72 mA leave a fifth of it.
  expect(found).toMatchObject({ fits: 10, withMargin: 7 });
});
