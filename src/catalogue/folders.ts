/** The folders of own profiles that a project asks for: their names as its file states them, and what the caller found in them. */
import { field } from './profile.js';
import type { Document } from '../source/document.js';
import type { Path, Problem } from '../source/place.js';
import { quote } from '../source/visible.js';

/** One file of such a folder: its text, or why there is none. */
export type ProfileFile =
  { readonly file: string; readonly text: string | Uint8Array } | { readonly file: string; readonly problem: string };

/** What was found in a folder, or why it was not read. */
export interface ProfileFolder {
  /** As the project file states it: `./our-boards`. */
  readonly name: string;
  readonly files: readonly ProfileFile[];
  readonly problem?: { readonly says: string; readonly expected?: string };
}

/** A project with what its folders hold. */
export interface WithFolders extends Document {
  readonly folders?: readonly ProfileFolder[];
}

/** More folders than this no project needs. */
const MOST = 8;

/** A folder that a project asks for, and where it does; with what is wrong with its name. */
interface Asked {
  readonly name: string;
  readonly path: Path;
  readonly problem?: Problem;
}

/** The folders that a project asks for. What is no list of names is for the schema to refuse. */
export function foldersAsked(data: unknown): readonly Asked[] {
  const list = field(data, 'catalogue');
  return (Array.isArray(list) ? list.slice(0, MOST) : []).flatMap((name: unknown, i): Asked[] => {
    if (typeof name !== 'string') return [];
    const path: Path = ['catalogue', i];
    const says = nameFault(name);
    const expected = 'a folder beside the project file or below it, as in `./our-boards`';
    return [{ name, path, ...(says !== undefined && { problem: { path, on: 'value', says, expected } }) }];
  });
}

/** A name may only lead further in: on every system the same file is read, and none outside the project's root. */
function nameFault(name: string): string | undefined {
  if (name.trim() === '') return 'a folder needs a name';
  if (/^[/\\~]|^[A-Za-z]:/.test(name)) return `${quote(name)} is no folder inside the project's root`;
  if (name.includes('\\')) return `${quote(name)} has backslashes: steps are parted by \`/\``;
  if (name.split('/').includes('..')) return `${quote(name)} leads out of the project's root`;
  return undefined;
}
