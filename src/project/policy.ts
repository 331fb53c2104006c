/** The policy: how much of every limit is to be left, for all, and for kinds of account that a standard treats apart. */
import type { Catalogue } from '../catalogue/catalogue.js';
import { isMapping } from '../loads/figures.js';
import type { Dimension } from '../quantity/dimension.js';
import { parseQuantity } from '../quantity/parse.js';
import { didYouMean, oneOf } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import type { KindMargins, Policy } from './project.js';
import type { Gathered } from './remarks.js';

type Raw = Readonly<Record<string, unknown>>;

const OF_ALL = {
  current: 'current',
  functionVoltage: 'function-voltage',
  window: 'window',
  temperature: 'temperature',
  drive: 'drive',
} as const;

/** Keys of a row of `kinds`, and what each is in. */
const OF_A_KIND: readonly (readonly [key: string, name: keyof KindMargins, dimension: Dimension])[] = [
  ['current', 'current', 'ratio'],
  ['voltage', 'voltage', 'ratio'],
  ['power', 'power', 'ratio'],
  ['temperature', 'temperature', 'ratio'],
  ['temperature-below', 'temperatureBelow', 'temperature-difference'],
  ['temperature-at-most', 'temperatureAtMost', 'temperature'],
];

/** The policy by name, or spelled out over the everyday one. */
export function policyFrom(raw: unknown, catalogue: Catalogue, remarks: Gathered): Policy {
  const name = typeof raw === 'string' ? raw : 'everyday';
  if (raw === undefined) remarks.assume('policy', 'the everyday margins, since the file names none');
  const profile = catalogue.profile(name);
  if (profile?.kind !== 'policy') {
    const known = catalogue.ids('policy');
    remarks.problem({
      path: ['policy'],
      on: 'value',
      says: `there is no policy \`${name}\``,
      expected: didYouMean(name, known, oneOf(known)),
    });
  }
  const own: Raw = isMapping(raw) ? raw : {};
  const usual: Raw = profile?.kind === 'policy' ? profile : (catalogue.profile('everyday') ?? {});
  const read = (item: unknown, dimension: Dimension, path: Path): number => {
    const parsed = parseQuantity((isMapping(item) ? item['value'] : item) as string, dimension);
    if ('quantity' in parsed) return parsed.quantity.typ ?? parsed.quantity.max ?? 0;
    remarks.problem({ path, on: 'value', says: parsed.problem, expected: parsed.expected });
    return 0;
  };
  const figure = (key: string): number => read(own[key] ?? usual[key], 'ratio', ['policy', key]);

  const kinds = new Map<string, KindMargins>();
  for (const rows of [usual['kinds'], own['kinds']])
    for (const [kind, row] of Object.entries(isMapping(rows) ? rows : {}))
      for (const [key, margin, dimension] of OF_A_KIND)
        if (isMapping(row) && row[key] !== undefined)
          kinds.set(kind, { ...kinds.get(kind), [margin]: read(row[key], dimension, ['policy', 'kinds', kind, key]) });

  return {
    name: isMapping(raw) ? 'spelled out in the project' : name,
    current: figure(OF_ALL.current),
    functionVoltage: figure(OF_ALL.functionVoltage),
    window: figure(OF_ALL.window),
    temperature: figure(OF_ALL.temperature),
    drive: figure(OF_ALL.drive),
    kinds,
  };
}
