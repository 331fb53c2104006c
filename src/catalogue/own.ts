/**
 * Own profiles, each a file: held to the same rigour as those of boards/, and laid over a catalogue. What is wrong is told at
 * its place in the profile's own file, all of it at once.
 */
import { checkProfile } from '../source/check-profile.js';
import type { Document } from '../source/document.js';
import { nearestSpelling } from '../source/nearest-spelling.js';
import type { Diagnostic, Path, Problem } from '../source/place.js';
import { readDocument } from '../source/read.js';
import { quote } from '../source/visible.js';
import type { Catalogue } from './catalogue.js';
import { takeOver } from './extends.js';
import type { ProfileFile } from './folders.js';
import { type Fields, field, isFields, PROFILE_KINDS, type Profile } from './profile.js';
import { sense } from './sense.js';
import { senseTwins } from './sense-twins.js';

/** A catalogue with own profiles on top, these, and what was wrong with them, file by file. */
export interface Own {
  readonly catalogue: Catalogue;
  readonly profiles: readonly { readonly file: string; readonly profile: Profile; readonly written: Fields }[];
  readonly errors: readonly Diagnostic[];
}

/** A profile's file, read. */
interface Written {
  readonly document: Document;
  readonly data: Fields;
  readonly id: string | undefined;
}

/**
 * Reads own profiles and lays them over a catalogue. They may extend its profiles and one another, but not take an id that
 * is there already: a figure of the catalogue is never changed in silence.
 *
 * @param files one profile each
 * @param twins whether each is held against the whole catalogue for another profile of the same thing
 */
export function withOwn(base: Catalogue, files: readonly ProfileFile[], { twins = false } = {}): Own {
  const errors: Diagnostic[] = [];
  const written: Written[] = [];
  for (const each of files) {
    if ('problem' in each) {
      errors.push({ file: each.file, line: 1, column: 1, width: 1, says: each.problem });
      continue;
    }
    const { document, errors: found } = readDocument(each.text, each.file, 'profile');
    errors.push(...found);
    if (document) written.push(writtenIn(document));
  }
  const raw = new Map<string, Fields>();
  for (const { id, data } of written) if (id !== undefined && !raw.has(id)) raw.set(id, data);
  const look = (id: string): Fields | undefined => raw.get(id) ?? base.profile(id);
  const known = [...base.ids(), ...raw.keys()];

  const complete = new Map<string, Profile>();
  const problems = new Map<Written, Problem[]>();
  const profiles: { file: string; profile: Profile; written: Fields }[] = [];
  for (const each of written) {
    const wrong = [...identity(each, written, base)];
    problems.set(each, wrong);
    if (field(each.data, 'ampledger') !== undefined) continue;
    const whole = completed(each, look, known);
    if ('problem' in whole) {
      wrong.push(whole.problem);
      continue;
    }
    wrong.push(...checkProfile(whole.fields));
    const { profile } = whole;
    if (profile === undefined) continue;
    profiles.push({ file: each.document.file, profile, written: each.data });
    if (each.id !== undefined && !complete.has(each.id)) complete.set(each.id, profile);
  }
  const catalogue: Catalogue = {
    profile: (id) => complete.get(id) ?? base.profile(id),
    ids: (kind) => [
      ...base.ids(kind),
      ...[...complete.values()].filter((each) => kind === undefined || each.kind === kind).map(({ id }) => id),
    ],
  };
  const all = twins ? catalogue.ids().flatMap((id) => catalogue.profile(id) ?? []) : [];
  for (const each of written) {
    const own = profiles.find(({ written: data }) => data === each.data);
    if (!own) continue;
    const said = problems.get(each)!;
    const makesNoSense = [...sense(own.profile, catalogue.profile), ...(twins ? senseTwins(own.profile, all) : [])];
    said.push(...makesNoSense.filter((problem) => isNews(problem, said) && !isInherited(problem, each.data)));
  }
  for (const [{ document }, wrong] of problems) errors.push(...wrong.map((problem) => document.diagnostic(problem)));
  return { catalogue, profiles, errors: inFileOrder(errors, files) };
}

