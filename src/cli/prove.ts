/** `ampledger catalogue prove FILE…` */
import { readFolder } from './read-folders.js';
import { readInput } from './input.js';
import { complain, page, say } from './output.js';
import { builtIn } from '../catalogue/built-in.js';
import type { ProfileFile } from '../catalogue/folders.js';
import { withOwn } from '../catalogue/own.js';
import { proofJson, proofTree } from '../reports/proof.js';
import { toJson } from '../reports/json.js';
import { renderDiagnostic } from '../source/diagnostic.js';

/** Largest profile that is read. */
const LARGEST = 100_000;

/** Holds profiles to the rigour of the catalogue, and says all that is wrong with them. Folders stand for all their profiles. */
export async function prove(files: readonly string[], json: boolean): Promise<number> {
  const given: ProfileFile[] = [];
  for (const file of files) given.push(...(await profilesAt(file)));
  const { profiles, errors } = withOwn(builtIn, given, { twins: true });
  if (json) say(toJson(proofJson(profiles, errors)));
  if (errors.length > 0) {
    const count = errors.length === 1 ? 'One error' : `${errors.length} errors`;
    const broken = new Set(errors.map(({ file }) => file));
    const what = broken.size === 1 ? `${[...broken][0]} is not proved` : `${broken.size} files are not proved`;
    if (!json) complain([...errors.flatMap((error) => [renderDiagnostic(error), '']), `${count}: ${what}.`]);
    return 2;
  }
  if (given.length === 0) {
    complain([`There is no profile in ${files.join(', ')}: names of profiles end in .yaml.`]);
    return 2;
  }
  if (json) return 0;
  const { print } = await import('./print.js');
  say(print(proofTree(profiles), page()));
  return 0;
}

/** The profile of a file, or all those in a folder. */
async function profilesAt(file: string): Promise<readonly ProfileFile[]> {
  const found = file === '-' ? undefined : readFolder(file);
  if (found !== undefined) return 'problem' in found ? [{ file, problem: found.problem }] : found;
  const input = await readInput(file, LARGEST);
  return ['problem' in input ? { file, problem: input.problem } : { file, text: input.bytes }];
}
