/** Parts: do the figures of one thing agree with one another, as physics has it? */
import { formatValue } from '../quantity/print.js';
import type { Path, Problem } from '../source/place.js';
import { type Fields, isFields, type Profile } from './profile.js';
import { senseLed } from './sense-led.js';
import { senseClamp, senseGain, senseGate } from './sense-semiconductors.js';
import { senseConnector, senseSupplyPart, senseWire } from './sense-supply-parts.js';
import { fault, fieldsOf, figureOf, highest, lowest, middle, textOf } from './stated.js';

/** How far a coil's stated power may be from V²/R: sheets round it. */
const POWER_ROUNDING = 0.05;

/** What is wrong with a part. */
export function senseParts(profile: Profile): readonly Problem[] {
  switch (profile.kind) {
    case 'supply':
      return senseSupply(profile);
    case 'array':
      return senseArray(profile);
    case 'controller':
      return Object.entries(fieldsOf(profile['pin-leds'])).flatMap(([name, led]) =>
        isFields(led) ? senseLed(led, ['pin-leds', name]) : [],
      );
    case 'supply-part':
      return senseSupplyPart(profile);
    case 'wire':
      return senseWire(profile);
    case 'connector':
      return senseConnector(profile);
    case 'clamp':
      return senseClamp(profile);
    default:
      return senseTyped(profile);
  }
}

function senseTyped(profile: Profile): readonly Problem[] {
  switch (profile.type) {
    case 'coil':
      return senseCoil(profile, []);
    case 'relay-board':
      return senseRelayBoard(profile);
    case 'led':
      return senseLed(profile, []);
    case 'nmos':
    case 'pmos':
      return senseGate(profile);
    case 'npn':
    case 'pnp':
      return senseGain(profile);
    default:
      return [];
  }
}

function senseCoil(coil: Fields, path: Path): readonly Problem[] {
  const volts = middle(figureOf(coil, 'voltage', 'voltage'));
  const ohms = middle(figureOf(coil, 'resistance', 'resistance'));
  const watts = middle(figureOf(coil, 'power', 'power'));
  if (volts === undefined) return [fault(path, 'a coil needs its voltage')];
  if (ohms === undefined && watts === undefined) return [fault(path, 'a coil needs its resistance or power')];

  /** As a share of the rated voltage. */
  const share = (name: string, bound: 'min' | 'max'): number | undefined => {
    const ratio = figureOf(coil, name, 'ratio');
    if (ratio) return ratio[bound] ?? middle(ratio);
    const volt = figureOf(coil, name, 'voltage');
    return volt && (volt[bound] ?? middle(volt) ?? NaN) / volts;
  };
  const order = [
    share('drop-out', 'max'),
    share('pull-in', 'min'),
    share('pull-in', 'max'),
    1,
    share('maximum', 'min'),
  ];
  const rising = order.filter((each) => each !== undefined);
  const stated = (name: string): string => textOf(fieldsOf(coil[name])['value']);
  const made = ohms === undefined ? undefined : (volts * volts) / ohms;
  const disagree = made !== undefined && watts !== undefined && Math.abs(made / watts - 1) > POWER_ROUNDING;
  return [
    ...(disagree
      ? [
          fault(
            [...path, 'power'],
            `${stated('voltage')} across ${stated('resistance')} is ${formatValue(made, 'power')}, not ${stated('power')}`,
            'rated voltage, resistance and power of one coil agree within 5 %',
          ),
        ]
      : []),
    ...(rising.every((each, i) => i === 0 || (rising[i - 1] ?? 0) <= each)
      ? []
      : [fault(path, 'drop-out, pull-in, rated and maximum voltage of a coil rise in this order')]),
  ];
}

/** What is known of an input that nobody has looked into. */
const BLACK_BOX = ['on-above', 'off-below', 'current'];

function senseRelayBoard(board: Profile): readonly Problem[] {
  const input = fieldsOf(board['input']);
  // Of a black box only its levels and its current are known, whatever stands inside.
  const blackBox = BLACK_BOX.some((name) => input[name] !== undefined);
  const opto = input['coupling'] === 'opto' && !blackBox;
  const needed = [
    ...(blackBox ? BLACK_BOX : []),
    ...(opto ? ['led-drop', 'transfer-ratio', 'series'] : []),
    ...(input['indicator'] === 'in-series' ? ['indicator-drop'] : []),
    'active',
    'coupling',
    ...(blackBox ? [] : ['indicator']),
  ];
  const idle = [
    ...(opto ? [] : ['led-drop', 'transfer-ratio']),
    ...(input['indicator'] === 'none' ? ['indicator-drop'] : []),
  ];
  return [
    ...(Number(board['channels']) >= 1 ? [] : [fault(['channels'], 'a relay board has at least one channel')]),
    ...needed
      .filter((name) => input[name] === undefined)
      .map((name) => fault(['input'], `the input of this relay board needs \`${name}\``)),
    ...idle
      .filter((name) => input[name] !== undefined)
      .map((name) => fault(['input', name], `\`${name}\` belongs to nothing that this input has`)),
    ...(isFields(board['coil']) ? senseCoil(board['coil'], ['coil']) : [fault([], 'a relay board needs its `coil`')]),
  ];
}

function senseArray(array: Profile): readonly Problem[] {
  const channel = middle(figureOf(array, 'channel-current', 'current'));
  const whole = middle(figureOf(array, 'package-current', 'current'));
  const channels = Number(array['channels']);
  return [
    ...(channels >= 1 ? [] : [fault(['channels'], 'an array has at least one channel')]),
    ...(channel === undefined || whole === undefined || (whole >= channel && whole <= channel * channels)
      ? []
      : [fault(['package-current'], 'a package carries no less than one channel and no more than all of them')]),
    ...(array['clamps'] === true && array['clamp-forward-voltage'] === undefined
      ? [fault(['clamps'], 'clamp diodes need their `clamp-forward-voltage`')]
      : []),
  ];
}

function senseSupply(supply: Profile): readonly Problem[] {
  const amps = (name: string): number | undefined => middle(figureOf(supply, name, 'current'));
  const rising = [amps('suspended-current'), amps('unconfigured-current'), amps('current'), amps('peak-current')];
  const stated = rising.filter((each) => each !== undefined);
  const [open, rated] = [figureOf(supply, 'open-voltage', 'voltage'), figureOf(supply, 'voltage', 'voltage')];
  const empty = figureOf(supply, 'end-voltage', 'voltage');
  return [
    ...(rated ? [] : [fault([], 'a supply needs its `voltage`')]),
    ...(typeof supply['regulated'] === 'boolean'
      ? []
      : [fault([], 'the supply does not say whether it is `regulated`')]),
    ...(stated.every((each, i) => i === 0 || (stated[i - 1] ?? 0) <= each)
      ? []
      : [fault([], 'suspended, unconfigured, full and peak current of a port rise in this order')]),
    ...(open && rated && highest(open)! < lowest(rated)!
      ? [fault(['open-voltage'], 'a supply without load gives no less than with it')]
      : []),
    ...(empty && rated && lowest(empty)! > highest(rated)!
      ? [fault(['end-voltage'], 'an empty battery gives no more than a full one')]
      : []),
  ];
}
