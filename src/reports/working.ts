/** The sums behind a name, as a textbook sets them: formula, numbers, result, one under the other. */
import { substitute } from './substitute.js';
import type { ReportStep } from './report.js';
import { type Block, heading, type Item, item, list, mark, paragraph, type Tree } from './tree.js';

/** What the library answers when asked for the working of an account, a circuit or a finding. */
export interface Working {
  readonly title: string;
  readonly steps: readonly ReportStep[];
  /** When nothing is called so: names that come near. */
  readonly nearest?: readonly string[];
}

/** The working of one name of `file`. */
export const workingReport = ({ title, steps }: Working, file: string): Tree => [
  [heading(mark('strong', title), mark('quiet', file))],
  steps.length === 0
    ? [paragraph('Nothing is worked out here.')]
    : [
        list(
          steps.map((step, index) => item(mark('quiet', `${index + 1}`), ...stepBlocks(step))),
          { loose: true },
        ),
      ],
];

function stepBlocks(step: ReportStep): readonly Block[] {
  const { left, formula, numbers, result } = substitute(step);
  // A step without symbols, or a figure that was simply given, says the same thing twice or three times: once will do.
  const lines = [formula, numbers, result].filter((line, index, all) => line !== all[index - 1]);
  const equations = lines.map((line, index) =>
    item(index === 0 ? `${left} =` : '=', paragraph(index === lines.length - 1 ? mark('strong', line) : line)),
  );
  return [
    ...(step.says ? [paragraph(step.says)] : []),
    list(equations, { marks: 'right' }),
    ...sources(step.sources ?? []),
  ];
}

const sources = (named: readonly string[]): readonly Block[] => {
  const items: readonly Item[] = named.map((source) => item(mark('quiet', 'source'), source));
  return items.length === 0 ? [] : [list(items)];
};
