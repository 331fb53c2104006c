/** Text that is written now and read later: in memory while it is little, then in a temporary file that has no name. */
import { randomBytes } from 'node:crypto';
import { closeSync, openSync, readSync, unlinkSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Spool {
  readonly write: (text: string) => void;
  /** All of it, in chunks; then it is gone. */
  readonly read: () => Iterable<string | Uint8Array>;
}

/** Characters that are kept in memory. */
const LITTLE = 1 << 18;
const CHUNK = 1 << 16;

export function openSpool(little = LITTLE): Spool {
  let kept: string[] = [];
  let size = 0;
  let handle: number | undefined;
  const flush = (): void => {
    handle ??= nameless();
    writeAll(handle, new TextEncoder().encode(kept.join('')));
    kept = [];
    size = 0;
  };
  return {
    write: (text) => {
      if (text === '') return;
      kept.push(text);
      size += text.length;
      if (size > little) flush();
    },
    *read() {
      if (handle === undefined) return yield* kept;
      flush();
      try {
        const buffer = new Uint8Array(CHUNK);
        for (let at = 0, more = 1; more > 0; at += more) {
          more = readSync(handle, buffer, 0, CHUNK, at);
          if (more > 0) yield buffer.slice(0, more);
        }
      } finally {
        closeSync(handle);
      }
    },
  };
}

function writeAll(handle: number, bytes: Uint8Array): void {
  for (let at = 0; at < bytes.length;) at += writeSync(handle, bytes, at);
}

/** A file that nobody else can open, and that is gone with the process, however that ends. */
function nameless(): number {
  const path = join(tmpdir(), `ampledger-${randomBytes(8).toString('hex')}`);
  const handle = openSync(path, 'wx+', 0o600);
  unlinkSync(path);
  return handle;
}
