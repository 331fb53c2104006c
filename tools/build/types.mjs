/** Writes the declarations of the library to dist/types. Types are checked elsewhere: `tsc --noEmit`. */
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { existsSync, rmSync } from 'node:fs';
import { inRoot } from './files.mjs';

export async function declarations() {
  if (!existsSync(inRoot('src/index.ts'))) return 'src/index.ts is not there yet, so they are left out';
  rmSync(inRoot('dist/types'), { recursive: true, force: true });
  // By its path: another compiler may own the name `tsc`.
  const tsc = inRoot('node_modules/typescript/bin/tsc');
  try {
    await promisify(execFile)(process.execPath, [tsc, '-p', inRoot('tools/build/tsconfig.json')], { cwd: inRoot() });
  } catch (error) {
    throw Object.assign(new Error('the declarations have errors'), { report: error.stdout || error.message });
  }
  return 'dist/types';
}
