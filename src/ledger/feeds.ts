/**
 * Which source feeds a node where several are joined by diodes. They do not share (rule 19 of the format): one of them
 * carries all, the one that stands highest before anything is drawn, and each is tried that may stand highest in some build.
 * What a source carries only when another one dies belongs to the runaway state.
 */
import type { Interval } from '../quantity/interval.js';
import type { Circuitry, JoinedIndex, LinkIndex } from './circuitry.js';
import type { Corner } from './corner.js';
import { unloaded } from './unloaded.js';

/** A chosen feed of a node: the link's id, and the volts that its source stands at least at to feed it. */
export interface Feed {
  readonly link: string;
  readonly atLeast: number;
  /** It feeds the node only when these sources, that always stand higher, are dead. */
  readonly dead?: readonly string[];
}

/** Chosen feeds by node id of the link's far end. */
export type Feeds = ReadonlyMap<string, Feed>;

/** More combinations than this are not gone through: then all nodes lean on one source, or away from it, together. */
const MOST_COMBINED = 16;

/** 1 for each link that is not held off by another one in a corner; undefined where no node has several feeds. */
export function liveLinks(circuitry: Circuitry, corner: Corner): Uint8Array | undefined {
  const { joined, links } = circuitry;
  if (joined.length === 0) return undefined;
  const open = unloaded(circuitry, corner);
  const live = new Uint8Array(links.length).fill(1);
  for (const { links: feeds } of joined) {
    const chosen = corner.feeds?.get(links[feeds[0]!]!.link.to)?.link;
    const best = feeds.find((k) => links[k]!.link.id === chosen) ?? highest(feeds, links, open);
    for (const k of feeds) live[k] = k === best ? 1 : 0;
  }
  return live;
}

/** Of equal ones the first. */
const highest = (feeds: readonly number[], links: readonly LinkIndex[], open: readonly number[]): number =>
  feeds.reduce((best, k) => (open[links[k]!.from]! > open[links[best]!.from]! ? k : best));

/**
 * The combinations of feeds to try.
 *
 * @param all those, too, that feed only when another source is dead
 */
export function feedsToTry(circuitry: Circuitry, all: boolean): readonly Feeds[] {
  const choices = circuitry.joined.map((node) => choicesAt(circuitry, node, all));
  const combined = choices.reduce((product, of) => product * of.length, 1);
  if (combined === 1) return [];
  if (combined > MOST_COMBINED) return leaningTogether(circuitry, choices);
  return choices.reduce<Map<string, Feed>[]>(
    (found, of) => found.flatMap((feeds) => of.map(([node, feed]) => new Map([...feeds, [node, feed]]))),
    [new Map()],
  );
}

/** For each source: all nodes fed from it that can be, and all fed from others that can be; and each choice by itself. */
function leaningTogether({ links, project }: Circuitry, choices: readonly (readonly [string, Feed][])[]): Feeds[] {
  const sources = project.nodes.flatMap((n) => (n.volts ? [n.id] : []));
  const hangs = new Map(project.nodes.map((n) => [n.id, new Set(n.volts ? [n.id] : [])]));
  // Upstream links come first.
  for (const { from, to } of project.links) for (const source of hangs.get(from)!) hangs.get(to)!.add(source);
  const starts = new Map(links.map(({ link }) => [link.id, link.from]));
  const hangsOn = (id: string, source: string): boolean => hangs.get(starts.get(id)!)!.has(source);
  const together = sources.flatMap((source) =>
    [true, false].map(
      (towards): Feeds =>
        new Map(choices.map((of) => of.find(([, feed]) => hangsOn(feed.link, source) === towards) ?? of[0]!)),
    ),
  );
  // No project has so many; a stranger's file may.
  const single = choices.length > MOST_COMBINED ? [] : choices.flatMap((of) => of.map((c): Feeds => new Map([c])));
  return [...together, ...single];
}

/** Whether some source feeds a node only when another one is dead. */
export const hasReserves = (circuitry: Circuitry): boolean =>
  circuitry.joined.some((node) => choicesAt(circuitry, node, false).length < node.links.length);

function choicesAt({ links, open }: Circuitry, { links: feeds }: JoinedIndex, all: boolean): [string, Feed][] {
  const standing = (k: number): Interval => open[links[k]!.from] ?? { min: 0, typ: 0, max: 0 };
  return feeds.flatMap((k): [string, Feed][] => {
    const { id, to } = links[k]!.link;
    const others = Math.max(...feeds.filter((other) => other !== k).map((other) => standing(other).min));
    if (standing(k).max >= others) return [[to, { link: id, atLeast: others }]];
    const dead = feeds.flatMap((other) => (standing(other).min > standing(k).max ? [links[other]!.link.from] : []));
    return all ? [[to, { link: id, atLeast: 0, dead: dead.map((node) => node.replace(/:.*/, '')) }]] : [];
  });
}

const expanded = new WeakMap<Corner, Map<readonly Feeds[], readonly Corner[]>>();

/** A corner with each of several choices of feeds; the same objects for everybody who asks. */
export function cornersFed(corner: Corner, feeds: readonly Feeds[]): readonly Corner[] {
  if (feeds.length === 0) return [corner];
  const known = expanded.get(corner) ?? new Map<readonly Feeds[], readonly Corner[]>();
  expanded.set(corner, known);
  const found = known.get(feeds) ?? feeds.map((choice): Corner => ({ ...corner, feeds: choice }));
  known.set(feeds, found);
  return found;
}
