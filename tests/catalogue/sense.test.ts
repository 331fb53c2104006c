import { describe, expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { overlay } from '../../src/catalogue/overlay.js';
import type { Fields, Profile } from '../../src/catalogue/profile.js';
import { sense } from '../../src/catalogue/sense.js';

/** What is said of a good profile after a change for the worse, as 'path: sentence'. */
function said(id: string, change: Fields): readonly string[] {
  const spoilt = overlay(builtIn.profile(id)!, change) as Profile;
  return sense(spoilt, builtIn.profile).map(({ path, says }) => `${path.join('.')}: ${says}`);
}

const cite = ['practice', 'a test'] as const;
const limitsOf = (id: string): readonly Fields[] => builtIn.profile(id)!['limits'] as readonly Fields[];

describe('figures', () => {
  const spoilt: readonly [string, Fields, string][] = [
    ['no quantity', { inductance: { value: 'about 0.1', cite } }, 'inductance: about 0.1 is not inductance'],
    ['another dimension', { resistance: { value: '70 V', cite } }, 'resistance: 70 V is not resistance'],
    [
      'bounds out of order',
      { resistance: { value: '80 / 70 / 60 Ω', cite } },
      'resistance: 80 / 70 / 60 Ω is not resistance',
    ],
    [
      'a name nobody reads',
      { resistence: { value: '70 Ω', cite } },
      'resistence: nobody would read a figure called resistence',
    ],
    ['no source', { inductance: { value: '100 mH' } }, 'inductance: has no source'],
    [
      'a source that is not listed',
      { inductance: { value: '100 mH', cite: ['sheet', 'p. 1'] } },
      'inductance: cites ["sheet","p. 1"], which says nothing',
    ],
    [
      'a source without a place',
      { inductance: { value: '100 mH', cite: ['memory', ' '] } },
      'inductance: cites ["memory"," "], which says nothing',
    ],
  ];
  test.each(spoilt)('%s is found', (_, change, expected) => {
    expect(said('relay-coil-5v-70r', change)).toEqual([expected]);
  });

  const row = (...points: readonly [string, string][]): Fields => ({
    'forward-voltage': points.map(([value, at]) => ({ value, at, cite })),
  });
  test('points that run backwards, or at nothing, are found', () => {
    expect(said('led-blue-5mm', row(['3.0 V', '10 mA'], ['2.7 V', '2 mA']))).toHaveLength(1);
    expect(said('led-blue-5mm', row(['3.0 V', '10 mA'], ['2.7 V', '20 mA']))).toEqual([
      'forward-voltage.1: should go up from the point above it',
    ]);
    expect(
      said('led-blue-5mm', {
        'forward-voltage': [
          { value: '2 V', cite },
          { value: '3 V', cite },
        ],
      }),
    ).toHaveLength(1);
    expect(said('led-blue-5mm', row(['2.7 V', '2 mA'], ['3.0 V', '10 mA']))).toEqual([]);
  });

  test('a document that nothing cites is found', () => {
    const change = { documents: { idle: { title: 'A', publisher: 'B', year: 2020 } } };
    expect(said('led-blue-5mm', change)).toEqual(['documents.idle: is cited by nothing']);
  });

  test('a document without edition, and a profile without title, are found', () => {
    expect(said('diode-1n4007', { documents: { second: { revision: null, number: null } } })).toEqual([
      'documents.second: needs a title, a publisher, and a number, revision or year',
    ]);
    expect(said('diode-1n4007', { title: 'diode-1n4007' })).toEqual(['title: a profile needs a title']);
  });
});

describe('chips', () => {
  const chip = (change: Fields): readonly string[] => said('atmega328p', change);
  const limit = (row: Fields): readonly string[] =>
    chip({ limits: [...limitsOf('atmega328p'), { grade: 'operating', cite, ...row }] });

  test('a limit of pins that are not there is found', () => {
    expect(limit({ 'applies-to': ['PE0..PE3'], name: 'new', source: '10 mA' })[0]).toContain(
      'no such pin: PE0, PE1, PE2, PE3',
    );
    expect(limit({ 'applies-to': { each: ['PC9'] }, source: '10 mA' })[0]).toContain('no such pin: PC9');
    expect(limit({ 'applies-to': 'all-pns', source: '10 mA' })[0]).toContain('all-pns is no scope');
  });

  test('a pin in two sums of one direction is found, in sums of two directions it is right', () => {
    expect(limit({ 'applies-to': ['PC0'], name: 'twice', source: '10 mA' })[0]).toContain('in two source sums: PC0');
    expect(limit({ 'applies-to': ['ADC7'], name: 'new', sink: '10 mA' })[0]).toContain('in two sink sums: ADC7');
    expect(limit({ 'applies-to': ['PC6'], name: 'new', either: '10 mA' })).toEqual([]);
  });

  test('two sums of one direction and one name, or a sum without a name, are found', () => {
    expect(limit({ 'applies-to': ['ADC6'], name: 'left group', source: '10 mA' }).join()).toContain(
      'called left group',
    );
    expect(limit({ 'applies-to': ['PC6'], either: '10 mA' })[0]).toContain('needs a name');
  });

  test('a working limit above the damage limit, and a row that limits nothing, are found', () => {
    expect(limit({ 'applies-to': 'each-pin', source: '50 mA' })[0]).toContain('above the damage limit');
    expect(limit({ 'applies-to': 'each-pin' })[0]).toContain('limits nothing');
    expect(limit({ 'applies-to': 'each-pin', source: 'much' })[0]).toContain('much is no current');
  });

  test('a limit without a source is found', () => {
    expect(limit({ 'applies-to': 'all-pins', source: '150 mA', cite: undefined }).join()).toContain('has no source');
  });

  test('output levels on the wrong side of the supply are found', () => {
    const level = (value: string): Fields => ({ 'output-high': [{ value, at: '20 mA', supply: '5 V', cite }] });
    expect(chip(level('min 0.9 V'))).toEqual(['output-high.0: is no output level under load']);
    expect(chip(level('min 5.2 V'))).toHaveLength(1);
    expect(chip(level('min 4.2 V'))).toEqual([]);
  });

  test('a drive setting that the chip has not is found', () => {
    expect(said('rp2040', { drive: { default: '3 mA' } })).toEqual(['drive.default: is none of the settings']);
    expect(said('rp2040', { drive: { settings: ['4 mA'] } }).length).toBeGreaterThan(1);
  });

  test('reserved, strapping and input-only pins that are not there are found', () => {
    expect(chip({ reserved: { PX1: 'nothing' } })).toEqual(['reserved.PX1: no such pin: PX1']);
    expect(chip({ 'input-only': ['PX2'] })).toEqual(['input-only: no such pin: PX2']);
    expect(chip({ 'at-boot': { PX3: 'high' } })).toEqual(['at-boot.PX3: no such pin: PX3']);
  });
});

describe('boards', () => {
  const board = (change: Fields): readonly string[] => said('atmega328p-5v-board', change);

  test('pins, rails and parts that lead nowhere are found', () => {
    expect(board({ pins: { D14: 'PE0' } })).toEqual(['pins.D14: atmega328p has no pin PE0']);
    expect(board({ pins: { D14: 'PB0' } })).toEqual(['pins: two header pins are one pin of the chip']);
    expect(board({ rails: { '3v3': { from: 'regulator-33' } } })).toEqual(['rails.3v3.from: there is no regulator-33']);
    expect(board({ parts: { 'fuse-usb': { from: 'usb-b' } } })).toEqual(['parts.fuse-usb.from: there is no usb-b']);
    expect(board({ 'chip-supply': '5V' })).toEqual(['chip-supply: there is no rail 5V']);
    expect(board({ 'draws-from': 'usb' })).toEqual(['draws-from: there is no rail usb']);
    expect(board({ chip: 'atmega' })).toEqual(['chip: there is no chip atmega']);
    expect(board({ 'pin-leds': { 'led-d13': { pin: 'D99' } } })).toEqual(['pin-leds.led-d13.pin: there is no pin D99']);
  });

  test('a supply tree that feeds itself is found', () => {
    const says = board({ parts: { 'regulator-5v': { from: '5v' } } });
    expect(says).toContain('parts.regulator-5v.from: regulator-5v feeds itself');
  });

  test('an inlet and a rail of one name are found', () => {
    expect(board({ inlets: { vin: {} } })).toEqual(['rails.vin.from: two things are called vin']);
  });
});

describe('parts', () => {
  test('a coil whose power is not V²/R is found, rounding is not', () => {
    const power = (value: string): readonly string[] => said('relay-coil-12v-400mw', { power: { value, cite } });
    expect(power('450 mW')).toEqual(['power: is not V²/R']);
    expect(power('415 mW')).toEqual([]);
  });

  test('a coil that pulls in above its maximum, or below its drop-out, is found', () => {
    const coil = (change: Fields): readonly string[] => said('relay-coil-5v-70r', change);
    expect(coil({ maximum: { value: '4.5 V', cite } })).toHaveLength(1);
    expect(coil({ 'drop-out': { value: 'max 80 %', cite } })).toHaveLength(1);
    expect(coil({ 'pull-in': { value: 'max 3.75 V', cite } })).toEqual([]);
    expect(coil({ voltage: null })).toEqual([': a coil needs its voltage']);
  });

  test('a relay board with figures missing or left over is found', () => {
    expect(said('relay-board-opto-low-5v-1', { input: { 'transfer-ratio': null } })).toEqual([
      'input: needs transfer-ratio',
    ]);
    expect(said('relay-board-opto-low-5v-1', { input: { indicator: 'none' } })).toEqual([
      'input.indicator-drop: belongs to nothing here',
    ]);
    expect(said('relay-board-opto-low-5v-1', { coil: { power: { value: '1 W', cite } } })).toEqual([
      'coil.power: is not V²/R',
    ]);
  });

  test('a relay board known by its levels alone needs both of them and its current, and nothing of what is inside', () => {
    for (const name of ['on-above', 'off-below', 'current'])
      expect(said('relay-board-opto-selectable-high-5v-1', { input: { [name]: null } })).toEqual([
        `input: needs ${name}`,
      ]);
    expect(said('relay-board-opto-selectable-high-5v-1', {})).toEqual([]);
  });

  test('an array whose package carries less than one channel, or more than all, is found', () => {
    const amps = (value: string): readonly string[] =>
      said('darlington-array-7', { 'package-current': { value, cite } });
    expect([amps('0.4 A').length, amps('4 A').length, amps('3.5 A').length]).toEqual([1, 1, 0]);
  });

  test('a port that gives more before it was asked than after is found', () => {
    expect(said('usb2-port', { 'unconfigured-current': { value: '600 mA', cite } })).toHaveLength(1);
    expect(said('usb2-port', { regulated: null })).toEqual([': does not say whether it is regulated']);
  });
});
