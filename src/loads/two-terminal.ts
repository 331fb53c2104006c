/**
 * Loads with two ends: between a pin and ground, between a supply and a pin, behind a driver, or always on. What is between
 * the ends is the load's own affair; how it is switched is the same for all of them.
 */
import { alwaysOn } from './always-on.js';
import { atPin } from './at-pin.js';
import { behindDriver } from './behind-driver.js';
import { clampOf, operationsOf } from './clamp.js';
import type { Driver, Turn } from './drivers/driver.js';
import { isOwnPin } from './drivers/own-pin.js';
import { isMapping } from './figures.js';
import type { Content, Hanging } from './hanging.js';
import { signalEnd } from './lines/signal.js';
import type { Named } from './load-pins.js';
import { circuitNames, feedOf, pinsOf } from './load-pins.js';
import type { LoadInput, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { AccountPlan } from './account-plan.js';
import type { Wiring } from './circuit-plan.js';
import { pulsesOf } from './pulses.js';
import type { Series } from './series.js';
import { ohmsInLine, seriesOf } from './series.js';
import { terminalAccounts } from './terminals.js';

export function lowerTwoTerminal(input: LoadInput, content: Content): Lowered {
  const { entry, id, path, bench } = input;
  const named = pinsOf(input);
  const { pins } = named;
  // The inputs of a bridge turn one load.
  const listed = named.listed && bench.driverType(entry['driver']) !== 'h-bridge';
  const count = typeof entry['count'] === 'number' ? entry['count'] : 1;
  if (isMapping(entry['signals'])) {
    const end = signalEnd(input);
    for (const [role, pin] of Object.entries(entry['signals']))
      bench.signalPin(pin, [...path, 'signals', role], input.id, role, end);
  }
  const circuits = listed ? pins.map((_, k) => `${id}.${k + 1}`) : circuitNames(id, count);
  const parts = circuits.map((circuit, k) =>
    listed
      ? lowerOne(input, content, circuit, [pins[k]!], { nth: k, of: pins.length })
      : lowerOne(input, content, circuit, pins),
  );
  return {
    circuits: parts.flatMap((p) => p.circuits),
    networks: parts.flatMap((p) => p.networks),
    accounts: parts.flatMap((p) => p.accounts),
    ends: parts.flatMap((p) => p.ends ?? []),
  };
}

function lowerOne(input: LoadInput, content: Content, circuit: string, pins: readonly Named[], turn?: Turn): Lowered {
  const { entry, bench, path, figures } = input;
  const [pin] = pins;
  const told = content.listens && entry['driver'] === undefined ? pin : undefined;
  // What lies in series with a load that its pin only talks to lies in its signal.
  const inLine = told && ohmsInLine(figures);
  if (told)
    bench.signalPin(told.name, told.path, circuit, 'signal', {
      ...signalEnd(input),
      isOutput: true,
      ...(inLine && { series: inLine }),
    });
  const named = told ? undefined : pin;
  const said = feedOf(input);
  const supply = said && bench.node(said.name, said.path);
  const series: Series = told
    ? { members: [], accounts: [] }
    : seriesOf(figures, circuit, path, {
        members: content.members(circuit),
        ...(content.acts !== undefined && { acts: content.acts }),
      });
  const members = [...series.members, ...content.members(circuit)];
  const own = (feed: string, driver?: Driver): AccountPlan[] => [
    ...content.accounts(circuit, path, driver, feed, series.bypass, clamp).map(series.bypass ? withPeaks : same),
    ...terminalAccounts(figures, circuit, path, content.members(circuit), content.part(circuit)),
    ...series.accounts,
  ];
  const base = { id: circuit, owner: input.id, path, type: input.type, ...(told && { listens: true as const }) };
  const pulses = pulsesOf(figures);
  const hung = {
    circuit,
    part: content.part(circuit),
    ...(supply !== undefined && { supply }),
    ...(content.winding && { winding: content.winding }),
    ...(pulses && { pulses }),
    ...operationsOf(figures),
  };
  const clamp = clampOf(input, hung);
  const common = {
    inductive: content.inductive,
    coil: content.part(circuit),
    ...(content.figures && { figures: content.figures }),
  };

  if (series.unknown === true) {
    if (named !== undefined && entry['driver'] === undefined)
      bench.outputPin(named.name, named.path, circuit, entry['active'] === 'low' ? 'low' : 'high');
    const wiring: Wiring = { by: 'nothing', inductive: false, clamp: 'not-needed' };
    return { circuits: [{ ...base, always: false, wiring }], networks: [], accounts: series.accounts };
  }
  const ownPin = isOwnPin(entry['driver']);
  const hanging: Hanging = { input, content, circuit, supply, series, members, clamp, hung, base, common, own };
  if (entry['driver'] !== undefined && !ownPin) return behindDriver(hanging, { pins, fed: said !== undefined, turn });
  if (named !== undefined) return atPin(hanging, named, ownPin);
  if (supply === undefined) {
    if (entry['supply'] === undefined)
      bench.problem({
        path: [...path],
        on: 'key',
        says: told
          ? `nothing feeds \`${input.id}\`: its pin carries a signal only`
          : `\`${input.id}\` is connected to nothing`,
        expected: content.listens
          ? '`supply:` with the name of a supply or rail'
          : 'a `pin:`, or a `supply:` with or without a `driver:`',
      });
    return NOTHING;
  }
  return alwaysOn(hanging, supply);
}

/** Behind a bypassed resistor a load sees a peak at switching on. */
const withPeaks = (a: AccountPlan): AccountPlan =>
  a.kind === 'input' && a.quantity === 'current' && a.direction === 'at-most' ? { ...a, peaks: true } : a;
const same = (a: AccountPlan): AccountPlan => a;
