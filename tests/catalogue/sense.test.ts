import { describe, expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { overlay } from '../../src/catalogue/overlay.js';
import type { Fields, Profile } from '../../src/catalogue/profile.js';
import { sense } from '../../src/catalogue/sense.js';
import { senseTwins } from '../../src/catalogue/sense-twins.js';

/** What is said of a good profile after a change for the worse, as 'path: sentence'. */
function said(id: string, change: Fields): readonly string[] {
  const spoilt = overlay(builtIn.profile(id)!, change) as Profile;
  return sense(spoilt, builtIn.profile).map(({ path, says }) => `${path.join('.')}: ${says}`);
}

/** The same without the documents that only what was changed had cited. */
const physics = (id: string, change: Fields): readonly string[] =>
  said(id, change).filter((each) => !each.endsWith('no figure cites this document'));

const cite = ['practice', 'a test'] as const;
const limitsOf = (id: string): readonly Fields[] => builtIn.profile(id)!['limits'] as readonly Fields[];

describe('figures', () => {
  const spoilt: readonly [string, Fields, string][] = [
    ['no quantity', { inductance: { value: 'about 0.1', cite } }, 'inductance: `about 0.1` is no quantity'],
    ['another dimension', { resistance: { value: '70 V', cite } }, 'resistance: `70 V` is a voltage'],
    [
      'bounds out of order',
      { resistance: { value: '80 / 70 / 60 Ω', cite } },
      'resistance: `80 / 70 / 60 Ω` is not in order',
    ],
    [
      'a name nobody reads',
      { resistence: { value: '70 Ω', cite } },
      'resistence: nobody would read a figure called `resistence`',
    ],
    ['no source', { inductance: { value: '100 mH' } }, 'inductance: this has no source'],
    [
      'a source that is not listed',
      { inductance: { value: '100 mH', cite: ['sheet', 'p. 1'] } },
      'inductance: the source ["sheet","p. 1"] says nothing',
    ],
    [
      'a source without a place',
      { inductance: { value: '100 mH', cite: ['memory', ' '] } },
      'inductance: the source ["memory"," "] says nothing',
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
      'forward-voltage.1: the figure should go up from the point above it',
    ]);
    expect(
      said('led-blue-5mm', {
        'forward-voltage': [
          { value: '2.8 V', cite },
          { value: '3 V', cite },
        ],
      }),
    ).toHaveLength(1);
    expect(said('led-blue-5mm', row(['2.7 V', '2 mA'], ['3.0 V', '10 mA']))).toEqual([]);
  });

  test('a document that nothing cites is found', () => {
    const change = { documents: { idle: { title: 'A', publisher: 'B', year: 2020 } } };
    expect(said('led-blue-5mm', change)).toEqual(['documents.idle: no figure cites this document']);
  });

  test('a document without edition, and a profile without title, are found', () => {
    expect(said('diode-1n4007', { documents: { second: { revision: null, number: null } } })).toEqual([
      'documents.second: a document needs a title, a publisher, and a number, revision or year',
    ]);
    expect(said('diode-1n4007', { title: 'diode-1n4007' })).toEqual(['title: a profile needs a title']);
  });
});

