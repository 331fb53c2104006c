/** The text of a project file, whatever it is given as, never more of it than an audit would accept. */
import { closeSync, fstatSync, lstatSync, openSync, readSync } from 'node:fs';
import { leadsOut } from './leads-out.js';

export type Input = { readonly bytes: Uint8Array } | { readonly problem: string };

/** `file` as given on the command line; `-` is standard input. At most `limit` bytes. */
export const readInput = (file: string, limit: number): Promise<Input> | Input =>
  file === '-' ? readStandardInput(limit) : readFile(file, limit);

const tooLarge = (limit: number): Input => ({
  problem: `this is more than ${limit / 1e6} MB, and no more is read; a large project has some 20 kB`,
});

function readFile(file: string, limit: number): Input {
  let handle: number | undefined;
  try {
    const why = unfit(file);
    if (why !== undefined) return { problem: why };
    handle = openSync(file, 'r');
    const stat = fstatSync(handle);
    if (stat.isDirectory()) return { problem: 'this is a folder; name the files in it' };
    if (stat.isFile() && stat.size > limit) return tooLarge(limit);
    // A pipe or a device has no size to ask for, so what is read is bounded as well.
    const buffer = new Uint8Array(limit + 1);
    let length = 0;
    for (let more = 1; more > 0 && length <= limit; length += more) {
      more = readSync(handle, buffer, length, limit + 1 - length, null);
    }
    return length > limit ? tooLarge(limit) : { bytes: buffer.subarray(0, length) };
  } catch (error) {
    return { problem: reason(error as NodeJS.ErrnoException) };
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

/** Why a file is not even opened. A pipe that a shell made for the command (`<(…)`) is a link to one, and is read. */
export function unfit(file: string): string | undefined {
  if (lstatSync(file, { throwIfNoEntry: false })?.isFIFO())
    return 'this is a named pipe, which may wait for ever; give what comes out of it as `-`';
  const why = leadsOut(file);
  return why && `${why}, and none is followed there; name the file itself`;
}

async function readStandardInput(limit: number): Promise<Input> {
  const bytes = new Uint8Array(limit);
  let length = 0;
  try {
    for await (const chunk of process.stdin as unknown as AsyncIterable<Uint8Array>) {
      if (length + chunk.length > limit) return tooLarge(limit);
      bytes.set(chunk, length);
      length += chunk.length;
    }
  } catch (error) {
    return { problem: reason(error as NodeJS.ErrnoException) };
  }
  return { bytes: bytes.subarray(0, length) };
}

/** What keeps a file from being read, in words. */
export function reason({ code, message }: NodeJS.ErrnoException): string {
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return 'there is no such file';
    case 'EACCES':
    case 'EPERM':
      return 'this may not be read: its permissions forbid it';
    case 'ELOOP':
      return 'this is a symbolic link that leads round in a circle';
    case 'EISDIR':
      return 'this is a folder; name the files in it';
    default:
      return `this cannot be read (${code ?? message})`;
  }
}
