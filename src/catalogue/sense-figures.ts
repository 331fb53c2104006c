/** Every figure of a profile: is it a quantity, in order, cited, and does a row of points run the way it must? */
import type { Quantity } from '../quantity/quantity.js';
import { parseQuantity } from '../quantity/parse.js';
import type { Path, Problem } from '../source/place.js';
import { citation } from './citation.js';
import { MEASURES, type Measure, WORDS, policyMeasure } from './measures.js';
import { type Fields, field, type Figure, isFields, isFigure, type Profile } from './profile.js';
import { fault, textOf } from './stated.js';

/** A named figure, or the points of one. */
interface Named {
  readonly name: string;
  readonly path: Path;
  readonly points: readonly Figure[];
}

/** All figures of a mapping, wherever they stand in it. */
export function* figuresIn(node: unknown, path: Path = [], name = ''): Generator<Named> {
  if (isFigure(node)) yield { name, path, points: [node] };
  else if (Array.isArray(node) && node.length > 0 && node.every(isFigure)) yield { name, path, points: node };
  else if (Array.isArray(node)) for (const [i, each] of node.entries()) yield* figuresIn(each, [...path, i], name);
  else if (isFields(node)) for (const [key, each] of Object.entries(node)) yield* figuresIn(each, [...path, key], key);
}

/** What is wrong with the figures of a profile. */
export function senseFigures(profile: Profile): readonly Problem[] {
  return [...figuresIn(profile)].flatMap(({ name, path, points }) => {
    if (WORDS.has(name)) return [];
    const measure =
      profile.kind === 'policy' ? policyMeasure(name) : Object.hasOwn(MEASURES, name) ? MEASURES[name] : undefined;
    if (!measure) return [fault(path, `nobody would read a figure called \`${name}\``)];
    const whole = points.length === 1 ? path : undefined;
    return [
      ...points.flatMap((point, i) => sensePoint(point, measure, whole ?? [...path, i])),
      ...(points.length > 1 && !name.startsWith('output-') ? senseRow(points, measure, path) : []),
    ];
  });
}

function sensePoint(point: Figure, measure: Measure, path: Path): readonly Problem[] {
  const { at } = point;
  return [
    ...unreadable(point.value, measure.of, path),
    ...(at === undefined || (measure.at && read(at, [measure.at]))
      ? []
      : [
          measure.at
            ? fault(
                path,
                `\`at: ${textOf(at)}\` is not ${measure.at}`,
                'what a figure holds at has a dimension of its own',
              )
            : fault(path, `this figure holds at nothing, not at ${textOf(at)}`),
        ]),
  ];
}

/** Why a figure is none: no quantity, one of another dimension, or bounds that are out of order. */
function unreadable(text: string | number, dimensions: Measure['of'], path: Path): readonly Problem[] {
  if (read(text, dimensions)) return [];
  const slips = dimensions.flatMap((dimension) => {
    const parsed = parseQuantity(text, dimension);
    return 'problem' in parsed ? [parsed] : [];
  });
  const [slip] = slips;
  return slip === undefined || slips.length < dimensions.length
    ? [fault(path, `the bounds of ${text} are out of order`, 'min, typ and max rise in this order')]
    : [fault(path, slip.problem, slip.expected)];
}

/** Conditions rise from point to point, and the figure goes the way it must. */
function senseRow(points: readonly Figure[], measure: Measure, path: Path): readonly Problem[] {
  if (!measure.at) return [fault(path, 'this is one figure, not several points')];
  const rows = points.map(({ value, at }) => ({
    at: at === undefined || !measure.at ? undefined : read(at, [measure.at])?.typ,
    value: read(value, measure.of),
  }));
  return rows.slice(1).flatMap((row, i) => {
    const before = rows[i];
    if (row.at === undefined || before?.at === undefined)
      return [fault([...path, i + 1], 'the point does not say at what it holds')];
    if (row.at <= before.at) return [fault([...path, i + 1], 'the point stands before or at the one above it')];
    const bounds = ['min', 'typ', 'max'] as const;
    const wrong = bounds.some((bound) => {
      const rise = (row.value?.[bound] ?? NaN) - (before.value?.[bound] ?? NaN);
      return measure.trend === 'up' ? rise < 0 : measure.trend === 'down' ? rise > 0 : false;
    });
    return wrong ? [fault([...path, i + 1], `the figure should go ${measure.trend} from the point above it`)] : [];
  });
}

/** A quantity in one of the dimensions, its bounds in order; undefined when it is none. */
function read(text: unknown, dimensions: Measure['of']): Quantity | undefined {
  if (typeof text !== 'string' && typeof text !== 'number') return undefined;
  for (const dimension of dimensions) {
    const parsed = parseQuantity(text, dimension);
    if (!('quantity' in parsed)) continue;
    const { min = -Infinity, typ, max = Infinity } = parsed.quantity;
    return min <= max && (typ === undefined || (min <= typ && typ <= max)) ? parsed.quantity : undefined;
  }
  return undefined;
}

/** Blocks that state facts or rows of limits, and so need a source like a figure does. */
const CITED_BLOCKS = new Set(['limits', 'contact-rating', 'thresholds']);
const CITED_MAPPINGS = new Set(['at-boot', 'input', 'output']);

/** Whether every figure and row has a source, and every document is cited by one. */
export function senseSources(profile: Profile): readonly Problem[] {
  const problems: Problem[] = [];
  const used = new Set<string>();
  const visit = (node: unknown, path: Path): void => {
    if (Array.isArray(node)) return node.forEach((each, i) => visit(each, [...path, i]));
    if (!isFields(node)) return;
    const cite = field(node, 'cite');
    if (Array.isArray(cite)) used.add(textOf(cite[0]));
    if (cite === undefined ? needsSource(node, path) : !complete(cite, profile.documents)) {
      problems.push(
        cite === undefined
          ? fault(path, 'this has no source', 'cite: [document, table or page]')
          : fault(
              path,
              `the source ${JSON.stringify(cite)} says nothing`,
              'a document of this profile, and where in it',
            ),
      );
    }
    for (const [key, each] of Object.entries(node)) if (key !== 'documents') visit(each, [...path, key]);
  };
  visit(profile, []);
  const idle = Object.keys(profile.documents).filter((key) => !used.has(key));
  return [...problems, ...idle.map((key) => fault(['documents', key], 'no figure cites this document'))];
}

function needsSource(node: Fields, path: Path): boolean {
  const [last, before] = [path.at(-1), path.at(-2)];
  if (isFigure(node)) return true;
  if (typeof last === 'number') return CITED_BLOCKS.has(textOf(before));
  return CITED_MAPPINGS.has(textOf(last)) && path.length === 1;
}

const complete = (cite: unknown, documents: unknown): boolean =>
  Array.isArray(cite) && cite.length === 2 && textOf(cite[1]).trim() !== '' && citation(cite, documents) !== undefined;
