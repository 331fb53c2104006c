/** project.schema.json, for editors: every slot offers all that may stand in it, and less once the type is said. */
import { commonDefs, waysToStand } from './definitions.mjs';
import { finish } from './finish.mjs';
import { mapping, mapValues, needed, needsOne, prefixed, ref, unionOf } from './shapes.mjs';

export function projectSchema(all) {
  const { entries, parts } = waysToStand(all);
  const typed = (sort) => Object.keys(entries).filter((name) => name.startsWith(`${sort}-`));
  /** A load or driver: keys of all types, then those of the type that is said. */
  const slot = (sort, fragment) =>
    mapping(fragment, unionOf(typed(sort).map((name) => entries[name])), {
      ...needsOne(fragment.needs),
      allOf: typed(sort)
        .filter((name) => name !== 'driver-array' && name !== 'driver-stages')
        .map((name) => ({
          if: { properties: { type: { const: name.slice(sort.length + 1) } }, required: ['type'] },
          then: ref(`entry-${name}`),
        })),
    });
  const things = ['clamp', 'supply', 'controller', 'expander', 'array'];
  const defs = {
    ...commonDefs(all, 'project'),
    ...all.project.defs,
    load: slot('load', all.commonLoad),
    driver: slot('driver', all.commonDriver),
    ...Object.fromEntries(things.map((name) => [name, { ...entries[name], ...needsOne(all.things[name].needs) }])),
    part: mapping(
      { title: 'Own part', description: 'A profile of your own, for this file.' },
      unionOf(Object.values(parts)),
    ),
    ...prefixed(
      'entry-',
      Object.fromEntries([...typed('load'), ...typed('driver')].map((name) => [name, entries[name]])),
    ),
  };
  const { defs: _, ...root } = all.project;
  const finished = finish(root, 'project', { note: false });
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:ampledger:project:1',
    ...finished,
    $defs: needed(
      finished,
      mapValues(defs, (schema) => finish(schema, 'project')),
    ),
  };
}
