/** Files that a report is written into besides what is printed: `--output FILE`, once a file. */
import { realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { endingWords, type Format, formatOf, FORMATS } from './formats.js';

export interface Output<F extends Format = Format> {
  readonly file: string;
  readonly format: F;
}

/**
 * The files with their formats, or what is wrong with one.
 *
 * @param inputs what is audited: never written over @param formats those that the command has
 */
export function readOutputs<F extends Format = Format>(
  files: readonly string[],
  inputs: readonly string[],
  formats: readonly F[] = FORMATS as readonly F[],
): { readonly outputs: readonly Output<F>[] } | { readonly problem: string } {
  const outputs: Output<F>[] = [];
  const taken = new Map(inputs.filter((file) => file !== '-').map((file) => [whole(file), 'audited']));
  for (const file of files) {
    const named = formatOf(file);
    const format = formats.find((each) => each === named);
    if (format === undefined)
      return { problem: `--output ${file}: its ending says no format; it is ${endingWords(formats)}.` };
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
