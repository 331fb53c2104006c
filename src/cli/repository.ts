/** Where in a repository a folder lies: what shows findings beside lines names files from its root. */
import { existsSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';

/** `folder` from the root of the git repository that it is in, with slashes; '' for the root, and where there is none. */
export function folderInRepository(folder: string): string {
  for (let root = folder; ; root = dirname(root)) {
    // In a worktree or a submodule `.git` is a file.
    if (existsSync(join(root, '.git'))) return relative(root, folder).split(sep).join('/');
    if (root === dirname(root)) return '';
  }
}
