/** Supply and jumper options of a relay board: every arrangement built as a changed project and audited whole. */
import type { Finding } from '../checks/finding.js';
import { findingKey, weighs } from '../checks/finding.js';
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import type { JudgedAccount, Verdict } from '../checks/verdict.js';
import { VERDICTS, worse, worstOf } from '../checks/verdict.js';
import { boardsOf } from '../checks/relay-boards/boards.js';
import type { BoardWiring } from '../loads/circuit-plan.js';
import type { Change, Prover } from '../remedies/prove.js';
import { proverOf } from '../remedies/prove.js';
import type { CoilSupply } from '../remedies/supply-for.js';
import type { Arrangement } from './arrangements.js';
import { arrangementsOf, asFed, changesFor, isPresent } from './arrangements.js';
import type { SupplySize } from './new-supply.js';
import { sizeFor } from './new-supply.js';
import type { WiringPlan } from './wiring-plan.js';
import { wiringPlan } from './wiring-plan.js';

/** One arrangement, audited. */
export interface BoardOption extends Arrangement {
  /** The supply to be bought, where the coils need a new one. */
  readonly fresh?: CoilSupply;
  readonly changes: readonly Change[];
  /** The board is fed so now. */
  readonly present: boolean;
  /** Leaving out what no arrangement changes. */
  readonly verdict: Verdict;
  /** What is worse than a note and not there in every arrangement, worst first. */
  readonly findings: readonly Finding[];
  /** Whether the couplers isolate; undefined for a board without couplers. */
  readonly isolates?: boolean;
  /** Of the accounts that the board has a part in, the one with the least in hand. */
  readonly tightest?: JudgedAccount;
}

export interface BoardOptions {
  readonly board: string;
  /** Whether it has a supply jumper at all. */
  readonly hasJumper: boolean;
  /** Best first. */
  readonly options: readonly BoardOption[];
  /** Findings that stay whatever the arrangement. */
  readonly stays: readonly Finding[];
  /** How big a new supply must be. */
  readonly size?: SupplySize;
  /** The wiring of the first option. */
  readonly plan: WiringPlan;
}

/** Options of every relay board of a judged project, or of one. @param only name of a board */
export function boardOptions(
  data: unknown,
  file: string,
  settings: JudgeOptions,
  judgement: Judgement,
  only?: string,
): readonly BoardOptions[] {
  const prover = proverOf(data, file, settings, (after) => after);
  return boardsOf(judgement.project)
    .filter(({ owner }) => only === undefined || owner === only)
    .map(({ owner, board }) => optionsOf(prover, judgement, data, owner, asFed(judgement, board)));
}

interface Tried {
  readonly way: Arrangement;
  readonly fresh: CoilSupply | undefined;
  readonly changes: readonly Change[];
  readonly judgement: Judgement;
}

function optionsOf(
  prover: Prover,
  judgement: Judgement,
  data: unknown,
  owner: string,
  board: BoardWiring,
): BoardOptions {
  const ways = arrangementsOf(judgement, data, board);
  const sizes = new Map<string, SupplySize | undefined>();
  const sizeOf = (way: Arrangement): SupplySize | undefined => {
    // Which ground joins which changes nothing about what the coils draw.
    const key = `${way.jumper} ${way.logic}`;
    if (!sizes.has(key)) sizes.set(key, sizeFor(prover, judgement, data, owner, board, way));
    return sizes.get(key);
  };
  const tried = ways.flatMap((way) => tryOne(prover, judgement, data, owner, board, way, sizeOf) ?? []);
  const stays = staying(tried.map((t) => t.judgement));
  const stay = new Set(stays.map(nameOf));
  const options = tried.map((t) => judgedOption(t, owner, board, stay)).sort(better(board));
  const best = options[0];
  const size = best && best.coil === undefined ? sizeOf(best) : undefined;
  const after = tried.find((t) => best !== undefined && t.changes === best.changes)?.judgement;
  return {
    board: owner,
    hasJumper: board.hasJumper,
    options,
    stays,
    ...(size && { size }),
    plan: best && after ? wiringPlan(after, owner, board, best, size) : { steps: [], checks: [] },
  };
}

