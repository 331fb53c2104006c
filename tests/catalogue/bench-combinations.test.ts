/**
 * Twenty builds that people have on their benches, with parts of the catalogue alone: a controller, a relay board and three
 * other things, over all families of controllers and kinds of supplies. Each file under `bench/` has its sum worked by hand.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { parse } from 'yaml';
import { says } from '../../src/wording/sentences.js';
import { judged } from '../checks/judged.js';

/** Its verdict, and the finding that tells most of it: verdict, rule, what it is about, and a figure in its sentence. */
const COMBINATIONS: Readonly<Record<string, readonly [string, string?, string?]>> = {
  'air-quality': ['strain', 'thin regulator-current main.regulator-3v3', '769 mA'],
  'balcony-lights': ['strain', 'strain level-high strip.signal', '3.67 V'],
  'bird-bath': ['strain', 'strain driver-drive valve.1', '125 µA'],
  'button-box': ['strain', 'strain pin-current lit.1', '11.7 mA'],
  camper: ['strain', 'strain coil-voltage lights.1', '15.0 V'],
  cinema: ['strain', 'strain supply-current adapter', '7.35 A'],
  doorbell: ['strain', 'strain driver-drive bell.1', '154 µA'],
  feeder: ['strain', 'strain driver-drive lamp.1', '154 µA'],
  'greenhouse-beds': ['strain', 'strain driver-drive pump', '4.45 V'],
  'hall-lamp': ['strain', 'strain regulator-dropout main.regulator-3v3', '2.84 V'],
  'heating-valve': ['strain', 'strain driver-drive valve', '3.44 V'],
  lantern: ['strain', 'strain coil-pull-in lamp.1', '3.92 V'],
  letterbox: ['thin', 'thin regulator-heat main.regulator-3v3', '140 °C'],
  'pump-house': ['breach', 'breach coil-voltage pumps.1', '17.7 V'],
  rover: ['strain', 'strain load-voltage wheel', '2.71 V'],
  sauna: ['strain', 'strain load-voltage stove', '2.71 V'],
  'shed-lights': ['sound'],
  terrarium: ['strain', 'thin regulator-heat main.regulator-5v', '120 °C'],
  'weather-mast': ['breach', 'breach regulator-current main.regulator-3v3', '169 mA'],
  workshop: ['strain', 'strain load-voltage furnace', '3.58 V'],
};

const folder = new URL('bench/', import.meta.url).pathname;
const textOf = (name: string): string => readFileSync(join(folder, `${name}.yaml`), 'utf8');

describe('a bench with', () => {
  test.each(Object.entries(COMBINATIONS))(
    '%s has every figure that it needs, and its verdict',
    (name, [verdict, tells, figure]) => {
      const judgement = judged(textOf(name));
      expect(judgement.accounts.filter((a) => a.verdict === 'unproven').map((a) => a.account.id)).toEqual([]);
      expect(judgement.findings.filter((f) => f.verdict === 'unproven').map((f) => f.rule)).toEqual([]);
      expect(judgement.verdict).toBe(verdict);
      const told = judgement.findings.filter((f) => `${f.verdict} ${f.rule} ${f.about}` === tells);
      expect(told.map(says)).toEqual(tells === undefined ? [] : [expect.stringContaining(figure!)]);
    },
  );

  test('no other thing than those of the table', () => {
    expect(readdirSync(folder).sort()).toEqual(Object.keys(COMBINATIONS).map((name) => `${name}.yaml`));
  });

  test('every family of controllers, and ports, chargers, adapters, batteries and converters', () => {
    const used = Object.keys(COMBINATIONS).map((name) => parse(textOf(name)) as Readonly<Record<string, object>>);
    const boards = used.flatMap(({ controllers }) => Object.values(controllers!).map(({ board }) => String(board)));
    const families = new Set(builtIn.ids('controller').map((id) => /^[a-z]+/.exec(id)![0]));
    expect(new Set(boards.map((id) => /^[a-z]+/.exec(id)![0]))).toEqual(families);
    expect(new Set(boards).size).toBe(boards.length);
  });
});
