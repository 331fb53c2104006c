/** Cases of the rules about drivers. */
import type { Case } from './case.js';
import { onBoard, onChip, onSupplies } from './case.js';

/** 49 Ω and the MOSFET's 1 Ω on exactly 5 V: 100 mA, and 10 mW in the MOSFET. Its gate stands at 5 V. */
const mosfet = (figures: string): string =>
  `load: { type: resistor, resistance: 49 Ω, power: 5 W, supply: bench, driver: { type: nmos, pin: PB1, ${figures} } }`;
const nmos = ({
  at = '4.5 V',
  threshold = 'typ 2 V max 3 V',
  most = '1 A',
  bears = '30 V',
  heat = ', thermal-resistance: 100 K/W',
}) =>
  mosfet(
    `on-resistance: { value: 1 Ω, at: ${at} }, threshold: ${threshold}, maximum-current: ${most}, maximum-voltage: ${bears}${heat}`,
  );

/** The same with a part whose data sheet states 150 °C. */
const published = (heat: string): string =>
  mosfet(`on-resistance: { value: 1 Ω, at: 4.5 V }, thermal-resistance: ${heat}`).replace(
    'type: nmos',
    'part: nmos-ao3400a',
  );

/** 100 mA through an NPN whose base gets about 2 mA: (5 V - 0.7 V) / (25 Ω + 2.1 kΩ), twice as much typically being enough. */
const npn = (gain: string): string =>
  `load: { type: resistor, resistance: 50 Ω, power: 5 W, supply: bench, driver: { type: npn, pin: PB1, base-resistor: 2.1 kΩ, base-emitter: { value: 0.75 V, at: 2 mA }, maximum-current: 1 A, maximum-voltage: 30 V, thermal-resistance: 100 K/W${gain} } }`;

/**
 * 50 Ω behind a P-channel MOSFET on exactly 5 V whose gate hangs on a divider: with the pin high, 10 kΩ and 25 Ω above 90 kΩ
 * leave it 4.499 V, so 0.501 V from source to gate.
 */
const divided = (threshold: string): string =>
  onChip(
    `load: { type: resistor, resistance: 50 Ω, power: 5 W, supply: bench, driver: { type: pmos, pin: PB1, gate-resistor: 10 kΩ, pull-down: 90 kΩ, threshold: ${threshold}, on-resistance: { value: 1 Ω, at: 2.5 V }, maximum-current: 1 A, maximum-voltage: 30 V } }`,
  );

/** An NPN stage before a P-channel MOSFET that switches 1 kΩ on a supply of its own. */
const row = (volts: string, gate: string): string =>
  onBoard(
    `load: { type: resistor, resistance: 1 kΩ, power: 5 W, supply: brick, driver: { pin: D8, stages: [ { part: npn-2n2222a, base-resistor: 10 kΩ }, { part: pmos-ao3401a${gate} } ] } }`,
    { supplies: `bench: { voltage: 5 V, current: 5 A }, brick: { voltage: ${volts}, current: 5 A }` },
  );

/** A driver at the upper end of its load, on 12 V unless said. */
const highUp = (type: string, fitted: string, supply = 'high'): string =>
  onChip(
    `load: { type: resistor, resistance: 1 kΩ, power: 5 W, supply: ${supply}, driver: { type: ${type}, pin: PB1, ${fitted} } }`,
  ).replace('bench: {', 'high: { voltage: 12 V, current: 1 A }, bench: {');

/** 50 Ω behind a PNP whose base is held to a pin of its own supply. */
const pnp = (active: string): string =>
  onChip(
    `load: { type: resistor, resistance: 50 Ω, power: 5 W, supply: bench, active: ${active}, driver: { part: pnp-2n2907a, pin: PB1, base-resistor: 470 Ω } }`,
  );
/** A second load of the same array. */
const second = (ohms = '110 Ω', channel = 'sink.2', pin = 'PB2'): string =>
  `b: { type: resistor, resistance: ${ohms}, power: 5 W, supply: brick, driver: { array: ${channel}, pin: ${pin} } }`;

const ARRAY: Readonly<Record<string, string>> = {
  saturation: '{ value: 1 V, at: 100 mA }',
  'input-resistance': '1975 Ω',
  'input-drop': '1 V',
  gain: '1000',
  'channel-current': '500 mA',
  'package-current': '2 A',
  'maximum-voltage': '30 V',
  'thermal-resistance': '50 K/W',
};

