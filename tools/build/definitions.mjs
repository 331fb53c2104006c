/**
 * What the fragments mean in a project and in a profile. The difference is how a figure is written: plain in a project
 * (`5 V ±4 %`), with its source in a profile (`{ value: 5 V ±4 %, cite: [datasheet, Table 3] }`). Fragments refer to
 * `#/$defs/voltage` and the like, and each schema brings its own meaning of these.
 */
import { mapping, mapValues, needsOne, ref, unionOf } from './shapes.mjs';

/** A figure of each dimension, alone and as a list of points. */
function figureDefs(figures, style) {
  const cited = style === 'profile';
  return Object.fromEntries(
    Object.entries(figures).flatMap(([dimension, { description, examples }]) => {
      const point = {
        properties: {
          value: { ...ref('quantity'), description: 'The figure itself.', examples },
          at: { ...ref('quantity'), description: 'The condition it holds at.' },
        },
        required: ['value'],
        ...(cited ? { cite: 'needed' } : {}),
      };
      const shown = cited ? {} : { examples };
      const plain = cited ? [] : ['string', 'number'];
      const alone = { description, type: [...plain, 'object'], ...point, ...shown };
      const points = {
        description: `${description} Or a list of points, { value, at }.`,
        type: [...plain, 'object', 'array'],
        ...point,
        items: { description: 'One point: the figure and the condition it holds at.', type: 'object', ...point },
        minItems: 1,
        ...shown,
      };
      return [
        [dimension, alone],
        [`${dimension}-points`, points],
      ];
    }),
  );
}

/** Definitions that both schemas have, in the style asked for; not finished yet. */
export function commonDefs(all, style) {
  const { loads, drivers, things, commonLoad } = all;
  const keys = (fragment) => ({ ...fragment.properties, ...(style === 'profile' ? fragment.profile : {}) });
  return {
    ...figureDefs(all.figures, style),
    ...all.shared,
    ...Object.assign({}, ...[commonLoad, ...Object.values(loads), ...Object.values(things)].map(({ defs }) => defs)),
    'coil-figures': mapping(loads.coil, keys(loads.coil)),
    'relay-stage': {
      ...mapping(
        { title: 'Stage of an output', description: 'A transistor, MOSFET, coupler or gate driver in a row.' },
        stageKeys(drivers, keys),
      ),
    },
    'relay-output': {
      ...mapping(
        {
          title: 'Output of a relay board',
          description:
            'What switches the coil: a transistor, a coupler, a driver chip with open outputs, an H-bridge, or a row of stages.',
        },
        {
          ...stageKeys(drivers, keys),
          stages: {
            description: 'Stages from the input to the coil: a gate driver and its MOSFET, say.',
            type: 'array',
            minItems: 1,
            items: ref('relay-stage'),
          },
        },
      ),
      cite: 'needed',
    },
    'board-part': all.boardPart,
    ...(style === 'project' && { stage: stageOf(all) }),
    'load-type': { description: 'What sort of load it is.', enum: Object.keys(loads) },
    'driver-type': {
      description: 'What sort of driver it is.',
      enum: Object.keys(drivers).filter((type) => !drivers[type].only),
    },
    policy: {
      title: things.policy.title,
      description: `${things.policy.description} A name from the catalogue, or the figures.`,
      type: ['string', 'object'],
      properties: mapValues(things.policy.properties, (figure) =>
        figure.$ref ? { ...figure, ...ref('quantity') } : figure,
      ),
      examples: ['everyday', { current: '20 %' }],
    },
  };
}

/** What may stand in the output of a relay board: the keys of every type of driver that is one part. */
const stageKeys = (drivers, keys) => ({
  type: {
    description: 'What it is.',
    enum: ['npn', 'pnp', 'nmos', 'pmos', 'opto', 'open-drain', 'gate-driver', 'h-bridge'],
  },
  part: { description: 'A profile from the catalogue.', type: 'string' },
  ...keys(drivers['h-bridge']),
  ...keys(drivers['gate-driver']),
  ...keys(drivers.opto),
  ...keys(drivers['open-drain']),
  ...keys(drivers.pmos),
  ...keys(drivers.nmos),
  ...keys(drivers.pnp),
  ...keys(drivers.npn),
});

/** An entry of a project: what is common to its sort, the figures, and what only an entry has. */
function entryOf(fragment, common = {}) {
  const without = fragment.without ?? [];
  const kept = Object.fromEntries(Object.entries(common).filter(([key]) => !without.includes(key)));
  return mapping(fragment, { ...kept, ...fragment.properties, ...fragment.entry });
}

/** One stage of a driver: the keys of every type, without those that belong to the driver as a whole. */
function stageOf({ drivers, commonDriver }) {
  const types = Object.values(drivers).filter((fragment) => !fragment.only && !fragment.alone);
  const { part, type } = commonDriver.entry;
  const words = { title: 'Stage', description: 'A transistor, MOSFET or coupler in a row.' };
  const keys = types.map(({ properties, entry }) => ({ properties: { ...properties, ...entry } }));
  return mapping(words, { part, type, ...unionOf(keys) }, needsOne(['part', 'type']));
}

/** Keys by which an own part says what it is. */
const partIdentity = {
  extends: { description: 'The profile whose other figures it takes over.', type: 'string' },
  kind: {
    description: 'What sort of thing it is.',
    enum: [
      'chip',
      'controller',
      'expander',
      'array',
      'load',
      'driver',
      'clamp',
      'supply',
      'supply-part',
      'wire',
      'connector',
    ],
  },
  type: { description: 'Its type within the kind.', type: 'string' },
  title: { description: 'Its name for people.', type: 'string' },
};
export const partKeys = Object.keys(partIdentity);

/** Things that are worth nothing without their pins, rails and tables: an own part may state all that a profile states. */
const stateAll = ['chip', 'controller', 'expander', 'array'];

/** An own part of a project: the figures of what it turns out to be. */
const partOf = (fragment, kind) =>
  mapping(fragment, { ...partIdentity, ...fragment.properties, ...(stateAll.includes(kind) ? fragment.profile : {}) });

/** Every way a thing can stand in a project, by its sort and type: `load-led`, `driver-npn`, `clamp`. */
export function waysToStand({ loads, commonLoad, drivers, commonDriver, things }) {
  const entries = {};
  const parts = {};
  for (const [type, fragment] of Object.entries(loads)) {
    entries[`load-${type}`] = entryOf(fragment, commonLoad.entry);
    parts[`load-${type}`] = partOf(fragment, 'load');
  }
  for (const [type, fragment] of Object.entries(drivers)) {
    if (fragment.only !== 'profile') entries[`driver-${type}`] = entryOf(fragment, commonDriver.entry);
    if (!fragment.only) parts[`driver-${type}`] = partOf(fragment, 'driver');
  }
  for (const [kind, fragment] of Object.entries(things)) {
    if (fragment.entry) entries[kind] = entryOf(fragment);
    if (kind !== 'policy') parts[kind] = partOf(fragment, kind);
  }
  return { entries, parts };
}
