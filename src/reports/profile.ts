/** One profile with everything it states: figures, what they hold at, grade, note, and the source of each written out. */
import { documentText } from '../catalogue/citation.js';
import { headline } from '../catalogue/headline.js';
import type { Fields, Profile } from '../catalogue/profile.js';
import { type Row, rowsOfProfile } from '../catalogue/rows.js';
import { countWords, sourceCounts } from '../catalogue/sources.js';
import { heading, item, list, mark, type Mark, paragraph, table, type Text, type Tree } from './tree.js';

/** What a grade means, for people. */
const GRADES: Readonly<Record<string, string>> = {
  absolute: 'damage limit',
  operating: 'working limit',
  characterised: 'as tested',
  practice: 'common practice',
};

/** @param written the profile as written, then those that it extends, the nearest first */
export function profileTree(profile: Profile, written: readonly Fields[]): Tree {
  const rows = rowsOfProfile(profile, written);
  const sources = Object.entries(profile.documents);
  const number = new Map(sources.map(([, document], i) => [documentText(document), i + 1]));
  const chain = written.map(({ id }) => String(id));
  const letters = chain.length > 1 ? new Map(chain.map((id, i) => [id, String.fromCharCode(65 + i)])) : undefined;
  const blocks = [undefined, ...new Set(rows.flatMap(({ block }) => block ?? []))];
  const { note } = profile;
  return [
    [
      heading(
        mark('strong', profile.title),
        mark('quiet', [profile.kind, profile.type ?? '', profile.id].filter((each) => each !== '').join(' ')),
      ),
      ...(headline(profile) === '' ? [] : [paragraph(headline(profile))]),
      paragraph(mark('quiet', `${countWords(sourceCounts(profile))}.`)),
      ...(typeof note === 'string' ? [paragraph(note)] : []),
    ],
    ...blocks.flatMap((block) => {
      const of = rows.filter((row) => row.block === block);
      if (of.length === 0) return [];
      const title = block === undefined ? [] : [paragraph(mark('strong', block))];
      return [[...title, figures(of, number, letters)]];
    }),
    ...(sources.length === 0
      ? []
      : [
          [
            paragraph(mark('strong', 'Documents')),
            list(sources.map(([, document], i) => item(mark('quiet', `[${i + 1}]`), documentText(document)))),
          ],
        ]),
    ...(letters === undefined
      ? []
      : [
          [
            paragraph(mark('strong', 'Stated by')),
            list(
              chain.map((id, i) =>
                item(
                  mark('quiet', letters.get(id)!),
                  i === 0 ? `${id}, this profile` : `${id}, which ${chain[i - 1]} extends`,
                ),
              ),
            ),
          ],
        ]),
  ];
}

function figures(
  rows: readonly Row[],
  number: ReadonlyMap<string, number>,
  letters: ReadonlyMap<string, string> | undefined,
) {
  return table(
    [
      { title: 'figure', align: 'left' },
      { title: 'value', align: 'left' },
      ...(letters ? [{ title: 'by', align: 'left' } as const] : []),
      { title: 'source', align: 'left' },
    ],
    rows.map((row, i): readonly Text[] => [
      // Points of one figure have its name once.
      row.name === rows[i - 1]?.name && row.grade === undefined ? '' : row.name,
      valueText(row),
      ...(letters ? [mark('quiet', letters.get(row.from) ?? '')] : []),
      sourceText(row, number),
    ]),
  );
}

function valueText({ value, conditions, grade, note }: Row): Text {
  const words = [value, ...(conditions.length === 0 ? [] : [conditions.join(', ')])].filter((each) => each !== '');
  const graded = grade === undefined ? '' : `, ${GRADES[grade] ?? grade}`;
  return [
    words.join(value !== '' && conditions[0]?.startsWith('at ') ? ' ' : ', ') + graded,
    ...(note === undefined ? [] : [mark('quiet', ` (${note})`)]),
  ];
}

/** A document by its number in the list below; what is no document says so. */
function sourceText({ cite }: Row, number: ReadonlyMap<string, number>): Text {
  if (cite === undefined) return '';
  const where = cite.where ?? '';
  const marked = (role: Mark['role'], words: string): Text => [
    { text: words, ...(role && { role }) },
    mark('quiet', `: ${where}`),
  ];
  switch (cite.basis) {
    case 'practice':
      return marked('note', 'common practice');
    case 'memory':
      return marked('unproven', 'from memory');
    case 'document':
      return mark('quiet', `[${number.get(cite.document)}] ${where}`);
    default:
      return cite.basis satisfies never;
  }
}

/** The same for programs: sources written out beside each figure. */
export function profileJson(profile: Profile, written: readonly Fields[]): object {
  const { id, title, kind, type, note, documents } = profile;
  return {
    ampledger: 1,
    id,
    title,
    kind,
    ...(type !== undefined && { type }),
    ...(typeof note === 'string' && { note }),
    headline: headline(profile),
    extends: written.slice(1).map((each) => String(each['id'])),
    sources: sourceCounts(profile),
    rows: rowsOfProfile(profile, written).map(({ path, block, cite, ...row }) => ({
      path: path.join('.'),
      ...(block !== undefined && { block }),
      ...row,
      ...(cite && { source: cite }),
    })),
    documents: Object.entries(documents).map(([key, document]) => ({ key, ...document })),
  };
}
