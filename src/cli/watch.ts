/** `ampledger audit --watch`: what changed is audited again, until Ctrl-C. */
import { resolve, sep } from 'node:path';
import { watch } from 'chokidar';
import type { FileSummary } from '../reports/file-summary.js';
import { verdictCounts } from '../reports/fleet.js';
import { exitStatus } from '../reports/severity.js';
import { type Asked, auditFound } from './audit.js';
import { findProjects, type Found } from './find-projects.js';
import { complain } from './output.js';
import { refuse } from './refuse.js';
import type { Told } from './tell.js';
import { type Places, placesOf, wants } from './watched.js';

/** An editor that saves writes, moves and touches within a few milliseconds, and several files one after the other. */
const PAUSE = 100;

/**
 * Audits, and again what a change concerns: the file itself, or those that have the changed profile's folder for a catalogue.
 * Where reports go into files too, all is audited again, so that these stay whole.
 *
 * Node's own watcher is not enough: many editors put a new file in the place of the old one, which then is watched no more.
 *
 * @param names as on the command line @returns the exit status of an audit, when the user has seen enough
 */
export async function watchProjects(names: readonly string[], found: Found, asked: Asked): Promise<number> {
  if (found.files.includes('-')) return refuse(['--watch needs files: standard input comes only once.']);
  if (asked.share.of > 1) return refuse(['--watch does not go with --part.']);
  const known = new Map<string, Pick<Told, 'summary' | 'folders'>>();
  let now = found;
  const waits = (): void =>
    complain([`Waiting for changes in ${countOf([...known.values()].map(({ summary }) => summary))}; Ctrl-C ends.`]);
  const audit = async (some: Found): Promise<void> => {
    await auditFound(some, asked, (told) => {
      // A file with a slip in it says nothing of its folders: it is taken to have those that it had.
      const folders = told.folders ?? known.get(told.summary.file)?.folders ?? [];
      known.set(told.summary.file, { summary: told.summary, folders });
    });
    waits();
  };
  const places = (): Places =>
    placesOf(
      now,
      [...known.values()].flatMap(({ folders = [] }) => folders),
    );
  await audit(now);
  const watcher = watch([...places().roots], {
    ignoreInitial: true,
    followSymlinks: false,
    ignored: (path, stats) => !wants(places(), path, stats),
  });
  // The library's types ask for a newer description of Node than ours, whose emitters know no events by name.
  const events: NodeJS.EventEmitter = watcher as unknown as NodeJS.EventEmitter;
  const changed = new Set<string>();
  const again = async (): Promise<void> => {
    const paths = [...changed];
    changed.clear();
    const next = await findProjects(names);
    if ('problem' in next) return complain([next.problem]);
    const gone = [...known.keys()].filter((file) => !next.files.includes(file));
    for (const file of gone) known.delete(file);
    now = next;
    const concerned = next.files.filter((file) => concerns(file, known.get(file)?.folders, paths));
    if (gone.length > 0) complain(['', `${clock()} gone: ${named(gone)}`]);
    if (concerned.length === 0) return gone.length > 0 ? waits() : undefined;
    complain(['', `${clock()} ${named(concerned)}`]);
    const whole = asked.outputs.length > 0 || concerned.length === next.files.length;
    const one = concerned.length === 1 && asked.format === 'terminal';
    await audit(whole ? next : { ...next, files: concerned, shown: one ? 'one' : next.shown });
    watcher.add([...places().roots]);
  };
  return new Promise((done, fail) => {
    let busy = false;
    let timer: NodeJS.Timeout | undefined;
    const soon = (): void => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        if (busy) return soon();
        busy = true;
        again().then(() => (busy = false), fail);
      }, PAUSE);
    };
    events.on('all', (_event: string, path: string) => {
      changed.add(resolve(path));
      soon();
    });
    events.on('error', fail);
    const end = async (): Promise<void> => {
      clearTimeout(timer);
      await watcher.close();
      const statuses = [...known.values()].map(({ summary }) => exitStatus(summary, asked.failAt));
      done(Math.max(0, ...statuses));
    };
    process.once('SIGINT', () => void end());
    process.once('SIGTERM', () => void end());
  });
}

const concerns = (file: string, folders: readonly string[] | undefined, paths: readonly string[]): boolean =>
  // What is new has not been audited yet.
  folders === undefined ||
  paths.some((path) => path === resolve(file) || folders.some((folder) => path.startsWith(resolve(folder) + sep)));

const countOf = (summaries: readonly FileSummary[]): string =>
  summaries.length === 1
    ? `${summaries[0]?.file}`
    : `${summaries.length} files (${verdictCounts(summaries)
        .map(({ rank, count }) => `${count} ${rank}`)
        .join(', ')})`;

const named = (files: readonly string[]): string => (files.length > 3 ? `${files.length} files` : files.join(', '));

const clock = (): string => new Date().toTimeString().slice(0, 8);
