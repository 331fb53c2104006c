/** The report as JSON: the contract of `schemas/report.schema.json`, in SI units. */
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

/** One report, or an array when several files were asked for. */
export const jsonReport = (reports: readonly (Report | UnreadReport)[]): string =>
  toJson(reports.length === 1 ? reports[0] : reports);
