/**
 * Capacitors against peaks. Solutions know none: where a stall or a burst flows, all of it flows from the source. Here it is
 * reckoned afterwards what capacitors on its way give of it: the source's share rises with the time constant of its own
 * resistance and the capacitance, and so does the dip. Peaks of different length may end together, so that each counts at
 * its own end.
 *
 * Rule 17 of the format lets a stated capacitance carry a peak. It does so when the charge of all peaks on it, taken out of
 * the capacitors alone, leaves the rail inside every window on it; where nothing states a window, within 5 % of its voltage
 * (common practice, no source). Then what lies before it sees nothing of them, and else the source's share.
 */
import { capacitorDip, sourceShare } from '../circuit/dip.js';
import { chargedBy } from '../project/capacitances.js';
import { hasPeaks } from '../loads/branch-plan.js';
import type { Member } from '../loads/branch-plan.js';
import type { Project } from '../project/project.js';
import type { Link } from '../project/tree-plan.js';
import { flowsOf } from './bookings.js';
import type { Solution } from './solution.js';

/** A stall, a start or a burst: what takes more, at which node of the tree, for how many seconds. */
interface PeakPlan {
  readonly network: number;
  readonly circuit: string;
  readonly part: string;
  /** Nodes that its current passes, from where it hangs to the source or to the next switching regulator. */
  readonly way: readonly string[];
  readonly lasts: number;
}

/** The same in a solution: how many amperes more than just before. */
type Peak = PeakPlan & { readonly more: number };

interface Reservoirs {
  readonly feeds: ReadonlyMap<string, Link>;
  readonly peaks: readonly PeakPlan[];
  /** Least farads by node, all that is joined with it counted. */
  readonly farads: ReadonlyMap<string, number>;
}

/** Share of its voltage that a rail may dip by where nothing says what works on it. */
const USUAL_DIP = 0.05;

const known = new WeakMap<Project, Reservoirs>();

function reservoirsOf(project: Project): Reservoirs {
  const found = known.get(project) ?? gathered(project);
  known.set(project, found);
  return found;
}

/** Whether anybody asks what was just before the peaks: capacitors, or loads that bear only so much of a dip. */
export function asksBefore(project: Project): boolean {
  return project.capacitances.length + project.dips.length > 0 && reservoirsOf(project).peaks.length > 0;
}

function gathered({ networks, links, nodes, capacitances }: Project): Reservoirs {
  // Where one of several sources feeds a node, which one it is changes from build to build: what lies before it is left as it is.
  const feeds = new Map(links.filter((l) => links.every((o) => o === l || o.to !== l.to)).map((l) => [l.to, l]));
  const tree = new Set(nodes.map((n) => n.id));
  /** Nodes that ideal joints make one, by the highest of them. */
  const joined = (node: string): string => {
    const link = feeds.get(node);
    return link?.kind === 'wire' ? joined(link.from) : node;
  };
  const sums = new Map<string, number>();
  for (const { node, farads } of capacitances) sums.set(joined(node), (sums.get(joined(node)) ?? 0) + farads.min);
  const peaks = networks.flatMap(({ on }, network) =>
    on.flatMap(({ from, circuit, members }): PeakPlan[] => {
      const member = members.find(hasPeaks);
      if (member === undefined || !tree.has(from)) return [];
      return [{ network, circuit, part: member.part, way: wayUp(feeds, from), lasts: lastingOf(member) }];
    }),
  );
  const farads = new Map([...tree].map((node) => [node, sums.get(joined(node)) ?? 0]));
  return { feeds, peaks, farads };
}

/** A node and those that it is fed from, up to the source or to the next switching regulator. */
function wayUp(feeds: ReadonlyMap<string, Link>, node: string): string[] {
  const link = feeds.get(node);
  return link === undefined || link.kind === 'switching-regulator' ? [node] : [node, ...wayUp(feeds, link.from)];
}

/** Seconds that a member's peak lasts; how long a capacitor across a resistor charges is nothing that another one carries. */
function lastingOf(member: Member): number {
  if (member.kind === 'filament') return member.cold?.lasts ?? Infinity;
  return member.kind === 'current' ? (member.lasts ?? Infinity) : Infinity;
}

