import { checkEntry, checkFrame, isEntryKind, type EntryKind } from '../../src/source/check.js';
import { byPlace } from '../../src/source/diagnostic.js';
import type { Diagnostic, Path, Problem } from '../../src/source/place.js';
import { readDocument } from '../../src/source/read.js';

type Fields = Readonly<Record<string, unknown>>;
const entries = (value: unknown): [string, Fields][] =>
  Object.entries((value ?? {}) as Fields).filter(
    (entry): entry is [string, Fields] => typeof entry[1] === 'object' && entry[1] !== null,
  );

const sections: readonly (readonly [string, EntryKind])[] = [
  ['supplies', 'supply'],
  ['controllers', 'controller'],
  ['expanders', 'expander'],
  ['arrays', 'array'],
];

/** All problems of a project whose entries say their types themselves, so that no catalogue is needed. */
export function checkData(data: Fields): Problem[] {
  const ofKind = (sort: string, entry: Fields): EntryKind => {
    const kind = `${sort}:${String(['array', 'stages'].find((key) => key in entry) ?? entry['type'])}`;
    return isEntryKind(kind) ? kind : sort === 'load' ? 'load' : 'driver:npn';
  };
  const of = (kind: EntryKind, entry: Fields, path: Path) => checkEntry(kind, entry, path);
  const loads = entries(data['loads']).flatMap(([name, load]) => [
    ...of(ofKind('load', load), load, ['loads', name]),
    ...entries({ driver: load['driver'] }).flatMap(([, driver]) =>
      of(ofKind('driver', driver), driver, ['loads', name, 'driver']),
    ),
    ...entries({ clamp: load['clamp'] }).flatMap(([, clamp]) => of('clamp', clamp, ['loads', name, 'clamp'])),
  ]);
  const rest = sections.flatMap(([section, kind]) =>
    entries(data[section]).flatMap(([name, entry]) => of(kind, entry, [section, name])),
  );
  const parts = entries(data['parts']).flatMap(([name, part]) => {
    const kind =
      ['load', 'driver'].map((sort) => `part:${sort}:${String(part['type'])}`).find(isEntryKind) ??
      `part:${String(part['kind'])}`;
    return isEntryKind(kind) ? of(kind, part, ['parts', name]) : [];
  });
  return [...checkFrame(data), ...loads, ...rest, ...parts];
}

/** The same for a text, with places; the two lines that every project begins with are put before it, on one line. */
export function checkText(body: string): Diagnostic[] {
  const { document, errors } = readDocument(`{ampledger: 1, title: x,${body}}`, 'x.yaml');
  if (!document) throw new Error(errors.map(({ says }) => says).join('; '));
  const problems = checkData(document.data as Fields).map((problem) => document.diagnostic(problem));
  return [...errors, ...problems].sort(byPlace);
}
