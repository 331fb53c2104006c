/**
 * What stands above a pin's supply pushes into it. A larger resistor lets less through; a divider keeps the pin below its supply
 * and still lets it read what is sent.
 */
import { nextAbove, nextBelow } from '../quantity/preferred.js';
import type { Case, Way } from './cures.js';
import { entryOf, figureIn, partText } from './entries.js';
import type { Cure } from './prove.js';

const RULES = new Set(['pin-injected', 'rail-lifted', 'level-over', 'level-high', 'source-fed-back']);
/** So much more resistance than the sum asks for: at the first try, and where that is not enough. */
const TRIES = [1.1, 1.5, 2.5];
/** Below this nobody needs a figure of the maker, amperes (rule 18 of the format). */
const LITTLE = 1e-4;
/** Upper resistors of dividers to try, ohms: a few hundred microamperes at 5 V, and less. */
const UPPER = [1800, 4700, 10e3];
/** The divider keeps the pin at so much of its own lowest supply. */
const SHARE = 0.97;

/** A divider: nothing is pushed in any more. */
export const divideLine: Way = (of) =>
  RULES.has(of.finding.rule) ? linesOf(of).flatMap((id) => dividersFor(of, id)) : [];

/** A larger resistor: less is pushed in. */
export const limitInjection: Way = (of) =>
  RULES.has(of.finding.rule) ? linesOf(of).flatMap((id) => seriesFor(of, id)) : [];

/** The incoming lines that the finding is about. */
function linesOf({ finding, judgement: { project }, data }: Case): readonly string[] {
  const clamped = (id: string): boolean =>
    project.networks.find((n) => n.id === id)?.on.some((b) => b.line === 'clamp') === true;
  const paths = [finding.path, ...finding.related.map((r) => r.path)];
  const names = [
    ...paths.filter((p) => p[0] === 'incoming').map((p) => String(p[1])),
    finding.about,
    ...(finding.rule === 'source-fed-back' ? project.circuits.map((c) => c.id).filter(clamped) : []),
  ];
  return [...new Set(names)].filter((id) => entryOf(data, 'incoming', id) !== undefined).slice(0, 1);
}

function seriesFor({ finding, data }: Case, id: string): readonly Cure[] {
  const now = figureIn(entryOf(data, 'incoming', id)?.['series'], 'resistance') ?? 0;
  const by = finding.by;
  if (finding.rule === 'level-high') return [];
  const isInjection = finding.rule === 'pin-injected';
  const wanted = by && isInjection && now > 0 ? (now * by.draw) / Math.min(by.value, LITTLE) : Math.max(now * 4, 15e3);
  return TRIES.map((more): Cure => {
    const text = partText(nextAbove('E24', wanted * more), 'resistance');
    return {
      title: `Put ${text} in series with ${id}`,
      changes: [{ path: ['incoming', id, 'series'], value: `${text} ±5 %` }],
      parts: [`${text}, 5 %`],
      steps: [
        `Fit ${text} between what sends ${id} and the pin${now > 0 ? `, in place of ${partText(now, 'resistance')}` : ''}.`,
      ],
      watch: finding.account ? [finding.account.id] : [],
    };
  });
}

/** Dividers that leave the pin no more than its own supply at the least. */
function dividersFor(of: Case, id: string): readonly Cure[] {
  const { data } = of;
  const entry = entryOf(data, 'incoming', id);
  const [high, rail] = [sentVolts(of, id), railVolts(of, id)];
  if (entry?.['type'] === 'contact' || high === undefined || rail === undefined || high <= rail) return [];
  return UPPER.map((upper): Cure => {
    const lower = nextBelow('E24', (upper * SHARE * rail) / (high - SHARE * rail));
    const [a, b] = [partText(upper, 'resistance'), partText(lower, 'resistance')];
    return {
      title: `Divide ${id} with ${a} and ${b}`,
      changes: [
        { path: ['incoming', id, 'series'], value: `${a} ±5 %` },
        { path: ['incoming', id, 'pull-down'], value: `${b} ±5 %` },
        { path: ['incoming', id, 'pull-up'], value: undefined },
      ],
      parts: [`${a} and ${b}, 5 %`],
      steps: [`Put ${a} between what sends ${id} and the pin, and ${b} from the pin to ground.`],
      watch: [id],
    };
  });
}

/** The most that a line is driven to, volts. */
function sentVolts({ judgement: { project } }: Case, id: string): number | undefined {
  const branch = project.networks.find((n) => n.id === id)?.on.find((b) => b.line === 'drive' || b.pin !== undefined);
  const node = branch && project.nodes.find((n) => n.id === branch.from);
  return node?.volts?.max;
}

/** The least of the pin's own supply, volts. */
function railVolts({ judgement: { project } }: Case, id: string): number | undefined {
  const to = project.networks.find((n) => n.id === id)?.on.find((b) => b.line === 'clamp')?.to;
  const feeds = new Map(project.links.map((l) => [l.to, l]));
  for (let at = to; at !== undefined; at = feeds.get(at)?.from) {
    const volts = project.nodes.find((n) => n.id === at)?.volts?.min ?? feeds.get(at)?.volts?.min;
    if (volts !== undefined) return volts;
  }
  return undefined;
}