/** 110 Ω behind an array's channel of exactly 1 V: 100 mA from 12 V; its input takes (5 V - 1 V) / (25 Ω + 1975 Ω), 2 mA. */
const onArray = (
  figures: Readonly<Record<string, string>> = {},
  { channels = 'sink.1', beside = '', more = '' } = {},
): string =>
  onChip(
    `load: { type: resistor, resistance: 110 Ω, power: 5 W, supply: brick, driver: { array: ${channels}, pin: PB1 } }
     ${beside}`,
    {
      more: `arrays: { sink: { ${Object.entries({ ...ARRAY, ...figures })
        .map(([key, value]) => `${key}: ${value}`)
        .join(', ')} } }
${more}`,
    },
  ).replace('bench: {', 'brick: { voltage: 12 V, current: 5 A }, low: { voltage: 9 V, current: 5 A }, bench: {');

/** The published array, its common pin wired to a supply that stands at so much. */
const clamped = (common: string, volts = '9 V'): string =>
  onArray({ part: 'darlington-array-7', common }).replace('low: { voltage: 9 V', `low: { voltage: ${volts}`);

const APART = 'interlocks: [ { at-most: 1, of: [b, load], by: wiring } ]';

/** A gate driver on 12 V between a pin of 5 V and a MOSFET; its input hangs on the pin with nothing beside it. */
const gateDriver = (figures: string): string =>
  onBoard(
    `load: { type: resistor, resistance: 1 kΩ, power: 5 W, supply: brick, driver: { pin: D8, stages: [ { type: gate-driver, supply: brick${figures} }, { part: nmos-ao3400a, pull-down: 100 kΩ } ] } }`,
    { supplies: 'bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 11.9 V, current: 5 A }' },
  );

/**
 * 1 kΩ behind a coupler's output of 0.1 V, 4.9 mA; its LED gets (5 V - 1.2 V) / (25 Ω + 355 Ω), exactly 10 mA, of which the
 * ratio is stated, so that half of it is left at the end of its life.
 */
const coupled = (ratio: string, more = ''): string =>
  onChip(
    `load: { type: resistor, resistance: 1 kΩ, power: 5 W, supply: bench, driver: { type: opto, pin: PB1, series: 355 Ω, led-drop: { value: 1.2 V, at: 10 mA }, transfer-ratio: { value: ${ratio}, at: 10 mA }, saturation: 0.1 V, maximum-current: 50 mA, maximum-voltage: 35 V, led-maximum-current: ${more || '50 mA'} } }`,
  );

/** A motor of 1 A in a bridge of 1 Ω: 1 W. */
const bridge = (figures: string, clamp = ''): string =>
  onChip(
    `load: { type: dc-motor, supply: bench, run: 1 A, stall: 1 A, stall-time: 2 s, driver: { type: h-bridge, pins: [PB1, PB2], maximum-current: 3 A, ${figures} }${clamp} }`,
  );

/** 11.35 V less 5 V less about 0.65 V are left for a resistor on a pin used open-drain that has let go. */
const released = (ohms: string, supply = 'other'): string =>
  onChip(
    `load: { type: resistor, resistance: ${ohms}, power: 5 W, supply: ${supply}, driver: { type: open-drain, pin: PB1 } }`,
  ).replace('bench: {', 'other: { voltage: 11.35 V, current: 5 A }, bench: {');

/** A stepper of 2.5 Ω and a bridge of 0.5 Ω, on exactly so many volts; it is set to 3 A, and stays as cool as its surroundings. */
const chopped = (volts: string): string =>
  onSupplies(
    `bench: { voltage: ${volts}, current: 20 A }`,
    'load: { type: stepper, winding-resistance: 2.5 Ω, maximum-current: 100 A, phase-current: 3 A, supply: bench, driver: { type: chopper, on-resistance: 0.5 Ω, maximum-current: 5 A, thermal-resistance: 5 K/W } }',
    { policy: 'classroom', ambient: '20 °C' },
  );

