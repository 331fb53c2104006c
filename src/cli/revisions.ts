/** The project files of a repository at two moments, in pairs. */
import { isAbsolute, relative, resolve, sep } from 'node:path';
import type { Pairs } from './compare.js';
import type { Pair } from './compare-pair.js';
import { type Problem, repositoryRoot } from './git.js';
import { movedFiles } from './moved-files.js';
import { type SideOfPair, sideOf } from './side-of-pair.js';
import { type Snapshot, snapshotAt, snapshotOfTree } from './snapshot.js';

/** More files than this are not looked into: whoever has them names those that matter. */
const MOST = 2000;

/** @param to absent for the working tree; `files` as given on the command line, none for all of the repository */
export async function revisions(
  from: string,
  to: string | undefined,
  files: readonly string[],
): Promise<Pairs | Problem> {
  const root = await repositoryRoot(to === undefined);
  if (typeof root !== 'string') return root;
  const before = await snapshotAt(root, from);
  if ('problem' in before) return before;
  const after = to === undefined ? await snapshotOfTree(root) : await snapshotAt(root, to);
  if ('problem' in after) return after;
  const asked = files.length > 0 ? named(root, files, before, after) : everyYaml(before, after);
  if ('problem' in asked) return asked;
  const pairs: Texts[] = [];
  let unchanged = 0;
  for (const { path, isMeant } of asked) {
    const [was, is] = [await sideOf(before, path), await sideOf(after, path)];
    if (!isMeant && !was?.isProject && !is?.isProject) continue;
    if (was?.isProject && was.whole !== undefined && was.whole === is?.whole) unchanged += 1;
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
    const old = from === undefined ? was : olds.get(from);
    // Until it was a project it was something else, and nothing of it is missed.
    const before = old && !old.isProject && old.whole !== undefined && is?.isProject ? undefined : old;
    return [{ file, ...(from !== undefined && { was: from }), before: before?.opened, after: is?.opened }];
  });
}

/** A file that is looked at. */
interface Asked {
  readonly path: string;
  /** By its name, whatever it holds; of others those are wanted that are projects. */
  readonly isMeant: boolean;
}

function everyYaml(before: Snapshot, after: Snapshot, folder = ''): readonly Asked[] | Problem {
  const paths = [...new Set([...before.paths, ...after.paths])]
    .filter((path) => path.startsWith(folder) && /\.ya?ml$/.test(path))
    .sort();
  if (paths.length <= MOST) return paths.map((path) => ({ path, isMeant: false }));
  return { problem: `There are ${paths.length} YAML files, and ${MOST} at most are looked into: name the projects.` };
}

function named(root: string, files: readonly string[], before: Snapshot, after: Snapshot): readonly Asked[] | Problem {
  const asked = new Map<string, Asked>();
  for (const file of files) {
    const path = relative(root, resolve(file)).split(sep).join('/');
    if (path === '..' || path.startsWith('../') || isAbsolute(path))
      return { problem: `${file} is not in this repository.` };
    const isFile = before.paths.has(path) || after.paths.has(path);
    const found = isFile ? [{ path, isMeant: true }] : everyYaml(before, after, path === '' ? '' : `${path}/`);
    if ('problem' in found) return found;
    if (found.length === 0)
      return {
        problem: `There is no file ${file} in ${before.name} or in ${after.name}, and no folder with YAML files.`,
      };
    for (const each of found) if (!asked.get(each.path)?.isMeant) asked.set(each.path, each);
  }
  return [...asked.values()];
}
