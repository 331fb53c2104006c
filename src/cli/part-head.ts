/** What a run over many files says about itself, in a part of it or whole. */
import { createHash } from 'node:crypto';
import type { PartHead } from '../reports/part.js';
import { neutral } from '../reports/neutral.js';
import { columns } from '../source/visible.js';
import type { Asked } from './audit.js';
import type { Found } from './find-projects.js';
import { folderInRepository } from './repository.js';
import { version } from './version.js';

export function partHead(
  { files, shown }: Pick<Found, 'files' | 'shown'>,
  { share, conditions }: Pick<Asked, 'share' | 'conditions'>,
): PartHead {
  return {
    ampledger: 1,
    version,
    ...share,
    files: files.length,
    shown,
    longest: files.reduce((longest, file) => Math.max(longest, columns(neutral(file))), 0),
    list: createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 32),
    folder: folderInRepository(process.cwd()),
    // Machines may have another day: that is not asked for.
    asked: JSON.stringify({ ...conditions, today: undefined }),
  };
}
