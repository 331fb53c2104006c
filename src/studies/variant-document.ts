/** A project file with one of its variants applied: the same text, other data, and what the variant sets stands where it says so. */
import { isMapping } from '../loads/figures.js';
import { withChanges } from '../remedies/change.js';
import type { Document } from '../source/document.js';
import type { Path, Problem } from '../source/place.js';
import { quote } from '../source/visible.js';
import type { Variant } from './variant-changes.js';

/** The data with a variant's changes, and without the variants, which are about the file as it stands. */
export function variantData(data: unknown, { changes }: Pick<Variant, 'changes'>): unknown {
  const { variants: _, ...rest } = isMapping(data) ? data : {};
  return withChanges(rest, changes);
}

/** The document of a variant: places of what it sets are in the variant, all others where they were. */
export function variantDocument(document: Document, variant: Variant): Document {
  const moved = (path: Path): Path => {
    const change = variant.changes.find((c) => begins(path, c.path));
    return change ? [...change.at, ...path.slice(change.path.length)] : path;
  };
  return {
    ...document,
    data: variantData(document.data, variant),
    place: (path, on) => document.place(moved(path), on),
    span: (path, on) => document.span(moved(path), on),
    source: (path) => document.source(moved(path)),
    diagnostic: (problem) => document.diagnostic(inVariant(problem, variant)),
  };
}

/** An error that only the variant has, at the change that makes it, or else at the variant's name. */
export function inVariant(problem: Problem, variant: Variant): Problem {
  const { path } = problem;
  const named = `in the variant ${quote(variant.name)}`;
  const set = variant.changes.find((c) => begins(path, c.path));
  if (set) return { ...problem, path: [...set.at, ...path.slice(set.path.length)], says: `${named}: ${problem.says}` };
  // A key that stands where none may, or an entry that lacks what was taken out of it.
  const under = variant.changes.find((c) => begins(c.path, path));
  if (under) return { ...problem, path: under.at, on: 'key', says: `${named}: ${problem.says}` };
  const where = quote(path.join('.'));
  return { ...problem, path: variant.path, on: 'key', says: `${named}, at ${where}: ${problem.says}` };
}

const begins = (path: Path, beginning: Path): boolean =>
  beginning.length <= path.length && beginning.every((step, k) => String(step) === String(path[k]));
