/** Files that a report is written into besides what is printed: `--output FILE`, once a file. */
import { realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { endingWords, type Format, formatOf } from './formats.js';

export interface Output {
  readonly file: string;
  readonly format: Format;
}

/** The files with their formats, or what is wrong with one. @param inputs what is audited: never written over */
export function readOutputs(
  files: readonly string[],
  inputs: readonly string[],
): { readonly outputs: readonly Output[] } | { readonly problem: string } {
  const outputs: Output[] = [];
  const taken = new Map(inputs.filter((file) => file !== '-').map((file) => [whole(file), 'audited']));
  for (const file of files) {
    const format = formatOf(file);
    if (format === undefined) return { problem: `--output ${file}: its ending says no format; it is ${endingWords}.` };
    const why = taken.get(whole(file));
    if (why !== undefined) return { problem: `--output ${file}: this file is ${why}; give another name.` };
    taken.set(whole(file), 'written already');
    outputs.push({ file, format });
  }
  return { outputs };
}

/** One name for one file, through links. */
function whole(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return resolve(file);
  }
}
