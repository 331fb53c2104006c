/**
 * A name in the working folder may be a stranger's: a link in a pull request that leads to a file of the machine, or to what a
 * hidden folder of the repository keeps, would have it read into a log, or written over.
 */
import { realpathSync } from 'node:fs';
import { isAbsolute, join, relative, resolve, sep } from 'node:path';

/** Why a file is not touched: it lies in the working folder by its name, and somewhere else behind symbolic links. */
export function leadsOut(file: string): string | undefined {
  const folder = process.cwd();
  const name = relative(folder, resolve(file));
  // What is named from elsewhere is meant as it is named.
  if (isOutside(name)) return undefined;
  try {
    const root = realpathSync(folder);
    const place = relative(root, realpathSync(file));
    if (place === name || join(root, place) === resolve(file)) return undefined;
    if (isOutside(place)) return 'a symbolic link leads this out of the folder that the command runs in';
    return place.split(sep).some((part) => part.startsWith('.'))
      ? 'a symbolic link leads this to what is hidden'
      : undefined;
  } catch {
    // It is not there, or its folder may not be read: whoever opens it finds out.
    return undefined;
  }
}

const isOutside = (place: string): boolean => place === '..' || place.startsWith(`..${sep}`) || isAbsolute(place);