export const DRIVERS: readonly Case[] = [
  {
    rule: 'driver-drive',
    when: 'breaks where a coupler of 45 % passes on 4.5 of 4.9 mA',
    verdict: 'breach',
    text: coupled('45 %'),
  },
  {
    rule: 'driver-drive',
    when: 'strains where only its least ratio of 45 % does not do',
    verdict: 'strain',
    text: coupled('45 to 100 %'),
  },
  {
    rule: 'driver-drive',
    when: 'is thin where 60 % pass on 6 mA, less than a quarter more',
    verdict: 'thin',
    text: coupled('60 %'),
  },
  {
    rule: 'driver-drive',
    when: 'is thin where 95 % fall below it at the end of the coupler’s life',
    verdict: 'thin',
    text: coupled('95 %'),
  },
  {
    rule: 'driver-drive',
    when: 'is content with 100 %, of which 5 mA are left then',
    verdict: 'silent',
    text: coupled('100 %'),
  },
  {
    rule: 'driver-heat',
    when: 'breaks where a bridge of 1 Ω turns 1 W to heat at 126 K/W: 151 °C',
    verdict: 'breach',
    text: bridge('on-resistance: 1 Ω, thermal-resistance: 126 K/W'),
  },
  {
    rule: 'driver-heat',
    when: 'is content with 124 K/W there: 149 °C where 150 °C is taken',
    verdict: 'silent',
    text: bridge('on-resistance: 1 Ω, thermal-resistance: 124 K/W'),
  },
  {
    rule: 'clamp-on-bridge',
    when: 'breaks where a diode lies across a motor that turns either way',
    verdict: 'breach',
    text: bridge('on-resistance: 1 Ω', ', clamp: { part: diode-1n4007 }'),
  },
  {
    rule: 'clamp-on-bridge',
    when: 'is content with the diodes that the bridge has inside',
    verdict: 'silent',
    text: bridge('on-resistance: 1 Ω'),
  },
  {
    rule: 'pin-injected',
    when: 'breaks where 5.7 V over 5 kΩ push more than 1 mA into a pin that has let go',
    verdict: 'breach',
    text: released('5 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'strains at half a milliampere',
    verdict: 'strain',
    text: released('11.4 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'is content below 0.1 mA',
    verdict: 'silent',
    text: released('62 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'is content where the load hangs on the chip’s own supply',
    verdict: 'silent',
    text: released('500 Ω', 'bench'),
  },
  {
    rule: 'driver-heat',
    when: 'breaks where a gate of 5 V below its highest threshold of 6 V leaves 2.5 V on the channel: 128 mW at 990 K/W',
    verdict: 'breach',
    text: onChip(
      nmos({ threshold: 'typ 2 V max 6 V', heat: ', thermal-resistance: 990 K/W, maximum-junction: 150 °C' }),
    ),
  },
  {
    rule: 'driver-heat',
    when: 'is content with the same at 700 K/W',
    verdict: 'silent',
    text: onChip(
      nmos({ threshold: 'typ 2 V max 6 V', heat: ', thermal-resistance: 700 K/W, maximum-junction: 150 °C' }),
    ),
  },
  {
    rule: 'driver-heat',
    when: 'is content with 990 K/W where the gate is surely above its threshold: 10 mW',
    verdict: 'silent',
    text: onChip(
      nmos({ threshold: 'typ 2 V max 3 V', heat: ', thermal-resistance: 990 K/W, maximum-junction: 150 °C' }),
    ),
  },
  {
    rule: 'pin-injected',
    when: 'breaks where 12 V at a PNP’s emitter push (12 − 0.65 − 5.5) V / 4.7 kΩ into a pin that has let go',
    verdict: 'breach',
    text: highUp('pnp, gain: 100, maximum-current: 1 A', 'base-resistor: 4.7 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'strains where the pull-up at a gate pushes (12 − 5.5) V / 10 kΩ',
    verdict: 'strain',
    text: highUp('pmos, on-resistance: { value: 0.1 Ω, at: 4.5 V }, threshold: 1 to 2 V', 'pull-up: 10 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'is content where 100 kΩ pull up: 65 µA are worth a note',
    verdict: 'silent',
    text: highUp('pmos, on-resistance: { value: 0.1 Ω, at: 4.5 V }, threshold: 1 to 2 V', 'pull-up: 100 kΩ'),
  },
  {
    rule: 'pin-clamps',
    when: 'notes those 65 µA',
    verdict: 'note',
    text: highUp('pmos, on-resistance: { value: 0.1 Ω, at: 4.5 V }, threshold: 1 to 2 V', 'pull-up: 100 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'is content where the transistor stands at the pin’s own supply',
    verdict: 'silent',
    text: highUp('pnp, gain: 100, maximum-current: 1 A', 'base-resistor: 4.7 kΩ', 'bench'),
  },
  {
    rule: 'pin-injected',
    when: 'strains where an LED from 12 V hangs on a pin of 5 V: (12 − 1.8 − 5.5) V / 10 kΩ',
    verdict: 'strain',
    text: onChip('load: { part: led-red-5mm, pin: PB1, active: low, supply: high, series: 10 kΩ }').replace(
      'bench: {',
      'high: { voltage: 12 V, current: 1 A }, bench: {',
    ),
  },
  {
    rule: 'driver-current',
    when: 'breaks where one of two joined channels may take 60 of 100 mA and bears 59',
    verdict: 'breach',
    text: onArray({ 'channel-current': '59 mA' }, { channels: '[sink.1, sink.2]' }),
  },
  {
    rule: 'driver-current',
    when: 'is content where each bears 75 mA, a fifth more than 60',
    verdict: 'silent',
    text: onArray({ 'channel-current': '75 mA' }, { channels: '[sink.1, sink.2]' }),
  },
  {
    rule: 'driver-current',
    when: 'sums what is on together in the package: 200 of 199 mA',
    verdict: 'breach',
    text: onArray({ 'package-current': '199 mA' }, { beside: second() }),
  },
  {
    rule: 'driver-current',
    when: 'counts only the heavier of two that an interlock keeps apart: 100 of 125 mA',
    verdict: 'silent',
    text: onArray({ 'package-current': '125 mA' }, { beside: second('220 Ω'), more: APART }),
  },
  {
    rule: 'driver-current',
    when: 'and breaks where the package bears 99 mA of its 100',
    verdict: 'breach',
    text: onArray({ 'package-current': '99 mA' }, { beside: second('220 Ω'), more: APART }),
  },
  {
    rule: 'driver-drive',
    when: 'breaks where an input of 2 mA meets a load that wants 2.5 mA even typically',
    verdict: 'breach',
    text: onArray({ gain: '20' }),
  },
  {
    rule: 'driver-drive',
    when: 'is content with 2 mA where 1.54 mA are needed',
    verdict: 'silent',
    text: onArray({ gain: '65' }),
  },
  {
    rule: 'driver-voltage',
    when: 'breaks where a channel for 11.9 V bears 12 V',
    verdict: 'breach',
    text: onArray({ 'maximum-voltage': '11.9 V' }),
  },
  {
    rule: 'driver-voltage',
    when: 'is content where it bears exactly 12 V',
    verdict: 'silent',
    text: onArray({ 'maximum-voltage': '12 V' }),
  },
  {
    rule: 'driver-heat',
    when: 'is content with 110 mW at 50 K/W',
    verdict: 'silent',
    text: onArray(),
  },
  {
    rule: 'driver-heat',
    when: 'breaks at 109.9 mW, the input’s own counted, and 1138 K/W: 25 + 125.07 °C',
    verdict: 'breach',
    text: onArray({ 'thermal-resistance': '1138 K/W' }),
  },
  {
    rule: 'driver-heat',
    when: 'is content at 1137 K/W: 149.96 °C, since an assumed limit is a margin already',
    verdict: 'silent',
    text: onArray({ 'thermal-resistance': '1137 K/W' }),
  },
  {
    rule: 'clamp-tied-low',
    when: 'breaks where the clamps of a 12 V load lead to 9 V',
    verdict: 'breach',
    text: clamped('low'),
  },
  {
    rule: 'clamp-tied-low',
    when: 'strains where two supplies of 12 V may stand 0.6 V apart',
    verdict: 'strain',
    text: clamped('low', '12 V ±5 %'),
  },
  {
    rule: 'clamp-tied-low',
    when: 'is content where they lead to the load’s own supply',
    verdict: 'silent',
    text: clamped('brick'),
  },
  {
    rule: 'channel-used-twice',
    when: 'breaks where two pins drive one channel',
    verdict: 'breach',
    text: onArray({}, { beside: second('220 Ω', 'sink.1') }),
  },
  {
    rule: 'channel-used-twice',
    when: 'is content where one pin drives a channel with two loads',
    verdict: 'silent',
    text: onArray({}, { beside: second('220 Ω', 'sink.1', 'PB1') }),
  },
  {
    rule: 'driver-drive',
    when: 'strains where the gate gets 5 V and its resistance is specified from 5.05 V',
    verdict: 'strain',
    text: onChip(nmos({ at: '5.05 V' })),
  },
  {
    rule: 'driver-drive',
    when: 'is content where it is specified from exactly 5 V',
    verdict: 'silent',
    text: onChip(nmos({ at: '5 V' })),
  },
  {
    rule: 'driver-drive',
    when: 'breaks where even the typical threshold of 5.1 V is above the gate',
    verdict: 'breach',
    text: onChip(nmos({ threshold: 'typ 5.1 V max 6 V' })),
  },
  {
    rule: 'driver-drive',
    when: 'strains where the highest threshold of 5.1 V is',
    verdict: 'strain',
    text: onChip(nmos({ threshold: 'typ 2 V max 5.1 V' })),
  },
  {
    rule: 'driver-drive',
    when: 'is thin where that threshold is 4.8 V, short of 5 % in volts',
    verdict: 'thin',
    text: onChip(nmos({ threshold: 'typ 2 V max 4.8 V' })),
  },
  {
    rule: 'driver-drive',
    when: 'is content where it is 4.76 V',
    verdict: 'silent',
    text: onChip(nmos({ threshold: 'typ 2 V max 4.76 V' })),
  },
  {
    rule: 'driver-drive',
    when: 'asks at which gate voltage a MOSFET conducts where nobody says so',
    verdict: 'unproven',
    text: onChip(mosfet('threshold: typ 2 V max 3 V, maximum-current: 1 A, maximum-voltage: 30 V')),
  },
  {
    rule: 'driver-drive',
    when: 'breaks where a base gets 2 mA and twice the least gain of 20 wants 2.5 mA',
    verdict: 'breach',
    text: onChip(npn(', gain: 20')),
  },
  {
    rule: 'driver-drive',
    when: 'strains where the least gain of 49 wants 2.04 mA',
    verdict: 'strain',
    text: onChip(npn(', gain: 49')),
  },
  {
    rule: 'driver-drive',
    when: 'is thin where the least gain of 61 wants 1.64 mA, short of a quarter more',
    verdict: 'thin',
    text: onChip(npn(', gain: 61')),
  },
  {
    rule: 'driver-drive',
    when: 'is content where the least gain of 64 wants 1.56 mA',
    verdict: 'silent',
    text: onChip(npn(', gain: 64')),
  },
  { rule: 'driver-drive', when: 'asks for a gain that nobody states', verdict: 'unproven', text: onChip(npn('')) },
  {
    rule: 'driver-current',
    when: 'breaks at 100 mA in a driver for 99 mA',
    verdict: 'breach',
    text: onChip(nmos({ most: '99 mA' }), { policy: 'classroom' }),
  },
  {
    rule: 'driver-current',
    when: 'is content with exactly 100 mA where nothing has to be in hand',
    verdict: 'silent',
    text: onChip(nmos({ most: '100 mA' }), { policy: 'classroom' }),
  },
  { rule: 'driver-current', when: 'is thin at 100 of 124 mA', verdict: 'thin', text: onChip(nmos({ most: '124 mA' })) },
  {
    rule: 'driver-current',
    when: 'is content with 100 of 125 mA',
    verdict: 'silent',
    text: onChip(nmos({ most: '125 mA' })),
  },
  {
    rule: 'driver-voltage',
    when: 'breaks at 5 V over a driver for 4.95 V',
    verdict: 'breach',
    text: onChip(nmos({ bears: '4.95 V' })),
  },
  {
    rule: 'driver-voltage',
    when: 'is content with a driver for exactly 5 V',
    verdict: 'silent',
    text: onChip(nmos({ bears: '5 V' })),
  },
  {
    rule: 'driver-heat',
    when: 'breaks at 5600 K/W: 10 mW cold, 2.25 times that at the 150 °C that are taken, are 125 K over 5556 K/W',
    verdict: 'breach',
    text: onChip(nmos({ heat: ', thermal-resistance: 5600 K/W' })),
  },
  {
    rule: 'driver-heat',
    when: 'is content with 5555 K/W, since an assumed limit is a margin already',
    verdict: 'silent',
    text: onChip(nmos({ heat: ', thermal-resistance: 5555 K/W' })),
  },
  {
    rule: 'driver-heat',
    when: 'is thin at 126 °C where a data sheet states 150 °C: 10 mW cold, 1.44 times that hot; less than a fifth of the permitted rise left',
    verdict: 'thin',
    text: onChip(published('7030 K/W')),
  },
  {
    rule: 'driver-heat',
    when: 'is content with 125 °C, a fifth of it',
    verdict: 'silent',
    text: onChip(published('6970 K/W')),
  },
  {
    rule: 'driver-heat',
    when: 'is content without a thermal resistance where 400 K/W hold: 29 °C',
    verdict: 'silent',
    text: onChip(nmos({ heat: '' })),
  },
  {
    rule: 'driver-heat',
    when: 'asks for the thermal resistance where 400 K/W do not hold: 1 W',
    verdict: 'unproven',
    text: onChip(
      mosfet(
        'on-resistance: { value: 49 Ω, at: 4.5 V }, threshold: typ 2 V max 3 V, maximum-current: 1 A, maximum-voltage: 30 V',
      ).replace('resistance: 49 Ω', 'resistance: 1 Ω'),
    ),
  },
  {
    rule: 'driver-inverted',
    when: 'breaks where the file calls a PNP active high that conducts with the pin low',
    verdict: 'breach',
    text: pnp('high'),
  },
  { rule: 'driver-inverted', when: 'is content with a PNP called active low', verdict: 'silent', text: pnp('low') },
  {
    rule: 'driver-inverted',
    when: 'is content with an NPN before a P-channel MOSFET, which inverts twice, called active high',
    verdict: 'silent',
    text: row('12 V', ', pull-up: 10 kΩ').replace('supply: brick,', 'supply: brick, active: high,'),
  },
  {
    rule: 'driver-release',
    when: 'breaks where a gate of 0.501 V is above the typical threshold of 0.49 V',
    verdict: 'breach',
    text: divided('min 0.4 V typ 0.49 V max 1 V'),
  },
  {
    rule: 'driver-release',
    when: 'strains where the lowest threshold of 0.5 V is below that',
    verdict: 'strain',
    text: divided('min 0.5 V typ 0.6 V max 1 V'),
  },
  {
    rule: 'driver-release',
    when: 'is content where the lowest is 0.502 V',
    verdict: 'silent',
    text: divided('min 0.502 V typ 0.6 V max 1 V'),
  },
  {
    rule: 'driver-release',
    when: 'breaks where nothing discharges a gate that an NPN pulls down',
    verdict: 'breach',
    text: row('12 V', ''),
  },
  {
    rule: 'driver-release',
    when: 'is content where 10 kΩ discharge it',
    verdict: 'silent',
    text: row('12 V', ', pull-up: 10 kΩ'),
  },
  {
    rule: 'gate-voltage',
    when: 'breaks where a gate for 12 V is pulled down from 12.1 V',
    verdict: 'breach',
    text: row('12.1 V', ', pull-up: 10 kΩ'),
  },
  {
    rule: 'gate-voltage',
    when: 'is content where it is pulled down from exactly 12 V',
    verdict: 'silent',
    text: row('12 V', ', pull-up: 10 kΩ'),
  },
  {
    rule: 'driver-drive',
    when: 'strains where an input gets 4.99 V and is sure to read high only from 5.2 V',
    verdict: 'strain',
    text: gateDriver(', threshold: 0.8 to 5.2 V'),
  },
  {
    rule: 'driver-drive',
    when: 'is content where it reads high from 2.4 V, and the gate behind it gets its own supply',
    verdict: 'silent',
    text: gateDriver(', threshold: 0.8 to 2.4 V'),
  },
  {
    rule: 'driver-drive',
    when: 'asks at what voltage an input switches that nobody states',
    verdict: 'unproven',
    text: gateDriver(''),
  },
  {
    rule: 'driver-voltage',
    when: 'breaks at 11.9 V on a gate driver for 11.8 V',
    verdict: 'breach',
    text: gateDriver(', threshold: 0.8 to 2.4 V, maximum-voltage: 11.8 V'),
  },
  {
    rule: 'chopper-starved',
    when: 'breaks where a winding comes to 2.97 A of the 3 A that its chopper is set to',
    verdict: 'breach',
    text: chopped('8.9 V'),
  },
  {
    rule: 'chopper-starved',
    when: 'is content with 9.1 V over 3 Ω',
    verdict: 'silent',
    text: chopped('9.1 V'),
  },
];
