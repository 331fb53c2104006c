/** What came of proving profiles of one's own. */
import { headline } from '../catalogue/headline.js';
import type { Profile } from '../catalogue/profile.js';
import { countWords, sourceCounts } from '../catalogue/sources.js';
import type { Diagnostic } from '../source/diagnostic.js';
import { heading, mark, paragraph, type Tree } from './tree.js';

interface Proved {
  readonly file: string;
  readonly profile: Profile;
}

export function proofTree(proved: readonly Proved[]): Tree {
  return [
    ...proved.map(({ file, profile }) => [
      heading(mark('strong', profile.title), mark('quiet', file)),
      paragraph(`${[profile.type ?? profile.kind, profile.id].join(' ')}: ${headline(profile)}`),
      paragraph(mark('quiet', `${countWords(sourceCounts(profile))}.`)),
    ]),
    [
      paragraph([
        mark('sound', 'PROVED'),
        `  ${proved.length === 1 ? 'It stands' : `All ${proved.length} stand`} as those of the catalogue do.`,
      ]),
    ],
  ];
}

/** The same for programs. */
export function proofJson(proved: readonly Proved[], errors: readonly Diagnostic[]): object {
  return {
    ampledger: 1,
    proved: errors.length === 0 && proved.length > 0,
    profiles: proved.map(({ file, profile }) => ({
      id: profile.id,
      title: profile.title,
      kind: profile.kind,
      ...(profile.type !== undefined && { type: profile.type }),
      file,
      headline: headline(profile),
      sources: sourceCounts(profile),
    })),
    errors: errors.map(({ file, line, column, says, expected, excerpt }) => ({
      file,
      line,
      column,
      says,
      ...(expected !== undefined && { expected }),
      ...(excerpt && { excerpt }),
    })),
  };
}
