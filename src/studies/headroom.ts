/**
 * How many more of a load fit: copies are added one by one, each on the free pin that leaves the most, and the whole project is
 * audited with them, until an account breaks; then what would lift that limit, and how far the next one is.
 */
import type { Finding } from '../checks/finding.js';
import { findingKey } from '../checks/finding.js';
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import { worse } from '../checks/verdict.js';
import { curesFor } from '../remedies/cures.js';
import { withChanges } from '../remedies/change.js';
import { freeChannel } from '../remedies/free-channel.js';
import type { Change } from '../remedies/prove.js';
import { judgedAfter } from '../remedies/prove.js';
import type { Original } from './one-more.js';
import type { PinFact } from '../project/pin-plan.js';
import { copyName, freePins, oneMore } from './one-more.js';

/** A limit that is met, and how far it lets one go. */
export interface Stop {
  /** How many more fit under it. */
  readonly fits: number;
  /** What breaks with one more. */
  readonly finding: Finding;
  /** Ways to lift it, each proved by an audit. */
  readonly lifts: readonly string[];
}

export interface Headroom {
  readonly load: string;
  /** How many more fit until an account breaks. */
  readonly fits: number;
  /** How many of those leave every account what the policy wants in hand. */
  readonly withMargin: number;
  /** What goes first below the policy's margin, where that comes before a limit. */
  readonly thin?: Finding;
  /** Where they hang, in the order in which they were placed. */
  readonly placed: readonly string[];
  /** The first limit, and those behind it. */
  readonly stops: readonly Stop[];
  /** What ended the search: nothing is free any more, or as many were tried as make sense. */
  readonly ended: 'limits' | 'no-pin' | 'no-channel' | 'enough';
  /** What is broken without any copy, and so says nothing about room. */
  readonly broken: readonly Finding[];
  /** Interlocks hold the load that more was asked of; they do not hold the copies. */
  readonly interlocked: boolean;
}

/** Limits that are looked for. */
const MOST_STOPS = 3;
/** More than this nobody hangs on one controller. */
const MOST_COPIES = 64;

/** @param original the load that more is asked of */
export function headroomOf(
  data: unknown,
  file: string,
  settings: JudgeOptions,
  judgement: Judgement,
  original: Original,
): Headroom {
  const { circuit, needs } = original;
  const nameOf = nameFor(circuit.owner);
  const was = new Map<string, Finding>();
  // Of several channels the worst: findings stand worst first.
  for (const f of judgement.findings) if (!was.has(nameOf(f))) was.set(nameOf(f), f);
  const placed: string[] = [];
  const stops: Stop[] = [];
  const known = new Set<string>();
  let changes: readonly Change[] = [];
  let changed = data;
  let now = judgement;
  let withMargin: number | undefined;
  let thin: Finding | undefined;
  let ended: Headroom['ended'] = 'enough';

  for (let n = 1; n <= MOST_COPIES; n++) {
    const name = copyName(circuit, n);
    const channel =
      needs.kind === 'channel'
        ? freeChannel(changed, needs.array, now.project.channels.get(needs.array) ?? 0)
        : undefined;
    if (needs.kind === 'channel' && channel === undefined) {
      ended = 'no-channel';
      break;
    }
    const owner = needs.kind === 'pin' ? needs.owner : needs.kind === 'channel' ? needs.pin : undefined;
    const pins = owner === undefined ? [undefined] : byRoom(now, freePins(now.project, owner)).map((p) => p.label);
    if (pins.length === 0) {
      ended = 'no-pin';
      break;
    }
    let best: Placed | undefined;
    for (const pin of pins) {
      const next = [...changes, ...oneMore(changed, now.project, original, name, pin, channel)];
      // Not kept: each is asked once, and holds megabytes.
      const after = judgedAfter(data, file, settings, next);
      if (after === undefined) continue;
      const broken = brokenIn(after, was, nameOf);
      if (best === undefined || isBetter({ broken, after }, best)) best = { pin, next, after, broken };
      // The roomiest pin on which nothing more breaks: another one could leave no more.
      if (best.broken.every((f) => known.has(nameOf(f)))) break;
    }
    if (best === undefined) {
      ended = 'no-pin';
      break;
    }
    const wholeNew = best.broken.filter((f) => !known.has(nameOf(f)));
    for (const finding of wholeNew) {
      if (known.has(nameOf(finding)) || stops.length >= MOST_STOPS) continue;
      known.add(nameOf(finding));
      const cures = curesFor(withChanges(data, best.next), file, settings, best.after)(finding);
      stops.push({ fits: n - 1, finding, lifts: cures.map((c) => withoutCopies(c.title, circuit.owner)) });
    }
    if (withMargin === undefined) {
      thin = best.after.findings.find((f) => f.verdict === 'thin' && !was.has(nameOf(f)));
      if (thin !== undefined || best.broken.length > 0) withMargin = n - 1;
    }
    if (stops.length === 0 || stops[0]!.fits >= n) placed.push(best.pin ?? '');
    if (stops.length >= MOST_STOPS) {
      ended = 'limits';
      break;
    }
    ({ next: changes, after: now } = best);
    changed = withChanges(data, changes);
  }
  const fits = stops[0]?.fits ?? placed.length;
  return {
    load: circuit.id,
    fits,
    withMargin: withMargin ?? fits,
    ...(thin && (withMargin ?? fits) < fits && { thin }),
    placed: placed.slice(0, fits).filter((p) => p !== ''),
    stops,
    ended,
    broken: judgement.findings.filter(fails),
    interlocked: judgement.project.interlocks.some((i) => i.of.includes(circuit.id) || i.when?.includes(circuit.id)),
  };
}

