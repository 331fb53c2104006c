/**
 * What in the wiring would explain a reading. Each fault is put into the project, which is then solved again: only those are
 * offered under which the meter shows what it showed.
 */
import { junctionVoltage } from '../../circuit/junction.js';
import { boundsOfReading } from '../../ledger/measured.js';
import type { BranchPlan } from '../../loads/branch-plan.js';
import type { ModeSearch } from '../../ledger/moments.js';
import { solver } from '../../ledger/solver.js';
import { fedFrom, withPart } from '../../project/altered.js';
import type { Project, ReadingPlan } from '../../project/project.js';
import type { TreeNode } from '../../project/tree-plan.js';
import type { Interval } from '../../quantity/interval.js';

/** What a meter may be off by where the file does not say: a share of its range, or kelvins (common practice, no source). */
const METER = { share: 0.02, kelvins: 2 };
/** No more circuits are tried one by one. */
const MOST_CIRCUITS = 24;
/** No more of them are told. */
const MOST = 3;
/** Currents of a winding's clamp that is shorted by its driver, amperes: what the smallest and the largest drivers give. */
const SHORTED = { least: 0.01, most: 1 };

/** A fault of wiring, the project with it, and the states in which it is looked at. */
interface Fault {
  /** Ends the sentence 'It would be explained if …'. */
  readonly says: string;
  readonly project: Project;
  readonly modes: readonly ModeSearch[];
  readonly reading: ReadingPlan;
}

/**
 * What would explain a reading, the likeliest first.
 *
 * @param allowed what the figures allow @param modes those in which it may have been taken @param others the project's other ones
 */
export function explanationsOf(
  project: Project,
  reading: ReadingPlan,
  allowed: Interval,
  modes: readonly ModeSearch[],
  others: readonly ModeSearch[],
): string[] {
  const shown = withMeter(reading, allowed);
  const faults = [
    ...notOn(project, reading, modes),
    ...jumpersTurned(project, reading, modes),
    ...onBranch(project, reading, modes),
    ...turnedOver(project, reading, modes),
    ...others.map((mode) => ({
      says: `the mode was ${mode.name}`,
      project,
      modes: [mode],
      reading: { ...reading, mode: mode.name },
    })),
  ];
  const found = faults.filter((f) => reproduces(f, shown)).map((f) => f.says);
  return [...clampFault(project, reading, shown), ...found].slice(0, MOST);
}

function reproduces(fault: Fault, shown: Interval): boolean {
  try {
    const found = boundsOfReading(solver(fault.project), fault.reading, fault.modes);
    return found !== undefined && overlaps(shown, found.bounds.draw);
  } catch {
    // A fault under which nothing comes to rest explains nothing.
    return false;
  }
}

/** A reading with its tolerance. */
function withMeter({ value, exact, quantity }: ReadingPlan, allowed: Interval): Interval {
  if (!exact) return value;
  const room = quantity === 'temperature' ? METER.kelvins : METER.share * Math.max(Math.abs(value.typ), allowed.max);
  return { min: value.min - room, typ: value.typ, max: value.max + room };
}

const overlaps = (a: Interval, b: Interval): boolean => a.min <= b.max && a.max >= b.min;

/** The circuit is not switched on at all. */
function notOn(project: Project, reading: ReadingPlan, modes: readonly ModeSearch[]): Fault[] {
  const { circuits } = project.networks.find((n) => n.on.some((b) => has(b.members, reading.of.id))) ?? {};
  if (circuits === undefined || circuits.length === 0) return [];
  const off = new Set(circuits);
  if (project.circuits.some((c) => c.always && off.has(c.id))) return [];
  const without = modes.map(({ name, on }): ModeSearch => ({
    name,
    on: Uint8Array.from(project.circuits, ({ id }, k) => (off.has(id) ? 0 : (on?.[k] ?? 1))),
  }));
  return [{ says: `${[...off].join(' and ')} is not switched on`, project, modes: without, reading }];
}

