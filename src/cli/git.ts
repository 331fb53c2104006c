/** What git is asked: a few questions, each as a list of words without a shell, with bounded output. Nothing is written. */
import { execFile } from 'node:child_process';
import { neutral } from '../reports/neutral.js';

export interface Problem {
  readonly problem: string;
}

/** A file of a commit. */
export interface GitFile {
  /** Of a plain file; links and other repositories are neither read nor followed. */
  readonly plain: boolean;
  readonly blob: string;
  readonly bytes: number;
}

/** Bytes of a list of files: some 300 000 of them. */
const LONGEST_LIST = 1 << 25;
/** Milliseconds. */
const LONGEST_WAIT = 60_000;

/** Where the repository of the working folder begins: of one without a working tree, where its data are. */
export async function repositoryRoot(hasTree: boolean): Promise<string | Problem> {
  const asked = await git(process.cwd(), ['rev-parse', '--is-bare-repository'], 1 << 16);
  if ('problem' in asked)
    return { problem: IS_NONE.test(asked.problem) ? 'This folder is in no git repository.' : asked.problem };
  const isBare = asked.output.toString('utf8').trim() === 'true';
  if (isBare && hasTree)
    return { problem: 'This repository has no working tree: name the other revision as well, with --to REV.' };
  const said = await git(process.cwd(), ['rev-parse', isBare ? '--absolute-git-dir' : '--show-toplevel'], 1 << 16);
  return 'problem' in said ? said : said.output.toString('utf8').replace(/\r?\n$/, '');
}

const IS_NONE = /not a git repository/;

/** The commit that a revision names. */
export async function commitOf(root: string, revision: string): Promise<{ readonly commit: string } | Problem> {
  const named = `\`${neutral(revision).replaceAll('`', "'").slice(0, 80)}\``;
  if (revision.startsWith('-')) return { problem: `${named} is no revision: none begins with a hyphen.` };
  const said = await git(root, ['rev-parse', '--verify', '--quiet', `${revision}^{commit}`], 1 << 16);
  const commit = 'problem' in said ? '' : said.output.toString('utf8').trim();
  if ('problem' in said && said.problem !== '') return said;
  if (/^[0-9a-f]{40,64}$/.test(commit)) return { commit };
  const shallow = await git(root, ['rev-parse', '--is-shallow-repository'], 1 << 16);
  const why =
    'output' in shallow && shallow.output.toString('utf8').trim() === 'true'
      ? ' It was cloned without its history: `git fetch --unshallow` brings that.'
      : /\.\.|:/.test(revision)
        ? ' A revision is one branch, tag or commit.'
        : '';
  return { problem: `There is no revision ${named} in this repository.${why}` };
}

/** All files of a commit by their path from the root. */
export async function filesAt(root: string, commit: string): Promise<ReadonlyMap<string, GitFile> | Problem> {
  const said = await git(root, ['ls-tree', '-r', '-z', '-l', '--full-tree', commit, '--'], LONGEST_LIST);
  if ('problem' in said) return { problem: said.problem || 'git does not list the files of that revision.' };
  return new Map(
    said.output
      .toString('utf8')
      .split('\0')
      .flatMap((line): [string, GitFile][] => {
        const [, mode = '', type, blob = '', size = '', path] = LISTED.exec(line) ?? [];
        if (path === undefined) return [];
        return [[path, { plain: type === 'blob' && mode.startsWith('100'), blob, bytes: Number(size) || 0 }]];
      }),
  );
}

const LISTED = /^(\d+) (\S+) ([0-9a-f]+) +(\S+)\t([^]+)$/;

/** Paths from the root of what is in the working tree and not ignored. */
export async function filesInTree(root: string): Promise<readonly string[] | Problem> {
  const words = ['ls-files', '-z', '--cached', '--others', '--exclude-standard', '--'];
  const said = await git(root, words, LONGEST_LIST);
  if ('problem' in said) return { problem: said.problem || 'git does not list the files of the working tree.' };
  return [...new Set(said.output.toString('utf8').split('\0'))].filter((path) => path !== '');
}

/** The bytes of a file at a commit, as they were committed. @param most more than this is an error */
export async function bytesAt(
  root: string,
  commit: string,
  path: string,
  most: number,
): Promise<{ readonly bytes: Uint8Array } | Problem> {
  const said = await git(root, ['show', '--no-textconv', '--no-ext-diff', `${commit}:${path}`], most + 1);
  return 'problem' in said
    ? { problem: said.problem || 'git does not give this file' }
    : { bytes: new Uint8Array(said.output) };
}

/** Runs git; a problem without words is a plain no. */
function git(cwd: string, words: readonly string[], most: number): Promise<{ readonly output: Buffer } | Problem> {
  const before = ['--no-pager', '--literal-pathspecs', '-c', 'core.fsmonitor=false'];
  const env = {
    ...process.env,
    GIT_OPTIONAL_LOCKS: '0',
    GIT_TERMINAL_PROMPT: '0',
    GIT_NO_LAZY_FETCH: '1',
    LC_ALL: 'C',
  };
  const options = { cwd, env, encoding: 'buffer', maxBuffer: most, timeout: LONGEST_WAIT, windowsHide: true } as const;
  return new Promise((resolve) => {
    execFile('git', [...before, ...words], options, (error, output, complaint) => {
      if (error === null) return resolve({ output });
      const { code } = error as { readonly code?: unknown };
      if (code === 'ENOENT') return resolve({ problem: 'git was not found: comparing revisions needs it.' });
      if (code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER')
        return resolve({ problem: `git says more than ${most} bytes, and no more is read.` });
      const [first = ''] = complaint.toString('utf8').split('\n');
      resolve({ problem: first === '' ? '' : `git: ${neutral(first.replace(/^fatal: /, '')).slice(0, 300)}` });
    });
  });
}
