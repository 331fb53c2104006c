import { field, isFields, type SourceDocument } from './profile.js';

/** Where a figure is from, in words. */
export interface Citation {
  /** 'ATmega48A/PA/88A/PA/168A/PA/328/P data sheet, Atmel, 8271H, 2014' */
  readonly document: string;
  /** Table, page or clause; for practice and memory, what it goes by. */
  readonly where?: string;
  readonly basis: 'document' | 'practice' | 'memory';
}

/** A revision that is a mark (`E12`, `2.3`), and not a description of the edition, is announced as one. */
const isMark = (revision: string): boolean => /^[\w.-]{1,10}$/.test(revision);

/** A document in one line: title, publisher, number, revision, year. */
export function documentText({ title, publisher, number, revision, year }: SourceDocument): string {
  const edition = revision === undefined ? [] : [isMark(String(revision)) ? `revision ${revision}` : String(revision)];
  const parts = [title, publisher, ...(number === undefined ? [] : [String(number)]), ...edition];
  return [...parts, ...(year === undefined ? [] : [String(year)])].join(', ');
}

/**
 * The source behind a `cite: [key, where]`; undefined when there is none or its document is not listed.
 *
 * @param cite as the profile states it
 * @param documents the profile's documents
 */
export function citation(cite: unknown, documents: unknown): Citation | undefined {
  if (!Array.isArray(cite) || typeof cite[0] !== 'string') return undefined;
  const [, place] = cite as readonly unknown[];
  const where = typeof place === 'string' || typeof place === 'number' ? { where: String(place) } : {};
  if (cite[0] === 'practice') return { document: 'common practice, no source', ...where, basis: 'practice' };
  if (cite[0] === 'memory')
    return { document: 'from memory, not checked against a document', ...where, basis: 'memory' };
  const document = field(documents, cite[0]);
  return isDocument(document) ? { document: documentText(document), ...where, basis: 'document' } : undefined;
}

/** All that it states of itself can be written out. */
const isDocument = (document: unknown): document is SourceDocument =>
  isFields(document) &&
  Object.values(document).every((each) => ['string', 'number', 'boolean'].includes(typeof each)) &&
  typeof document['title'] === 'string' &&
  typeof document['publisher'] === 'string';
