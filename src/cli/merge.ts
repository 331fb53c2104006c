/** `ampledger merge PART…` */
import type { FailAt } from '../reports/severity.js';
import type { PartHead, PartLine } from '../reports/part.js';
import type { Arguments } from './arguments.js';
import type { Audited } from './audit-file.js';
import { openDelivery } from './deliver.js';
import type { Format } from './formats.js';
import { readOutputs } from './outputs.js';
import { openPart, type Part } from './read-part.js';
import { refuse } from './refuse.js';
import type { Wishes } from './render.js';
import { toldOf } from './tell.js';
import { version } from './version.js';

type Problem = { readonly problem: string };

/** Puts all parts of a run together: what is printed and written is what one machine would have. */
export async function merge({ operands, options, repeated }: Arguments): Promise<number> {
  const wanted = readOutputs(repeated?.['output'] ?? [], operands);
  if ('problem' in wanted) return refuse([wanted.problem]);
  const parts = partsOf(operands);
  if ('problem' in parts) return refuse([parts.problem]);
  // All is looked at before anything is printed: half a report is none.
  for (const line of linesOf(parts)) if ('problem' in line) return refuse([line.problem]);
  const wishes: Wishes = {
    all: options['all'] === true,
    failAt: (options['fail-at'] ?? 'breach') as FailAt,
    run: { ...parts[0]!.head, part: 1, of: 1 },
  };
  const delivery = await openDelivery((options['format'] ?? 'terminal') as Format, wanted.outputs, wishes);
  for (const line of linesOf(parts)) {
    if ('problem' in line) return refuse([line.problem]);
    try {
      await delivery.take(await toldOf(auditedOf(line), { at: line.at, whole: line.at, wishes: delivery.wishes }));
    } catch {
      return refuse([`${partOf(line.at, parts).file}: the report of file ${line.at} of the list cannot be shown.`]);
    }
  }
  const problems = await delivery.done();
  return problems.length > 0 ? refuse(problems) : delivery.status();
}

const auditedOf = ({ report, text = '', said = [] }: PartLine): Audited =>
  report.verdict === 'unread' ? { unread: report, said } : { report, text };

/** The parts in their order, all of one run and none of them missing, or why they are not. */
function partsOf(files: readonly string[]): readonly Part[] | Problem {
  const parts: Part[] = [];
  for (const file of files) {
    const part = openPart(file);
    if ('problem' in part) return part;
    const [first = part] = parts;
    const why = differs(part.head, first.head);
    if (why !== undefined) return { problem: `${file} and ${first.file} are no parts of one run: ${why}.` };
    const twin = parts.find(({ head }) => head.part === part.head.part);
    if (twin) return { problem: `Part ${part.head.part} is there twice: ${twin.file} and ${file}.` };
    if (part.head.version !== version)
      return { problem: `${file} was written by ampledger ${part.head.version}, and this is ${version}.` };
    parts.push(part);
  }
  const { of } = parts[0]!.head;
  const there = new Set(parts.map(({ head }) => head.part));
  const missing = Array.from({ length: of }, (_, at) => at + 1).filter((part) => !there.has(part));
  if (missing.length === 0) return parts.sort((a, b) => a.head.part - b.head.part);
  const named = missing.length > 20 ? `${missing.slice(0, 20).join(', ')} and more` : missing.join(', ');
  return { problem: `Of ${of} parts ${missing.length === 1 ? 'one is' : `${missing.length} are`} missing: ${named}.` };
}

/** What keeps two parts from being of one run. */
function differs(a: PartHead, b: PartHead): string | undefined {
  if (a.of !== b.of) return `one is of ${a.of} parts, the other of ${b.of}`;
  if (a.list !== b.list || a.files !== b.files) return 'their lists of files are not the same';
  if (a.asked !== b.asked) return `${a.asked} was asked of one, ${b.asked} of the other`;
  if (a.folder !== b.folder)
    return `one was made in ${a.folder || 'the root of the repository'}, the other in ${b.folder || 'the root'}`;
  return a.shown === b.shown && a.longest === b.longest && a.version === b.version
    ? undefined
    : 'what their first lines say of it is not the same';
}

const partOf = (at: number, parts: readonly Part[]): Part => parts[at % parts.length]!;

/** The files of all parts in the order of the list, or what is wrong with one. */
function* linesOf(parts: readonly Part[]): Generator<PartLine | Problem> {
  const each = parts.map(({ lines }) => lines());
  const { files } = parts[0]!.head;
  for (let at = 0; at < files; at += 1) {
    const next = each[at % parts.length]!.next();
    if (next.done === true) return;
    yield next.value;
    if ('problem' in next.value) return;
  }
  // Whatever else stands in them is too much.
  for (const lines of each) {
    const next = lines.next();
    if (next.done !== true) return yield next.value;
  }
}
