/**
 * The schema that our own validators of a project are made of. Its slots hold only what says which type an entry is;
 * each entry has a definition of its own, for when its type is known. So one wrong load gives one error, not one a type.
 */
import { commonDefs, partKeys, waysToStand } from './definitions.mjs';
import { finish } from './finish.mjs';
import { mapValues, needsOne, prefixed, unionOf } from './shapes.mjs';

/** Keys by which an entry says what it is: checked where it stands, so not once more in its own definition. */
const entryKeys = ['part', 'type', 'like', 'array', 'stages', 'board', 'chip'];

const pick = (record, keys) => Object.fromEntries(keys.filter((key) => record[key]).map((key) => [key, record[key]]));
const unchecked = (schema, keys) => ({
  ...schema,
  properties: mapValues(schema.properties, (value, key) => (keys.includes(key) ? true : value)),
});
const slot = (keys, names, fragment = {}) => ({
  type: 'object',
  properties: pick(keys, names),
  additionalProperties: true,
  ...needsOne(fragment.needs),
});

export function checkerSchema(all) {
  const { entries, parts } = waysToStand(all);
  const { things, commonLoad, commonDriver, drivers } = all;
  const checked = mapValues(entries, (entry) => unchecked(entry, entryKeys));
  const loads = Object.keys(checked).filter((name) => name.startsWith('load-'));
  const own = (name) => ({ ...things[name].properties, ...things[name].entry });
  const defs = {
    ...commonDefs(all, 'project'),
    ...all.project.defs,
    powered: { type: ['string', 'object'], additionalProperties: true },
    load: slot(commonLoad.entry, entryKeys, commonLoad),
    driver: slot({ ...commonDriver.entry, ...drivers.array.entry, ...drivers.stages.entry }, entryKeys, commonDriver),
    stage: slot(commonDriver.entry, entryKeys, { needs: ['part', 'type'] }),
    ...Object.fromEntries(
      ['clamp', 'supply', 'controller', 'expander', 'array'].map((name) => [
        name,
        slot(own(name), entryKeys, things[name]),
      ]),
    ),
    part: slot(Object.values(parts)[0].properties, partKeys),
    'entry-load': { type: 'object', properties: unionOf(loads.map((name) => checked[name])) },
    ...prefixed('entry-', checked),
    ...prefixed(
      'part-',
      mapValues(parts, (part) => unchecked(part, partKeys)),
    ),
  };
  const { defs: _, ...frame } = all.project;
  return {
    $id: 'urn:ampledger:checker:1',
    $defs: {
      frame: finish(frame, 'project', { note: false }),
      ...mapValues(defs, (schema) => finish(schema, 'project')),
    },
  };
}
