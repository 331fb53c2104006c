/**
 * Stepper motors: as many windings as their drive has on at a time, each a coil that stands still. They draw the most at
 * rest, which is what is reckoned with; at speed their own voltage opposes.
 */
import { closed } from '../quantity/quantity.js';
import { isMapping } from './figures.js';
import { isChopped, lowerChopped } from './chopped-stepper.js';
import { assumed, rating } from './limits.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { AccountPlan, LimitPlan } from './account-plan.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** Temperature that a winding's resistance is stated at, °C. */
const REFERENCE = 20;
/** Shares of its rated voltage that a winding bears, as a coil does (rule 8). */
const BEARS = { min: 1.1, typ: 1.2, max: 1.3 };
/** Windings that a drive has on at a time when nobody says so: both, in full and half steps (common practice, no source). */
const USUAL_PHASES = 2;

function lower(input: LoadInput): Lowered {
  const { figures, entry, id } = input;
  if (isChopped(input)) return lowerChopped(input);
  for (const key of ['phase-current', 'shaft-power'])
    if (entry[key] !== undefined)
      figures.problem(
        key,
        `no chopper holds a current in the windings of \`${id}\``,
        '`driver: { part: chopper-a4988 }`, or no `phase-current` and no `shaft-power`',
      );
  const winding = figures.figure('winding-resistance', 'resistance');
  const rated = figures.interval('voltage', 'voltage')?.typ;
  const ohms = winding && closed(winding.quantity);
  if (ohms === undefined || ohms.min <= 0 || rated === undefined || rated <= 0) {
    const key = rated === undefined || rated <= 0 ? 'voltage' : 'winding-resistance';
    figures.problem(
      key,
      `\`${id}\` needs its rated voltage and the resistance of a winding, both above zero`,
      '`voltage: 5 V, winding-resistance: 50 Ω ±10 %`',
    );
    return NOTHING;
  }
  // Where each winding has a pin of its own, a circuit is one winding.
  const driver = entry['driver'];
  const each = Array.isArray(entry['pins']) || (isMapping(driver) && Array.isArray(driver['pins']));
  const phases = figures.count('phases-on') ?? USUAL_PHASES;
  if (figures.count('phases-on') === undefined)
    figures.assume(`${USUAL_PHASES} of its windings are on at a time, since nobody says so`);
  const share = each ? 1 : phases;
  const together = { min: ohms.min / share, typ: ohms.typ / share, max: ohms.max / share };
  const bears = { min: BEARS.min * rated, typ: BEARS.typ * rated, max: BEARS.max * rated };
  const limit = assumed(figures, 'highest voltage of a winding', bears, 'voltage', { margin: 'none' });
  const highest = rating(figures, 'maximum-current', 'current', { grade: 'operating' });
  const lowered = lowerTwoTerminal(input, {
    members: (circuit) => [
      {
        kind: 'resistance',
        part: `${circuit}.windings`,
        ohms: together,
        copper: REFERENCE,
        load: true,
        origin: winding!.origin,
      },
    ],
    inductive: true,
    part: (circuit) => `${circuit}.windings`,
    accounts: (circuit, path) => [
      highestVoltage(circuit, path, limit),
      ...(highest ? [highestCurrent(circuit, path, share, highest)] : []),
    ],
    limitsItself: true,
  });
  if (!each || lowered.circuits.length <= phases) return lowered;
  const of = lowered.circuits.map((c) => c.id);
  return { ...lowered, interlocks: [{ most: phases, of, path: input.path, by: 'firmware', turns: true }] };
}

/** A winding heats with the square of its voltage: its rated one is what it bears at rest. */
const highestVoltage = (circuit: string, path: AccountPlan['path'], limit: LimitPlan): AccountPlan => ({
  id: `${circuit}.windings`,
  kind: 'coil',
  title: `windings of ${circuit}, highest voltage`,
  quantity: 'voltage',
  direction: 'at-most',
  circuits: [circuit],
  path,
  recipes: ['flooded', 'starved'],
  read: (s) => s.across(`${circuit}.windings`),
  limits: [limit],
  steps: (s) => [
    {
      name: 'V_winding',
      says: 'voltage across the windings that are on',
      formula: 'I * R',
      with: { I: [s.current(`${circuit}.windings`), 'A'], R: [s.ohms(`${circuit}.windings`), 'Ω'] },
      gives: [s.across(`${circuit}.windings`), 'V'],
    },
  ],
});

/** What one of the windings that are on carries. @param share how many of them are */
const highestCurrent = (circuit: string, path: AccountPlan['path'], share: number, limit: LimitPlan): AccountPlan => ({
  id: `${circuit}.windings`,
  kind: 'coil',
  title: `a winding of ${circuit}`,
  quantity: 'current',
  direction: 'at-most',
  circuits: [circuit],
  path,
  recipes: ['draw-most', 'draw-least'],
  read: (s) => s.current(`${circuit}.windings`) / share,
  limits: [limit],
  steps: (s) => [
    {
      name: 'I_winding',
      says: 'what one of the windings that are on carries',
      formula: 'I / n',
      with: { I: [s.current(`${circuit}.windings`), 'A'], n: [share, ''] },
      gives: [s.current(`${circuit}.windings`) / share, 'A'],
    },
  ],
});

export const stepper: LoadType = { type: 'stepper', lower };
