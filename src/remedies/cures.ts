/** Which cures are offered for which finding, in order, each proved before it is shown. */
import type { Finding } from '../checks/finding.js';
import { findingKey, weighs } from '../checks/finding.js';
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import { worse } from '../checks/verdict.js';
import { biggerSupply } from './bigger-supply.js';
import { busPulls } from './bus-pulls.js';
import { carryBursts } from './carry-bursts.js';
import { commonToSupply, dischargeGate, noClampOnBridge, otherChannel, rightLevel } from './driver-wiring.js';
import { diodeFromSource } from './diode-from-source.js';
import { driveCoil } from './drive-coil.js';
import { feedAt } from './feed-at.js';
import { feedCoilsApart } from './feed-coils-apart.js';
import { feedReader } from './feed-reader.js';
import { feedLogic } from './feed-logic.js';
import { fitClamp } from './fit-clamp.js';
import { holdAtBoot, otherLevel, quietPin } from './hold-at-boot.js';
import { holdOutputsOff } from './hold-outputs-off.js';
import { holdLine } from './hold-line.js';
import { divideLine, limitInjection } from './limit-injection.js';
import { moreDrive } from './more-drive.js';
import { otherSupply } from './other-supply.js';
import { otherPin } from './other-pin.js';
import { partFromDead } from './part-from-dead.js';
import { partGrounds, partSupplies } from './one-source.js';
import { biggerResistor, lowerSeries, resistorEach, weakerPull } from './own-resistors.js';
import { joinGrounds, removeJumper } from './plain-wiring.js';
import type { Cure, Prover, Remedy, Upshot } from './prove.js';
import { persists, proverOf, remedyOf, spoils, upshotOf } from './prove.js';
import { rewireContact } from './rewire-contact.js';
import { spareContact } from './spare-contact.js';
import { raiseSeries } from './raise-series.js';
import { regulatorForDivider } from './regulator-for-divider.js';
import { stageBefore } from './stage-before.js';
import { setCurrent } from './set-current.js';
import { strongerPart } from './stronger-part.js';
import { switchLoad } from './switch-load.js';
import { stagger } from './stagger.js';
import { thickerWire } from './thicker-wire.js';

/** What a way to cure is given to look at. */
export interface Case {
  readonly finding: Finding;
  readonly judgement: Judgement;
  readonly data: unknown;
}

/** A way to cure: attempts in order of preference, or none when the finding is not its affair. */
export type Way = (of: Case) => readonly Cure[];

const WAYS: readonly Way[] = [
  driveCoil,
  stageBefore,
  fitClamp,
  spareContact,
  rewireContact,
  removeJumper,
  joinGrounds,
  partGrounds,
  partSupplies,
  feedLogic,
  feedReader,
  moreDrive,
  setCurrent,
  strongerPart,
  rightLevel,
  noClampOnBridge,
  commonToSupply,
  otherChannel,
  dischargeGate,
  holdAtBoot,
  holdOutputsOff,
  quietPin,
  otherLevel,
  holdLine,
  divideLine,
  limitInjection,
  partFromDead,
  diodeFromSource,
  busPulls,
  weakerPull,
  raiseSeries,
  resistorEach,
  lowerSeries,
  otherPin,
  switchLoad,
  biggerResistor,
  thickerWire,
  carryBursts,
  feedCoilsApart,
  biggerSupply,
  otherSupply,
  feedAt,
  regulatorForDivider,
  stagger,
];

/** So many remedies of a finding are enough to choose from. */
const MOST = 3;

/** A note calls for nothing, and a missing figure for an answer: neither for another part. */
const callsForCure = ({ verdict, account, waiver }: Finding): boolean =>
  waiver === undefined && verdict !== 'note' && !(verdict === 'unproven' && account?.missing !== undefined);

/** The attempts of each way at a finding, in order of preference. */
export const attemptsAt = (of: Case): readonly (readonly Cure[])[] =>
  callsForCure(of.finding) ? WAYS.map((way) => way(of)).filter((attempts) => attempts.length > 0) : [];

/** Proved remedies by finding: of each way the best attempt that cures it. */
export interface Cures {
  (finding: Finding): readonly Remedy[];
  /** Findings for which no more changed projects were judged, because enough of them were. */
  readonly untried: number;
}

/**
 * How many changed projects are judged for one report: a judgement of twice as many circuits takes four times as long, and a
 * stranger's file must not take for ever. What is worst comes first.
 */
const mostJudged = (circuits: number): number => Math.max(24, Math.floor(400_000 / circuits ** 2));

/** @param most how many changed projects may be judged */
export function curesFor(
  data: unknown,
  file: string,
  options: JudgeOptions,
  judgement: Judgement,
  most = mostJudged(judgement.project.circuits.length),
): Cures {
  const prover = proverOf(data, file, options, upshotOf);
  const canJudge = ({ changes }: Cure): boolean => prover.judged < most || prover.knows(changes);
  let untried = 0;
  const cures = (finding: Finding): readonly Remedy[] => {
    const found: Remedy[] = [];
    let isCut = false;
    for (const attempts of attemptsAt({ finding, judgement, data })) {
      const best = bestOf(prover, judgement, attempts.filter(canJudge), finding);
      if (best) found.push(best);
      isCut ||= !attempts.every(canJudge);
      if (found.length >= MOST) break;
    }
    if (isCut && found.length === 0) untried += 1;
    return found;
  };
  return Object.defineProperty(cures as Cures, 'untried', { get: () => untried });
}

/** The first attempt after which the finding is gone and the least is wrong. */
function bestOf(
  prover: Prover<Upshot>,
  before: Judgement,
  attempts: readonly Cure[],
  finding: Finding,
): Remedy | undefined {
  const was = new Set(before.findings.filter((f) => !concerns(f, attempts)).map(findingKey));
  let best: { cure: Cure; judgement: Upshot } | undefined;
  for (const cure of attempts) {
    const after = prover.after(cure.changes, finding);
    if (after === undefined || persists(after, finding) || spoils(before, after, finding)) continue;
    if (best === undefined || leaner(after, best.judgement)) best = { cure, judgement: after };
    // Nothing is wrong that was not wrong before: later attempts cost more and bring nothing.
    if (after.findings.every((f) => !weighs(f) || was.has(findingKey(f)))) break;
  }
  return best && remedyOf(best.cure, best.judgement, finding);
}

/** Whether a finding is about a load that the cure changes, so that it should be gone afterwards. */
const concerns = (f: Finding, attempts: readonly Cure[]): boolean =>
  attempts.some((cure) =>
    cure.changes.some(
      ({ path }) => path[0] === 'loads' && (f.about === path[1] || f.about.startsWith(`${String(path[1])}.`)),
    ),
  );

const remaining = (j: Upshot): number => j.findings.filter(weighs).length;

const leaner = (a: Upshot, b: Upshot): boolean =>
  worse(b.verdict, a.verdict) || (a.verdict === b.verdict && remaining(a) < remaining(b));
