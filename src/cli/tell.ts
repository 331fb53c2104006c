/** One file from its name to all that is written of it. This is what a worker does; nothing but words comes back. */
import type { Piece } from '../reports/assembly.js';
import { type FileSummary, summaryOf } from '../reports/file-summary.js';
import { type Audited, auditFile, reportOf } from './audit-file.js';
import type { Conditions } from './conditions.js';
import type { CornerOptions } from './corners.js';
import { isLines, pieceOf, type Wish } from './render.js';

export interface Task {
  readonly file: string;
  /** Its place in the list of this run, and in the list that this run is a part of. */
  readonly at: number;
  readonly whole: number;
  readonly conditions: Conditions & CornerOptions;
  readonly wishes: readonly Wish[];
}

export interface Told {
  readonly summary: FileSummary;
  /** One a wish. */
  readonly pieces: readonly Piece[];
  /** Of a file that could not be audited: what a person is told. */
  readonly said?: readonly string[];
  /** Folders of own profiles that it looked into, where it got as far. */
  readonly folders?: readonly string[];
}

export async function tell(task: Task): Promise<Told> {
  // A line says nothing of cures, each of which is an audit of its own.
  const advice = !task.wishes.every(isLines);
  return toldOf(await auditFile(task.file, { ...task.conditions, advice }), task);
}

/** What is written of a file that is audited already. */
export async function toldOf(
  audited: Audited,
  { at, whole, wishes }: Omit<Task, 'file' | 'conditions'>,
): Promise<Told> {
  const pieces: Piece[] = [];
  for (const wish of wishes) pieces.push(await pieceOf(wish, audited, at, whole));
  return {
    summary: summaryOf(reportOf(audited)),
    pieces,
    ...('unread' in audited && { said: audited.said }),
    ...(audited.folders && { folders: audited.folders }),
  };
}