describe('chips', () => {
  const chip = (change: Fields): readonly string[] => physics('atmega328p', change);
  const limit = (row: Fields): readonly string[] =>
    chip({ limits: [...limitsOf('atmega328p'), { grade: 'operating', cite, ...row }] });

  test('a limit of pins that are not there is found', () => {
    expect(limit({ 'applies-to': ['PE0..PE3'], name: 'new', source: '10 mA' })[0]).toContain(
      'there is no such pin: PE0, PE1, PE2, PE3',
    );
    expect(limit({ 'applies-to': { each: ['PC9'] }, source: '10 mA' })[0]).toContain('there is no such pin: PC9');
    expect(limit({ 'applies-to': 'all-pns', source: '10 mA' })[0]).toContain('`all-pns` is no scope');
  });

  test('a pin in two sums of one direction is found, in sums of two directions it is right', () => {
    expect(limit({ 'applies-to': ['PC0'], name: 'twice', source: '10 mA' })[0]).toContain('in two source sums: PC0');
    expect(limit({ 'applies-to': ['ADC7'], name: 'new', sink: '10 mA' })[0]).toContain('in two sink sums: ADC7');
    expect(limit({ 'applies-to': ['PC6'], name: 'new', either: '10 mA' })).toEqual([]);
  });

  test('sums of another package, or at another temperature, may have the same pins and names', () => {
    const rows = (...conditions: readonly Fields[]): readonly string[] =>
      chip({
        limits: conditions.map((when, i) => ({
          'applies-to': ['PC0', `PC${i + 1}`],
          name: 'group',
          source: '10 mA',
          grade: 'operating',
          when,
          cite,
        })),
      });
    expect(rows({ package: 'QFN-32' }, { package: 'DIP-28' })).toEqual([]);
    expect(rows({ temperature: '-40 to 25 °C' }, { temperature: '25 to 125 °C' })).toEqual([]);
    for (const when of [{ package: 'QFN-32' }, {}])
      expect(rows({ package: 'QFN-32' }, when)).toEqual([
        'limits.1.name: two source sums are called group',
        'limits.1: these pins are in two source sums: PC0',
      ]);
  });

  test('two sums of one direction and one name, or a sum without a name, are found', () => {
    expect(limit({ 'applies-to': ['ADC6'], name: 'left group', source: '10 mA' }).join()).toContain(
      'called left group',
    );
    expect(limit({ 'applies-to': ['PC6'], either: '10 mA' })[0]).toContain('needs a name');
  });

  test('a working limit above the damage limit, and a row that limits nothing, are found', () => {
    expect(limit({ 'applies-to': 'each-pin', source: '50 mA' })[0]).toContain(
      '50.0 mA, operating, is above the absolute limit of the same pins, 40.0 mA',
    );
    expect(limit({ 'applies-to': 'each-pin' })[0]).toContain('the row limits nothing');
    expect(limit({ 'applies-to': 'each-pin', source: 'much' })[0]).toContain('much is no current');
  });

  test('a characterised figure above a working limit is found where both can hold, and only there', () => {
    const rows = (...more: readonly Fields[]): readonly string[] =>
      chip({ limits: more.map((row) => ({ 'applies-to': 'each-pin', cite, ...row })) });
    const working = { source: '10 mA', grade: 'operating', when: { supply: '1.8 to 4 V' } };
    const tested = { source: '15 mA', grade: 'characterised' };
    expect(rows(working, tested)).toEqual([
      'limits.1.source: 15.0 mA, characterised, is above the operating limit of the same pins, 10.0 mA',
    ]);
    expect(rows(working, { ...tested, when: { supply: '4 to 5.5 V' } })).toEqual([]);
    expect(rows(working, { ...tested, when: { supply: '4 V' } })).toHaveLength(1);
    expect(rows({ ...working, when: { drive: '4 mA' } }, { ...tested, when: { drive: '8 mA' } })).toEqual([]);
    expect(rows({ ...working, source: undefined, either: '10 mA' }, tested)).toHaveLength(1);
    expect(rows({ ...working, source: undefined, sink: '10 mA' }, tested)).toEqual([]);
  });

  test('a few pins may bear less than all, not more than the damage limit of all', () => {
    const rows = (few: Fields, ...more: readonly Fields[]): readonly string[] =>
      chip({
        limits: [
          { 'applies-to': 'each-pin', source: '40 mA', grade: 'absolute', cite },
          { 'applies-to': 'each-pin', source: '20 mA', grade: 'characterised', cite },
          { 'applies-to': { each: ['PC0'] }, cite, ...few },
          ...more,
        ],
      });
    expect(rows({ source: '3 mA', grade: 'operating' })).toEqual([]);
    expect(rows({ source: '60 mA', grade: 'characterised' })).toHaveLength(1);
    const own = { 'applies-to': { each: ['PC0', 'PC1'] }, source: '80 mA', grade: 'absolute', cite };
    expect(rows({ source: '60 mA', grade: 'characterised' }, own)).toEqual([]);
  });

  test('one sum may be stated in two grades or for two supplies, two sums of it may not', () => {
    const sum = { 'applies-to': ['PB0', 'PB1'], name: 'pair', source: '30 mA', grade: 'operating', cite };
    const sums = (more: Fields): readonly string[] => chip({ limits: [sum, { ...sum, ...more }] });
    expect(sums({ grade: 'absolute', source: '60 mA' })).toEqual([]);
    expect(sums({ grade: 'absolute', source: '20 mA' })[0]).toContain('above the absolute limit');
    expect(sums({ source: '20 mA' }).length).toBeGreaterThan(0);
    expect(sums({ name: 'other', grade: 'absolute', source: '60 mA' })[0]).toContain('in two source sums: PB0, PB1');
  });

  test('a level that is promised where the current does damage is found', () => {
    const level = (at: string, more: Fields = {}): Fields => ({
      'output-low': [{ value: 'max 0.9 V', at, supply: '5 V', cite, ...more }],
    });
    expect(chip(level('50 mA'))).toEqual([
      'output-low.0: the row promises a level at 50.0 mA, where 40.0 mA does damage',
    ]);
    expect(chip(level('40 mA', { pins: ['PB0'] }))).toEqual([]);
    expect(chip(level('41 mA', { pins: ['PB0'] }))).toHaveLength(1);
    expect(chip(level('20 mA', { pins: ['PX0'] }))).toEqual(['output-low.0.pins: there is no such pin: PX0']);
  });

  test('rows that imply resistances of quite different size are found', () => {
    const rows = (...ohms: readonly (readonly [value: string, at: string])[]): readonly string[] =>
      chip({ 'output-low': ohms.map(([value, at]) => ({ value, at, supply: '5 V', cite })) });
    expect(rows(['max 0.9 V', '20 mA'], ['max 0.9 V', '1 mA'])).toEqual([
      'output-low.1: the row implies 900 Ω of the pin, and one above it 45.0 Ω',
    ]);
    expect(rows(['max 0.9 V', '20 mA'], ['max 0.5 V', '5 mA'])).toEqual([]);
    expect(rows(['max 0 V', '20 mA'])).toHaveLength(1);
    expect(rows(['max 0.9 V', '0 mA'])).toEqual(['output-low.0: the row does not say at which current it holds']);
  });

  test('a limit without a source is found', () => {
    expect(limit({ 'applies-to': 'all-pins', source: '150 mA', cite: undefined }).join()).toContain('has no source');
  });

  test('output levels on the wrong side of the supply are found', () => {
    const level = (value: string): Fields => ({ 'output-high': [{ value, at: '20 mA', supply: '5 V', cite }] });
    expect(chip(level('min 0.9 V'))).toEqual([
      'output-high.0: min 0.9 V is no such level: it has to lie in the upper half of 5 V',
    ]);
    expect(chip(level('min 5.2 V'))).toHaveLength(1);
    expect(chip(level('min 4.2 V'))).toEqual([]);
  });

  test('a drive setting that the chip has not is found', () => {
    expect(said('rp2040', { drive: { default: '3 mA' } })).toEqual([
      'drive.default: the default is none of the settings',
    ]);
    expect(said('rp2040', { drive: { settings: ['4 mA'] } }).length).toBeGreaterThan(1);
    expect(said('rp2040', { drive: { defaults: { GPIO1: '3 mA', GPIO99: '4 mA' } } })).toEqual([
      'drive.defaults.GPIO1: the default of the pin is none of the settings',
      'drive.defaults.GPIO99: there is no such pin: GPIO99',
    ]);
  });

  test('reserved, strapping and input-only pins that are not there are found', () => {
    expect(chip({ reserved: { PX1: 'nothing' } })).toEqual(['reserved.PX1: there is no such pin: PX1']);
    expect(chip({ 'input-only': ['PX2'] })).toEqual(['input-only: there is no such pin: PX2']);
    expect(chip({ 'at-boot': { PX3: 'high' } })).toEqual(['at-boot.PX3: there is no such pin: PX3']);
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

  test('a regulator that cannot have the input it needs is found', () => {
    const regulator = (change: Fields): readonly string[] => board({ parts: { 'regulator-5v': change } });
    expect(regulator({ input: { value: 'max 6 V', cite } })).toEqual([
      'parts.regulator-5v.dropout: regulator-5v needs 6.30 V before it, and bears 6.00 V',
    ]);
    expect(regulator({ input: { value: 'max 6.5 V', cite } })).toEqual([]);
    expect(regulator({ input: { value: 'max 4 V', cite }, dropout: null })).toHaveLength(1);
  });

  test('a supply tree that feeds itself is found', () => {
    const says = board({ parts: { 'regulator-5v': { from: '5v' } } });
    expect(says).toContain('parts.regulator-5v.from: regulator-5v feeds itself');
  });

  test('a package that its chip does not tell apart is found, and one that is missing', () => {
    const of = (id: string, name: string | undefined): readonly string[] => said(id, { package: name });
    expect(of('atmega328p-5v-board', 'DIP-28')).toEqual(['package: limits of atmega328p are for these packages: none']);
    expect(of('atmega328p-5v-board', undefined)).toEqual([]);
    const samd = (name: string | undefined): readonly string[] =>
      said('atmega328p-5v-board', { chip: 'atsamd21', package: name }).filter((line) => line.startsWith('package'));
    expect(samd('48-pin')).toEqual([]);
    for (const wrong of ['TQFP48', undefined])
      expect(samd(wrong)).toEqual(['package: limits of atsamd21 are for these packages: 64-pin, 48-pin, 32-pin']);
  });

  test('an inlet and a rail of one name are found', () => {
    expect(board({ inlets: { vin: {} } })).toEqual(['rails.vin.from: two things are called vin']);
  });
});

describe('parts', () => {
  test('a coil whose power is not V²/R is found, rounding is not', () => {
    const power = (value: string): readonly string[] => said('relay-coil-12v-400mw', { power: { value, cite } });
    expect(power('450 mW')).toEqual(['power: 12 V across 360 Ω ±10 % is 400 mW, not 450 mW']);
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
      'input: the input of this relay board needs `transfer-ratio`',
    ]);
    expect(said('relay-board-opto-low-5v-1', { input: { indicator: 'none' } })).toEqual([
      'input.indicator-drop: `indicator-drop` belongs to nothing that this input has',
    ]);
    expect(said('relay-board-opto-low-5v-1', { coil: { power: { value: '1 W', cite } } })).toEqual([
      'coil.power: 5 V across 70 Ω ±10 % is 357 mW, not 1 W',
    ]);
  });

  test('a relay board known by its levels alone needs both of them and its current, and nothing of what is inside', () => {
    for (const name of ['on-above', 'off-below', 'current'])
      expect(said('relay-board-opto-selectable-high-5v-1', { input: { [name]: null } })).toEqual([
        `input: the input of this relay board needs \`${name}\``,
      ]);
    expect(said('relay-board-opto-selectable-high-5v-1', {})).toEqual([]);
  });

  test('a forward voltage that light of the colour cannot have is found', () => {
    const lit = (colour: string, value: string): readonly string[] =>
      physics('led-red-5mm', { colour, 'forward-voltage': { value, at: '20 mA', cite } });
    expect(lit('red', '1.8 / 2.0 / 2.4 V')).toEqual([]);
    expect(lit('red', '3.1 / 3.3 / 3.6 V')).toEqual([
      'forward-voltage: 3.1 / 3.3 / 3.6 V is no forward voltage of red light',
    ]);
    expect(lit('blue', '1.8 / 2.0 / 2.4 V')).toHaveLength(1);
    expect(lit('warm white', '2.8 / 3.1 / 3.6 V')).toEqual([]);
    expect(lit('infrared', '1.1 / 1.2 / 1.5 V')).toEqual([]);
    expect(lit('infrared', '1.8 / 3.2 / 3.4 V')).toHaveLength(1);
    expect(lit('of its own', '9 V')).toEqual([]);
    expect(said('atmega328p-5v-board', { 'pin-leds': { 'led-d13': { colour: 'blue' } } })).toHaveLength(2);
  });

  test('an array whose package carries less than one channel, or more than all, is found', () => {
    const amps = (value: string): readonly string[] =>
      said('darlington-array-7', { 'package-current': { value, cite } });
    expect([amps('0.4 A').length, amps('4 A').length, amps('3.5 A').length]).toEqual([1, 1, 0]);
  });

  test('a supply that gives less without load, or a battery that ends above its start, is found', () => {
    expect(physics('mains-adapter-unregulated-12v', { 'open-voltage': { value: '8 V', cite } })).toHaveLength(1);
    expect(physics('coin-cr2032', { 'end-voltage': { value: '3.6 V', cite } })).toHaveLength(1);
  });

  test('a port that gives more before it was asked than after is found', () => {
    expect(said('usb2-port', { 'unconfigured-current': { value: '600 mA', cite } })).toHaveLength(1);
    expect(said('usb2-port', { regulated: null })).toEqual([': the supply does not say whether it is `regulated`']);
  });
});

