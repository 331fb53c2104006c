/** Samples as the tests see them: the report of a file, and what is worse than a note in it. */
import { readFileSync } from 'node:fs';
import { audit, read } from '../../src/index.js';
import type { Report } from '../../src/index.js';

export const sampleText = (name: string): string =>
  readFileSync(new URL(`../../samples/${name}.yaml`, import.meta.url), 'utf8');

/** Audits a text that has to be sound YAML. @throws with all errors when it cannot be audited */
export function reportOf(text: string, file = 'sample.yaml'): Report {
  const { document, errors } = read(text, file);
  const audited = document === undefined ? undefined : audit(document, { advice: false });
  if (audited?.report === undefined)
    throw new Error(JSON.stringify([...errors, ...(audited?.errors ?? [])].map((e) => `${e.line}:${e.column} ${e.says}`)));
  return audited.report;
}

/** 'verdict rule about' of every finding worse than a note, sorted. */
export const worseThanNote = (report: Report): string[] =>
  report.findings
    .filter((f) => f.verdict !== 'note')
    .map((f) => `${f.verdict} ${f.rule} ${f.about}`)
    .sort();

/** An account by id, quantity and direction. */
export function accountOf(report: Report, id: string, direction: string, quantity = 'current'): Report['accounts'][number] {
  const found = report.accounts.find((a) => a.id === id && a.direction === direction && a.quantity === quantity);
  if (found === undefined) throw new Error(`no account ${id}, ${quantity}, ${direction}`);
  return found;
}
