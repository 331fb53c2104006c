/** A file written whole or not at all. */
import { randomBytes } from 'node:crypto';
import { realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { leadsOut } from './leads-out.js';

/**
 * Writes a text beside the file and puts it in the file's place in one move, so that no reader ever sees half of it.
 *
 * @param text the whole, or its chunks in order @param former text to keep as `FILE.before` @returns what went wrong, or nothing
 */
export async function writeWhole(
  file: string,
  text: string | Iterable<string | Uint8Array>,
  former?: string,
): Promise<string | undefined> {
  const why = leadsOut(file);
  if (why !== undefined) return `${file} could not be written: ${why}.`;
  let scratch: string | undefined;
  try {
    // Behind a link stands the file that is meant; a new one has neither link nor mode yet.
    const target = await realpath(file).catch(ifMissing(file));
    const there = await stat(target).catch(ifMissing(undefined));
    // A device or a pipe would be taken away and a file put in its place.
    if (there && !there.isFile()) return `${file} could not be written: it is no plain file.`;
    const mode = there?.mode ?? 0o666;
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

/** What stands for a file that is not there yet; any other trouble stays one. */
const ifMissing =
  <T>(instead: T) =>
  (error: NodeJS.ErrnoException): T => {
    if (error.code === 'ENOENT') return instead;
    throw error;
  };
