/** The accounts of an array itself: each channel's input, current and voltage, the package's current and its heat. */
import { lineVoltage } from '../../circuit/lines.js';
import type { Figures } from '../figures.js';
import type { ArrayChannel } from '../lowering.js';
import { rating } from '../limits.js';
import type { AccountPlan, LimitPlan, Reading, Step } from '../account-plan.js';
import type { CurvePoint } from '../branch-plan.js';
import { ableAmps, driveAccount, levelAccount, shareOf } from './array-drive.js';
import { heatBy } from './half-driven.js';
import { clampVolts } from './array-clamp.js';
import { saturationPoints } from './saturation.js';
import { heatAccount, heatOf } from './junction-heat.js';

/** @param used the channels in use @param common node that the clamps' common pin is wired to */
export function arrayAccounts(
  array: string,
  figures: Figures,
  path: AccountPlan['path'],
  used: readonly ArrayChannel[],
  common?: string,
): AccountPlan[] {
  const channels = [...new Set(used.map((u) => u.channel))].sort((a, b) => a - b);
  const channelLimit = rating(figures, 'channel-current', 'current');
  const packageLimit = rating(figures, 'package-current', 'current');
  const voltageLimit = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  const clamped = figures.flag('clamps') ? common : undefined;
  const drop = clampVolts(figures);
  return [
    ...channels.flatMap((n) => {
      const id = `${array}.${n}`;
      const users = used.filter((u) => u.channel === n);
      return [
        ...driven(figures, id, path, users),
        carried({ id, title: `array channel ${id}`, path, figure: 'channel-current' }, users, channelLimit, shareOf),
        ...(voltageLimit
          ? [bears(id, path, users, voltageLimit, clamped === undefined ? undefined : { common: clamped, drop })]
          : []),
      ];
    }),
    ...packageAccounts(array, figures, path, used, packageLimit),
  ];
}

/** What switches a channel: a logic level, or the current into its input; nothing where control lines set it. */
function driven(
  figures: Figures,
  id: string,
  path: AccountPlan['path'],
  users: readonly ArrayChannel[],
): AccountPlan[] {
  if (figures.flag('serial')) return [];
  return figures.says('input-threshold')
    ? levelAccount(figures, id, path, users)
    : [driveAccount(figures, id, path, users)];
}

function packageAccounts(
  array: string,
  figures: Figures,
  path: AccountPlan['path'],
  used: readonly ArrayChannel[],
  limit: LimitPlan | undefined,
): AccountPlan[] {
  const id = `${array}.package`;
  // A load on joined channels is one current through the package.
  const loads = used.filter((u, k) => used.findIndex((o) => o.part === u.part) === k);
  const inputs = [...new Set(used.flatMap((u) => u.input))];
  const saturation = figures.curve('saturation', 'voltage', 'current');
  const outputs = loads.map((u): Output => ({
    ...u,
    able: u.input[0] === undefined ? undefined : ableAmps(figures, u.input[0]),
    kept: saturation ? saturationPoints(saturation, u.joined) : [],
  }));
  const loss = (s: Reading): number =>
    inputs.reduce((watts, part) => watts + s.current(part) * s.across(part), 0) +
    outputs.reduce((watts, u) => watts + lossOf(u, s), 0);
  const about = { id, title: `array ${array}, all channels`, path, figure: 'package-current' };
  const heat = heatAccount(
    { id, kind: 'array', circuits: circuitsOf(used), path, title: `array ${array}, junction` },
    heatOf(figures, array),
    loss,
    // Where the inputs get too little the outputs are not driven all the way, and keep the more.
    ['hottest', 'draw-most', 'drive-worst', 'draw-least'],
  );
  return [
    ...(limit ? [carried(about, loads, limit, () => () => 1)] : []),
    ...together(array, figures, path, used),
    { ...heat, steps: (s) => [lossStep(s, outputs, loss(s)), ...heat.steps(s)] },
  ];
}