/** Peaks that flow in a solution. @param before the same without them */
const flowing = (s: Solution, before: Solution, { peaks }: Reservoirs): readonly Peak[] =>
  peaks.flatMap((peak): Peak[] => {
    const more = s.isOn(peak.network) ? s.current(peak.part) - before.current(peak.part) : 0;
    return more > 0 ? [{ ...peak, more }] : [];
  });

/** Volts that are rounding. */
const DUST = 1e-9;

/** Whether a linear regulator holds its voltage; read off the nodes, since not every solution knows what flows in its tree. */
const holds = (s: Solution, link: Link): boolean =>
  link.kind === 'linear-regulator' && s.voltage(link.to) >= s.setPoint(link) - DUST;

/** Ohms of a link to the peaks that pass it: what it loses more than just before, an ampere. */
function ohmsTo(s: Solution, before: Solution, all: readonly Peak[], link: Link): number {
  const more = all.reduce((sum, { way, more }) => sum + (way.includes(link.to) ? more : 0), 0);
  const lost = (of: Solution): number => of.voltage(link.from) - of.voltage(link.to);
  return more > 0 ? Math.max(lost(s) - lost(before), 0) / more : 0;
}

/** Ohms between a node and the next point above it that holds its voltage: a source, or a regulator that regulates. */
function sourceOhms(s: Solution, before: Solution, around: Reservoirs, all: readonly Peak[], node: string): number {
  const link = around.feeds.get(node);
  if (link === undefined || link.kind === 'switching-regulator' || holds(s, link)) return 0;
  const own = link.kind === 'wire' || link.kind === 'linear-regulator' ? 0 : ohmsTo(s, before, all, link);
  return own + sourceOhms(s, before, around, all, link.from);
}

/**
 * Share of a peak that the source gives at its end, by the capacitor at or behind a node that leaves least of it, and that
 * capacitor's node.
 */
function shareAbove(s: Solution, before: Solution, around: Reservoirs, all: readonly Peak[], peak: Peak, node: string) {
  const at = peak.way.slice(0, peak.way.indexOf(node) + 1);
  return at.reduce<{ readonly share: number; readonly by?: string; readonly ohms: number }>(
    (best, by) => {
      const farads = around.farads.get(by) ?? 0;
      if (farads === 0) return best;
      const ohms = sourceOhms(s, before, around, all, by);
      const share = sourceShare(peak.lasts, ohms, farads);
      return share < best.share ? { share, by, ohms } : best;
    },
    { share: 1, ohms: 0 },
  );
}

/**
 * Volts of a node at the end of the peaks that flow in a solution, with what capacitors give counted.
 *
 * @param before the same without the peaks
 */
export function heldVoltage(s: Solution, before: Solution, node: string): number {
  const around = reservoirsOf(s.circuitry.project);
  const all = flowing(s, before, around);
  const at = (id: string): number => {
    const link = around.feeds.get(id);
    if (link === undefined) return s.voltage(id);
    switch (link.kind) {
      case 'wire':
        return at(link.from);
      case 'switching-regulator':
        return s.voltage(id);
      case 'linear-regulator':
        return holds(s, link)
          ? s.voltage(id)
          : Math.min(s.setPoint(link), s.voltage(id) + at(link.from) - s.voltage(link.from));
      case 'cable':
      case 'fuse':
      case 'limiter':
      case 'switch':
      case 'diode': {
        const lost = (of: Solution): number => of.voltage(link.from) - of.voltage(link.to);
        const passing = all.filter(({ way }) => way.includes(link.to));
        const whole = passing.reduce((sum, { more }) => sum + more, 0);
        const given = passing.reduce(
          (sum, p) => sum + p.more * shareAbove(s, before, around, all, p, link.to).share,
          0,
        );
        const part = whole > 0 ? given / whole : 1;
        return at(link.from) - (lost(before) + (lost(s) - lost(before)) * part);
      }
      default:
        return link.kind satisfies never;
    }
  };
  return at(node);
}

