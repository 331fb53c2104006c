/** The folders of own profiles that a project asks for: read inside its root and nowhere else, and no more than is sensible. */
import {
  closeSync,
  constants,
  fstatSync,
  lstatSync,
  opendirSync,
  openSync,
  readSync,
  realpathSync,
  statSync,
} from 'node:fs';
import { dirname, join, sep } from 'node:path';
import type { ProfileFile, ProfileFolder } from '../index.js';
import { reason } from './input.js';

/** What is read at most, of all folders of a project together. The catalogue itself has some 300 files of 3 kB. */
export const LIMITS = { entries: 2000, files: 400, depth: 5, file: 100_000, bytes: 2_000_000 };

/** What is left of the limits. */
interface Budget {
  entries: number;
  files: number;
  bytes: number;
}

/** Beyond what is read, or not to be read: why. */
class Refused extends Error {
  constructor(
    readonly says: string,
    readonly expected?: string,
  ) {
    super(says);
  }
}

/**
 * Reads folders, each inside the folder of the project file.
 *
 * @param file the project file as given on the command line; `-` is standard input, whose root is the working folder
 * @param names as the file states them; they lead further in
 */
export function readFolders(file: string, names: readonly string[]): readonly ProfileFolder[] {
  const root = file === '-' ? '.' : dirname(file);
  const budget: Budget = { entries: LIMITS.entries, files: LIMITS.files, bytes: LIMITS.bytes };
  return names.map((name) => {
    try {
      return { name, files: filesIn(insideOf(root, name), join(root, name), budget) };
    } catch (error) {
      return { name, files: [], problem: why(error) };
    }
  });
}

/** All profiles of a folder that whoever runs the command has named; undefined when it is no folder. */
export function readFolder(folder: string): readonly ProfileFile[] | { readonly problem: string } | undefined {
  try {
    if (!statSync(folder).isDirectory()) return undefined;
  } catch {
    return undefined;
  }
  try {
    const budget: Budget = { entries: LIMITS.entries, files: LIMITS.files, bytes: LIMITS.bytes };
    return filesIn(realpathSync(folder), folder, budget);
  } catch (error) {
    return { problem: why(error).says };
  }
}

function why(error: unknown): { readonly says: string; readonly expected?: string } {
  if (error instanceof Refused)
    return { says: error.says, ...(error.expected !== undefined && { expected: error.expected }) };
  const fault = error as NodeJS.ErrnoException;
  if (fault.code === undefined) throw error;
  return { says: fault.code === 'ENOENT' ? 'there is no such folder' : reason(fault) };
}

/** The folder without any symbolic link in it; one that a link leads out of the root is refused. */
function insideOf(root: string, name: string): string {
  const [whole, folder] = [realpathSync(root), realpathSync(join(root, name))];
  if (folder !== whole && !folder.startsWith(whole.endsWith(sep) ? whole : whole + sep))
    throw new Refused('a symbolic link leads this folder out of the project', 'folders lie inside the project');
  if (!lstatSync(folder).isDirectory()) throw new Refused('this is a file', 'name the folder that it is in');
  return folder;
}

/** All profiles below a folder, in the order of their names. @param shown the folder as messages name it */
function filesIn(folder: string, shown: string, budget: Budget, depth = 0): readonly ProfileFile[] {
  if (depth > LIMITS.depth) throw new Refused(`it has folders more than ${LIMITS.depth} deep in one another`);
  return namesIn(folder, budget).flatMap((name): readonly ProfileFile[] => {
    const [path, told] = [join(folder, name), join(shown, name)];
    const stat = lstatSync(path);
    if (stat.isSymbolicLink())
      throw new Refused(`${told} is a symbolic link, and none is followed`, 'a folder of profiles holds files');
    if (stat.isDirectory()) return filesIn(path, told, budget, depth + 1);
    if (!/\.ya?ml$/.test(name)) return [];
    if ((budget.files -= 1) < 0)
      throw new Refused(`more than ${LIMITS.files} profiles, and no more are read`, 'is this the right folder?');
    return [{ file: told, ...profileText(path, budget) }];
  });
}

/** The names in a folder, but for hidden ones: a huge folder is left before it is read to its end. */
function namesIn(folder: string, budget: Budget): readonly string[] {
  const names: string[] = [];
  const entries = opendirSync(folder);
  try {
    for (let entry = entries.readSync(); entry !== null; entry = entries.readSync()) {
      if ((budget.entries -= 1) < 0)
        throw new Refused(`more than ${LIMITS.entries} files, and no more are looked at`, 'is this the right folder?');
      if (!entry.name.startsWith('.')) names.push(entry.name);
    }
  } finally {
    entries.closeSync();
  }
  return names.sort();
}

/** The text of a profile, which is a plain file of a sensible size. */
function profileText(path: string, budget: Budget): { readonly text: Uint8Array } | { readonly problem: string } {
  let handle: number | undefined;
  try {
    // Whatever came in its place meanwhile: no link is followed, and no pipe waited for.
    handle = openSync(path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0));
    const stat = fstatSync(handle);
    if (!stat.isFile()) return { problem: 'this is no plain file' };
    if (stat.size > LIMITS.file)
      return { problem: `this has more than ${LIMITS.file / 1000} kB, and no more is read; a profile has some 3 kB` };
    if ((budget.bytes -= stat.size) < 0)
      throw new Refused(`more than ${LIMITS.bytes / 1e6} MB of profiles, and no more is read`);
    const buffer = new Uint8Array(stat.size);
    let length = 0;
    for (let more = 1; more > 0 && length < buffer.length; length += more)
      more = readSync(handle, buffer, length, buffer.length - length, null);
    return { text: buffer.subarray(0, length) };
  } catch (error) {
    if (error instanceof Refused) throw error;
    return { problem: reason(error as NodeJS.ErrnoException) };
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}