/** The channel that carries most, held against what each may carry while so many conduct. */
function together(
  array: string,
  figures: Figures,
  path: AccountPlan['path'],
  used: readonly ArrayChannel[],
): AccountPlan[] {
  const curve = figures.curve('simultaneous-current', 'current', 'ratio');
  if (curve === undefined) return [];
  const channels = [...new Set(used.map((u) => u.channel))].map((n) => used.filter((u) => u.channel === n));
  const amps = (s: Reading): number[] =>
    channels.map((users) => users.reduce((sum, u) => sum + s.current(u.part) * shareOf(u)(s), 0));
  const on = (s: Reading): number => amps(s).filter((i) => i > CONDUCTS).length;
  // Between two rows the one for more channels counts.
  const row = (s: Reading) => curve.points.find((p) => p.at >= on(s)) ?? curve.points.at(-1)!;
  const most = (s: Reading): number => Math.max(0, ...amps(s));
  return [
    {
      id: `${array}.channels`,
      kind: 'array',
      title: `array ${array}, the channel that carries most`,
      quantity: 'current',
      direction: 'at-most',
      circuits: circuitsOf(used),
      path,
      recipes: ['draw-most', 'draw-least'],
      peaks: true,
      read: most,
      limits: [
        {
          value: (s) => row(s).value.min,
          stated: curve.points.map((p) => `${p.quantity.stated} with ${p.at} conducting`).join(', '),
          grade: curve.origin.basis === 'practice' ? 'practice' : 'operating',
          margin: 'current',
          origin: curve.origin,
          condition: 'by how many channels conduct together',
        },
      ],
      steps: (s) => [
        {
          name: 'I',
          says: `${on(s)} conduct, and the channel that carries most of them carries this`,
          formula: 'I',
          with: { I: [most(s), 'A'] },
          gives: [most(s), 'A'],
        },
      ],
    },
  ];
}

/** A channel that carries less is off, amperes. */
const CONDUCTS = 1e-6;

/** The sum behind the package's loss: what each output keeps times what it carries, and what the inputs turn to heat. */
function lossStep(s: Reading, outputs: readonly Output[], whole: number): Step {
  const parts = outputs.flatMap((u, k) => {
    const amps = s.current(u.part);
    if (u.saturation === undefined || amps === 0) return [];
    const watts = lossOf(u, s);
    return [{ k: k + 1, amps, volts: watts / amps, watts }];
  });
  const inputs = whole - parts.reduce((sum, p) => sum + p.watts, 0);
  return {
    name: 'P',
    says: 'what the outputs that carry a load keep, and the inputs’ own loss',
    formula: [...parts.map(({ k }) => `V_${k} * I_${k}`), 'P_inputs'].join(' + '),
    with: Object.fromEntries([
      ...parts.flatMap(({ k, amps, volts }) => [[`V_${k}`, [volts, 'V']] as const, [`I_${k}`, [amps, 'A']] as const]),
      ['P_inputs', [inputs, 'W']] as const,
    ]),
    gives: [whole, 'W'],
  };
}

/** A load with what its channels can carry together, and what they keep. */
type Output = ArrayChannel & { readonly able: ReturnType<typeof ableAmps>; readonly kept: readonly CurvePoint[] };

/**
 * Watts at the outputs of a load: its current, which is highest where they keep the least, times the most (typically the
 * typical) that they keep at it; or, where they are not driven all the way, the most in between.
 */
function lossOf(u: Output, s: Reading): number {
  if (u.saturation === undefined || u.kept.length === 0) return 0;
  const amps = s.current(u.part);
  const volts = lineVoltage(
    u.kept.map((p) => ({ amps: p.amps, volts: s.typical ? p.volts.typ : p.volts.max })),
    amps,
  );
  return Math.max(amps > 0 ? amps * volts : 0, heatBy(s, u.part, u.saturation, u.able?.(s) ?? Infinity));
}

const circuitsOf = (of: readonly ArrayChannel[]): string[] => [...new Set(of.map((u) => u.circuit))];

