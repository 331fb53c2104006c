/**
 * A part of a run over many files, for another machine to put together with the others: a line of JSON about the run, then one
 * a file with its report, every digit kept. Whatever a report is shown as can be made of it later.
 */
import type { Form, Piece } from './assembly.js';
import { toJsonLine } from './json.js';
import type { Report, UnreadReport } from './report.js';

/** The first line. What all parts of one run have in common stands in it, so that nothing else is put together. */
export interface PartHead {
  readonly ampledger: 1;
  /** Of the program that wrote it. */
  readonly version: string;
  readonly part: number;
  readonly of: number;
  /** Of the whole run: how many, how they are told, columns of the longest name. */
  readonly files: number;
  readonly shown: 'one' | 'several' | 'fleet';
  readonly longest: number;
  /** Of the whole list of names. */
  readonly list: string;
  /** In which the command ran, from the root of the repository; '' for the root itself, or without a repository. */
  readonly folder: string;
  /** The conditions that were asked for. */
  readonly asked: string;
}

/** Every other line. */
export interface PartLine {
  /** The file's place in the whole list, from 0. */
  readonly at: number;
  readonly report: Report | UnreadReport;
  /** Of the file, where it was audited: cures are changes to it. */
  readonly text?: string;
  /** Of a file that could not be audited: what a person is told. */
  readonly said?: readonly string[];
}

/** Share `part` of `of` of a list: every so many-th, since files that lie together are alike. */
export const isInPart = (at: number, { part, of }: Pick<PartHead, 'part' | 'of'>): boolean => at % of === part - 1;

/** How many files of the list are in a part. */
export const filesInPart = ({ part, of, files }: PartHead): number => Math.max(0, Math.ceil((files - part + 1) / of));

export const partPiece = (line: PartLine): Piece => ({ texts: [toJsonLine(line)] });

export const partForm = (head: PartHead): Form => ({
  sections: [{ joint: '' }],
  streams: true,
  around: (at) => (at === 0 ? toJsonLine(head) : ''),
});
