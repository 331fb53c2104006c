/**
 * The report as JUnit XML, for build servers that count tests. A file is a suite; each of its accounts is a case, so that a
 * case keeps its name while its verdict changes; a finding that no account carries is a case of its own.
 */
import { assembled, type Form, type Piece } from './assembly.js';
import { figure, governing, inHand, worstOf } from './figures.js';
import { accountKey } from './lookup.js';
import { neutral } from './neutral.js';
import { placeWords } from './places.js';
import type { Report, ReportAccount, ReportFinding, UnreadReport } from './report.js';
import { type FailAt, severity } from './severity.js';

type Outcome = 'passed' | 'failure' | 'error' | 'skipped';
interface Case {
  readonly outcome: Outcome;
  readonly xml: string;
}

/** The suite of a file, and its counts. @param failAt a finding at or above it fails its case */
export function junitPiece(report: Report | UnreadReport, failAt: FailAt): Piece {
  const cases = report.verdict === 'unread' ? [unreadCase(report)] : casesOf(report, failAt);
  const sums = countsOf(cases);
  const suite = `  <testsuite${attribute('name', report.file)}${countWords(sums)} time="0">\n${cases.map(({ xml }) => xml).join('')}  </testsuite>\n`;
  return { texts: [suite], sums };
}

/** Suites in the order of the files, under the counts of all. */
export const junitForm: Form = {
  sections: [{ joint: '' }],
  around: (at, { sums }) =>
    at === 0
      ? `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="ampledger"${countWords(sums)} time="0">\n`
      : '</testsuites>\n',
};

export const junitReport = (reports: readonly (Report | UnreadReport)[], failAt: FailAt): string =>
  assembled(
    junitForm,
    reports.map((report) => junitPiece(report, failAt)),
  );

/** How many there are in all, and of them failed, broken and skipped. */
function countsOf(cases: readonly Case[]): readonly number[] {
  const count = (outcome: Outcome): number => cases.filter((each) => each.outcome === outcome).length;
  return [cases.length, count('failure'), count('error'), count('skipped')];
}

const countWords = ([tests = 0, failures = 0, errors = 0, skipped = 0]: readonly number[]): string =>
  ` tests="${tests}" failures="${failures}" errors="${errors}" skipped="${skipped}"`;

/** Accounts in their order, then the findings that are about none of them. */
function casesOf(report: Report, failAt: FailAt): readonly Case[] {
  const byAccount = new Map<string, ReportFinding[]>(
    report.accounts.map((account) => [accountKey({ ...account, account: account.id }), []]),
  );
  const apart: ReportFinding[] = [];
  for (const finding of report.findings) (byAccount.get(accountKey(finding)) ?? apart).push(finding);
  const names = new Map<string, number>();
  const named = (name: string): string => {
    const count = (names.get(name) ?? 0) + 1;
    names.set(name, count);
    return count === 1 ? name : `${name} ${count}`;
  };
  return [
    ...report.accounts.map((account) => {
      const findings = byAccount.get(accountKey({ ...account, account: account.id })) ?? [];
      return judged(account.kind, named(`${account.title} (${account.id})`), findings, failAt, standing(account));
    }),
    ...apart.map((finding) => judged(finding.family, named(`${finding.about}: ${finding.rule}`), [finding], failAt)),
  ];
}

/** Fails by any finding that is not set aside; one with nothing but what is set aside is skipped. */
function judged(
  kind: string,
  name: string,
  findings: readonly ReportFinding[],
  failAt: FailAt,
  stands: string | undefined = undefined,
): Case {
  const fails = (each: ReportFinding): boolean => failAt !== 'never' && severity(each.verdict) <= severity(failAt);
  const failing = findings.filter((each) => each.waiver === undefined && fails(each));
  const aside = findings.filter((each) => each.waiver !== undefined && fails(each));
  const rest = findings.filter((each) => !failing.includes(each) && !aside.includes(each));
  const outcome: Outcome = failing.length > 0 ? 'failure' : aside.length > 0 ? 'skipped' : 'passed';
  // A case has one outcome; what is set aside beside a failure is told with the rest.
  const out = [
    ...(stands === undefined ? [] : [stands]),
    ...(outcome === 'failure' ? aside : []).map(setAside),
    ...rest.map((each) => (each.waiver === undefined ? told(each) : setAside(each))),
  ];
  const [first] = failing;
  const inside = [
    ...(first === undefined
      ? []
      : [
          `      <failure${attribute('type', first.verdict)}${attribute('message', first.says)}>${lines(failing.map(told))}</failure>\n`,
        ]),
    ...(outcome === 'skipped' ? [`      <skipped${attribute('message', aside.map(setAside).join(' '))}/>\n`] : []),
    ...(out.length > 0 ? [`      <system-out>${lines(out)}</system-out>\n`] : []),
  ];
  return { outcome, xml: testcase(kind, name, inside.join('')) };
}

const testcase = (kind: string, name: string, inside: string): string =>
  `    <testcase${attribute('classname', `ampledger.${kind}`)}${attribute('name', name)} time="0"${
    inside === '' ? '/>\n' : `>\n${inside}    </testcase>\n`
  }`;

/** A file that could not be audited: no test of it could be run. */
function unreadCase({ errors }: UnreadReport): Case {
  const says = errors.map(
    ({ says: what, expected, ...place }) =>
      `${placeWords(place)}: ${what}${expected === undefined ? '' : `: ${expected}`}`,
  );
  const error = `      <error type="unread"${attribute('message', errors[0]?.says ?? 'this could not be audited')}>${lines(says)}</error>\n`;
  return { outcome: 'error', xml: testcase('file', 'can be audited', error) };
}

/** What it carries of what it may. */
function standing(account: ReportAccount): string | undefined {
  const [worst, limit] = [worstOf(account), governing(account)];
  if (worst === undefined || limit === undefined) return undefined;
  const left = account.margin === null ? '' : `, ${inHand(account.margin, account.direction)}`;
  return `${figure(worst, account.unit)} against ${limit.stated}${left}`;
}

/** A finding with its place, its question and the cure that is proved to help. */
function told({ verdict, says, asks, place, rule, remedies }: ReportFinding): string {
  const cure = remedies.find(({ after }) => after.cures);
  return `${placeWords(place)}: ${verdict}: ${says}${asks === undefined ? '' : ` ${asks}`}${
    cure === undefined ? '' : ` Cure: ${cure.title}.`
  } (${rule})`;
}

const setAside = ({ says, waiver }: ReportFinding): string => `${says} Set aside: ${waiver?.reason ?? ''}.`;

const ENTITIES: { readonly [character: string]: string } = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Harmless text: no control character, which XML could not hold, and no markup. */
const escaped = (text: string): string => neutral(text).replace(/[&<>"']/g, (each) => ENTITIES[each] ?? '');

const attribute = (name: string, text: string): string => ` ${name}="${escaped(text)}"`;

const lines = (texts: readonly string[]): string => texts.map(escaped).join('\n');
