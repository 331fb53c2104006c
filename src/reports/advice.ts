/** Advice for people: what to do, step by step, and the books before and after. */
import { weighs } from '../checks/finding.js';
import type { JudgedAccount } from '../checks/verdict.js';
import type { Advice } from '../studies/advice.js';
import { fewWords } from '../wording/few-words.js';
import { figure, limitFigure } from '../wording/phrases.js';
import { countsOf } from './counts.js';
import { percent } from './figures.js';
import type { Head } from './json.js';
import { countWords, joined } from './words.js';
import { type Block, heading, item, list, mark, paragraph, table, type Text, type Tree } from './tree.js';

/** Accounts shown without being asked for all. */
const MOST = 12;

export function adviceTree(advice: Advice, project: string, file: string, all: boolean): Tree {
  const { steps, before, after, books, left } = advice;
  const shown = all ? books : books.slice(0, MOST);
  return [
    [heading(mark('strong', project), mark('quiet', file))],
    [paragraph([mark(before.verdict, before.verdict.toUpperCase()), `  ${answer(advice)}`])],
    ...(steps.length === 0
      ? []
      : [
          [
            list(
              steps.map(({ cure, cures }, k) =>
                item(
                  mark('strong', `${k + 1}`),
                  paragraph([mark('strong', `${cure.title}.`)]),
                  paragraph(mark('quiet', `Cures: ${distinct(cures.map((f) => fewWords(f)))}.`)),
                  ...(cure.parts.length > 0 ? [paragraph(`Parts: ${joined(cure.parts)}.`)] : []),
                  list(cure.steps.map((step) => item('·', step))),
                ),
              ),
              { loose: true },
            ),
          ],
        ]),
    ...(books.length === 0
      ? []
      : [
          [
            table(
              [
                { title: 'account', align: 'left' },
                { title: 'before', align: 'right' },
                { title: 'in hand', align: 'right' },
                { title: 'after', align: 'right' },
                { title: 'in hand', align: 'right' },
              ],
              shown.map((b) => [b.before.account.title, ...ends(b.before), ...ends(b.after)]),
            ),
            ...(books.length > shown.length
              ? [paragraph(mark('quiet', `… ${books.length - shown.length} more are better: --all`))]
              : []),
          ],
        ]),
    ...(left.length === 0
      ? []
      : [
          [
            paragraph(mark('strong', 'Not cured')),
            list(
              left.map(({ finding, why }) =>
                item(mark(finding.verdict, finding.verdict), `${fewWords(finding)}: ${why}.`),
              ),
            ),
          ],
        ]),
    ...cautionsOf(advice),
    ...(steps.length > 0
      ? [[paragraph([mark('quiet', 'After it: '), mark(after.verdict, after.verdict.toUpperCase())])]]
      : []),
  ];
}

/** The first few findings, and how many more. */
function distinct(words: readonly string[]): string {
  const shown = [...new Set(words)];
  return (shown.length > 3 ? [...shown.slice(0, 2), `${shown.length - 2} more`] : shown).join('; ');
}

function answer({ steps, before, after, left }: Advice): string {
  const wrong = before.findings.filter(weighs).length;
  if (wrong === 0) return 'Nothing calls for a change.';
  const found = `${wrong} ${wrong === 1 ? 'finding calls' : 'findings call'} for a change`;
  if (steps.length === 0) return `${found}, and none of them can be cured from here.`;
  const many = steps.length === 1 ? 'one change' : `${steps.length} changes`;
  if (after.verdict === 'sound') return `${found}; ${many} ${steps.length === 1 ? 'makes' : 'make'} the project sound.`;
  return `${found}; ${many} ${steps.length === 1 ? 'leaves' : 'leave'} ${countWords(countsOf(left.map(({ finding }) => finding)))}.`;
}

function ends({ account, by, margin, verdict }: JudgedAccount): Text[] {
  const worst = by?.draw ?? (account.direction === 'at-least' ? account.draw?.min : account.draw?.max);
  const of = by === undefined ? '' : ` of ${limitFigure(account, by.value)}`;
  return [
    worst === undefined ? 'not known' : `${figure(account, worst)}${of}`,
    margin === undefined ? '' : mark(verdict, percent(margin)),
  ];
}

/** Cautions of the project: they hold for the work that is advised, too. */
const cautionsOf = ({ after, steps }: Advice): Block[][] =>
  steps.length === 0 || after.project.cautions.length === 0
    ? []
    : [[list(after.project.cautions.map((c) => item(mark('strain', '!'), c)))]];

/** The same for programs. */
export const adviceJson = ({ steps, before, after, changes, books, left }: Advice, head: Head): unknown => ({
  ...head,
  before: before.verdict,
  after: after.verdict,
  steps: steps.map(({ cure, cures }) => ({
    title: cure.title,
    cures: cures.map((f) => ({ rule: f.rule, about: f.about, verdict: f.verdict })),
    parts: cure.parts,
    steps: cure.steps,
    changes: cure.changes.map(({ path, value }) => ({ path: path.join('.'), value: value ?? null })),
  })),
  changes: changes.map(({ path, value }) => ({ path: path.join('.'), value: value ?? null })),
  books: books.map((b) => ({
    account: b.before.account.id,
    quantity: b.before.account.quantity,
    direction: b.before.account.direction,
    before: side(b.before),
    after: side(b.after),
  })),
  left: left.map(({ finding: f, why }) => ({ rule: f.rule, about: f.about, verdict: f.verdict, why })),
});

const side = ({ account, verdict, margin, by }: JudgedAccount): unknown => ({
  verdict,
  draw: by?.draw ?? (account.direction === 'at-least' ? account.draw?.min : account.draw?.max) ?? null,
  limit: by?.value ?? null,
  margin: margin ?? null,
});
