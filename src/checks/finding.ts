/** Findings: what a rule has to say, as data. Sentences are made elsewhere, keyed by the rule's name. */
import type { Account, LimitMet } from '../ledger/account.js';
import type { BootBooks } from '../ledger/boot.js';
import type { Ledger } from '../ledger/ledger.js';
import type { WaysIntoDead } from '../ledger/into-dead.js';
import type { WhileDead } from '../ledger/without.js';
import type { Step } from '../loads/account-plan.js';
import type { WaiverPlan } from '../project/project.js';
import type { Path } from '../source/place.js';
import type { OpenAnswer } from '../loads/lowering.js';
import type { JudgedAccount, OnlyIf, Verdict } from './verdict.js';

export type Family =
  | 'pins'
  | 'groups'
  | 'coils'
  | 'drivers'
  | 'relay boards'
  | 'supplies'
  | 'contacts'
  | 'choice'
  | 'boot'
  | 'parts'
  | 'budget'
  | 'data';

/** What a finding is known by when the project changes under it: its rule, what it is about, and which way. */
export const findingKey = (
  f: Pick<Finding, 'rule' | 'about'> & { readonly account?: Pick<Account, 'direction'> | undefined },
): string => `${f.rule} ${f.about} ${f.account?.direction ?? ''}`;

/** Whether a finding calls for anything: a note is only worth knowing, and what the file sets aside is known. */
export const weighs = ({ verdict, waiver }: Pick<Finding, 'verdict' | 'waiver'>): boolean =>
  verdict !== 'note' && waiver === undefined;

export interface Finding {
  readonly rule: string;
  readonly family: Family;
  readonly verdict: Exclude<Verdict, 'sound'>;
  /** The load, circuit, pin or part it is about. */
  readonly about: string;
  readonly path: Path;
  /** The account it judges, or the one that shows what it says. */
  readonly account?: Account;
  /** The limit that gives the verdict. */
  readonly by?: LimitMet;
  /** True only in the runaway state, beyond what the modes promise. */
  readonly runaway?: true;
  /** It is so only if something is the case that nothing tells. */
  readonly onlyIf?: OnlyIf;
  /** Of an open question: the accounts under each answer. */
  readonly answers?: readonly { readonly answer: OpenAnswer; readonly accounts: readonly JudgedAccount[] }[];
  /** What the sentence names besides. */
  readonly names: { readonly [name: string]: string };
  readonly related: readonly { readonly path: Path; readonly name: string }[];
  /** The file sets it aside: it is told, and weighs nothing. */
  readonly waiver?: WaiverPlan;
  /** Its sums, where they are no account's. */
  readonly steps?: readonly Step[];
}

/** A ledger with its accounts judged: what rules look at. */
export interface Judged {
  readonly ledger: Ledger;
  readonly accounts: readonly JudgedAccount[];
  /** Accounts that the runaway state makes worse. */
  readonly runaway: readonly JudgedAccount[];
  /** What loads do until firmware runs. */
  readonly boot: BootBooks;
  /** What loads do that live while the chip that switches them is dead. */
  readonly dead: readonly WhileDead[];
  /** What finds a way into the rails of dead supplies. */
  readonly ways: WaysIntoDead;
  /** Accounts of which that state is worth a note, and no more. */
  readonly noted: readonly JudgedAccount[];
}

/** A rule about a limit: every account worse than sound has exactly one finding about it, from the first rule that claims it. */
export interface LimitRule {
  readonly name: string;
  readonly family: Family;
  readonly claims: (account: Account) => boolean;
  /** What its sentence names besides. */
  readonly names?: (account: Account, ledger: Ledger) => Finding['names'];
}

/** A rule about how something is wired. */
export interface WiringRule {
  readonly name: string;
  readonly family: Family;
  readonly find: (judged: Judged) => readonly Finding[];
}
