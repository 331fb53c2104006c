/** What is in the catalogue, for people: all of it or what was looked for, by kind and type. */
import { headline } from '../catalogue/headline.js';
import type { Profile } from '../catalogue/profile.js';
import { sourceCounts } from '../catalogue/sources.js';
import { heading, item, list, mark, paragraph, type Tree } from './tree.js';
import { groupsOf } from './catalogue-groups.js';

/** Beyond so many each has one line, without its figures. */
const SHORT = 40;

/** @param asked what was looked for, in words; empty for all */
export function catalogueTree(profiles: readonly Profile[], asked: readonly string[], all: number): Tree {
  const some = asked.length > 0;
  const count = some ? `${profiles.length} of ${all} profiles` : `${all} profiles`;
  const head = heading(mark('strong', 'Catalogue'), mark('quiet', count));
  if (profiles.length === 0)
    return [[head], [paragraph(`Nothing in it is ${asked.join(', ')}. Fewer conditions find more.`)]];
  const figures = profiles.length <= SHORT;
  return [
    [head, ...(some ? [paragraph(mark('quiet', asked.join(', ')))] : [])],
    ...groupsOf(profiles).map(({ title, options, of }) => [
      heading([mark('strong', title), mark('quiet', `  ${of.length}`)], mark('quiet', options)),
      list(
        of.map((each) =>
          item(
            each.id,
            each.title,
            ...(figures && headline(each) !== '' ? [paragraph(mark('quiet', headline(each)))] : []),
          ),
        ),
      ),
    ]),
    [
      paragraph([
        mark(
          'quiet',
          figures
            ? 'One of them with all figures and their sources:'
            : 'What is looked for: --kind, --type, --voltage, --channels, --find. One with all figures and their sources:',
        ),
      ]),
      paragraph(mark('quiet', `$ ampledger catalogue ${profiles[0]!.id}`)),
    ],
  ];
}

/** The same for programs. */
export const catalogueJson = (profiles: readonly Profile[], wanted: object): object => ({
  ampledger: 1,
  wanted,
  profiles: profiles.map((profile) => ({
    id: profile.id,
    title: profile.title,
    kind: profile.kind,
    ...(profile.type !== undefined && { type: profile.type }),
    headline: headline(profile),
    sources: sourceCounts(profile),
  })),
});
