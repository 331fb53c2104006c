/** One version of a file in a repository, as far as it can be read. */
import * as ampledger from '../index.js';
import { startsProject } from '../source/starts-project.js';
import { type Opened, readDocument, unreadable } from './open-document.js';
import type { Snapshot } from './snapshot.js';

export interface SideOfPair {
  readonly opened: Opened;
  readonly isProject: boolean;
  /** All that it is made of, its text and its profiles, where it could be read. */
  readonly whole?: string;
}

/** @returns undefined when the file is not there */
export async function sideOf(snapshot: Snapshot, path: string): Promise<SideOfPair | undefined> {
  if (!snapshot.paths.has(path)) return undefined;
  const input = await snapshot.read(path);
  if ('problem' in input) return { opened: unreadable(path, input.problem), isProject: false };
  const text = new TextDecoder('latin1').decode(input.bytes);
  if (!startsProject(text))
    return {
      opened: unreadable(path, 'this is no project file: it does not begin with `ampledger:`'),
      isProject: false,
      whole: text,
    };
  const read = readDocument(input.bytes, path);
  if ('unread' in read) return { opened: read, isProject: true, whole: text };
  const names = ampledger.foldersOf(read.document);
  const folders = names.length === 0 ? [] : await snapshot.folders(path, names);
  const profiles = JSON.stringify(folders, (_key, each: unknown) =>
    each instanceof Uint8Array ? new TextDecoder('latin1').decode(each) : each,
  );
  return {
    opened: { document: ampledger.withFolders(read.document, folders) },
    isProject: true,
    whole: names.length === 0 ? text : `${text}\0${profiles}`,
  };
}
