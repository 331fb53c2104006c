/** A profile as rows: each figure, limit and fact with all that it holds at, its note, its source, and which profile states it. */
import type { Dimension } from '../quantity/dimension.js';
import type { Path } from '../source/place.js';
import { type Citation, citation } from './citation.js';
import { MEASURES } from './measures.js';
import { type Fields, field, isFields, isFigure, type Profile } from './profile.js';
import { quantityOf, textOf } from './stated.js';

export interface Row {
  readonly path: Path;
  /** The block it belongs to: `coil`, `limits`; none for what stands at the top. */
  readonly block?: string;
  readonly name: string;
  /** As it is written: '70 Ω ±10 %', 'source 40 mA, sink 40 mA'. */
  readonly value: string;
  /** In SI, where it is one quantity; a bound that is not stated is not there. */
  readonly quantity?: { readonly of: Dimension; readonly min?: number; readonly typ?: number; readonly max?: number };
  /** 'at 10 mA', 'supply 5 V', in the order in which they are written. */
  readonly conditions: readonly string[];
  readonly grade?: string;
  readonly note?: string;
  readonly cite?: Citation;
  /** The profile that states it: this one, or one that it extends. */
  readonly from: string;
}

/** Told elsewhere: in the head, in the list of documents. */
const TOLD = new Set(['id', 'title', 'kind', 'type', 'documents', 'note', 'extends']);
const CONDITIONS = ['at', 'supply', 'drive', 'temperature', 'package', 'pins'];
/** Keys of a row that are told in their own way. */
const APART = new Set(['value', 'cite', 'note', 'grade', 'when', 'applies-to', 'name', ...CONDITIONS]);

/**
 * The rows of a profile.
 *
 * @param profile completed
 * @param written the profile as written, then those that it extends, the nearest first
 */
export function rowsOfProfile(profile: Profile, written: readonly Fields[]): readonly Row[] {
  const rows: Row[] = [];
  const push = (path: Path, node: Fields, value: string, more: Partial<Row> = {}): void => {
    const steps = path.filter((step) => typeof step === 'string');
    const [top = ''] = steps;
    const inBlock = steps.length > 1 || isTable(profile[top]);
    const cite = citation(node['cite'], profile.documents);
    const note = typeof node['note'] === 'string' ? node['note'] : undefined;
    const grade = typeof node['grade'] === 'string' ? node['grade'] : undefined;
    rows.push({
      path,
      ...(inBlock && { block: top }),
      name: (inBlock && steps.length > 1 ? steps.slice(1) : steps).join(' '),
      value,
      conditions: conditionsOf(node),
      ...(grade !== undefined && { grade }),
      ...(note !== undefined && { note }),
      ...(cite && { cite }),
      from: statedBy(path, written) ?? profile.id,
      ...more,
    });
  };
  const visit = (node: unknown, path: Path, source: Fields): void => {
    if (isFigure(node)) return push(path, node, String(node.value), quantityIn(path, node));
    if (Array.isArray(node)) {
      if (node.some(isFields)) return node.forEach((each: unknown, i) => visit(each, [...path, i], source));
      return push(path, { cite: source['cite'] }, node.map(textOf).join(', '));
    }
    if (!isFields(node)) return push(path, { cite: source['cite'] }, textOf(node));
    if (typeof path.at(-1) === 'number') return push(path, node, rowWords(node), nameOfRow(node));
    const own = node['cite'] === undefined ? source : node;
    const inside = Object.entries(node).filter(([key]) => key !== 'cite' && key !== 'note');
    const facts = inside.filter(([, each]) => !isFields(each) && !Array.isArray(each));
    // Facts alone are one row: a pin map, what is reserved.
    if (facts.length === inside.length && (inside.length > 3 || path.length === 1))
      return push(
        path,
        { ...node, cite: own['cite'] },
        facts.map(([key, each]) => `${key} ${textOf(each)}`).join(', '),
      );
    const together = facts.length > 1 ? facts : [];
    const words = together.map(([key, each]) => `${key} ${textOf(each)}`).join(', ');
    // A block without a fact of its own still says where it comes from.
    const sourced = node['cite'] !== undefined && facts.length === 0;
    if (words !== '' || sourced || typeof node['note'] === 'string')
      push(path, { cite: own['cite'], note: node['note'] }, words, { block: String(path[0]) });
    for (const [key, each] of inside.filter((entry) => !together.includes(entry))) visit(each, [...path, key], own);
  };
  for (const [key, node] of Object.entries(profile)) if (!TOLD.has(key)) visit(node, [key], {});
  return rows;
}

/** A list of rows, each with a source. */
const isTable = (node: unknown): boolean =>
  Array.isArray(node) && node.some((each) => isFields(each) && !isFigure(each));

function conditionsOf(node: Fields): readonly string[] {
  const words = (key: string, value: unknown): string =>
    `${key} ${Array.isArray(value) ? value.map(textOf).join(', ') : textOf(value)}`;
  const own = CONDITIONS.flatMap((key) => (node[key] === undefined ? [] : [words(key, node[key])]));
  const when = isFields(node['when']) ? Object.entries(node['when']).map(([key, value]) => words(key, value)) : [];
  return [...own, ...when];
}

/** What a row of limits, ratings or thresholds states. */
const rowWords = (node: Fields): string =>
  Object.entries(node)
    .filter(([key]) => !APART.has(key))
    .map(([key, each]) => `${key} ${textOf(each)}`)
    .join(', ');

function nameOfRow(node: Fields): Partial<Row> {
  const scope = node['applies-to'];
  if (scope === undefined) return {};
  const each = field(scope, 'each');
  const list = (pins: readonly unknown[]): string => pins.map(textOf).join(', ');
  if (Array.isArray(each)) return { name: `each of ${list(each)}` };
  if (Array.isArray(scope)) return { name: `${textOf(node['name'])}: ${list(scope)}` };
  return { name: textOf(scope).replace('-', ' ') };
}

function quantityIn(path: Path, { value }: Fields): Partial<Row> {
  const name = path.findLast((step) => typeof step === 'string');
  const measure = name !== undefined && Object.hasOwn(MEASURES, name) ? MEASURES[name] : undefined;
  for (const of of measure?.of ?? []) {
    const found = quantityOf(value, of);
    if (!found) continue;
    const { min, typ, max } = found;
    const bounds = {
      ...(min !== undefined && { min }),
      ...(typ !== undefined && { typ }),
      ...(max !== undefined && { max }),
    };
    return { quantity: { of, ...bounds } };
  }
  return {};
}

/** The nearest profile that says something at a path; lists and figures are taken over whole. */
function statedBy(path: Path, written: readonly Fields[]): string | undefined {
  const end = path.findIndex((step) => typeof step === 'number');
  const steps = (end === -1 ? path : path.slice(0, end)).map(String);
  const says = (fields: Fields): boolean =>
    steps.reduce<unknown>((at, step) => (isFigure(at) ? at : field(at, step)), fields) !== undefined;
  const found = written.find(says);
  return typeof found?.['id'] === 'string' ? found['id'] : undefined;
}
