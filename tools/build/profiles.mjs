/**
 * Compiles boards/ into src/catalogue/generated/profiles.js: one JSON text a profile, so that an audit parses only the
 * profiles it names, and a light list for those who only want names; and writes the page that lists them. Whatever the
 * schema or the file's name says against a profile fails the build, with its place.
 */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { writeBoardsPage } from './boards-readme.mjs';
import { filesBelow, inRoot, writeIfChanged } from './files.mjs';
import { evaluate } from './in-memory.mjs';

const source = () =>
  evaluate(`
    export { readDocument } from './src/source/read.js';
    export { checkProfile } from './src/source/check-profile.js';
    export { renderDiagnostic } from './src/source/diagnostic.js';
    export { takeOver } from './src/catalogue/extends.js';
    export { headline } from './src/catalogue/headline.js';
  `);

const declaration = `/** JSON text of every built-in profile, by id. */
export declare const profiles: Readonly<Record<string, string>>;
/** What a list of the catalogue shows, so that it need parse no profile. */
export declare const index: readonly {
  readonly id: string;
  readonly kind: string;
  readonly type?: string;
  readonly title: string;
}[];
`;

/** What is wrong with one profile. One that extends another is judged with all that it takes over. */
function wrongWith({ path, document }, rawById, { checkProfile, takeOver }) {
  const { data } = document;
  const problem = (key, says, expected) => [{ path: [key], on: 'value', says, expected }];
  const named = basename(path, '.yaml');
  if (data.id !== named) return problem('id', 'the id is not the name of the file', `\`${named}\``);
  if (data.extends === undefined) return checkProfile(data);
  const { fields, missing, cycle } = takeOver(named, (id) => rawById.get(id));
  if (fields) return checkProfile(fields);
  return problem(
    'extends',
    cycle ? `these extend each other: ${cycle.join(', ')}` : `there is no profile ${missing ?? 'so deep'}`,
  );
}

export async function compileProfiles() {
  const tools = await source();
  const read = filesBelow('boards', '.yaml').map((path) => ({
    path,
    ...tools.readDocument(readFileSync(inRoot(path)), path),
  }));
  const whole = read.filter(({ document }) => document);
  const rawById = new Map(whole.map(({ document }) => [document.data.id, document.data]));
  const errors = read.flatMap(({ errors }) => errors);
  for (const file of whole)
    errors.push(...wrongWith(file, rawById, tools).map((problem) => file.document.diagnostic(problem)));
  if (rawById.size < whole.length) errors.push(...twice(whole));
  if (errors.length > 0)
    throw Object.assign(new Error('boards/ has errors'), { report: errors.map(tools.renderDiagnostic).join('\n') });

  const profiles = [...rawById.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const texts = Object.fromEntries(profiles.map((profile) => [profile.id, JSON.stringify(profile)]));
  const index = profiles.map(({ id }) => {
    const { kind, type, title } = tools.takeOver(id, (each) => rawById.get(each)).fields;
    return { id, kind, type, title };
  });
  const module = `export const profiles = ${JSON.stringify(texts, null, 1)};\nexport const index = ${JSON.stringify(index, null, 1)};\n`;
  writeIfChanged('src/catalogue/generated/profiles.js', module);
  writeIfChanged('src/catalogue/generated/profiles.d.ts', declaration);
  const paths = new Map(whole.map(({ path, document }) => [document.data.id, path]));
  const page = index.map((entry) => {
    const { fields } = tools.takeOver(entry.id, (each) => rawById.get(each));
    return { ...entry, headline: tools.headline(fields), path: paths.get(entry.id) };
  });
  writeBoardsPage(page);
  return `${profiles.length} of them, ${Math.round(module.length / 1024)} kB`;
}

/** Files that share an id; each has its own folder, so the file system does not see to it. */
function twice(files) {
  const first = new Map();
  return files.flatMap(({ path, document }) => {
    const other = first.get(document.data.id);
    first.set(document.data.id, path);
    return other ? [document.diagnostic({ path: ['id'], on: 'value', says: `this is the id of ${other} too` })] : [];
  });
}