/** Another circuit is on that should not be, or is not on that should be. */
function turnedOver(project: Project, reading: ReadingPlan, modes: readonly ModeSearch[]): Fault[] {
  const stated = modes.filter((m) => m.on !== undefined);
  const own = project.networks.find((n) => n.on.some((b) => has(b.members, reading.of.id)))?.circuits ?? [];
  return project.circuits.slice(0, MOST_CIRCUITS).flatMap((c, k): Fault[] => {
    if (c.always || own.includes(c.id) || stated.length === 0) return [];
    const isOn = stated[0]!.on![k] === 1;
    const turned = stated.map(({ name, on }): ModeSearch => ({ name, on: on!.map((x, j) => (j === k ? 1 - x : x)) }));
    return [
      {
        says: `${c.id} is ${isOn ? 'off' : 'on'}, too`.replace(' off, too', ' not on'),
        project,
        modes: turned,
        reading,
      },
    ];
  });
}

const has = (members: readonly { readonly part: string }[], part: string): boolean =>
  members.some((m) => m.part === part);

/** Faults of the branch that is measured: fed from elsewhere, a second winding across it. */
function onBranch(project: Project, reading: ReadingPlan, modes: readonly ModeSearch[]): Fault[] {
  const { id } = reading.of;
  const branch = project.networks.flatMap((n) => n.on).find((b) => has(b.members, id));
  const nodes = project.nodes.filter((n) => n.kind !== 'joint' && isFed(project, n)).map((n) => n.id);
  const feed = branch && [branch.from, branch.to].find((end) => nodes.includes(end));
  if (branch === undefined || feed === undefined) return [];
  const supplied = nodes
    .filter((other) => other !== feed)
    .map((other): Fault => ({
      says: `it is fed from ${other} and not from ${feed}`,
      project: fedFrom(project, (b) => has(b.members, id), feed, other),
      modes,
      reading,
    }));
  const winding = branch.members.find((m) => m.kind === 'resistance' && m.load === true);
  if (winding === undefined) return supplied;
  const doubled: Fault = {
    says: `a second one like ${winding.part} hangs across it`,
    project: withPart(project, winding.part, (m) =>
      m.kind === 'resistance' ? { ...m, ohms: { min: m.ohms.min / 2, typ: m.ohms.typ / 2, max: m.ohms.max / 2 } } : m,
    ),
    modes,
    reading,
  };
  return [...supplied, doubled];
}

const isFed = ({ links }: Project, { id, volts }: TreeNode): boolean =>
  volts !== undefined || links.some((l) => l.to === id);

/** The supply jumper of a relay board is set the other way, so that the other supply feeds its coils. */
function jumpersTurned(project: Project, reading: ReadingPlan, modes: readonly ModeSearch[]): Fault[] {
  const boards = new Map(project.circuits.flatMap((c) => (c.wiring.board ? [[c.owner, c.wiring.board] as const] : [])));
  return [...boards].flatMap(([owner, { hasJumper, logic, coil, jumper }]): Fault[] => {
    if (!hasJumper || jumper === 'fitted' || logic === undefined || coil === undefined || logic === coil) return [];
    const says = `the supply jumper of ${owner} is fitted and ${logic} feeds its coils`;
    const ofBoard = ({ circuit }: BranchPlan): boolean => circuit.startsWith(`${owner}.`);
    return [{ says, project: fedFrom(project, ofBoard, coil, logic), modes, reading }];
  });
}

/** A winding whose clamp is the wrong way round has no more across it than the clamp drops, whatever its driver gives. */
function clampFault(project: Project, { of, quantity }: ReadingPlan, shown: Interval): string[] {
  const circuit = project.circuits.find((c) => c.wiring.coil === of.id);
  const law = circuit?.wiring.clampForward;
  if (circuit === undefined || law === undefined || quantity !== 'voltage') return [];
  const [min, max] = [junctionVoltage(law.min, SHORTED.least), junctionVoltage(law.max, SHORTED.most)];
  return overlaps(shown, { min, typ: min, max })
    ? [`the clamp of ${circuit.id} is fitted the wrong way round and conducts`]
    : [];
}
