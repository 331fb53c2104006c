/** A bipolar transistor as a stage: NPN to ground, PNP to its supply. What reaches its base conducts and lets go. */
import { leftForBase } from '../../circuit/bipolar.js';
import { junctionAt, junctionVoltage } from '../../circuit/junction.js';
import { branchSteps } from '../branch-working.js';
import type { Reading, Step } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import { inputOf } from './input.js';
import type { Stage, StageSetting, StageType } from './stage.js';
import { bipolarEdges, switchingOf } from './switching.js';
import type { TransistorSetting } from './transistor.js';
import {
  gainIn,
  lostSteps,
  mostGain,
  shortfallOf,
  switchMember,
  transistorAccounts,
  transistorOf,
} from './transistor.js';

/** A base that keeps more than so many volts at a usual current, amperes, has two junctions behind it. Common practice, no source. */
const ONE_JUNCTION = 1.1;
const USUAL_BASE = 0.01;

const stage =
  (side: 'low' | 'high') =>
  (setting: StageSetting): Stage => {
    const { circuit, prefix, id, path, title, supply, drive, figures, conducts, loads, input } = setting;
    const transistor = transistorOf(figures, id === `${circuit}.driver` ? `the driver of ${input.id}` : title);
    const base = `${prefix}.base`;
    const junction: Member = {
      kind: 'junction',
      part: base,
      law: transistor.base,
      ...(transistor.baseOrigin && { origin: transistor.baseOrigin }),
    };
    const home = side === 'low' ? GROUND : supply;
    const fitted = inputOf(setting, 'base-resistor', [junction], home);
    const away = side === 'low' ? fitted['pull-down'] : fitted['pull-up'];
    const rest = conducts === 'on' ? ('off' as const) : ('on' as const);
    const open = drive.level(conducts) === 'open';
    // What the drive can pass on is shared with the pull beside the base; a drive that has let go still takes its leakage.
    const passed = (s: Reading, aged: boolean): number =>
      open ? Infinity : Math.max((drive.most?.(s, aged) ?? Infinity) - (away ? s.current(away) : 0), 0);
    const stolen = (s: Reading): number => (open ? drive.leak(s) : 0);
    const baseCurrent = (s: Reading, aged = false): number =>
      Math.max(Math.min(s.current(base), passed(s, aged)) - stolen(s), 0);
    const switching = switchingOf(setting, id, bipolarEdges(setting));
    const needs: TransistorSetting = {
      circuit,
      id,
      path,
      supply,
      title,
      load: id,
      base,
      ...(conducts === 'off' && { off: true as const }),
      ...(loads.length > 0 && { loads }),
      baseCurrent,
      baseSteps: (s) => [
        ...(open ? [] : drive.steps(s)),
        ...branchSteps(
          s.branch(fitted.series ?? base),
          `current ${drive.bare ? 'from the pin ' : ''}towards the base${drive.most && !open ? ', at most' : ''}`,
          drive.most && !open ? 'I_resistor' : 'I_base',
        ),
        ...(drive.most && !open ? [smaller(s, drive.most(s))] : []),
      ],
      ...(switching && { switching }),
      ...(drive.ages && { aged: (s: Reading) => baseCurrent(s, true) }),
    };
    /** What the drive passes on, or what the resistor lets through: the smaller reaches the base. */
    const smaller = (s: Reading, driven: number): Step => {
      const aside = away === undefined ? 0 : s.current(away);
      const told = drive.steps(s).at(-1)?.name ?? 'I_driven';
      const most = aside === 0 ? told : `${told} - I_pull`;
      return {
        name: 'I_base',
        says: 'the smaller of the two reaches the base',
        formula: `min(${most}, I_resistor)`,
        with: {
          [told]: [driven, 'A'],
          ...(aside !== 0 && { I_pull: [aside, 'A'] }),
          I_resistor: [s.current(base), 'A'],
        },
        gives: [baseCurrent(s), 'A'],
      };
    };
    const least = figures.interval('base-resistor', 'resistance')?.min ?? 1;
    const kept = (s: Reading): number => {
      if (drive.level(rest) !== 'open') return 0;
      // A drive that does not let go at all gives what the resistor on the way lets through.
      const leak = Math.min(drive.leak(s), s.voltage(supply) / least);
      if (leak === 0 || away === undefined) return leak;
      return leftForBase(
        leak,
        junctionAt(s.typical ? transistor.base.typ : transistor.base.min, s.ambient),
        s.ohms(away),
      );
    };
    const still = (s: Reading): number => s.current(base) + kept(s);
    const leak = (s: Reading): number => (transistor.gain ? still(s) * mostGain(transistor, s) : 0);
    const most = (s: Reading, aged = false): number =>
      transistor.gain ? baseCurrent(s, aged) * gainIn(transistor, s.current(id), s) : Infinity;
    const two = junctionVoltage(transistor.base.typ, USUAL_BASE) > ONE_JUNCTION;
    const darlington =
      side === 'high' || !two || drive.bare === undefined
        ? undefined
        : fitted.node === undefined
          ? { after: fitted.series ?? drive.bare }
          : { node: fitted.node };
    const limited = fitted.series !== undefined || open;
    return {
      members: [switchMember(transistor, id, setting.expected)],
      networks: fitted.networks,
      ...(darlington && { darlington }),
      accounts: transistorAccounts(transistor, needs),
      unlimited: limited ? [] : [{ part: base, ...(drive.bare && { pin: drive.bare }) }],
      most,
      steps: (s) => [
        ...needs.baseSteps(s),
        ...times('I_collector', 'what it can carry at the least gain', most(s), gainIn, s),
      ],
      shortfall: shortfallOf(transistor, needs, setting.expected),
      lossSteps: (s) => lostSteps(transistor, needs, setting.expected, s),
      leak,
      leakSteps: (s) => [
        ...(drive.level(rest) === 'open' ? drive.leakSteps(s) : []),
        ...branchSteps(s.branch(base), 'current that still reaches the base'),
        ...times('I_off', 'what the transistor makes of it at most', leak(s), (t) => mostGain(t, s), s),
      ],
    };

    /** A base current times a gain, as a step. */
    function times(
      name: string,
      says: string,
      amps: number,
      gainOf: (t: typeof transistor, collector: number, s: Reading) => number,
      s: Reading,
    ): Step[] {
      if (!transistor.gain) return [];
      const gain = gainOf(transistor, s.current(id), s);
      return [
        {
          name,
          says,
          formula: 'gain * I_base',
          with: { gain: [gain, ''], I_base: [amps / gain, 'A'] },
          gives: [amps, 'A'],
        },
      ];
    }
  };

export const npn: StageType = {
  conducts: (level) => level === 'high',
  gives: (conducts) => (conducts ? 'low' : 'open'),
  lower: stage('low'),
};
export const pnp: StageType = {
  conducts: (level) => level === 'low',
  gives: (conducts) => (conducts ? 'high' : 'open'),
  lower: stage('high'),
};
