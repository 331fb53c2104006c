/** The report as JSON: the contract of `schemas/report.schema.json`, in SI units. */
import { assembled, type Form, type Piece } from './assembly.js';
import type { Report, UnreadReport } from './report.js';

/**
 * Digits that survive. The last bits of a double differ between processors and engines; twelve digits do not, and no
 * figure here is known to better than four.
 */
const digits = 12;

const steady = (_key: string, value: unknown): unknown =>
  typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(digits)) : value;

/**
 * JSON leaves these as they are, but a terminal or a build server that shows the output would act on them: C1 controls,
 * direction marks and other invisible characters, and `##[`. Escaped, the value stays the same.
 */
const active = /(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]|(?<=#)#/gu;

/** Each half of a surrogate pair by itself, as JSON has it. */
const escaped = (character: string): string =>
  character.replace(/[^]/g, (unit) => '\\u' + unit.charCodeAt(0).toString(16).padStart(4, '0'));

/** What an answer for programs begins with. */
export interface Head {
  readonly ampledger: 1;
  readonly project: string;
  readonly file: string;
  /** The variant of the file that was looked at in its place. */
  readonly variant?: string;
}

export const headOf = (project: string, file: string, variant: string | undefined): Head => ({
  ampledger: 1,
  project,
  file,
  ...(variant !== undefined && { variant }),
});

/** Any value of plain data as indented JSON with a line end, numbers to twelve digits, nothing in it active. */
export const toJson = (value: unknown): string => JSON.stringify(value, steady, 2).replace(active, escaped) + '\n';

/** The same on one line and with every digit, for ourselves to read again. */
export const toJsonLine = (value: unknown): string => JSON.stringify(value).replace(active, escaped) + '\n';

/** A value as `toJson` has it, without its line end and further in, to stand inside other data. */
export const nested = (value: unknown, depth: number): string =>
  toJson(value).trimEnd().replace(/^/gm, '  '.repeat(depth));

/** A report in a list of several, or by itself. */
export const jsonPiece = (report: Report | UnreadReport, several: boolean): Piece => ({
  texts: [nested(report, several ? 1 : 0)],
});

/** An array of reports, or the one report. */
export const jsonForm = (several: boolean): Form => ({
  sections: [{ joint: ',\n', ...(several && { first: '\n' }) }],
  streams: true,
  around: (at, { filled: [filled] }) => {
    if (!several) return at === 0 ? '' : '\n';
    return at === 0 ? '[' : `${filled ? '\n' : ''}]\n`;
  },
});

/** One report, or an array when several files were asked for. */
export function jsonReport(reports: readonly (Report | UnreadReport)[]): string {
  const several = reports.length !== 1;
  return assembled(
    jsonForm(several),
    reports.map((report) => jsonPiece(report, several)),
  );
}
