/** A gate: the voltage that it stands at against its source, what is asked of that, and how it comes about. */
import { branchSteps } from '../branch-working.js';
import type { Member, Reading, Step } from '../plan.js';
import { GROUND } from '../plan.js';
import type { State } from './drive.js';
import { inputOf } from './input.js';
import type { Input } from './input.js';
import type { StageSetting } from './stage.js';
import { settled } from './stage.js';

/** Ohms of a gate itself: its leakage, some picoamperes, which a lone gate is read by. Common practice, no source. */
const LEAKAGE = 1e12;

export interface Gate {
  readonly networks: Input['networks'];
  /** Volts from source to gate in the direction in which it conducts. */
  readonly volts: (s: Reading) => number;
  /** The same while it should not conduct, with what its drive leaks through the pull beside it. */
  readonly rest: (s: Reading) => number;
  readonly steps: (s: Reading) => readonly Step[];
  readonly restSteps: (s: Reading) => readonly Step[];
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
  const volts = (s: Reading): number => {
    if (node === undefined) return s.across(across);
    return side === 'low' ? s.voltage(node) : s.voltage(supply) - s.voltage(node);
  };
  const steps = (s: Reading): Step[] => {
    const gives = [volts(s), 'V'] as const;
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
  const resting = setting.conducts === 'on' ? ('off' as const) : ('on' as const);
  const leaks = drive.level(resting) === 'open' && pulled;
  /** What leaks through the pull moves the gate as far as the drive would if it conducted, and no further. */
  const moved = (s: Reading): number =>
    leaks ? Math.min(drive.leak(s) * s.ohms(across), s.voltage(side === 'low' ? drive.rail : supply)) : 0;
  const rest = (s: Reading): number => Math.max(volts(s), moved(s));
  const restSteps = (s: Reading): Step[] => [
    ...(leaks ? drive.leakSteps(s) : []),
    ...(moved(s) > volts(s)
      ? [
          {
            name: 'V_gate',
            says: 'what the stage before it leaks moves the gate at most so far',
            formula: 'V',
            with: { V: [moved(s), 'V'] },
            gives: [moved(s), 'V'],
          } satisfies Step,
        ]
      : steps(s)),
  ];
  return {
    networks: input.networks,
    volts,
    rest,
    steps,
    restSteps,
    floats: (state) => settled(drive.level(state), figures) === 'open',
  };
}
