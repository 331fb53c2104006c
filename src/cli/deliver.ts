/** Takes what is told of each file, in order, to standard output and into files. */
import { exitStatus, type FailAt } from '../reports/severity.js';
import type { FileSummary } from '../reports/file-summary.js';
import { type Collector, collector } from './collect.js';
import type { Format } from './formats.js';
import { complain, page, sayInTurn } from './output.js';
import type { Output } from './outputs.js';
import { formOf, isLines, ofFile, type Wish, type Wishes } from './render.js';
import type { Told } from './tell.js';

export interface Delivery {
  /** Each text that is wanted: the printed one first. */
  readonly wishes: readonly Wish[];
  readonly take: (told: Told) => Promise<void>;
  /** Writes what is left; gives what went wrong with files. */
  readonly done: () => Promise<readonly string[]>;
  /** The worst of all files. */
  readonly status: () => number;
}

/** @param aside shows what is printed, where something else is on the screen meanwhile */
export async function openDelivery(
  format: Format,
  outputs: readonly Output[],
  wanted: Wishes,
  aside: (print: () => Promise<void>) => Promise<void> = (print) => print(),
): Promise<Delivery> {
  const summaries: FileSummary[] = [];
  const printed: Wish = { ...wanted, format, page: page(), printed: true };
  const wishes = [printed, ...outputs.map((output): Wish => ({ ...wanted, ...output, page: ofFile, printed: false }))];
  const collectors: Collector[] = [];
  for (const wish of wishes) collectors.push(collector(await formOf(wish, () => summaries), wish.printed));
  const complains = format === 'terminal' && !isLines(printed);
  return {
    wishes,
    take: async ({ summary, pieces, said = [] }) => {
      summaries.push(summary);
      const [text = ''] = collectors.map((each, at) => each.add(pieces[at] ?? { texts: [] }));
      if (text === '' && !(complains && said.length > 0)) return;
      await aside(async () => {
        await sayInTurn(text);
        if (complains) complain(said);
      });
    },
    done: async () => {
      for (const chunk of collectors[0]?.rest() ?? []) await sayInTurn(chunk);
      if (outputs.length === 0) return [];
      const { writeWhole } = await import('./write-whole.js');
      const problems: string[] = [];
      for (const [at, { file }] of outputs.entries()) {
        const problem = await writeWhole(file, collectors[at + 1]?.rest() ?? '');
        if (problem !== undefined) problems.push(problem);
      }
      return problems;
    },
    status: () => statusOf(summaries, wanted.failAt),
  };
}

const statusOf = (summaries: readonly FileSummary[], failAt: FailAt): number =>
  summaries.reduce((worst, summary) => Math.max(worst, exitStatus(summary, failAt)), 0);
