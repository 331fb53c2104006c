/** Regulators and fuses, wires and connectors: do the figures of one thing agree with one another, as physics has it? */
import { awgArea, wireOhms } from '../circuit/wire.js';
import type { Quantity } from '../quantity/quantity.js';
import type { Problem } from '../source/place.js';
import type { Profile } from './profile.js';
import { fault, figureOf, highest, middle, pointsOf } from './stated.js';

/** A metre of stranded or tinned wire may have so much of what plain solid copper has: less is a slip, and much more. */
const OF_COPPER = { least: 0.95, most: 1.35 };

export function senseSupplyPart(part: Profile): readonly Problem[] {
  switch (part.type) {
    case 'linear-regulator':
    case 'switching-regulator':
      return senseRegulator(part);
    case 'fuse':
      return senseFuse(part);
    default:
      return [];
  }
}

function senseRegulator(part: Profile): readonly Problem[] {
  const linear = part.type === 'linear-regulator';
  const volts = figureOf(part, 'voltage', 'voltage');
  const input = figureOf(part, 'input', 'voltage');
  const most = pointsOf(part, 'efficiency', 'ratio', 'current').map(({ value }) => highest(value) ?? 0);
  const steps = linear || part['step'] === 'down';
  return [
    ...(part['current'] === undefined ? [fault([], 'a regulator needs the current it gives')] : []),
    ...(linear && part['dropout'] === undefined ? [fault([], 'a linear regulator needs its dropout')] : []),
    ...(linear && part['efficiency'] !== undefined
      ? [fault(['efficiency'], 'what a linear regulator loses is told by its voltages')]
      : []),
    ...(!linear && part['step'] === undefined ? [fault([], 'a switching regulator needs its step')] : []),
    ...(input?.max === undefined ? [fault([], 'a regulator needs the most that its input bears')] : []),
    ...(steps && volts && input?.max !== undefined && (middle(volts) ?? 0) >= input.max
      ? [fault(['input'], 'the highest input is not above what comes out')]
      : []),
    ...(most.every((ratio) => ratio < 1) ? [] : [fault(['efficiency'], 'a regulator gives less than it takes')]),
  ];
}

/** At each temperature a fuse trips at more than it holds. */
function senseFuse(part: Profile): readonly Problem[] {
  const trips = pointsOf(part, 'trip', 'current', 'temperature');
  const wrong = pointsOf(part, 'hold', 'current', 'temperature').some(({ value, at }) =>
    trips.some((trip) => trip.at?.typ === at?.typ && (middle(trip.value) ?? NaN) <= (middle(value) ?? NaN)),
  );
  return [
    ...(['hold', 'resistance'] as const)
      .filter((name) => part[name] === undefined)
      .map((name) => fault([], `a fuse needs its ${name === 'hold' ? 'hold current' : 'resistance'}`)),
    ...(wrong ? [fault(['trip'], 'the fuse trips at no more than it holds')] : []),
  ];
}

export function senseWire(wire: Profile): readonly Problem[] {
  const area = middle(figureOf(wire, 'gauge', 'area')) ?? gaugeArea(figureOf(wire, 'gauge', 'gauge'));
  const ohms = figureOf(wire, 'resistance-per-metre', 'resistance');
  if (area === undefined) return [fault([], 'a wire needs its gauge')];
  const copper = wireOhms(1, area);
  const bounds = [ohms?.min, ohms?.max].filter((each) => each !== undefined);
  return bounds.every((each) => each >= OF_COPPER.least * copper && each <= OF_COPPER.most * copper)
    ? []
    : [fault(['resistance-per-metre'], 'the resistance is not that of copper of that thickness')];
}

const gaugeArea = (gauge: Quantity | undefined): number | undefined => {
  const number = middle(gauge);
  return number === undefined ? undefined : awgArea(number);
};

export const senseConnector = (connector: Profile): readonly Problem[] =>
  ['contact-resistance', 'rating']
    .filter((name) => connector[name] === undefined)
    .map((name) => fault([], `a connector needs its ${name.replace('-', ' ')}`));
