/** A load whose current a pin carries: between the pin and ground, or between a supply and the pin. */
import { bareAtBoot } from './at-boot.js';
import { pulledHigh } from './drivers/own-pin.js';
import type { Hanging } from './hanging.js';
import { ROOM } from './hanging.js';
import type { Named } from './load-pins.js';
import type { BoundPin, Hook, Lowered, NetworkSketch } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { Wiring } from './circuit-plan.js';
import { GROUND } from './branch-plan.js';
import { currentThrough } from './reach.js';

/** @param ownPin the pin itself is the driver: an open drain */
export function atPin(
  { input, content, circuit, supply, series, members, clamp, base, common, own }: Hanging,
  named: Named,
  ownPin: boolean,
): Lowered {
  const { entry, bench, path } = input;
  const active = ownPin || entry['active'] === 'low' ? 'low' : 'high';
  const pin = bench.outputPin(named.name, named.path, circuit, active);
  if (pin === undefined) return NOTHING;
  const feed = active === 'high' ? pin.rail : (supply ?? pin.rail);
  const bare = !content.limitsItself && !limits(series.ohms, pin);
  const pulled = ownPin ? pulledHigh(input, { circuit, pin, supply, members, load: content.part(circuit) }) : undefined;
  const wiring: Wiring = {
    ...common,
    by: 'pin',
    pin: pin.account,
    ...(clamp?.wiring ?? { clamp: content.inductive ? 'none' : 'not-needed' }),
    ...(content.inductive && { bare: true as const }),
    ...(supply && active === 'low' && { supply }),
    ...(bare && { unlimited: [{ part: content.part(circuit), pin: pin.account }] }),
  };
  return {
    circuits: [{ ...base, always: false, wiring }],
    networks: [
      {
        ...onPin({
          circuit,
          pin,
          active,
          to: active === 'high' ? GROUND : feed,
          members,
          open: ownPin,
        }),
        off: pulled?.off ?? [],
      },
    ],
    accounts: [
      ...own(feed),
      ...bareAtBoot(circuit, path, content.part(circuit), currentThrough(members, bench.nominal(feed), 'typ', ROOM)),
      ...(clamp?.accounts ?? []),
      ...(pulled?.accounts ?? []),
    ],
  };
}

/** Whether a series resistance is more than the pin's own, so that it counts. */
const limits = (ohms: number | undefined, pin: BoundPin): boolean =>
  ohms !== undefined && ohms >= Math.min(pin.high?.ohms.typ ?? 0, pin.low?.ohms.typ ?? Infinity);

function onPin({
  circuit,
  pin,
  active,
  to,
  members,
  open,
}: Pick<Hook, 'circuit' | 'pin' | 'active' | 'to' | 'members'> & { readonly open: boolean }): NetworkSketch {
  const flows = active === 'high' ? ('out' as const) : ('in' as const);
  // From the pin outwards the order is the same; from a supply to the pin the load comes first.
  const inOrder = flows === 'out' ? members : members.toReversed();
  const hook: Hook = { pin, active, flows, to, members: inOrder, circuit, ...(open && { open }) };
  return { id: circuit, circuits: [circuit], side: 'load', inner: [], hooks: [hook], on: [], off: [] };
}
