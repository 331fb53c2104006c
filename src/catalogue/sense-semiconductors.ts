/** Transistors and clamps: do the figures of one agree with one another? */
import type { Problem } from '../source/place.js';
import type { Profile } from './profile.js';
import { fault, figureOf, middle, pointsOf } from './stated.js';

/** The gate voltages at which a resistance is stated lie above the threshold, and within what the gate bears. */
export function senseGate(mosfet: Profile): readonly Problem[] {
  const threshold = figureOf(mosfet, 'threshold', 'voltage')?.min ?? -Infinity;
  const most = middle(figureOf(mosfet, 'gate-maximum', 'voltage')) ?? Infinity;
  const volts = pointsOf(mosfet, 'on-resistance', 'resistance', 'voltage').flatMap(({ at }) => middle(at) ?? []);
  return [
    ...(volts.every((v) => v > threshold)
      ? []
      : [fault(['on-resistance'], 'the resistance is stated at a gate voltage below the threshold')]),
    ...(volts.every((v) => v <= most)
      ? []
      : [fault(['on-resistance'], 'the resistance is stated at a gate voltage beyond what the gate bears')]),
  ];
}

/** A transistor that is said to be saturated is so with more base current than its least gain asks for. */
export function senseGain(transistor: Profile): readonly Problem[] {
  const forced = middle(figureOf(transistor, 'forced-gain', 'ratio'));
  const least = pointsOf(transistor, 'gain', 'ratio', 'current').flatMap(
    ({ value }) => value.min ?? middle(value) ?? [],
  );
  return forced === undefined || least.every((gain) => gain >= forced)
    ? []
    : [fault(['forced-gain'], 'the forced gain is above the least gain')];
}

/** What clamps by its breakdown has one, and a diode bears more in pulses than for ever. */
export function senseClamp(clamp: Profile): readonly Problem[] {
  const amps = middle(figureOf(clamp, 'current', 'current'));
  const peak = middle(figureOf(clamp, 'peak-current', 'current'));
  const breaks =
    clamp.type === 'zener' || clamp.type === 'diode-zener' || clamp.type === 'tvs' || clamp.type === 'varistor';
  return [
    ...(breaks && clamp['zener-voltage'] === undefined
      ? [fault([], 'a clamp of this type needs the voltage at which it clamps')]
      : []),
    ...(amps === undefined || peak === undefined || peak >= amps
      ? []
      : [fault(['peak-current'], 'the peak current is below what it carries for ever')]),
  ];
}