/** One arrangement judged; with a new supply, the first that leaves the least wrong. */
function tryOne(
  prover: Prover,
  judgement: Judgement,
  data: unknown,
  owner: string,
  board: BoardWiring,
  way: Arrangement,
  sizeOf: (way: Arrangement) => SupplySize | undefined,
): Tried | undefined {
  const size = way.coil === undefined ? sizeOf(way) : undefined;
  const attempts = way.coil === undefined ? (size?.attempts ?? []) : [undefined];
  let best: Tried | undefined;
  for (const fresh of attempts) {
    const brought = fresh && { supply: fresh, ...(size?.lead && { lead: size.lead }) };
    const changes = changesFor(judgement, data, owner, board, way, brought);
    const after = prover.after(changes);
    if (after === undefined) continue;
    if (best === undefined || fewer(after, best.judgement)) best = { way, fresh, changes, judgement: after };
    // Another voltage helps the coils alone: where they and their supply have all they need, it brings nothing.
    if (!after.findings.some((f) => weighs(f) && concerns(f, owner, fresh))) break;
  }
  return best;
}

const concerns = (f: Finding, owner: string, fresh: CoilSupply | undefined): boolean =>
  f.about === owner || f.about.startsWith(`${owner}.`) || (fresh !== undefined && f.about.startsWith(fresh.name));

const wrong = (j: Judgement): number => j.findings.filter(weighs).length;
const fewer = (a: Judgement, b: Judgement): boolean =>
  worse(b.verdict, a.verdict) || (a.verdict === b.verdict && wrong(a) < wrong(b));

const nameOf = (f: Finding): string => `${findingKey(f)} ${f.verdict}`;

/** Findings that every arrangement has. */
function staying(judgements: readonly Judgement[]): readonly Finding[] {
  const [first, ...others] = judgements;
  const named = others.map((j) => new Set(j.findings.map(nameOf)));
  return (first?.findings ?? []).filter((f) => weighs(f) && named.every((n) => n.has(nameOf(f))));
}

function judgedOption(tried: Tried, owner: string, board: BoardWiring, stay: ReadonlySet<string>): BoardOption {
  const { way, fresh, changes, judgement } = tried;
  const findings = judgement.findings.filter((f) => weighs(f) && !stay.has(nameOf(f)));
  const tightest = tightestOf(judgement, owner);
  return {
    ...way,
    ...(fresh && { fresh }),
    changes,
    present: isPresent(board, way),
    verdict: findings.length === 0 ? 'sound' : worstOf(findings.map((f) => f.verdict)),
    findings,
    ...(board.coupling === 'opto' && {
      // Of a side that nothing feeds nobody knows where its ground would be.
      isolates: !judgement.findings.some(
        (f) => (f.rule === 'isolation-defeated' || f.rule === 'no-source') && f.about === owner,
      ),
    }),
    ...(tightest && { tightest }),
  };
}

/** Of the accounts that a load has a part in, the one with the worst verdict and then the least in hand. */
function tightestOf({ accounts }: Judgement, owner: string): JudgedAccount | undefined {
  const own = (id: string): boolean => id === owner || id.startsWith(`${owner}.`);
  return (
    accounts
      // What hangs on its contacts is the same however it is fed.
      .filter(({ account: a }) => a.kind !== 'contact')
      .filter(({ account: a, margin }) => margin !== undefined && (own(a.id) || a.entries.some((e) => own(e.circuit))))
      .sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict) || a.margin! - b.margin!)[0]
  );
}

/** The least wrong first; then what costs nothing, what isolates, what is there, what has most in hand. */
const better =
  (board: BoardWiring) =>
  (a: BoardOption, b: BoardOption): number =>
    VERDICTS.indexOf(b.verdict) - VERDICTS.indexOf(a.verdict) ||
    Number(a.fresh !== undefined) - Number(b.fresh !== undefined) ||
    Number(b.isolates ?? false) - Number(a.isolates ?? false) ||
    distance(board, a) - distance(board, b) ||
    a.findings.length - b.findings.length ||
    (b.tightest?.margin ?? 0) - (a.tightest?.margin ?? 0);

/** How many things are to be done differently. */
const distance = (board: BoardWiring, o: BoardOption): number =>
  Number(o.jumper !== board.jumper) +
  Number(o.logic !== board.logic) +
  Number(o.coil !== board.coil) +
  Number(o.grounds !== board.grounds);
