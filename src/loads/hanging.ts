/** A load with two ends as it hangs in the circuit: what it is made of, and what all ways to hang it have in common. */
import type { Clamp, ClampSetting } from './clamp.js';
import type { Driver } from './drivers/driver.js';
import type { LoadInput } from './lowering.js';
import type { AccountPlan } from './account-plan.js';
import type { Member } from './branch-plan.js';
import type { CircuitPlan, Wiring } from './circuit-plan.js';
import type { Winding } from './clamp-working.js';
import type { Bypass, Series } from './series.js';

/** What a load puts between its ends. */
export interface Content {
  /** From the positive end to the negative one; one set a circuit. */
  readonly members: (circuit: string) => readonly Member[];
  /** What it draws when it is off, from the same supply: a module's idle current. */
  readonly idle?: (circuit: string) => readonly Member[];
  readonly inductive: boolean;
  /** Part that carries the load's current: 'horn.coil'. */
  readonly part: (circuit: string) => string;
  readonly accounts: (
    circuit: string,
    path: readonly (string | number)[],
    driver?: Driver,
    /** Node that its current comes from. */
    feed?: string,
    /** A capacitor lies across its series resistor. */
    bypass?: Bypass,
    clamp?: Clamp,
  ) => readonly AccountPlan[];
  /** Seconds after switching on in which it has to have acted: a coil pulls in. */
  readonly acts?: number;
  /** Something in it limits the current besides a pin: a winding, a resistance, its own electronics. */
  readonly limitsItself: boolean;
  /** Its own accounts tell whether a driver lets go of it. */
  readonly letsGo?: true;
  /** It has electronics that a pin only talks to: without a driver, its `pin` carries a signal and not the load. */
  readonly listens?: true;
  readonly figures?: Wiring['figures'];
  /** What it stores, for its clamp. */
  readonly winding?: Winding;
}

/** One circuit of a load, about to be hung behind a driver, on a pin, or on a supply. */
export interface Hanging {
  readonly input: LoadInput;
  readonly content: Content;
  readonly circuit: string;
  /** The node that feeds it, where one is named. */
  readonly supply: string | undefined;
  readonly series: Series;
  /** All that lies between its ends, the resistor in series included. */
  readonly members: readonly Member[];
  readonly clamp: Clamp | undefined;
  /** What a clamp in an array has to know of it. */
  readonly hung: ClampSetting;
  readonly base: Pick<CircuitPlan, 'id' | 'owner' | 'path' | 'type' | 'listens'>;
  readonly common: Pick<Wiring, 'inductive' | 'coil' | 'figures'>;
  /** Its own accounts, where its current comes from a node. */
  readonly own: (feed: string, driver?: Driver) => readonly AccountPlan[];
}

/** Where curves are read off for what a load is expected to take, °C. */
export const ROOM = 25;
