/** `ampledger catalogue [ID]` and `ampledger catalogue prove FILE…` */
import { builtIn } from '../catalogue/built-in.js';
import { fits, type Wanted } from '../catalogue/filter.js';
import { parseQuantity } from '../quantity/parse.js';
import { closed } from '../quantity/quantity.js';
import { toJson } from '../reports/json.js';
import { nearestSpelling } from '../source/nearest-spelling.js';
import type { Arguments } from './arguments.js';
import { page, say } from './output.js';
import { refuse } from './refuse.js';

/** Prints what there is or was looked for, or one profile with its sources; or proves profiles of one's own. */
export async function catalogue({ operands: [id, ...files], options }: Arguments): Promise<number> {
  const json = options['format'] === 'json';
  if (id === 'prove') {
    if (files.length === 0)
      return refuse(['FILE is missing: prove what? As in ampledger catalogue prove our-relay.yaml.']);
    return (await import('./prove.js')).prove(files, json);
  }
  if (files.length > 0) return refuse([`${files[0]} is one word too many; words to look for go to --find.`]);
  if (id !== undefined) return one(id, json);
  const wanted = wantedOf(options);
  if ('problem' in wanted) return refuse([wanted.problem]);
  const all = builtIn.ids();
  const found = all.flatMap((each) => builtIn.profile(each) ?? []).filter((profile) => fits(profile, wanted));
  const [{ print }, { catalogueJson, catalogueTree }] = await Promise.all([
    import('./print.js'),
    import('../reports/catalogue.js'),
  ]);
  say(
    json ? toJson(catalogueJson(found, wanted)) : print(catalogueTree(found, askedWords(options), all.length), page()),
  );
  return 0;
}

async function one(id: string, json: boolean): Promise<number> {
  const profile = builtIn.profile(id);
  if (!profile) {
    const nearest = nearestSpelling(id, builtIn.ids());
    return refuse([`There is no ${id} in the catalogue.${nearest ? ` Do you mean ${nearest}?` : ''}`]);
  }
  const [{ print }, { profileJson, profileTree }] = await Promise.all([
    import('./print.js'),
    import('../reports/profile.js'),
  ]);
  const written = builtIn.written(id);
  say(json ? toJson(profileJson(profile, written)) : print(profileTree(profile, written), page()));
  return 0;
}

const FILTERS = ['kind', 'type', 'voltage', 'channels', 'find'] as const;

/** What was looked for, as it was written. */
const askedWords = (options: Arguments['options']): readonly string[] =>
  FILTERS.flatMap((name) => (options[name] === undefined ? [] : [`${name} ${options[name]}`]));

function wantedOf(options: Arguments['options']): Wanted | { readonly problem: string } {
  const { kind, type, voltage, channels, find } = options;
  const parsed = typeof voltage === 'string' ? parseQuantity(voltage, 'voltage') : undefined;
  if (parsed && 'problem' in parsed) return { problem: `--voltage: ${parsed.problem}; expected ${parsed.expected}.` };
  const count = typeof channels === 'string' ? Number(channels) : undefined;
  if (count !== undefined && !(Number.isInteger(count) && count > 0))
    return { problem: `--channels is a number of channels, as in --channels 4; not ${String(channels)}.` };
  return {
    ...(typeof kind === 'string' && { kind }),
    ...(typeof type === 'string' && { type }),
    ...(parsed && { volts: closed(parsed.quantity).typ }),
    ...(count !== undefined && { channels: count }),
    ...(typeof find === 'string' && { words: find.split(/\s+/).filter((word) => word !== '') }),
  };
}