describe('two profiles for one thing', () => {
  const twin = (change: Fields): readonly string[] => {
    const spoilt = overlay({ ...builtIn.profile('led-red-5mm')!, id: 'twin', title: 'Another' }, change) as Profile;
    return senseTwins(spoilt, [spoilt, builtIn.profile('led-red-5mm')!, builtIn.profile('diode-1n4148')!]).map(
      ({ path, says }) => `${path.join('.')}: ${says}`,
    );
  };

  test('are found by their figures, whoever states these, and by their title', () => {
    expect(twin({})).toEqual([': the profile `led-red-5mm` states the same figures throughout']);
    expect(twin({ note: 'ours', documents: {} })).toHaveLength(1);
    expect(twin({ 'maximum-current': { value: '25 mA', cite } })).toEqual([]);
    expect(twin({ title: 'LED - red 5 mm', 'maximum-current': { value: '25 mA', cite } })).toEqual([
      'title: the profile `led-red-5mm` has the same title',
    ]);
  });
});

describe('parts of a supply tree, wires and connectors', () => {
  const figureOf = (value: string): Fields => ({ value, cite });

  test('a regulator without current, dropout, input or step is found', () => {
    expect(said('regulator-7805-to220', { current: null, dropout: null, input: null })).toEqual([
      ': a regulator needs the current it gives',
      ': a linear regulator needs its dropout',
      ': a regulator needs the most that its input bears',
      // The only documents of these figures.
      ...said('regulator-7805-to220', { current: null, dropout: null, input: null }).filter((s) =>
        s.startsWith('documents'),
      ),
    ]);
    expect(said('regulator-7805-to220', { type: 'switching-regulator' })).toContain(
      ': a switching regulator needs its step',
    );
  });

  test('a regulator that gives more than it gets is found', () => {
    expect(said('regulator-7805-to220', { input: figureOf('max 4 V') })).toContain(
      'input: the highest input is not above what comes out',
    );
    const gain = { type: 'switching-regulator', step: 'down', efficiency: figureOf('85 to 105 %') };
    expect(said('regulator-7805-to220', gain)).toContain('efficiency: a regulator gives less than it takes');
  });

  test('a fuse that trips below what it holds is found', () => {
    expect(said('fuse-ptc-500ma', { hold: figureOf('0.5 A'), trip: figureOf('0.5 A') })).toContain(
      'trip: the fuse trips at no more than it holds',
    );
  });

  test('a wire that is not copper of its gauge is found, a stranded one is not', () => {
    const metre = (value: string) => said('wire-awg24-pvc', { 'resistance-per-metre': figureOf(value) });
    expect(metre('84 to 105 mΩ')).toEqual([]);
    expect(metre('84 to 134 mΩ')).toEqual([
      'resistance-per-metre: the resistance is not that of copper of that thickness',
    ]);
    expect(metre('53 to 84 mΩ')).toEqual([
      'resistance-per-metre: the resistance is not that of copper of that thickness',
    ]);
  });

  test('a connector without a rating is found', () => {
    expect(said('connector-breadboard', { rating: null })).toEqual([': a connector needs its rating']);
  });
});

describe('transistors and clamps', () => {
  const figureOf = (value: string): Fields => ({ value, cite });

  test('a resistance at a gate voltage below the threshold, or beyond what the gate bears, is found', () => {
    expect(said('nmos-ao3400a', { threshold: figureOf('3 to 4 V') })).toEqual([
      'on-resistance: the resistance is stated at a gate voltage below the threshold',
    ]);
    expect(said('nmos-ao3400a', { 'gate-maximum': figureOf('8 V') })).toEqual([
      'on-resistance: the resistance is stated at a gate voltage beyond what the gate bears',
    ]);
  });

  test('a transistor that saturates with less than its least gain needs is found', () => {
    expect(said('npn-2n2222a', { 'forced-gain': figureOf('50') })).toEqual([
      'forced-gain: the forced gain is above the least gain',
    ]);
  });

  test('a clamp without its breakdown, or whose peak is below its steady current, is found', () => {
    expect(said('diode-1n4007', { type: 'zener' })).toEqual([
      ': a clamp of this type needs the voltage at which it clamps',
    ]);
    expect(said('diode-1n4148', { 'peak-current': figureOf('100 mA') })).toEqual([
      'peak-current: the peak current is below what it carries for ever',
    ]);
  });
});
