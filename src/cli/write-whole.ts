/** A file written whole or not at all. */
import { randomBytes } from 'node:crypto';
import { realpath, rename, rm, stat, writeFile } from 'node:fs/promises';

/**
 * Writes a text beside the file and puts it in the file's place in one move, so that no reader ever sees half of it.
 *
 * @param former text to keep as `FILE.before` @returns what went wrong, or nothing
 */
export async function writeWhole(file: string, text: string, former?: string): Promise<string | undefined> {
  let scratch: string | undefined;
  try {
    // Behind a link stands the file that is meant.
    const target = await realpath(file);
    const { mode } = await stat(target);
    if (former !== undefined) await writeFile(`${target}.before`, former, { mode });
    scratch = `${target}.${randomBytes(4).toString('hex')}`;
    await writeFile(scratch, text, { mode, flag: 'wx' });
    await rename(scratch, target);
    return undefined;
  } catch (error) {
    if (scratch !== undefined) await rm(scratch, { force: true });
    return `${file} could not be written: ${error instanceof Error ? error.message.replace(/^[A-Z]+: /, '').replace(/, .*/, '') : 'unknown reason'}.`;
  }
}
