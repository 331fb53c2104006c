/** What a command line's names stand for: files as they are named, folders and patterns for the projects below them. */
import { closeSync, type Dirent, openSync, readdir, readSync, type Stats, statSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { startsProject } from '../source/starts-project.js';

/** How a report tells its files: the one, each in full, or a line for each. */
export type Shown = 'one' | 'several' | 'fleet';

export interface Found {
  /** In the order of the command line, those of a pattern or folder by name, each but once. */
  readonly files: readonly string[];
  readonly shown: Shown;
  /** Folders that were looked into, for whoever waits for new files in them. */
  readonly folders: readonly string[];
}

/** More files than this that were named one by one are told a line each, as those of a pattern are. */
const FEW = 8;

/** Bytes of a file that are looked at to see whether it is a project. */
const HEAD = 1 << 16;

const YAML = '**/*.{yaml,yml}';
const PASSED_OVER = ['**/node_modules/**', '**/.git/**'];

/** @param names files, folders, patterns, and any of these after a `!` for what is left out */
export async function findProjects(names: readonly string[]): Promise<Found | { readonly problem: string }> {
  const leavesOut = (name: string): boolean => name.startsWith('!') && statOf(name) === undefined;
  const wanted = names.filter((name) => !leavesOut(name));
  if (wanted.length === 0) return { problem: `${names.join(' ')} leaves files out, and nothing says of which.` };
  const without = new Set<string>();
  for (const name of names.filter(leavesOut)) {
    const search = await searchFor(name.slice(1));
    for (const file of search ? await below(search) : [name.slice(1)]) without.add(resolve(file));
  }
  const files: string[] = [];
  const folders: string[] = [];
  for (const name of wanted) {
    const search = await searchFor(name);
    if (search === undefined) {
      files.push(name);
      continue;
    }
    const matching = (await below(search)).filter((file) => !without.has(resolve(file)));
    const projects = matching.filter(isProject);
    if (projects.length === 0) return { problem: nothing(search, matching.length) };
    const known = new Set(files);
    files.push(...projects.filter((file) => !known.has(file)));
    folders.push(search.folder);
  }
  const shown = folders.length > 0 || files.length > FEW ? 'fleet' : files.length === 1 ? 'one' : 'several';
  return { files, shown, folders };
}

interface Search {
  /** As it was named. */
  readonly name: string;
  /** Where the search begins, and what is looked for from there. */
  readonly folder: string;
  readonly pattern: string;
  readonly isFolder: boolean;
}

/** What is to be searched for; nothing for a file, be it there or not. */
async function searchFor(name: string): Promise<Search | undefined> {
  if (name === '-') return undefined;
  const stat = statOf(name);
  if (stat) return stat.isDirectory() ? { name, folder: name, pattern: YAML, isFolder: true } : undefined;
  if (!/[*?[{(]/.test(name)) return undefined;
  const { isDynamicPattern } = await import('tinyglobby');
  if (!isDynamicPattern(name)) return undefined;
  const whole = sep === '\\' ? name.replaceAll('\\', '/') : name;
  // From where nothing is a pattern yet: names are matched below that folder, wherever it lies.
  const [, folder = '', pattern = whole] = /^([^*?[{(]*\/)?(.*)$/s.exec(whole) ?? [];
  return { name, folder: folder || '.', pattern, isFolder: false };
}

/**
 * The files that a search finds, by name. Links are not followed: neither into a circle nor out of the folder. A folder that
 * may not be read stands among them, for what may be in it.
 */
async function below({ folder, pattern }: Search): Promise<readonly string[]> {
  const { glob } = await import('tinyglobby');
  const closed: string[] = [];
  const found = await glob(pattern, {
    cwd: folder,
    expandDirectories: false,
    followSymbolicLinks: false,
    ignore: PASSED_OVER,
    fs: { readdir: reading(closed) },
  });
  const shut = closed.map((path) => relative(folder, path));
  return [...found, ...shut].map((file) => join(folder, unmasked(file))).sort();
}

function nothing({ name, isFolder }: Search, others: number): string {
  if (others === 0) return `${name}: ${isFolder ? 'there is no YAML file in this folder' : 'no file matches this'}.`;
  const where = isFolder ? 'in this folder' : 'that this matches';
  const files = others === 1 ? `the one file ${where} does not begin` : `none of the ${others} files ${where} begins`;
  return `${name}: ${files} with \`ampledger:\`, as projects do.`;
}

/**
 * Ends of lines in names, as others are written that no name can have: no pattern's `**` would match them, and a project must
 * not stay unseen for its name.
 */
const ENDS = ['\n', '\r', '\u2028', '\u2029'] as const;
const masked = (name: string): string => ENDS.reduce((text, end, at) => text.replaceAll(end, `\0${at}`), name);
const unmasked = (path: string): string => path.replace(/\0([0-3])/g, (_, at: string) => ENDS[Number(at)] ?? '');

/** Reads folders as Node does, but for ends of lines in names, and notes folders that may not be read. */
const reading = (closed: string[]) =>
  ((path: string, _: object, done: (error: NodeJS.ErrnoException | null, entries: readonly Dirent[]) => void) =>
    readdir(unmasked(path), { withFileTypes: true }, (error, entries = []) => {
      if (error && error.code !== 'ENOENT' && error.code !== 'ENOTDIR') closed.push(path);
      done(
        error,
        entries.map((entry) => Object.assign(entry, { name: masked(entry.name) })),
      );
    })) as typeof readdir;

/** Whether a file begins as a project does. What cannot be read may be one, folders included, and is told as such. */
function isProject(file: string): boolean {
  let handle: number | undefined;
  try {
    if (statSync(file).isDirectory()) return true;
    handle = openSync(file, 'r');
    const buffer = new Uint8Array(HEAD);
    return startsProject(new TextDecoder().decode(buffer.subarray(0, readSync(handle, buffer, 0, HEAD, 0))));
  } catch {
    return true;
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

/** What is there; of what cannot be looked at, reading it says why. */
function statOf(name: string): Stats | undefined {
  try {
    return statSync(name);
  } catch {
    return undefined;
  }
}
