/** Paths of the repository, and writing a file only when its text changes (so that watchers and caches stay quiet). */
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));
export const inRoot = (...parts) => join(root, ...parts);

export function writeIfChanged(path, text) {
  const full = inRoot(path);
  try {
    if (readFileSync(full, 'utf8') === text) return false;
  } catch {
    mkdirSync(dirname(full), { recursive: true });
  }
  writeFileSync(full, text);
  return true;
}

/** All files below `folder` whose names end in `ending`, as paths from the root with forward slashes, sorted. */
export function filesBelow(folder, ending) {
  return readdirSync(inRoot(folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}
