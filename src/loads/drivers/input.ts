/**
 * What stands between a drive and the base of a transistor or the gate of a MOSFET: a resistor on the way, a pull to the one
 * side or the other. Where nothing branches off, it is one path.
 */
import { closed } from '../../quantity/quantity.js';
import type { Figure } from '../figures.js';
import type { NetworkSketch } from '../lowering.js';
import type { BranchPlan, Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import type { State } from './drive.js';
import type { StageSetting } from './stage.js';

/** The resistors of an input, as the file states them. */
interface Fitted {
  readonly series?: Figure;
  readonly 'pull-up'?: Figure;
  readonly 'pull-down'?: Figure;
}

export interface Input {
  readonly networks: readonly NetworkSketch[];
  /** Name of the node that base or gate hang on, where something branches off there. */
  readonly node?: string;
  /** Part names of what is fitted. */
  readonly series?: string;
  readonly 'pull-up'?: string;
  readonly 'pull-down'?: string;
}

const resistance = (part: string, figure: Figure, load: boolean): Member => ({
  kind: 'resistance',
  part,
  ohms: closed(figure.quantity),
  ...(load && { load: true as const }),
  origin: figure.origin,
});

/**
 * @param series key of the resistor on the way: 'base-resistor'
 * @param content what leads from the input to the emitter or source; resistors only, or a junction that points away from
 * the input of an NPN and towards that of a PNP
 * @param home node of emitter or source
 */
export function inputOf(setting: StageSetting, series: string, content: readonly Member[], home: string): Input {
  const { figures, prefix, circuit, drive, supply, id } = setting;
  const figure = (key: string) => figures.figure(key, 'resistance');
  const fitted: Fitted = {
    ...(figure(series) && { series: figure(series)! }),
    ...(figure('pull-up') && { 'pull-up': figure('pull-up')! }),
    ...(figure('pull-down') && { 'pull-down': figure('pull-down')! }),
  };
  const flows = home === GROUND ? ('out' as const) : ('in' as const);
  const name = (key: string): string => `${prefix}.${key}`;
  const parts = {
    ...(fitted.series && { series: name(series) }),
    ...(fitted['pull-up'] && { 'pull-up': name('pull-up') }),
    ...(fitted['pull-down'] && { 'pull-down': name('pull-down') }),
  };
  const before = fitted.series ? [resistance(name(series), fitted.series, false)] : [];
  const network = (more: Pick<NetworkSketch, 'hooks' | 'on' | 'off'>, inner: readonly string[] = []) => ({
    id,
    circuits: [circuit],
    side: 'control' as const,
    inner,
    ...more,
  });
  // A pull towards emitter or source takes away from what is driven; one the other way helps it.
  const pulls = (['pull-up', 'pull-down'] as const).flatMap((key) => {
    const pull = fitted[key];
    const rail = key === 'pull-up' ? supply : GROUND;
    return pull ? [{ rail, member: resistance(name(key), pull, rail === home) }] : [];
  });
  const [only, ...others] = pulls;
  const paths = [...(content.length > 0 ? [content] : []), ...pulls.map((p) => [p.member])];
  if (paths.length === 0) return { networks: [], ...parts };
  // A single path is read with the drive at its other end; where the drive has let go, nothing flows in it.
  if (paths.length === 1 && (only === undefined || only.rail === home))
    return {
      networks: [network(drive.tie({ circuit, to: home, flows, members: [...before, ...paths[0]!] }))],
      ...parts,
    };
  const node = `${id}:input`;
  const against = pulls.some((p) => p.rail !== home);
  const holds: State = setting.conducts === 'on' ? 'off' : 'on';
  const tied = drive.tie({ circuit, to: node, flows, members: before, ...(against && { holds }) });
  const towards = (rail: string, members: readonly Member[]): BranchPlan =>
    rail === GROUND ? { from: node, to: GROUND, members, circuit } : { from: rail, to: node, members, circuit };
  const inside = [
    ...(content.length > 0 ? [towards(home, content)] : []),
    ...[only, ...others].flatMap((p) => (p ? [towards(p.rail, [p.member])] : [])),
  ];
  return {
    networks: [network({ ...tied, on: [...inside, ...tied.on], off: [...inside, ...tied.off] }, [node])],
    node,
    ...parts,
  };
}
