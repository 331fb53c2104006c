/** What is in the catalogue: all of it by kind, or one profile figure by figure with its sources. */
import { isFields, type Profile, PROFILE_KINDS } from '../catalogue/profile.js';
import { heading, item, list, mark, paragraph, table, type Text, type Tree } from './tree.js';

/** Every profile by kind. */
export function catalogueTree(profiles: readonly Pick<Profile, 'id' | 'title' | 'kind'>[]): Tree {
  const kinds = PROFILE_KINDS.filter((kind) => profiles.some((each) => each.kind === kind));
  return kinds.map((kind) => [
    paragraph(mark('strong', kind)),
    list(profiles.filter((each) => each.kind === kind).map(({ id, title }) => item(id, title))),
  ]);
}

/** What a profile says in the first line, so not again among its figures. */
const said = new Set(['id', 'title', 'kind', 'documents', 'note']);

type Row = readonly Text[];

/** One profile: each figure with what it holds at and where it is from, then the documents. */
export function profileTree(profile: Profile): Tree {
  const facts = Object.entries(profile).filter(([key]) => !said.has(key));
  const documents = Object.entries(profile.documents);
  return [
    [heading(mark('strong', profile.title), mark('quiet', `${profile.kind} ${profile.id}`))],
    [
      table(
        [
          { title: 'figure', align: 'left' },
          { title: 'value', align: 'left' },
          { title: 'from', align: 'left' },
        ],
        facts.flatMap(([key, value]) => rows(key, value)),
      ),
    ],
    documents.length === 0
      ? []
      : [list(documents.map(([key, about]) => item(mark('quiet', key), Object.values(about).map(String).join(', '))))],
  ].filter((blocks) => blocks.length > 0);
}

const plain = (value: unknown): string =>
  isFields(value)
    ? Object.entries(value)
        .map(([key, each]) => `${key} ${plain(each)}`)
        .join(', ')
    : Array.isArray(value)
      ? value.map(plain).join(', ')
      : String(value);

/**
 * A figure is one row with all that it says, whatever has a source of its own another. What has no source is one row of
 * plain facts, and rows for the things inside it.
 */
function rows(name: string, value: unknown): readonly Row[] {
  if (isList(value)) return value.flatMap((each) => rows(name, each));
  if (!isFields(value)) return [[name, plain(value), '']];
  const { cite, value: stated, note, ...rest } = value;
  const apart = cite === undefined && stated === undefined ? isStructure : isCited;
  const nested = Object.entries(rest).filter(([, each]) => apart(each));
  const own = Object.entries(rest).filter(([, each]) => !apart(each));
  const words = [
    ...(stated === undefined ? [] : [plain(stated)]),
    ...own.map(([key, each]) => `${key} ${plain(each)}`),
  ].join(', ');
  const aside = note === undefined ? '' : ` (${plain(note)})`;
  return [
    ...(words + aside === '' ? [] : [[name, words + aside, mark('quiet', plain(cite ?? ''))]]),
    ...nested.flatMap(([key, each]) => rows(`${name} ${key}`, each)),
  ];
}

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value) && value.some(isFields);

const isStructure = (value: unknown): boolean => isFields(value) || isList(value);

/** A figure in its own right inside a cited block: it has its own source. */
const isCited = (value: unknown): boolean =>
  (isFields(value) && 'cite' in value) || (Array.isArray(value) && value.some(isCited));
