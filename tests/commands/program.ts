/** Runs the built command, as a user would. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const program = fileURLToPath(new URL('../../dist/ampledger.cjs', import.meta.url));

/** Fails with what to do about it: a missing build is no fault of a test. */
export function needsBuild(): void {
  if (!existsSync(program)) throw new Error('dist/ampledger.cjs is missing: run `npm run build` first');
}

export interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Surroundings {
  readonly input?: string | Uint8Array;
  readonly cwd?: string;
  readonly env?: { readonly [name: string]: string };
}

/** Runs `ampledger` with `words`; nothing here is a terminal. */
export function ampledger(words: readonly string[], { input = '', cwd, env = {} }: Surroundings = {}): Run {
  needsBuild();
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
    timeout: 60_000,
    ...(cwd !== undefined && { cwd }),
    env: { ...process.env, NO_COLOR: undefined, FORCE_COLOR: undefined, ...env },
  });
  return { status, out: stdout, err: stderr };
}

/** A folder with these files in it, and how to be rid of it. */
export function folder(files: { readonly [name: string]: string | Uint8Array }): {
  readonly path: string;
  remove(): void;
} {
  const path = mkdtempSync(join(tmpdir(), 'ampledger-'));
  for (const [name, content] of Object.entries(files)) {
    if (dirname(name) !== '.') throw new Error('no folders in folders here');
    writeFileSync(join(path, name), content);
  }
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
