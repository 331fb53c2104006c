/**
 * The sums behind a name, as a textbook sets them: account by account, formula, numbers, result, one under the other; a sum
 * that was done before is referred to, and the sources stand at the end.
 */
import type { ReportStep, Verdict } from './report.js';
import { substitute } from './substitute.js';
import { type Block, heading, item, list, mark, paragraph, type Tree } from './tree.js';

/** What the library answers when asked for the working of an account, a circuit or a finding. */
export interface Working {
  readonly title: string;
  readonly steps: readonly ReportStep[];
  /** The same by the account that they belong to, where there are several. */
  readonly sections?: readonly Section[];
  /** When nothing is called so: names that come near. */
  readonly nearest?: readonly string[];
}

interface Section {
  readonly title: string;
  readonly verdict: Verdict;
  readonly comes: string;
  readonly steps: readonly ReportStep[];
}

/** What the page has told so far: its steps by what they say, its sources by their text. */
interface Told {
  readonly steps: Map<string, number>;
  readonly sources: Map<string, number>;
  count: number;
}

/** The working of one name of `file`. */
export function workingReport({ title, steps, sections }: Working, file: string): Tree {
  const told: Told = { steps: new Map(), sources: new Map(), count: 0 };
  const head = heading(mark('strong', title), mark('quiet', file));
  if (steps.length === 0) return [[head], [paragraph('Nothing is worked out here.')]];
  const [only, ...others] = sections ?? [];
  const body: Block[][] =
    only === undefined || others.length === 0
      ? [[head], ...(only && only.comes !== '' ? [[comes(only)]] : []), [stepList(only?.steps ?? steps, told)]]
      : [
          [head],
          ...sections!.filter((s) => s.steps.length > 0).flatMap((s) => [[sectionHead(s)], [stepList(s.steps, told)]]),
        ];
  return [...body, ...sourceSection(told)];
}

const sectionHead = ({ title, verdict, comes: text }: Section): Block =>
  heading(mark('strong', capital(title)), text === '' ? '' : mark(verdict, text));

const comes = ({ verdict, comes: text }: Section): Block => paragraph(mark(verdict, capital(text)));

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const stepList = (steps: readonly ReportStep[], told: Told): Block =>
  list(
    steps.map((step) => item(mark('quiet', `${++told.count}`), ...stepBlocks(step, told))),
    { loose: true, margin: 4 },
  );

function stepBlocks(step: ReportStep, told: Told): readonly Block[] {
  const { left, formula, numbers, result } = substitute(step);
  const key = JSON.stringify([left, step.formula, step.with, step.gives]);
  const before = told.steps.get(key);
  const says = step.says === undefined ? [] : [paragraph(step.says)];
  if (before !== undefined)
    return [
      ...says,
      list([item(`${left} =`, paragraph([mark('strong', result), mark('quiet', `  as in ${before}`)]))], {
        marks: 'right',
      }),
    ];
  told.steps.set(key, told.count);
  // A step without symbols, or a figure that was simply given, says the same thing twice or three times: once will do.
  const lines = [formula, numbers, result].filter((line, index, all) => line !== all[index - 1]);
  const equations = lines.map((line, index) =>
    item(index === 0 ? `${left} =` : '=', paragraph(index === lines.length - 1 ? mark('strong', line) : line)),
  );
  return [...says, list(equations, { marks: 'right' }), ...sources(step.sources ?? [], told)];
}

/** 'vents.1.series: a document, a table' → what it is of, and where it is from. */
const PARTED = /^([\p{L}\p{N}_.-]+): (.*)$/u;

/** Where a step's figures are from, by the number of the source: 'series [1], indicator [2]'. */
function sources(named: readonly string[], told: Told): readonly Block[] {
  if (named.length === 0) return [];
  const numbered = named.map((source) => {
    const parted = PARTED.exec(source);
    const text = parted?.[2] ?? source;
    const number = told.sources.get(text) ?? told.sources.size + 1;
    told.sources.set(text, number);
    const part = parted?.[1]?.split('.').at(-1);
    return part === undefined ? `[${number}]` : `${part} [${number}]`;
  });
  return [paragraph(mark('quiet', `from ${numbered.join(', ')}`))];
}

function sourceSection({ sources: named }: Told): Tree {
  if (named.size === 0) return [];
  return [
    [paragraph(mark('strong', 'Sources'))],
    [
      list(
        [...named].map(([text, number]) => item(mark('quiet', `[${number}]`), text)),
        { margin: 4 },
      ),
    ],
  ];
}
