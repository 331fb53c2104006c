/** A gate: the voltage that it stands at against its source, what is asked of that, and how it comes about. */
import { branchSteps } from '../branch-working.js';
import type { Reading, Step } from '../account-plan.js';
import type { DeadWay, Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import type { State } from './drive.js';
import { inputOf } from './input.js';
import type { Input } from './input.js';
import type { StageSetting } from './stage.js';
import { settled } from './stage.js';

/** Ohms of a gate itself: its leakage, some picoamperes, which a lone gate is read by. Common practice, no source. */
const LEAKAGE = 1e12;

export interface Gate {
  readonly networks: Input['networks'];
  /** Volts from source to gate in the direction in which it conducts, less what its drive leaks against that. */
  readonly volts: (s: Reading) => number;
  /** The same while it should not conduct, with what its drive leaks through the pull beside it. */
  readonly rest: (s: Reading) => number;
  readonly steps: (s: Reading) => readonly Step[];
  readonly restSteps: (s: Reading) => readonly Step[];
  /** Where it lies in its network, behind what is fitted on the way from a pin; undefined behind another stage. */
  readonly at: DeadWay['from'] | undefined;
  /** Nothing says where it stands in a state: its drive lets go and nothing is fitted that would discharge it. */
  readonly floats: (state: State) => boolean;
}

export function gateOf(setting: StageSetting, side: 'low' | 'high'): Gate {
  const { drive, supply, prefix, figures } = setting;
  const home = side === 'low' ? GROUND : supply;
  const pulled = figures.says('pull-up') || figures.says('pull-down');
  const part = `${prefix}.gate`;
  const own: Member = { kind: 'resistance', part, ohms: { min: LEAKAGE, typ: LEAKAGE, max: LEAKAGE }, load: true };
  const input = inputOf(setting, 'gate-resistor', pulled ? [] : [own], home);
  const [up, down] = [input['pull-up'], input['pull-down']];
  const across = side === 'low' ? (down ?? part) : (up ?? part);
  const { node } = input;
  /** As its network leaves it. */
  const standing = (s: Reading): number => {
    if (node === undefined) return s.across(across);
    return side === 'low' ? s.voltage(node) : s.voltage(supply) - s.voltage(node);
  };
  const standingSteps = (s: Reading): Step[] => {
    const gives = [standing(s), 'V'] as const;
    if (node !== undefined && side === 'low')
      return [
        { name: 'V_gate', says: 'what the resistors at the gate leave it', formula: 'V', with: { V: gives }, gives },
      ];
    if (node !== undefined)
      return [
        {
          name: 'V_gate',
          says: 'from source to gate, as the resistors at the gate leave it',
          formula: 'V_source - V',
          with: { V_source: [s.voltage(supply), 'V'], V: [s.voltage(node), 'V'] },
          gives,
        },
      ];
    if (!pulled) return alone(s, gives);
    if (s.branch(across) === undefined)
      return [
        {
          name: 'V_gate',
          says: 'nothing flows in the resistor from gate to source, so nothing stands across it',
          formula: '0',
          with: {},
          gives,
        },
      ];
    return [
      ...branchSteps(s.branch(across), `current through the gate’s ${side === 'low' ? 'pull-down' : 'pull-up'}`),
      {
        name: 'V_gate',
        says: `what stands across it, from source to gate`,
        formula: 'I * R',
        with: { I: [s.current(across), 'A'], R: [s.ohms(across), 'Ω'] },
        gives,
      },
    ];
  };
  /** A gate with nothing beside it stands where its drive does. */
  const alone = (s: Reading, gives: Step['gives']): Step[] => {
    const branch = s.branch(part);
    if (branch === undefined) return [];
    return [
      {
        name: 'V_gate',
        says: drive.bare ? 'the gate stands at the pin’s level' : 'the gate stands where the stage before it does',
        formula: side === 'low' ? 'V_drive' : 'V_source - V_drive',
        with:
          side === 'low'
            ? { V_drive: gives }
            : { V_source: [branch.from.volts, 'V'], V_drive: [branch.from.volts - gives[0], 'V'] },
        gives,
      },
    ];
  };
  const { conducts } = setting;
  const resting = conducts === 'on' ? ('off' as const) : ('on' as const);
  const [away, towards] = side === 'low' ? (['pull-down', 'pull-up'] as const) : (['pull-up', 'pull-down'] as const);
  /** What a drive that has let go leaks, through the highest resistance of a pull: it moves the gate furthest. */
  const leaked = (state: State, key: 'pull-up' | 'pull-down') => {
    const ohms = figures.interval(key, 'resistance')?.max;
    return (s: Reading): number => (drive.level(state) === 'open' && ohms !== undefined ? drive.leak(s) * ohms : 0);
  };
  const [raised, lowered] = [leaked(resting, away), leaked(conducts, towards)];
  const volts = (s: Reading): number => Math.max(standing(s) - lowered(s), 0);
  // It moves the gate as far as the drive would if it conducted, and no further.
  const rest = (s: Reading): number =>
    Math.max(standing(s), Math.min(raised(s), s.voltage(side === 'low' ? drive.rail : supply)));
  const moved = (s: Reading, gives: number): Step[] =>
    gives === standing(s)
      ? standingSteps(s)
      : [
          ...drive.leakSteps(s),
          {
            name: 'V_gate',
            says: 'how far what the stage before it leaks moves the gate',
            formula: 'V',
            with: { V: [gives, 'V'] },
            gives: [gives, 'V'],
          },
        ];
  return {
    networks: input.networks,
    at: drive.bare === undefined ? undefined : node === undefined ? { after: input.series ?? drive.bare } : { node },
    volts,
    rest,
    steps: (s) => moved(s, volts(s)),
    restSteps: (s) => moved(s, rest(s)),
    floats: (state) => settled(drive.level(state), figures) === 'open',
  };
}
