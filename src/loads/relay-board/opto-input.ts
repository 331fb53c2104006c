/**
 * An input with a coupler: logic supply, resistor, indicator and coupler's LED in series with the pin. Its output, fed from the
 * coils' supply, drives the transistor.
 */
import { closed } from '../../quantity/quantity.js';
import { branchSteps } from '../branch-working.js';
import type { Coupler } from '../drivers/coupler.js';
import {
  couplerOf,
  keptOnSteps,
  ledAccounts,
  ledMember,
  outputMember,
  passedOn,
  passedOnSteps,
} from '../drivers/coupler.js';
import type { Drive } from '../drivers/drive.js';
import { stageDrive } from '../drivers/drive.js';
import { bridgeStage } from '../drivers/bridge-stage.js';
import { gateDriver } from '../drivers/gate-driver.js';
import { nmos, pmos } from '../drivers/mosfet.js';
import { passesOn } from '../drivers/passes-on.js';
import type { StageType } from '../drivers/stage.js';
import type { AccountPlan } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import type { Channel, Front } from './board.js';
import { usualDrop, usualRatio } from './coupler.js';
import { indicatorOf } from './indicator.js';
import { farEnd, flowOf, tied } from './input-path.js';

export function couplerInput(channel: Channel): Front | undefined {
  const { board, circuit, path } = channel;
  const { inside } = board;
  const led = `${circuit}.led`;
  const coupler = couplerOf(
    inside,
    () => usualRatio(board, inside),
    () => usualDrop(board),
  );
  const resistor = inside.figure('series', 'resistance');
  if (coupler === undefined || resistor === undefined) {
    inside.problem(
      'series',
      `the coupler input of \`${board.input.id}\` needs its \`series\` resistor`,
      '`input: { series: 1 kΩ, … }`, or the levels and current of a black box',
    );
    return undefined;
  }
  // In the order of the current the resistor comes first when it is fed, the coupler's LED is nearest to the pin.
  const fed: Member[] = [
    { kind: 'resistance', part: `${circuit}.series`, ohms: closed(resistor.quantity), origin: resistor.origin },
    ...(board.indicator === 'in-series' ? [indicatorOf(board, circuit)] : []),
    ledMember(coupler, led),
  ];
  const flows = flowOf(channel);
  const members = flows === 'out' ? fed : fed.toReversed();
  return {
    drive: couplerDrive(channel, coupler, led),
    inner: [],
    networks: [
      {
        id: `${circuit}.input`,
        circuits: [circuit],
        side: 'control',
        ...tied(channel, { to: farEnd(channel), flows, members }),
      },
    ],
    accounts: [
      ...ledAccounts(coupler, { id: `${circuit}.input`, led, circuit, path }).map(besideOthers),
      ...passedOnTo(channel, coupler, led),
    ],
  };
}

/** What else hangs on the pin takes from the LED: it carries the most where that draws the least, and the other way round. */
const besideOthers = (account: AccountPlan): AccountPlan =>
  account.books ? { ...account, recipes: [...account.recipes, 'drive-best', 'drive-worst'] } : account;

/**
 * A transistor's base is held against what the coupler passes on. A gate or a logic input asks for nothing itself, but the resistor
 * beside it does.
 */
function passedOnTo({ board, circuit, path }: Channel, coupler: Coupler, led: string): readonly AccountPlan[] {
  const { type, figures } = board.output![0]!;
  if (
    coupler.transfer === undefined ||
    !READS.includes(type) ||
    !(figures.says('pull-down') || figures.says('pull-up'))
  )
    return [];
  const stages = board.output!.map((_, k, all) =>
    k === all.length - 1 ? `${circuit}.driver` : `${circuit}.stage-${k + 1}`,
  );
  return [
    passesOn(
      {
        id: `${circuit}.coupler`,
        kind: 'driver',
        circuits: [circuit],
        path,
        loads: stages,
        title: `coupler of ${circuit}`,
      },
      coupler,
      led,
      (s, aged = false) => passedOn(coupler, led, s) * (aged ? (coupler.transfer?.left(s.current(led), s) ?? 1) : 1),
    ),
  ];
}

/** Stages that read a voltage. */
const READS: readonly StageType[] = [nmos, pmos, gateDriver, bridgeStage];

/** The coupler's output as what drives the transistor: it gives its ratio's worth of its LED's current, and no more. */
function couplerDrive({ circuit, supply, pin }: Channel, coupler: Coupler, led: string): Drive {
  const { transfer } = coupler;
  const id = `${circuit}.coupler`;
  const output = {
    level: (state: 'on' | 'off') => (state === 'on' ? ('high' as const) : ('open' as const)),
    members: [outputMember(coupler, id)],
    rail: supply,
  };
  return stageDrive(id, output, {
    pin: pin.account,
    ...(transfer && {
      ages: true as const,
      most: (s, aged) => passedOn(coupler, led, s) * (aged ? transfer.left(s.current(led), s) : 1),
    }),
    steps: (s) => [
      ...branchSteps(s.branch(led), 'current that the pin draws through the coupler’s LED', 'I_led'),
      ...passedOnSteps(coupler, led, s, 'I_led'),
    ],
    leak: (s) => (transfer ? transfer.most(s.current(led), s) * s.current(led) : 0),
    leakSteps: (s) => [
      ...branchSteps(s.branch(led), 'current that the coupler’s LED keeps when the pin says off', 'I_led'),
      ...keptOnSteps(coupler, led, s, 'I_led'),
    ],
  });
}
