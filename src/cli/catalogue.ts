/** `ampledger catalogue [ID]` */
import { builtIn } from '../catalogue/built-in.js';
import { toJson } from '../reports/json.js';
import { nearestSpelling } from '../source/nearest-spelling.js';
import type { Arguments } from './arguments.js';
import { complain, page, say } from './output.js';

/** Prints what there is, or one profile of it with its sources. */
export async function catalogue({ operands: [id], options }: Arguments): Promise<number> {
  const json = options['format'] === 'json';
  const profile = id === undefined ? undefined : builtIn.profile(id);
  if (id !== undefined && !profile) {
    const nearest = nearestSpelling(id, builtIn.ids());
    complain([`There is no ${id} in the catalogue.${nearest ? ` Do you mean ${nearest}?` : ''}`]);
    return 2;
  }
  const entries = builtIn.ids().flatMap((each) => builtIn.profile(each) ?? []);
  if (json) {
    say(toJson(profile ?? entries.map(({ id, title, kind }) => ({ id, title, kind }))));
    return 0;
  }
  const [{ print }, { catalogueTree, profileTree }] = await Promise.all([
    import('./print.js'),
    import('../reports/catalogue.js'),
  ]);
  say(print(profile ? profileTree(profile) : catalogueTree(entries), page()));
  return 0;
}
