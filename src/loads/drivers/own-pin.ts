/**
 * A chip's own pin used open-drain: it pulls its load to ground, or lets go. Then the load pulls the pin up to the load's
 * supply, and where that is above the chip's, current flows on through the pin's own clamp.
 */
import { branchSteps } from '../branch-working.js';
import { isMapping } from '../figures.js';
import { UNPUBLISHED } from '../lines/injection.js';
import { PIN_CLAMP } from '../lines/pin-clamp.js';
import type { BoundPin, LoadInput } from '../lowering.js';
import type { AccountPlan } from '../account-plan.js';
import type { BranchPlan, Member } from '../branch-plan.js';

/** Keys of a driver entry that say nothing of a part between the pin and the load. */
const OWN_KEYS = new Set(['type', 'pin', 'pins', 'note']);

/** Whether a driver is no part, but the pin itself. */
export const isOwnPin = (driver: unknown): boolean =>
  isMapping(driver) && driver['type'] === 'open-drain' && Object.keys(driver).every((key) => OWN_KEYS.has(key));

/** Volts above the chip's supply below which its clamp carries next to nothing. */
const KNEE = 0.3;

/** What flows when the pin lets go; undefined where its load's supply is no higher than its own. */
export function pulledHigh(
  { bench, path }: LoadInput,
  {
    circuit,
    pin,
    supply,
    members,
    load,
  }: {
    readonly circuit: string;
    readonly pin: BoundPin;
    readonly supply: string | undefined;
    readonly members: readonly Member[];
    readonly load: string;
  },
): { readonly off: readonly BranchPlan[]; readonly accounts: readonly AccountPlan[] } | undefined {
  if (supply === undefined || supply === pin.rail) return undefined;
  if (bench.window(supply).max - bench.window(pin.rail).min <= KNEE) return undefined;
  const clamp: Member = {
    kind: 'junction',
    part: `${circuit}.pin-clamp`,
    law: PIN_CLAMP,
    origin: { document: 'common practice, no source', basis: 'practice' },
  };
  return {
    off: [{ from: supply, to: pin.rail, members: [...members, clamp], circuit }],
    accounts: [
      {
        id: pin.account,
        kind: 'pin',
        title: `pin ${pin.label}, pushed in`,
        quantity: 'current',
        direction: 'injected',
        circuits: [circuit],
        path,
        recipes: ['draw-most', 'draw-least'],
        off: true,
        read: (s) => s.current(load),
        limits: [
          {
            // Without a published figure: a trace is nothing, up to a milliampere nobody promises anything (rule 18).
            value: UNPUBLISHED.min,
            stated: '0.1 mA, up to 1 mA at the most, since none is published',
            grade: 'practice',
            margin: 'none',
            range: UNPUBLISHED,
            origin: { document: 'common practice, no source', basis: 'practice' },
          },
        ],
        books: [{ circuit, part: load }],
        steps: (s) => branchSteps(s.branch(load), 'current that the load pushes into the pin that has let go'),
      },
    ],
  };
}
