/** One finding: where, what, the sum in one line, the limit and its source, and the cure with what it does. */
import { figure, given, governing } from './figures.js';
import { accountOf, type Numbered } from './numbered.js';
import { remedyItems } from './remedy-items.js';
import type { Report, ReportAccount, ReportFinding, ReportLimit, ReportPlace } from './report.js';
import { workingCommand } from './shell-word.js';
import { substitute } from './substitute.js';
import { heading, type Item, item, list, mark, paragraph } from './tree.js';
import { citeWords, firstFew, gradeWords, modeWords } from './words.js';

/** As editors and terminals read it: 'pond.yaml:41:3'. */
export const placeWords = ({ file, line, column }: ReportPlace): string => `${file}:${line}:${column}`;

/** The finding as an item of a list, its number in the margin; `all` gives every remedy its steps. */
export function findingItem({ number, finding }: Numbered, report: Report, all: boolean): Item {
  const account = accountOf(report, finding);
  return item(
    mark('strong', number),
    heading([mark(finding.verdict, finding.verdict), '  ', placeWords(finding.place)], mark('quiet', finding.rule)),
    paragraph(mark('strong', finding.says)),
    list([
      ...labelled('ask', finding.asks),
      ...labelled('sum', sum(finding)),
      ...labelled('when', moment(finding, account)),
      ...(account ? accountItems(account, report) : []),
      ...labelled('source', sources(finding, account)),
      ...finding.related.map(({ says, place }) =>
        item(label('also'), paragraph([says, mark('quiet', ` (${placeWords(place)})`)])),
      ),
      ...remedyItems(finding, account, report, all),
      ...labelled('working', workingCommand(report.file, finding.account ?? finding.about)),
    ]),
  );
}

const label = (word: string) => mark('quiet', word);

const labelled = (word: string, text: string | undefined): readonly Item[] =>
  text === undefined || text === '' ? [] : [item(label(word), text)];

/** The first step that works something out, with its numbers: '5.25 V / (59.3 Ω + 15 Ω) = 70.7 mA'. */
function sum(finding: ReportFinding): string | undefined {
  const [sum] = finding.working.map(substitute).filter(({ numbers, result }) => numbers !== result);
  return sum && `${sum.numbers} = ${sum.result}`;
}

/** Who makes up a sum, what is typical of it, and what it is held against. */
function accountItems(account: ReportAccount, report: Report): readonly Item[] {
  const { unit, draw } = account;
  const limit = governing(account, report.ambient.max);
  const booked = [...account.entries].sort((a, b) => Math.abs(b.max) - Math.abs(a.max));
  const parts = booked.map(({ circuit, max }) => `${circuit} ${figure(max, unit)}`);
  return [
    ...labelled('from', parts.length > 1 ? firstFew(parts, 5) : undefined),
    ...labelled('typical', draw ? figure(draw.typ, unit) : undefined),
    ...(limit ? labelled('limit', limitWords(limit, unit)) : []),
  ];
}

/** The worst moment: its mode, and who is on in it besides what the finding is about. */
function moment(finding: ReportFinding, account: ReportAccount | undefined): string {
  const on = account?.moment ?? [];
  return [
    modeWords(account?.mode ?? finding.mode ?? 'free'),
    on.some((circuit) => circuit !== finding.about) ? `with ${firstFew(on, 6)} on` : '',
    account?.bound ? 'a bound: no combination is worse' : '',
  ]
    .filter(Boolean)
    .join(', ');
}

/** '40 mA, damage limit, at 25 °C (ATmega328P data sheet, Table 28-1)'. */
function limitWords({ value, grade, condition, range, cite }: ReportLimit, unit: ReportAccount['unit']): string {
  const kind = range ? `assumed between ${given(range.min, unit)} and ${given(range.max, unit)}` : gradeWords[grade];
  return [given(value, unit), kind, condition].filter(Boolean).join(', ') + (cite ? ` (${citeWords(cite)})` : '');
}

/** Where the numbers of the sum come from, but for what the line of the limit has said. */
function sources(finding: ReportFinding, account: ReportAccount | undefined): string {
  const said = account?.limits.map(({ cite }) => (cite ? citeWords(cite) : '')) ?? [];
  const named = new Set(finding.working[0]?.sources ?? []);
  return [...named].filter((source) => !said.includes(source)).join('; ');
}
