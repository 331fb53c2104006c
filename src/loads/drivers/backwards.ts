/**
 * A Darlington whose load has lost its supply: the collector stands lower than the base, and what drives the input leads through
 * the junction between them, and backwards through the load, into that supply. It comes up no further than one junction below
 * the two of the input, by when the output conducts. A single transistor leaves its load some ten millivolts: nothing.
 */
import type { NetworkSketch } from '../lowering.js';
import type { DeadWay, Member } from '../branch-plan.js';
import { PIN_CLAMP } from '../lines/pin-clamp.js';
import type { Driver } from './driver.js';

/** A driver's networks with that way. @param load from its supply to the output @param supply node that feeds it */
export function backwards(driver: Driver, load: readonly Member[], supply: string): readonly NetworkSketch[] {
  const { darlington } = driver;
  if (darlington === undefined || !load.every(letsBack)) return driver.networks;
  return driver.networks.map((network): NetworkSketch => {
    const [circuit = ''] = network.circuits;
    const junction: Member = { kind: 'junction', part: `${circuit}.base-collector`, law: PIN_CLAMP };
    const members = [junction, ...load.map((m): Member => ({ ...m, part: `${m.part}, backwards` }))];
    const way: DeadWay = { from: darlington, to: supply, circuit, members };
    return { ...network, whenDead: [...(network.whenDead ?? []), way] };
  });
}

/** Whether a current passes it the other way round as well: not an LED, nor what keeps a voltage. */
function letsBack({ kind }: Member): boolean {
  switch (kind) {
    case 'resistance':
    case 'filament':
    case 'current':
    case 'power':
    case 'pin':
      return true;
    case 'junction':
    case 'drop':
    case 'curve':
      return false;
    default:
      return kind satisfies never;
  }
}
