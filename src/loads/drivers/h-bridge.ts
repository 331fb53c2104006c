/**
 * An H-bridge: the load lies between two of its outputs, one at the supply and one at ground, whichever way it turns. What
 * both of them keep is one drop or one resistance; inputs are logic and take next to nothing.
 */
import { closed } from '../../quantity/quantity.js';
import type { Figures } from '../figures.js';
import type { LoadInput, NetworkSketch } from '../lowering.js';
import { inputAtBoot } from '../at-boot.js';
import { rating } from '../limits.js';
import type { AccountPlan, Reading } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import type { Driver, DriverSetting } from './driver.js';
import { inputBears, inputClamp } from './input-clamp.js';
import { heatAccount, heatOf } from './junction-heat.js';
import { carriedCurrent, carriesOf, offVoltage } from './ratings.js';
import { saturationMembers } from './saturation.js';

/** What a logic input takes when nobody says so, amperes. Common practice, no source. */
const USUAL_INPUT = { min: 0, typ: 33e-6, max: 100e-6 };

export function hBridge(
  input: LoadInput,
  setting: Omit<DriverSetting, 'pin'>,
  figures: Figures,
  pins: readonly DriverSetting['pin'][],
): Driver | undefined {
  const { circuit, path, supply, load, active } = setting;
  const { bench } = input;
  const bound = pins.flatMap((p) => bench.outputPin(p.name, p.path, circuit, active) ?? []);
  const own = figures.word('supply');
  const feed = own === undefined ? supply : bench.node(own, [...path, 'supply']);
  if (bound.length < pins.length || feed === undefined) return undefined;
  if (feed !== supply) {
    figures.problem('supply', `the bridge of \`${input.id}\` has one supply, and its load another`, `\`${supply}\``);
    return undefined;
  }
  const id = `${circuit}.driver`;
  const members = bridgeSwitches(figures, id);
  const amps = figures.interval('input-current', 'current') ?? USUAL_INPUT;
  // Where a resistor inside is stated, it is what an input takes, and what holds it while no firmware runs.
  const held = figures.figure('input-pull-down', 'resistance');
  if (!figures.says('input-current') && !held)
    figures.assume(`each input of the bridge of ${input.id}: up to 0.1 mA, since nobody states it`);
  const logic = figures.word('logic-supply');
  const rail = logic === undefined ? supply : bench.node(logic, [...path, 'logic-supply']);
  if (rail === undefined) return undefined;
  const seats = bound.map((pin, k) => ({
    ...{ figures, circuit, path, rail, pinRail: pin.rail, pin: pin.account, from: { after: pin.account } },
    owner: `the bridge of ${circuit}`,
    told: `${bound.length > 1 ? `input ${k + 1}` : 'the input'} of the bridge of ${circuit}`,
  }));
  const clamps = seats.map(inputClamp);
  const inputs = bound.map((pin, k): NetworkSketch => {
    const part = `${circuit}.bridge-input${k === 0 ? '' : `-${k + 1}`}`;
    const hook = {
      pin,
      active,
      flows: 'out' as const,
      to: GROUND,
      members: [
        held
          ? { kind: 'resistance' as const, part, ohms: closed(held.quantity), load: true as const, origin: held.origin }
          : { kind: 'current' as const, part, amps },
      ],
    };
    return {
      ...{ id: part, circuits: [circuit], side: 'control', inner: [], on: [], off: [] },
      hooks: [{ ...hook, circuit }],
      whenDead: clamps[k]!.whenDead,
    };
  });
  const base = { id, kind: 'driver' as const, circuits: [circuit], path };
  const bears = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  return {
    by: 'driver',
    ...(bound[0] && { pin: bound[0].account }),
    side: 'low',
    members,
    networks: [...inputs, ...bridgeDraw(figures, id, supply)],
    accounts: [
      ...bound.flatMap((pin, k) => inputAtBoot(circuit, path, inputs[k]!.hooks[0]!.members[0]!.part, pin.rail)),
      ...(seats[0] ? inputBears(seats[0], `${circuit}.input`, bench) : []),
      carriedCurrent(base, circuit, load, carriesOf(figures)),
      ...(bears ? [offVoltage(base, circuit, supply, bears)] : []),
      bridgeHeat(
        { ...base, title: `driver of ${circuit}, junction` },
        figures,
        members,
        (s) => s.current(load) * s.across(id),
      ),
    ],
    clamps: bridgeClamps(figures),
    ends: clamps.flatMap((c) => c.ends),
    unlimited: [],
    wiring: { bridged: true },
  };
}

/** Whether diodes to both rails are inside: MOSFETs have one each of their own. */
export const bridgeClamps = (figures: Figures): boolean => figures.flag('clamps') || figures.says('on-resistance');

/** What the two switches in the load's way keep together. */
export function bridgeSwitches(figures: Figures, part: string): Member[] {
  const resistance = figures.figure('on-resistance', 'resistance');
  if (resistance)
    return [
      {
        kind: 'resistance',
        part,
        ohms: closed(resistance.quantity, { min: () => 0 }),
        origin: resistance.origin,
      },
    ];
  return saturationMembers(figures.curve('drop', 'voltage', 'current'), part);
}

/** The bridge's junction, and what has to be known for it. @param members what its switches keep @param lost watts in them */
export function bridgeHeat(
  base: Parameters<typeof heatAccount>[0],
  figures: Figures,
  members: readonly Member[],
  lost: (s: Reading) => number,
): AccountPlan {
  const warm = heatAccount(base, heatOf(figures, base.id), lost, ['hottest', 'draw-most', 'draw-least']);
  if (members.length > 0) return warm;
  const asks = `what do both switches of the bridge of ${base.circuits.join()} keep together (its \`drop\` or \`on-resistance\`)?`;
  return { ...warm, limits: [], read: () => undefined, missing: { figure: 'on-resistance', asks } };
}

/** What the bridge takes for itself, whether its load is on or not. */
export function bridgeDraw(figures: Figures, id: string, supply: string): NetworkSketch[] {
  const figure = figures.figure('quiescent', 'current');
  if (figure === undefined) return [];
  const part = `${id}-itself`;
  const members: Member[] = [{ kind: 'current', part, amps: closed(figure.quantity), origin: figure.origin }];
  const branch = { from: supply, to: GROUND, circuit: part, members };
  return [{ id: part, circuits: [], side: 'load', inner: [], hooks: [], on: [branch], off: [branch] }];
}