/** A current through channels: the sum of what hangs on them. */
function carried(
  { id, title, path, figure }: Pick<AccountPlan, 'id' | 'title' | 'path'> & { readonly figure: string },
  of: readonly ArrayChannel[],
  limit: LimitPlan | undefined,
  share: (u: ArrayChannel) => (s: Reading) => number,
): AccountPlan {
  const amps = (s: Reading): number => of.reduce((sum, u) => sum + s.current(u.part) * share(u)(s), 0);
  return {
    id,
    kind: 'array',
    title,
    quantity: 'current',
    direction: 'at-most',
    circuits: circuitsOf(of),
    path,
    recipes: ['draw-most', 'draw-least'],
    peaks: true,
    read: amps,
    limits: limit ? [limit] : [],
    books: of.map((u) => ({ circuit: u.circuit, part: u.part, share: share(u) })),
    ...(!limit && { missing: { figure, asks: `what current may ${title} carry (its \`${figure}\`)?` } }),
    steps: (s) => [
      {
        name: 'I',
        says: of.some((u) => share(u)(s) !== 1)
          ? 'the loads that hang on it; of channels joined for one, one may take a fifth more than its even share'
          : 'the loads that hang on it',
        formula: of.map((u, k) => `${share(u)(s) === 1 ? '' : `share_${k + 1} * `}I_${k + 1}`).join(' + '),
        with: Object.fromEntries(
          of.flatMap((u, k) => [
            ...(share(u)(s) === 1 ? [] : [[`share_${k + 1}`, [share(u)(s), '']] as const]),
            [`I_${k + 1}`, [s.current(u.part), 'A']] as const,
          ]),
        ),
        gives: [amps(s), 'A'],
      },
    ],
  };
}

/**
 * What stands across a channel that is off: the load's supply, or the common pin that its clamp ties it to, whichever is more. A
 * winding that has just been switched off lifts it above that pin by what the clamp drops.
 */
function bears(
  id: string,
  path: AccountPlan['path'],
  users: readonly ArrayChannel[],
  limit: LimitPlan,
  clamped: { readonly common: string; readonly drop: ReturnType<typeof clampVolts> } | undefined,
): AccountPlan {
  const nodes = [...new Set([...users.map((u) => u.supply), ...(clamped ? [clamped.common] : [])])];
  const windings = clamped ? users.filter((u) => u.inductive) : [];
  const rests = (s: Reading): number => Math.max(...nodes.map((node) => s.voltage(node)));
  const dropped = (s: Reading): number => Math.max(0, ...windings.map((u) => clamped!.drop(s.current(u.part), s)));
  const thrown = (s: Reading): number => (clamped ? s.voltage(clamped.common) + dropped(s) : 0);
  const isThrown = (s: Reading): boolean => windings.length > 0 && thrown(s) >= rests(s);
  const most = (s: Reading): number => (isThrown(s) ? thrown(s) : rests(s));
  return {
    id,
    kind: 'array',
    title: `array channel ${id}, voltage ${windings.length > 0 ? 'at switching off' : 'when off'}`,
    quantity: 'voltage',
    direction: 'at-most',
    circuits: circuitsOf(users),
    path,
    recipes: ['lightest', 'starved', ...(windings.length > 0 ? (['draw-most', 'draw-least'] as const) : [])],
    read: most,
    limits: [limit],
    steps: (s) => [
      isThrown(s)
        ? {
            name: 'V_peak',
            says: 'at switching off its clamp drops so much above its common pin, while it carries the winding’s current',
            formula: 'V_common + V_clamp',
            with: { V_common: [s.voltage(clamped!.common), 'V'], V_clamp: [dropped(s), 'V'] },
            gives: [most(s), 'V'],
          }
        : {
            name: 'V',
            says: 'switched off, it bears the highest of what it leads to',
            formula: 'V',
            with: { V: [most(s), 'V'] },
            gives: [most(s), 'V'],
          },
    ],
  };
}
