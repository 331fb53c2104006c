/**
 * docs/rules/: a page a rule. What a rule means and rests on comes from `src/wording/rule-help/`, its examples from its cases; what
 * the audit says of them, the sums and the cure are the program's own output, as a terminal shows it.
 */
import { judge } from '../../src/checks/judge.js';
import { LIMIT_RULES } from '../../src/checks/rules.js';
import { waived } from '../../src/checks/waived.js';
import { print } from '../../src/cli/print.js';
import { builtIn, read } from '../../src/index.js';
import { curesFor } from '../../src/remedies/cures.js';
import { nothingBefore } from '../../src/reports/before.js';
import { findingItem } from '../../src/reports/finding-block.js';
import { lookupOf } from '../../src/reports/lookup.js';
import { numbered } from '../../src/reports/numbered.js';
import { reportOf } from '../../src/reports/report-of.js';
import { severities } from '../../src/reports/severity.js';
import { type Tree, list } from '../../src/reports/tree.js';
import { workingFor } from '../../src/reports/working-for.js';
import { workingReport } from '../../src/reports/working.js';
import { NO_CURE_KNOWN, whyNoCure } from '../../src/wording/no-cure.js';
import { asks } from '../../src/wording/sentences.js';
import { GROUNDS } from '../../src/wording/rule-help/grounds.js';
import { RULE_HELP } from '../../src/wording/rule-help/rule-help.js';
import type { Finding } from '../../src/checks/finding.js';
import type { WaiverPlan } from '../../src/project/project.js';
import { type Example, examples } from './examples.js';

/** The day on which the examples are audited: waivers expire. */
const TODAY = '2026-11-25';
/** So many lines of sums are read with a page; beyond them the command has the rest. */
const MOST_LINES = 60;

/** The text of every file in docs/rules/, by its name. */
export function rulePages(): ReadonlyMap<string, string> {
  const all = examples();
  return new Map([['README.md', indexPage(all)], ...all.map((each) => [`${each.rule}.md`, rulePage(each)] as const)]);
}

const onPage = (tree: Tree): string => print(tree, { width: 80, colour: false }).trimEnd();
const fenced = (language: string, text: string): string => `\`\`\`${language}\n${text.trimEnd()}\n\`\`\``;
const section = (title: string, ...parts: readonly string[]): string => [`## ${title}`, ...parts].join('\n\n');

/** What an audit finds in an example, with the cures of one rule. @throws where it cannot be audited */
function audited(text: string, file: string, rule: string) {
  const { document } = read(text, file);
  const settings = { catalogue: builtIn, today: TODAY };
  const judgement = document && judge(document.data, file, settings);
  if (judgement === undefined || 'problems' in judgement) throw new Error(`the example ${file} cannot be audited`);
  const curesOf = curesFor(document!.data, file, settings, judgement);
  const cures = Object.assign((f: Finding) => (f.rule === rule ? curesOf(f) : []), { untried: 0 });
  const report = reportOf(judgement, document!, { cures });
  return { judgement, report };
}

