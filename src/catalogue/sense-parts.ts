/** Parts: do the figures of one thing agree with one another, as physics has it? */
import type { Dimension } from '../quantity/dimension.js';
import { parseQuantity } from '../quantity/parse.js';
import type { Quantity } from '../quantity/quantity.js';
import type { Path, Problem } from '../source/place.js';
import { type Fields, isFields, isFigure, type Profile } from './profile.js';

/** How far a coil's stated power may be from V²/R: sheets round it. */
const POWER_ROUNDING = 0.05;

const problem = (path: Path, says: string): Problem => ({ path, on: 'value', says });

/** A figure of a mapping, or undefined when it is not stated or holds at points. */
function figure(of: Fields, name: string, dimension: Dimension): Quantity | undefined {
  const stated = of[name];
  if (!isFigure(stated)) return undefined;
  const parsed = parseQuantity(stated.value, dimension);
  return 'quantity' in parsed ? parsed.quantity : undefined;
}

const middle = (q: Quantity | undefined): number | undefined =>
  q && (q.typ ?? (q.min !== undefined && q.max !== undefined ? (q.min + q.max) / 2 : (q.max ?? q.min)));

/** What is wrong with a part. */
export function senseParts(profile: Profile): readonly Problem[] {
  if (profile.kind === 'supply') return senseSupply(profile);
  if (profile.kind === 'array') return senseArray(profile);
  if (profile.type === 'coil') return senseCoil(profile, []);
  if (profile.type === 'relay-board') return senseRelayBoard(profile);
  return [];
}

function senseCoil(coil: Fields, path: Path): readonly Problem[] {
  const volts = middle(figure(coil, 'voltage', 'voltage'));
  const ohms = middle(figure(coil, 'resistance', 'resistance'));
  const watts = middle(figure(coil, 'power', 'power'));
  if (volts === undefined) return [problem(path, 'a coil needs its voltage')];
  if (ohms === undefined && watts === undefined) return [problem(path, 'a coil needs its resistance or power')];

  /** As a share of the rated voltage. */
  const share = (name: string, bound: 'min' | 'max'): number | undefined => {
    const ratio = figure(coil, name, 'ratio');
    if (ratio) return ratio[bound] ?? middle(ratio);
    const volt = figure(coil, name, 'voltage');
    return volt && (volt[bound] ?? middle(volt) ?? NaN) / volts;
  };
  const order = [
    share('drop-out', 'max'),
    share('pull-in', 'min'),
    share('pull-in', 'max'),
    1,
    share('maximum', 'min'),
  ];
  const stated = order.filter((each) => each !== undefined);
  const disagree =
    ohms !== undefined && watts !== undefined && Math.abs((volts * volts) / ohms / watts - 1) > POWER_ROUNDING;
  return [
    ...(disagree ? [problem([...path, 'power'], 'is not V²/R')] : []),
    ...(stated.every((each, i) => i === 0 || (stated[i - 1] ?? 0) <= each)
      ? []
      : [problem(path, 'drop-out, pull-in, rated and maximum voltage are not in this order')]),
  ];
}

/** What is known of an input that nobody has looked into. */
const BLACK_BOX = ['on-above', 'off-below', 'current'];

function senseRelayBoard(board: Profile): readonly Problem[] {
  const input: Fields = isFields(board['input']) ? board['input'] : {};
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
    ...(Number(board['channels']) >= 1 ? [] : [problem(['channels'], 'a relay board has at least one channel')]),
    ...needed.filter((name) => input[name] === undefined).map((name) => problem(['input'], `needs ${name}`)),
    ...idle
      .filter((name) => input[name] !== undefined)
      .map((name) => problem(['input', name], 'belongs to nothing here')),
    ...(isFields(board['coil']) ? senseCoil(board['coil'], ['coil']) : [problem([], 'a relay board needs its coil')]),
  ];
}

function senseArray(array: Profile): readonly Problem[] {
  const channel = middle(figure(array, 'channel-current', 'current'));
  const whole = middle(figure(array, 'package-current', 'current'));
  const channels = Number(array['channels']);
  return [
    ...(channels >= 1 ? [] : [problem(['channels'], 'an array has at least one channel')]),
    ...(channel === undefined || whole === undefined || (whole >= channel && whole <= channel * channels)
      ? []
      : [problem(['package-current'], 'is not between one channel and all of them')]),
    ...(array['clamps'] === true && array['clamp-forward-voltage'] === undefined
      ? [problem(['clamps'], 'clamp diodes need their forward voltage')]
      : []),
  ];
}

function senseSupply(supply: Profile): readonly Problem[] {
  const amps = (name: string): number | undefined => middle(figure(supply, name, 'current'));
  const current = amps('current');
  const rising = [amps('suspended-current'), amps('unconfigured-current'), current, amps('peak-current')];
  const stated = rising.filter((each) => each !== undefined);
  return [
    ...(figure(supply, 'voltage', 'voltage') ? [] : [problem([], 'a supply needs its voltage')]),
    ...(typeof supply['regulated'] === 'boolean' ? [] : [problem([], 'does not say whether it is regulated')]),
    ...(stated.every((each, i) => i === 0 || (stated[i - 1] ?? 0) <= each)
      ? []
      : [problem([], 'suspended, unconfigured, full and peak current do not rise')]),
  ];
}
