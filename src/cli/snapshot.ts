/** All files of a repository at one moment: at a commit, or as they lie in the working tree. */
import { lstatSync } from 'node:fs';
import { join, posix, sep } from 'node:path';
import type { ProfileFile, ProfileFolder } from '../index.js';
import { largestFile } from '../source/intake.js';
import { bytesAt, commitOf, filesAt, filesInTree, type GitFile, type Problem } from './git.js';
import { type Input, readInput } from './input.js';
import { LIMITS, readFolders } from './read-folders.js';

export interface Snapshot {
  readonly name: string;
  /** Plain files by path from the root. */
  readonly paths: ReadonlySet<string>;
  readonly read: (path: string) => Promise<Input>;
  /** The folders of own profiles that the project file at `path` asks for. */
  readonly folders: (path: string, names: readonly string[]) => Promise<readonly ProfileFolder[]>;
}

export async function snapshotAt(root: string, revision: string): Promise<Snapshot | Problem> {
  const found = await commitOf(root, revision);
  if ('problem' in found) return found;
  const files = await filesAt(root, found.commit);
  if ('problem' in files) return files;
  const read = (path: string, most: number): Promise<Input> => bytesAt(root, found.commit, path, most);
  return {
    // A whole hash says no more than its beginning, as git itself prints it.
    name: /^[0-9a-f]{40,}$/.test(revision) ? revision.slice(0, 12) : revision,
    paths: new Set([...files].flatMap(([path, { plain }]) => (plain ? [path] : []))),
    read: async (path) =>
      (files.get(path)?.bytes ?? 0) > largestFile
        ? { problem: `this is more than ${largestFile / 1e6} MB, and no more is read; a large project has some 20 kB` }
        : read(path, largestFile),
    folders: (path, names) => foldersAt(files, read, path, names),
  };
}

export async function snapshotOfTree(root: string): Promise<Snapshot | Problem> {
  const listed = await filesInTree(root);
  if ('problem' in listed) return listed;
  const isPlain = (path: string): boolean => lstatSync(join(root, path), { throwIfNoEntry: false })?.isFile() === true;
  return {
    name: 'working tree',
    paths: new Set(listed.filter(isPlain)),
    read: async (path) => readInput(join(root, path), largestFile),
    folders: async (path, names) =>
      readFolders(join(root, path), names).map((folder) => ({
        ...folder,
        files: folder.files.map((file) => ({ ...file, file: fromRoot(root, file.file) })),
      })),
  };
}

const fromRoot = (root: string, file: string): string =>
  (file.startsWith(root) ? file.slice(root.length).replace(/^[/\\]/, '') : file).replaceAll(sep, '/');

/** Folders as a commit has them, within the limits that hold for the working tree. */
async function foldersAt(
  files: ReadonlyMap<string, GitFile>,
  read: (path: string, most: number) => Promise<Input>,
  path: string,
  names: readonly string[],
): Promise<readonly ProfileFolder[]> {
  const folders: ProfileFolder[] = [];
  let { files: left, bytes } = LIMITS;
  for (const name of names) {
    const folder = posix.join(posix.dirname(path), name, '/').replace(/^\.\//, '');
    const inside = [...files].filter(
      ([each]) => each.startsWith(folder) && !/(?:^|\/)\./.test(each.slice(folder.length)),
    );
    const profiles = inside.filter(([each]) => /\.ya?ml$/.test(each));
    left -= profiles.length;
    bytes -= profiles.reduce((sum, [, file]) => sum + file.bytes, 0);
    const says =
      inside.length === 0
        ? 'there is no such folder'
        : left < 0 || bytes < 0
          ? `more than ${LIMITS.files} profiles or ${LIMITS.bytes / 1e6} MB of them, and no more are read`
          : inside.some(([, { plain }]) => !plain)
            ? 'something in it is a symbolic link or another repository, and none is followed'
            : undefined;
    if (says !== undefined) {
      folders.push({ name, files: [], problem: { says } });
      continue;
    }
    const found: ProfileFile[] = [];
    for (const [file, { bytes: size }] of profiles.sort(([a], [b]) => (a < b ? -1 : 1))) {
      const input =
        size > LIMITS.file
          ? { problem: `this has more than ${LIMITS.file / 1000} kB, and no more is read; a profile has some 3 kB` }
          : await read(file, LIMITS.file);
      found.push('problem' in input ? { file, problem: input.problem } : { file, text: input.bytes });
    }
    folders.push({ name, files: found });
  }
  return folders;
}
