/** boards/README.md: every profile by kind, with its title and the figures that tell it from the next. Committed, for readers. */
import { writeIfChanged } from './files.mjs';

const HEAD = `# The catalogue

Made by \`node tools/build.mjs --generated-only\` from the files beside it; a test holds that it is up to date. Each line is a
profile: its id, which projects use, its title, and its headline figures. Every figure of a profile names its document, table
or page, or says that it is common practice or from memory: \`ampledger catalogue ID\` writes them all out.
[docs/profiles.md](../docs/profiles.md) shows how to write one.
`;

/** What the kinds are called, in the order in which people look for them. */
const KINDS = {
  controller: 'Controller boards',
  chip: 'Chips',
  expander: 'Expanders',
  array: 'Arrays of drivers',
  load: 'Loads and modules',
  driver: 'Drivers',
  clamp: 'Clamps',
  supply: 'Supplies',
  'supply-part': 'Regulators and fuses between supplies',
  wire: 'Wires',
  connector: 'Connectors',
  policy: 'Policies',
};

const cell = (text) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

/** @param entries what the page lists: `{ id, kind, type, title, headline, path }` */
export function boardsPage(entries) {
  const byType = (kind) => {
    const of = entries.filter((entry) => entry.kind === kind);
    const types = [...new Set(of.map(({ type }) => type ?? ''))].sort();
    return types.flatMap((type) => of.filter((entry) => (entry.type ?? '') === type));
  };
  const sections = Object.entries(KINDS).map(([kind, title]) => {
    const rows = byType(kind).map(
      ({ id, type, title, headline, path }) =>
        `| [\`${id}\`](${path.replace(/^boards\//, '')}) | ${cell(title)} | ${type ?? ''} | ${cell(headline)} |`,
    );
    return `## ${title} (${rows.length})\n\n| id | what it is | type | figures |\n| --- | --- | --- | --- |\n${rows.join('\n')}\n`;
  });
  return `${HEAD}\n${entries.length} profiles.\n\n${sections.join('\n')}`;
}

export const writeBoardsPage = (entries) => writeIfChanged('boards/README.md', boardsPage(entries));