/**
 * Volts by which a node dips where its source may give no more than its limit, and capacitors have to give the rest of the
 * peaks until they end; 0 where it can give its share. Asked of whole solutions only.
 *
 * @param before the same without the peaks
 */
export function limitedDip(s: Solution, before: Solution, node: string): number {
  const { project } = s.circuitry;
  const around = reservoirsOf(project);
  const way = wayUp(around.feeds, node);
  const source = way.at(-1)!;
  const limit = project.nodes
    .find((n) => n.id === source)
    ?.limits.find(({ holdsIn }) => holdsIn?.(s.moment.mode) ?? true);
  const by = way.find((id) => (around.farads.get(id) ?? 0) > 0);
  if (limit === undefined || by === undefined) return 0;
  const most = typeof limit.value === 'number' ? limit.value : limit.value(s);
  const left = Math.max(most - (flowsOf(before).get(source) ?? 0), 0);
  const all = flowing(s, before, around);
  const passing = all.filter((p) => p.way.includes(source) && Number.isFinite(p.lasts));
  const given = passing.reduce((sum, p) => sum + p.more * shareAbove(s, before, around, all, p, source).share, 0);
  if (given <= left) return 0;
  const whole = passing.reduce((sum, { more }) => sum + more, 0);
  const charge = passing.reduce((sum, { way, more, lasts }) => sum + (way.includes(by) ? more * lasts : 0), 0);
  return capacitorDip(charge * (1 - left / whole), 1, around.farads.get(by)!);
}

/** What capacitors give of one circuit's peak, as what lies before them sees it. */
export interface Relief {
  readonly circuit: string;
  /** Amperes of the peak, and those that it still sees. */
  readonly more: number;
  readonly seen: number;
  readonly lasts: number;
  readonly farads: number;
  /** Of the source; absent where the capacitors carry all of it. */
  readonly ohms?: number;
}

/**
 * What a node, or the link that feeds it, does not see of the peaks that flow.
 *
 * @param starved solutions of the same moment in which rails stand lowest while the peaks flow
 */
export function reliefAt(s: Solution, node: string, starved: () => readonly Solution[]): readonly Relief[] {
  const before = s.before?.();
  if (before === undefined) return [];
  const around = reservoirsOf(s.circuitry.project);
  const all = flowing(s, before, around);
  return all.flatMap((peak): Relief[] => {
    if (!peak.way.includes(node)) return [];
    const { circuit, more, lasts } = peak;
    const at = peak.way.slice(0, peak.way.indexOf(node) + 1);
    const by = at.find((id) => (around.farads.get(id) ?? 0) > 0 && carries(around, all, id, starved()));
    if (by !== undefined) return [{ circuit, more, seen: 0, lasts, farads: around.farads.get(by)! }];
    const { share, by: least, ohms } = shareAbove(s, before, around, all, peak, node);
    if (least === undefined) return [];
    return [{ circuit, more, seen: more * share, lasts, farads: around.farads.get(least)!, ohms }];
  });
}

/** Whether the capacitors at a node carry all peaks that pass it by themselves: rule 17, as said above. */
function carries(around: Reservoirs, all: readonly Peak[], node: string, starved: readonly Solution[]): boolean {
  const charge = all.reduce((sum, { way, more, lasts }) => sum + (way.includes(node) ? more * lasts : 0), 0);
  const dip = capacitorDip(charge, 1, around.farads.get(node)!);
  return starved.every((s) => {
    const { links, windows } = s.circuitry.project;
    const before = s.before?.() ?? s;
    const together = chargedBy(links, node);
    const own = windows.filter((w) => together.has(w.node));
    const fed = links.filter((l) => l.kind === 'linear-regulator' && together.has(l.from));
    if (own.length === 0 && fed.length === 0) return dip <= USUAL_DIP * before.voltage(node);
    return (
      own.every(({ node: at, min = 0 }) => before.voltage(at) - dip >= min) &&
      fed.every((link) => before.voltage(link.from) - dip - before.dropoutOf(link) >= link.volts!.min)
    );
  });
}
