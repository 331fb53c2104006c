/**
 * Reads schemas/fragments/. A fragment describes one sort of thing once, in up to four lists of keys:
 * - `properties`: figures that a project's entry, an own part and a catalogue profile all have;
 * - `entry`: keys only where a project uses the thing; `without` names common ones that it has not;
 * - `profile`: keys only where the catalogue describes the thing;
 * - `defs`: shapes that the others refer to.
 * `only` says that the thing stands in no own part, and only in an `entry` or only in a `profile`.
 * `needs` lists keys of which an entry must have one, so that it says what it is.
 */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { filesBelow, inRoot } from './files.mjs';

const folder = 'schemas/fragments';
const read = (name) => JSON.parse(readFileSync(inRoot(folder, `${name}.json`), 'utf8'));

/** The fragments of a folder by name, but for what is common to them. */
const each = (name) =>
  Object.fromEntries(
    filesBelow(`${folder}/${name}`, '.json')
      .map((path) => basename(path, '.json'))
      .filter((type) => type !== 'common')
      .map((type) => [type, read(`${name}/${type}`)]),
  );

/** Names of the dimensions that have a definition of their own. */
export const figureNames = Object.keys(read('figures'));

export function readFragments() {
  const loads = each('loads');
  const chip = read('chip');
  const expander = read('expander');
  const supply = read('supply');
  const boardPart = read('board-part');
  // A supply that another one feeds is what stands in a board's supply tree; its diode's figures have shorter names.
  const { 'forward-voltage': _curve, 'maximum-current': _most, ...between } = boardPart.properties;
  const supplyPart = read('supply-part');
  const { from: _from, type: _type, upper: _upper, lower: _lower, ...partFigures } = between;
  return {
    // `other` is another word for a constant current: the rest that is not itemised.
    loads: { ...loads, other: { ...loads['constant-current'], title: 'Other' } },
    commonLoad: read('loads/common'),
    drivers: each('drivers'),
    commonDriver: read('drivers/common'),
    things: {
      clamp: read('clamp'),
      supply: { ...supply, entry: { ...between, ...supply.properties, ...supply.entry } },
      controller: read('controller'),
      array: read('array'),
      chip,
      // An expander is a chip with a few keys more.
      expander: { ...expander, properties: chip.properties, profile: { ...chip.profile, ...expander.profile } },
      'supply-part': { ...supplyPart, properties: { ...partFigures, ...supplyPart.properties } },
      wire: read('wire'),
      connector: read('connector'),
      policy: read('policy'),
    },
    boardPart,
    figures: read('figures'),
    shared: read('shared'),
    project: read('project'),
    profile: read('profile'),
  };
}
