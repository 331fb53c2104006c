/**
 * Citations as short as they can be found by. A document comes as one line: title, publisher, number, revision, year;
 * a number finds it alone, and without one the publisher and the revision help. The JSON report keeps all of it.
 */
import type { ReportCite } from './report.js';

const longestTitle = 44;
const longestPublisher = 10;

/** Where a figure comes from: 'ATmega48A/… data sheet 8271H, 29.1 Absolute Maximum Ratings, p. 300'. */
export function shortCite({ basis, document, where }: ReportCite): string {
  switch (basis) {
    case 'document':
      return withWhere(shortDocument(document), where, ', ');
    case 'project':
      return withWhere('this file', where, ', ');
    case 'practice':
      return withWhere('common practice', where, ': ');
    case 'memory':
      return withWhere('from memory', where, ': ');
  }
}

const withWhere = (source: string, where: string | undefined, joint: string): string =>
  where === undefined ? source : source + joint + where;

const isYear = (part: string): boolean => /^(19|20)\d\d$/.test(part);
const isNumber = (part: string): boolean => /\d/.test(part) && !/\s/.test(part) && !isYear(part);

/** A document without its year, and without its publisher where its number finds it. */
export function shortDocument(document: string): string {
  const [title = '', publisher, ...edition] = document.split(', ');
  if (publisher === undefined) return shortTitle(title);
  const number = edition.find(isNumber);
  if (number !== undefined) return shortTitle(title) + (title.includes(number) ? '' : ` ${number}`);
  const revision = edition.find((part) => part.startsWith('revision '));
  return [
    shortTitle(title),
    ...(revision === undefined && publisher.length <= longestPublisher ? [publisher] : []),
    ...(revision === undefined ? [] : [revision]),
  ].join(', ');
}

/** Of a row of variants the first, of a long title what fits, cut between words. */
function shortTitle(title: string): string {
  const one = title.replace(/([^\s/]{4,})(\/[^\s/]+){2,}/g, '$1/…');
  if (one.length <= longestTitle) return one;
  const words = one.slice(0, longestTitle).split(' ');
  return (words.length > 1 ? words.slice(0, -1) : words).join(' ') + ' …';
}

/**
 * A source of the working, 'horn.coil: Title, Publisher, Number, Coil data', where nothing tells the document from the
 * place in it but the documents that are cited elsewhere.
 */
export function shortSource(source: string, documents: ReadonlySet<string>): string {
  const [, part = '', cited = source] = /^([\w.-]+: )?(.*)$/su.exec(source) ?? [];
  const plain = cited
    .replace(/^common practice, no source(, )?/, (_, more) => `common practice${more ? ': ' : ''}`)
    .replace(/^from memory, not checked against a document(, )?/, (_, more) => `from memory${more ? ': ' : ''}`);
  if (plain !== cited) return part + plain;
  const document = [...documents].find((known) => cited.startsWith(known));
  if (document !== undefined) return part + shortDocument(document) + cited.slice(document.length);
  const [title = '', publisher, ...rest] = cited.split(', ');
  const told = [...(publisher !== undefined && publisher.length <= longestPublisher ? [publisher] : []), ...rest];
  return part + [shortTitle(title), ...told.filter((each) => !isYear(each) && !title.includes(each))].join(', ');
}
