/** The project files of a repository at two moments, in pairs. */
import { isAbsolute, relative, resolve, sep } from 'node:path';
import * as ampledger from '../index.js';
import type { Pairs } from './compare.js';
import type { Pair } from './compare-pair.js';
import { type Problem, repositoryRoot } from './git.js';
import { movedFiles } from './moved-files.js';
import { type Opened, readDocument, unreadable } from './open-document.js';
import { startsProject } from '../source/starts-project.js';
import { type Snapshot, snapshotAt, snapshotOfTree } from './snapshot.js';

/** More files than this are not looked into: whoever has them names those that matter. */
const MOST = 2000;

/** @param to absent for the working tree; `files` as given on the command line, none for all of the repository */
export async function revisions(
  from: string,
  to: string | undefined,
  files: readonly string[],
): Promise<Pairs | Problem> {
  const root = await repositoryRoot();
  if (typeof root !== 'string') return { problem: root.problem || 'This folder is in no git repository.' };
  const before = await snapshotAt(root, from);
  if ('problem' in before) return before;
  const after = to === undefined ? await snapshotOfTree(root) : await snapshotAt(root, to);
  if ('problem' in after) return after;
  const paths = files.length > 0 ? named(root, files, before, after) : everyYaml(before, after);
  if ('problem' in paths) return paths;
  const pairs: Texts[] = [];
  let unchanged = 0;
  for (const path of paths) {
    const [was, is] = [await sideOf(before, path), await sideOf(after, path)];
    const wanted = files.length > 0 || [was, is].some((side) => side?.isProject);
    if (!wanted) continue;
    if (was?.whole !== undefined && was.whole === is?.whole) unchanged += 1;
    else pairs.push({ file: path, was, is });
  }
  return { before: before.name, after: after.name, pairs: pairsOf(pairs), unchanged, areRevisions: true };
}

interface Texts {
  readonly file: string;
  readonly was: SideOfPair | undefined;
  readonly is: SideOfPair | undefined;
}

/** A file that was moved, and is much the same otherwise, is one file under two names. */
function pairsOf(texts: readonly Texts[]): readonly Pair[] {
  const gone = texts.flatMap(({ file, was, is }) =>
    was?.whole !== undefined && !is ? [{ file, text: was.whole }] : [],
  );
  const fresh = texts.flatMap(({ file, was, is }) =>
    is?.whole !== undefined && !was ? [{ file, text: is.whole }] : [],
  );
  const moved = movedFiles(gone, fresh);
  const olds = new Map(texts.map(({ file, was }) => [file, was]));
  const left = new Set(moved.values());
  return texts.flatMap(({ file, was, is }): Pair[] => {
    if (left.has(file) && !is) return [];
    const from = was ? undefined : moved.get(file);
    const before = from === undefined ? was : olds.get(from);
    return [{ file, ...(from !== undefined && { was: from }), before: before?.opened, after: is?.opened }];
  });
}

function everyYaml(before: Snapshot, after: Snapshot): readonly string[] | Problem {
  const paths = [...new Set([...before.paths, ...after.paths])].filter((path) => /\.ya?ml$/.test(path)).sort();
  if (paths.length <= MOST) return paths;
  return { problem: `There are ${paths.length} YAML files, and ${MOST} at most are looked into: name the projects.` };
}

function named(root: string, files: readonly string[], before: Snapshot, after: Snapshot): readonly string[] | Problem {
  const paths = files.map((file) => relative(root, resolve(file)).split(sep).join('/'));
  for (const [at, path] of paths.entries()) {
    if (path === '..' || path.startsWith('../') || isAbsolute(path))
      return { problem: `${files[at]} is not in this repository.` };
    if (!before.paths.has(path) && !after.paths.has(path))
      return { problem: `There is no file ${files[at]} in ${before.name} or in ${after.name}.` };
  }
  return [...new Set(paths)];
}

interface SideOfPair {
  readonly opened: Opened;
  readonly isProject: boolean;
  /** All that it is made of, its text and its profiles, where it could be read. */
  readonly whole?: string;
}

async function sideOf(snapshot: Snapshot, path: string): Promise<SideOfPair | undefined> {
  if (!snapshot.paths.has(path)) return undefined;
  const input = await snapshot.read(path);
  if ('problem' in input) return { opened: unreadable(path, input.problem), isProject: false };
  const text = new TextDecoder('latin1').decode(input.bytes);
  if (!startsProject(text))
    return { opened: unreadable(path, 'this is no project file'), isProject: false, whole: text };
  const read = readDocument(input.bytes, path);
  if ('unread' in read) return { opened: read, isProject: true, whole: text };
  const names = ampledger.foldersOf(read.document);
  const folders = names.length === 0 ? [] : await snapshot.folders(path, names);
  const profiles = JSON.stringify(folders, (_key, each: unknown) =>
    each instanceof Uint8Array ? new TextDecoder('latin1').decode(each) : each,
  );
  return {
    opened: { document: ampledger.withFolders(read.document, folders) },
    isProject: true,
    whole: names.length === 0 ? text : `${text}\0${profiles}`,
  };
}