function writtenIn(document: Document): Written {
  const data = document.data as Fields;
  const id = field(data, 'id');
  return { document, data, id: typeof id === 'string' ? id : undefined };
}

/** The file bears the name of what it describes, and no name comes twice. */
function identity({ document, data, id }: Written, all: readonly Written[], base: Catalogue): readonly Problem[] {
  if (field(data, 'ampledger') !== undefined)
    return [
      {
        path: ['ampledger'],
        on: 'key',
        says: 'this is a project file, where a profile is wanted',
        expected: 'keep profiles in a folder of their own',
      },
    ];
  if (id === undefined) return []; // the schema says so
  const path: Path = ['id'];
  const name = /([^/\\]*?)\.ya?ml$/.exec(document.file)?.[1];
  const first = all.find((other) => other.id === id);
  if (base.profile(id))
    return [
      {
        path,
        on: 'value',
        says: `the catalogue has a profile ${quote(id)} already`,
        expected: `an id of its own; \`extends: ${id}\` takes the rest over`,
      },
    ];
  if (first && first.document !== document)
    return [{ path, on: 'value', says: `this is the id of ${first.document.file} too` }];
  return name === undefined || name === id
    ? []
    : [{ path, on: 'value', says: 'the id is not the name of the file', expected: quote(name) }];
}

/** The profile with all that it extends; only as its fields when what it is cannot be told. */
function completed(
  { data, id }: Written,
  look: (id: string) => Fields | undefined,
  known: readonly string[],
): { readonly fields: Fields; readonly profile?: Profile } | { readonly problem: Problem } {
  const extended = field(data, 'extends');
  const at = { path: ['extends'], on: 'value' } as const;
  let fields = data;
  if (typeof extended === 'string') {
    const own = id ?? '';
    const resolved = takeOver(own, (each) => (each === own ? data : look(each)));
    if ('cycle' in resolved)
      return { problem: { ...at, says: `these extend each other: ${resolved.cycle.join(', ')}` } };
    if ('deeperThan' in resolved)
      return { problem: { ...at, says: `extends more than ${resolved.deeperThan} others, one after another` } };
    if ('missing' in resolved) {
      const nearest = nearestSpelling(resolved.missing, known);
      const advice = nearest === undefined ? {} : { expected: `did you mean ${quote(nearest)}?` };
      return { problem: { ...at, says: `there is no profile ${quote(resolved.missing)}`, ...advice } };
    }
    fields = resolved.fields;
  }
  const { title, kind, documents } = fields;
  const whole = typeof title === 'string' && PROFILE_KINDS.some((each) => each === kind) && isFields(documents);
  return whole && id !== undefined ? { fields, profile: fields as Profile } : { fields };
}

const begins = (path: Path, beginning: Path): boolean =>
  beginning.length <= path.length && beginning.every((step, k) => String(step) === String(path[k]));

/** Not about a place of which the schema has said something already. */
const isNews = ({ path }: Problem, said: readonly Problem[]): boolean =>
  !said.some((other) => other.path.length > 0 && (begins(path, other.path) || begins(other.path, path)));

/** A document that only what it replaced has cited is no slip of a profile that extends another. */
const isInherited = ({ path }: Problem, data: Fields): boolean =>
  path[0] === 'documents' && path.length === 2 && field(field(data, 'documents'), String(path[1])) === undefined;

/** As the files were given, and in each from top to bottom. */
function inFileOrder(errors: readonly Diagnostic[], files: readonly ProfileFile[]): readonly Diagnostic[] {
  const rank = new Map(files.map(({ file }, i) => [file, i]));
  return errors.toSorted(
    (a, b) => (rank.get(a.file) ?? 0) - (rank.get(b.file) ?? 0) || a.line - b.line || a.column - b.column,
  );
}
