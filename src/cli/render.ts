/** What is wanted of a run, and how each format tells a file and all of them. What makes a format is loaded when it is asked for. */
import type { Form, Piece } from '../reports/assembly.js';
import { type FileSummary, summaryOf } from '../reports/file-summary.js';
import { neutral } from '../reports/neutral.js';
import type { PartHead } from '../reports/part.js';
import type { FailAt } from '../reports/severity.js';
import { type Audited, reportOf } from './audit-file.js';
import type { Format } from './formats.js';
import type { Page } from './print.js';
import { version } from './version.js';

/** What holds for a whole run. */
export interface Wishes {
  readonly all: boolean;
  readonly failAt: FailAt;
  /** The run that this is, or is a part of. */
  readonly run: PartHead;
}

/** One text that is wanted. */
export interface Wish extends Wishes {
  readonly format: Format;
  readonly page: Page;
  /** It is printed, where errors go another way than reports. */
  readonly printed: boolean;
}

/** A page of a file: plain, and as wide as most read it. */
export const ofFile: Page = { width: 80, colour: false };

/** A line a file, and only for those that call for a change. */
export const isLines = ({ format, all, run }: Wish): boolean => format === 'terminal' && run.shown === 'fleet' && !all;

/** What `audited` adds. @param at its place in the run, @param whole in the list that the run is a part of */
export async function pieceOf(wish: Wish, audited: Audited, at: number, whole: number): Promise<Piece> {
  const report = reportOf(audited);
  const several = wish.run.shown !== 'one';
  switch (wish.format) {
    case 'terminal':
      return { texts: [await terminalText(wish, audited, at)] };
    case 'json':
      return (await import('../reports/json.js')).jsonPiece(report, several);
    case 'sarif':
      return (await import('../reports/sarif.js')).sarifPiece(
        report,
        'report' in audited ? audited.text : undefined,
        wish.run.folder,
      );
    case 'junit':
      return (await import('../reports/junit.js')).junitPiece(report, wish.failAt);
    case 'markdown':
      return (await import('../reports/markdown.js')).markdownPiece(report, several);
    case 'part':
      return (await import('../reports/part.js')).partPiece({
        at: whole,
        report,
        ...('unread' in audited ? { said: audited.said } : { text: audited.text }),
      });
    default:
      return wish.format satisfies never;
  }
}

/** How pieces come together. @param summaries of all files, asked for when the last one is told */
export async function formOf(wish: Wish, summaries: () => readonly FileSummary[]): Promise<Form> {
  const several = wish.run.shown !== 'one';
  switch (wish.format) {
    case 'terminal':
      return terminalForm(wish, summaries);
    case 'json':
      return (await import('../reports/json.js')).jsonForm(several);
    case 'sarif':
      return (await import('../reports/sarif.js')).sarifForm(version);
    case 'junit':
      return (await import('../reports/junit.js')).junitForm;
    case 'markdown':
      return (await import('../reports/markdown.js')).markdownForm(several);
    case 'part':
      return (await import('../reports/part.js')).partForm(wish.run);
    default:
      return wish.format satisfies never;
  }
}

const ruleOf = ({ width }: Page): string => '━'.repeat(width) + '\n\n';

/** A report as soon as it is there, those of several set off from each other. */
async function terminalText(wish: Wish, audited: Audited, at: number): Promise<string> {
  const { page, all, printed, run } = wish;
  const { print } = await import('./print.js');
  if (isLines(wish)) {
    const { fleetLine } = await import('../reports/fleet.js');
    const line = fleetLine(summaryOf(reportOf(audited)), { width: page.width, longest: run.longest });
    return line === undefined ? '' : print([[{ block: 'paragraph', text: line }]], page);
  }
  if ('unread' in audited)
    return printed ? '' : audited.said.map((line) => line.split('\n').map(neutral).join('\n') + '\n').join('');
  const { terminalReport } = await import('../reports/terminal.js');
  const text = print(terminalReport(audited.report, { all }), page);
  return (at === 0 ? '' : ruleOf(page)) + text + (run.shown === 'one' ? '' : '\n');
}

async function terminalForm(wish: Wish, summaries: () => readonly FileSummary[]): Promise<Form> {
  const { page, run } = wish;
  const streams = true;
  if (run.shown === 'one') return { sections: [{ joint: '' }], streams, around: () => '' };
  const { print } = await import('./print.js');
  if (run.shown === 'several') {
    const { summary } = await import('../reports/summary.js');
    const around = (at: number): string => (at === 0 ? '' : ruleOf(page) + print(summary(summaries()), page));
    return { sections: [{ joint: '' }], streams, around };
  }
  const { fleetHead, fleetTotals } = await import('../reports/fleet.js');
  const head = fleetHead({ width: page.width, longest: run.longest }).map(
    (text) => ({ block: 'paragraph', text }) as const,
  );
  const share = run.of === 1 ? undefined : `part ${run.part} of ${run.of}`;
  return {
    sections: [{ joint: '', ...(isLines(wish) && { first: print([head], page) }) }],
    streams,
    around: (at, { filled: [filled] }) =>
      at === 0
        ? ''
        : (filled ? (isLines(wish) ? '\n' : ruleOf(page)) : '') + print(fleetTotals(summaries(), share), page),
  };
}
