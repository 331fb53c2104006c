/** `ampledger catalogue [ID]` */
import { builtIn } from '../catalogue/built-in.js';
import { toJson } from '../reports/json.js';
import { nearestSpelling } from '../source/nearest-spelling.js';
import type { Arguments } from './arguments.js';
import { complain, page, say } from './output.js';
import { refuse } from './refuse.js';

/** Prints what there is, or one profile of it with its sources. */
export async function catalogue({ operands: [id, ...files], options }: Arguments): Promise<number> {
  const json = options['format'] === 'json';
  if (id === 'prove') {
    if (files.length === 0)
      return refuse(['FILE is missing: prove what? As in ampledger catalogue prove our-relay.yaml.']);
    return (await import('./prove.js')).prove(files, json);
  }
  if (files.length > 0) return refuse([`${files[0]} is one word too many; words to look for go to --find.`]);
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
