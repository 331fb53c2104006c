/** What a watch looks at: the files of an audit, wherever new ones may come, and the folders of own profiles. */
import { dirname, resolve, sep } from 'node:path';
import type { Found } from './find-projects.js';

export interface Places {
  readonly files: ReadonlySet<string>;
  /** Folders of which all is looked at that is below them. */
  readonly deep: readonly string[];
  /** These, and the folders of single files. */
  readonly roots: ReadonlySet<string>;
}

/** @param profiles folders of own profiles */
export function placesOf({ files, folders }: Found, profiles: readonly string[]): Places {
  const whole = files.map((file) => resolve(file));
  const deep = [...new Set([...folders, ...profiles].map((folder) => resolve(folder)))];
  return { files: new Set(whole), deep, roots: new Set([...whole.map((file) => dirname(file)), ...deep]) };
}

/** Whether a path is looked at. Of a folder with a single file in it nothing else is: it may be a large one. */
export function wants(places: Places, path: string, stats: { isDirectory(): boolean } | undefined): boolean {
  const whole = resolve(path);
  if (places.roots.has(whole) || places.files.has(whole)) return true;
  const isDeep = places.deep.some((folder) => whole.startsWith(folder.endsWith(sep) ? folder : folder + sep));
  if (!isDeep || /[/\\](?:node_modules|\.git)(?:[/\\]|$)/.test(whole)) return false;
  return stats === undefined || stats.isDirectory() || /\.ya?ml$/.test(whole);
}