function rulePage({ rule, family, fires, silent, cases }: Example): string {
  const file = `${rule}.yaml`;
  const { title, means, todo } = RULE_HELP[rule]!;
  const { judgement, report } = audited(fires.text, file, rule);
  const lookup = lookupOf(report);
  const told = numbered(lookup).filter(({ finding }) => finding.rule === rule);
  const finding = judgement.findings.find((each) => each.rule === rule);
  if (finding === undefined) throw new Error(`${rule} finds nothing in its example`);
  const offers = report.findings.some((each) => each.rule === rule && each.remedies.length > 0);
  return `${[
    `# ${title}`,
    `\`${rule}\`, of the family [${family}](README.md#${anchor(family)}). ${verdictsOf(rule, cases)}`,
    `${means}`,
    section('What it rests on', GROUNDS[rule]!),
    section(
      'Where it finds something',
      `\`${rule}\` ${fires.when}:`,
      fenced('yaml', fires.text),
      'The audit says:',
      fenced('', onPage([[list(told.map((one) => findingItem(one, lookup, nothingBefore, false)))]])),
    ),
    section('The sums', ...sums(workingFor(judgement, rule), rule, file)),
    section('Where it finds nothing', `\`${rule}\` ${silent.when}:`, fenced('yaml', silent.text)),
    section(
      'What to do',
      todo,
      ...(offers ? ['What is offered for this example stands above, with the audit after it.'] : [none(finding)]),
    ),
    section('Where it draws the line', `A test holds that \`${rule}\` …`, table(cases)),
    section('Setting it aside', ...waiving(rule, finding.about, judgement.findings)),
  ].join('\n\n')}\n`;
}

/** Why nothing is offered for the example, unless there is no more to say than what to do. */
function none(finding: Finding): string {
  const question = finding.verdict === 'unproven' ? asks(finding) : undefined;
  if (question !== undefined) return `Here an answer settles it: *${question}*`;
  const why = whyNoCure(finding);
  return `Nothing is offered for this example${why === NO_CURE_KNOWN ? '' : `; what it takes: ${why}`}.`;
}

/** A limit may be met in every way; of how a thing is wired a rule says what its cases say. */
function verdictsOf(rule: string, cases: Example['cases']): string {
  if (rule === 'waiver-expired') return 'It says what was said of the finding that it set aside.';
  const given = severities.filter((each) => cases.some(({ verdict }) => verdict === each)).map((v) => `*${v}*`);
  const words = given.length < 2 ? given.join('') : `${given.slice(0, -1).join(', ')} or ${given.at(-1)}`;
  return LIMIT_RULES.some(({ name }) => name === rule)
    ? `It holds limits, so that any verdict may come of it; those of its tests are ${words.replace(' or ', ' and ')}.`
    : `It says ${words}.`;
}

function sums(working: ReturnType<typeof workingFor>, rule: string, file: string): readonly string[] {
  if (working.steps.length === 0) return ['None: it looks at how things are wired.'];
  const lines = onPage(workingReport(working, file)).split('\n');
  const command = `$ ampledger working ${file} ${rule}`;
  const few = lines.slice(0, MOST_LINES).join('\n').trimEnd();
  return [fenced('', `${command}\n${few}${lines.length > MOST_LINES ? '\n…' : ''}`)];
}

const table = (cases: Example['cases']): string =>
  [
    '| verdict | where |',
    '| --- | --- |',
    ...cases.map(
      ({ verdict, when }) => `| ${verdict === 'silent' ? '' : `**${verdict}**`} | ${when.replaceAll('|', '\\|')} |`,
    ),
  ].join('\n');

/** @throws where the waiver that is shown would set nothing aside */
function waiving(rule: string, about: string, findings: readonly Finding[]): readonly string[] {
  if (rule.startsWith('waiver-')) return ['What is said of a waiver is cured in the waiver itself.'];
  const isAside = (waiver: Partial<WaiverPlan>): boolean =>
    waived(findings, [{ rule, about, reason: 'r', path: [], ...waiver }], TODAY).some((f) => f.waiver?.rule === rule);
  const damage = isAside({}) ? '' : ', accepts: damage';
  if (!isAside({ accepts: 'damage' })) throw new Error(`no waiver sets ${rule} of ${about} aside`);
  return [
    fenced(
      'yaml',
      `waivers:\n  - { rule: ${rule}, about: ${about}, reason: why it may stay as it is, until: 2027-03-01${damage} }`,
    ),
    'It stays in the report with its reason, and no longer decides the verdict or the exit status. After its last day, which may be left out, it counts again.' +
      (damage === '' ? '' : ' Since a pin may be damaged, the waiver has to say that this is accepted.'),
  ];
}

const anchor = (family: string): string => family.replaceAll(' ', '-');

function indexPage(all: readonly Example[]): string {
  const families = [...new Set(all.map(({ family }) => family))];
  const sections = families.map((family) => {
    const rows = all
      .filter((each) => each.family === family)
      .map(({ rule }) => `| [\`${rule}\`](${rule}.md) | ${RULE_HELP[rule]!.title} |`);
    return section(family, ['| rule | what it finds |', '| --- | --- |', ...rows].join('\n'));
  });
  return `${[
    '# The rules',
    `Made by \`node tools/rules.mjs\` out of the checks, their words and their tests; a test holds that it is up to date. Each of the ${all.length} pages has what a rule means and rests on, a project in which it finds something, with the sums and the cure as the program prints them, one in which it does not, and how to set a finding aside. \`ampledger rule NAME\` shows a page in a terminal.`,
    ...sections,
  ].join('\n\n')}\n`;
}
