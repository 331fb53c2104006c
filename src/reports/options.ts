/** Supply and jumper options of relay boards, for people: a line each, what decides, and the wiring of the best. */
import type { BoardOption, BoardOptions } from '../studies/options.js';
import { formatInterval, formatValue } from '../quantity/print.js';
import { fewWords } from '../wording/few-words.js';
import { countsOf } from './counts.js';
import { inHand, percent } from './figures.js';
import type { Head } from './json.js';
import { nameList } from './name-list.js';
import { countWords, joined } from './words.js';
import type { SupplyLead } from '../studies/supply-lead.js';
import { type Block, heading, item, list, mark, paragraph, table, type Tree } from './tree.js';

/** Options shown without being asked for all. */
const MOST = 12;

/** The options of a project's boards. */
export const optionsTree = (boards: readonly BoardOptions[], project: string, file: string, all: boolean): Tree =>
  boards.length === 0
    ? [[heading(mark('strong', project), mark('quiet', file))], [paragraph('There is no relay board in this project.')]]
    : [[heading(mark('strong', project), mark('quiet', file))], ...boards.flatMap((b) => boardTree(b, all))];

function boardTree(board: BoardOptions, all: boolean): Tree {
  const { options, plan } = board;
  const shown = all ? options : options.slice(0, MOST);
  const hidden = options.length - shown.length;
  return [
    [paragraph(headlineOf(board))],
    [
      table(
        [
          { title: '#', align: 'right' },
          { title: 'verdict', align: 'left' },
          { title: 'coils from', align: 'left' },
          { title: 'logic from', align: 'left' },
          { title: 'jumper', align: 'left' },
          { title: 'grounds', align: 'left' },
          { title: 'isolates', align: 'left' },
          { title: 'in hand', align: 'right' },
        ],
        shown.map((o, k) => [
          mark('strong', `${k + 1}`),
          mark(o.verdict, o.verdict),
          coilOf(o),
          o.logic,
          board.hasJumper ? o.jumper : 'none',
          o.grounds,
          o.isolates === undefined ? 'no couplers' : o.isolates ? 'yes' : 'no',
          o.tightest?.margin === undefined ? '' : percent(o.tightest.margin),
        ]),
      ),
      ...(hidden > 0 ? [paragraph(mark('quiet', `… ${hidden} more, none better: --all`))] : []),
    ],
    [paragraph(mark('strong', 'What decides')), list(reasons(shown))],
    ...staysOf(board),
    ...(plan.steps.length === 0
      ? []
      : [
          [paragraph(mark('strong', 'Wiring of the first')), list(numbered(plan.steps))],
          [paragraph(mark('strong', 'Measure before the controller joins')), list(numbered(plan.checks))],
        ]),
  ];
}

const numbered = (lines: readonly string[]) => lines.map((line, k) => item(mark('quiet', `${k + 1}`), line));

const coilOf = (o: BoardOption): string => o.coil ?? 'a new supply';

function headlineOf({ board, hasJumper, options, size }: BoardOptions): string {
  const [best] = options;
  if (best === undefined) return `${board} cannot be fed in any way that could be audited.`;
  const counts = { breach: 0, strain: 0, unproven: 0, thin: 0, note: 0, sound: 0 };
  for (const o of options) counts[o.verdict]++;
  const fits = counts.sound === 0 ? 'none of them sound' : `${counts.sound} of them sound`;
  const fed = best.present ? 'It is fed in the best way already' : `Best: ${wayOf(best, hasJumper)}`;
  const rest = size?.volts
    ? ` The supply: ${best.fresh!.words}; asked for up to ${formatValue(size.amps, 'current')}, and the coils work from ${formatInterval({ min: size.volts.lowest, max: size.volts.highest }, 'voltage')}.`
    : '';
  return `${board}: ${options.length} ways to feed it, ${fits}. ${fed}.${rest}`;
}

function wayOf(o: BoardOption, hasJumper: boolean): string {
  const coils = o.coil ?? `a supply of their own (${o.fresh?.words ?? 'new'})`;
  return joined([
    `coils from ${coils}`,
    `logic from ${o.logic}`,
    ...(hasJumper ? [`jumper ${o.jumper}`] : []),
    `grounds ${o.grounds}`,
  ]);
}

/** What decides each option, those with the same reason in one line. */
function reasons(options: readonly BoardOption[]) {
  const groups = new Map<string, number[]>();
  options.forEach((o, k) => groups.set(reasonOf(o), [...(groups.get(reasonOf(o)) ?? []), k + 1]));
  return [...groups].map(([words, numbers]) => item(mark('strong', nameList(numbers.map(String))), words));
}

function reasonOf({ findings, tightest, present }: BoardOption): string {
  const now = present ? ' (as it is now)' : '';
  const [first] = findings;
  if (first === undefined) {
    if (tightest?.margin === undefined) return `nothing is wrong${now}`;
    const { account } = tightest;
    return `tightest is the ${account.title}, ${inHand(tightest.margin, account.direction)}${now}`;
  }
  const alike = findings.filter((f) => f.rule === first.rule).length - 1;
  const others = new Set(findings.map((f) => f.rule)).size - 1;
  const more = [
    ...(alike > 0 ? [`${alike} more like it`] : []),
    ...(others > 0 ? [`${others} other ${others === 1 ? 'fault' : 'faults'}`] : []),
  ];
  return `${fewWords(first)}${more.length > 0 ? `, and ${joined(more)}` : ''}${now}`;
}

function staysOf({ stays }: BoardOptions): Block[][] {
  if (stays.length === 0) return [];
  const [first] = stays;
  return [
    [
      paragraph(
        mark(
          'quiet',
          `Left out above, since no arrangement changes it: ${countWords(countsOf(stays))}, first ${fewWords(first!)}.`,
        ),
      ),
    ],
  ];
}

/** The same for programs. */
export const optionsJson = (boards: readonly BoardOptions[], head: Head): unknown => ({
  ...head,
  boards: boards.map(({ board, hasJumper, options, stays, size, plan }) => ({
    board,
    options: options.map((o) => ({
      verdict: o.verdict,
      present: o.present,
      jumper: hasJumper ? o.jumper : 'none',
      logic: o.logic,
      coil: o.coil ?? null,
      ...(o.fresh && { newSupply: o.fresh.words }),
      grounds: o.grounds,
      isolates: o.isolates ?? null,
      ...(o.tightest && { tightest: { account: o.tightest.account.id, margin: o.tightest.margin } }),
      fails: o.findings.map((f) => ({ rule: f.rule, about: f.about, verdict: f.verdict, says: fewWords(f) })),
      changes: o.changes.map(({ path, value }) => ({ path: path.join('.'), value: value ?? null })),
    })),
    stays: stays.map((f) => ({ rule: f.rule, about: f.about, verdict: f.verdict })),
    ...(size && {
      newSupply: {
        current: size.amps,
        ...(size.volts && { voltage: size.volts }),
        lead: size.lead ? leadJson(size.lead) : null,
      },
    }),
    steps: plan.steps,
    checks: plan.checks,
  })),
});

const leadJson = ({ fuse, largestFuse, length, stated, drop, awg, metric }: SupplyLead): unknown => ({
  fuse: { current: fuse.amps, most: largestFuse },
  length,
  stated,
  drop,
  wires: [awg, metric],
});
