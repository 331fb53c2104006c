/** Cures as SARIF has them: stretches of the file that are replaced, so that whoever shows a finding can make the change. */
import { lineAndColumn, lineStarts } from '../source/diagnostic.js';
import { editedText } from '../source/edit.js';
import { replacements } from '../source/replacements.js';
import type { ReportRemedy } from './report.js';
import { located, message } from './sarif-text.js';

/**
 * Makes one fix a remedy, and none of a remedy that changes nothing in the text.
 *
 * @param text of the file that was audited, as it stands @param folder in which the command ran
 */
export function fixesIn(
  file: string,
  text: string,
  folder = '',
): (remedies: readonly ReportRemedy[]) => readonly Fix[] {
  const starts = lineStarts(text);
  // Several findings have the same cure, and each change of a text reads it anew.
  const known = new Map<string, readonly SarifReplacement[]>();
  const replacedBy = ({ changes }: ReportRemedy): readonly SarifReplacement[] => {
    const key = JSON.stringify(changes);
    const found = known.get(key) ?? sarifReplacements(text, starts, changes);
    known.set(key, found);
    return found;
  };
  return (remedies) =>
    remedies
      .map((remedy) => ({
        description: { text: message(remedy.title) },
        artifactChanges: [{ artifactLocation: located(file, folder), replacements: replacedBy(remedy) }] as const,
      }))
      .filter(({ artifactChanges: [{ replacements: found }] }) => found.length > 0);
}

/** SARIF 2.1.0, 3.57: regions are those of the text before any change. */
interface SarifReplacement {
  readonly deletedRegion: {
    readonly startLine: number;
    readonly startColumn: number;
    readonly endLine: number;
    readonly endColumn: number;
  };
  readonly insertedContent?: { readonly text: string };
}

/** SARIF 2.1.0, 3.55 and 3.56. */
interface Fix {
  readonly description: { readonly text: string };
  readonly artifactChanges: readonly [
    { readonly artifactLocation: ReturnType<typeof located>; readonly replacements: readonly SarifReplacement[] },
  ];
}

function sarifReplacements(
  text: string,
  starts: ReturnType<typeof lineStarts>,
  changes: ReportRemedy['changes'],
): readonly SarifReplacement[] {
  const written = changes.map(({ path, value }) => ({ path: path.split('.'), value: value ?? undefined }));
  return replacements(text, editedText(text, written)).map(({ from, to, by }) => ({
    deletedRegion: regionOf(starts, from, to),
    ...(by !== '' && { insertedContent: { text: by } }),
  }));
}

function regionOf(starts: ReturnType<typeof lineStarts>, from: number, to: number) {
  const [start, end] = [lineAndColumn(starts, from), lineAndColumn(starts, to)];
  return { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column };
}
