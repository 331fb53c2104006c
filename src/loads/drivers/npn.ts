/** A pin that drives the base of an NPN transistor: base resistor, pull-down, and what the junction leaves for the base. */
import { branchSteps } from '../branch-working.js';
import type { Figures } from '../figures.js';
import type { Hook, LoadInput, NetworkSketch } from '../lowering.js';
import { closed } from '../../quantity/quantity.js';
import type { BranchPlan, Member, Reading } from '../plan.js';
import { GROUND } from '../plan.js';
import type { Driver, DriverSetting } from './driver.js';
import { mostGain, switchMember, transistorAccounts, transistorOf, voltsLost } from './transistor.js';

/** Collector current at which the saturation voltage of the load's branch is read, amperes: that of a small coil. */
const USUAL_COLLECTOR = 0.1;

export function npnDriver(input: LoadInput, setting: DriverSetting, figures: Figures): Driver | undefined {
  const { circuit, path, supply, load } = setting;
  const pin = input.bench.outputPin(setting.pin.name, setting.pin.path, circuit, setting.active);
  if (pin === undefined) return undefined;
  const transistor = transistorOf(figures, `the driver of ${input.id}`);
  const resistance = figures.figure('base-resistor', 'resistance');
  const pullDown = figures.figure('pull-down', 'resistance');
  const base = `${circuit}.base`;
  const node = `${circuit}:base`;
  const junction: Member = {
    kind: 'junction',
    part: base,
    law: transistor.base,
    ...(transistor.baseOrigin && { origin: transistor.baseOrigin }),
  };
  const before: Member[] = resistance
    ? [
        {
          kind: 'resistance',
          part: `${circuit}.base-resistor`,
          ohms: closed(resistance.quantity),
          origin: resistance.origin,
        },
      ]
    : [];
  const hook: Hook = {
    pin,
    active: setting.active,
    flows: 'out',
    circuit,
    ...(pullDown ? { to: node, members: before } : { to: GROUND, members: [...before, junction] }),
  };
  const inside: BranchPlan[] = pullDown
    ? [
        { from: node, to: GROUND, members: [junction], circuit },
        {
          from: node,
          to: GROUND,
          members: [
            {
              kind: 'resistance',
              part: `${circuit}.pull-down`,
              ohms: closed(pullDown.quantity),
              // The heavier it is, the less is left for the base.
              load: true,
              origin: pullDown.origin,
            },
          ],
          circuit,
        },
      ]
    : [];
  const network: NetworkSketch = {
    id: `${circuit}.driver`,
    circuits: [circuit],
    side: 'control',
    inner: pullDown ? [node] : [],
    hooks: [hook],
    on: inside,
    off: inside,
  };
  const around = {
    circuit,
    id: `${circuit}.driver`,
    path,
    supply,
    load,
    base,
    baseCurrent: (s: Reading) => s.current(base),
    baseSteps: (s: Reading) =>
      branchSteps(s.branch(resistance ? `${circuit}.base-resistor` : base), 'current from the pin towards the base'),
  };
  return {
    by: 'driver',
    pin: pin.account,
    members: [switchMember(transistor, `${circuit}.driver`, USUAL_COLLECTOR)],
    networks: [network],
    accounts: transistorAccounts(transistor, around),
    clamps: false,
    unlimited: resistance ? [] : [{ part: base, pin: pin.account }],
    shortfall: (s) => Math.max(voltsLost(transistor, around, s) - s.across(around.id), 0),
    leak: (s) => (transistor.gain ? s.current(base) * mostGain(transistor, s) : 0),
  };
}