const fails = (f: Finding): boolean => f.verdict === 'breach' || f.verdict === 'strain';

/** What a finding is known by: copies fail as their original does, and channels as each other do. */
const nameFor =
  (owner: string) =>
  (f: Finding): string => {
    const isCopy = f.about.startsWith(`${owner}-more-`);
    const about = isCopy || f.about === owner || f.about.startsWith(`${owner}.`) ? owner : f.about;
    return findingKey({ ...f, about });
  };

/** Findings that fail and did not before, or fail worse; worst first. What was broken before says nothing about room. */
const brokenIn = (
  after: Judgement,
  was: ReadonlyMap<string, Finding>,
  nameOf: (f: Finding) => string,
): readonly Finding[] =>
  after.findings.filter((f) => {
    const before = was.get(nameOf(f));
    return fails(f) && (before === undefined || worse(f.verdict, before.verdict));
  });

/** A cure's title with the copies as one: 'vents and those added', and what is said of each of them once. */
const withoutCopies = (title: string, owner: string): string =>
  title
    .replace(new RegExp(`(?:(?:, | and )?\\b${owner}-more-\\d+)+`, 'g'), ' and those added')
    .replace(/ {2}and those added/g, ' those added')
    .split(', ')
    .filter((part, k, all) => !part.includes('those added') || all.indexOf(part) === k)
    .join(', ');

/** One more copy on a pin, with what comes of it. */
interface Placed {
  readonly pin: string | undefined;
  readonly next: readonly Change[];
  readonly after: Judgement;
  readonly broken: readonly Finding[];
}

const isBetter = (a: Pick<Placed, 'broken' | 'after'>, b: Placed): boolean =>
  (a.broken.length - b.broken.length || roomier(a.after, b.after)) < 0;

/** Pins by the least that the sums have left in which they count, the most first. */
function byRoom({ accounts }: Judgement, pins: readonly PinFact[]): readonly PinFact[] {
  const left = new Map<string, number>();
  for (const { account, margin = 1 } of accounts) left.set(account.id, Math.min(margin, left.get(account.id) ?? 1));
  const room = ({ sums }: PinFact): number => Math.min(1, ...sums.map((id) => left.get(id) ?? 1));
  return pins.toSorted((a, b) => room(b) - room(a));
}

/** Orders judgements by the least that any account has left, then by the least that pins and their sums have. */
const roomier = (a: Judgement, b: Judgement): number =>
  leastLeft(b, () => true) - leastLeft(a, () => true) || leastLeft(b, isOfPins) - leastLeft(a, isOfPins);

const isOfPins = (kind: string): boolean => kind === 'pin' || kind === 'group' || kind === 'total';

const leastLeft = ({ accounts }: Judgement, counts: (kind: string) => boolean): number =>
  accounts.reduce(
    (least, { account, margin = Infinity }) => (counts(account.kind) ? Math.min(least, margin) : least),
    1,
  );
