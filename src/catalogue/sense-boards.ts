/** Controller boards: does everything in their supply tree and pin map lead somewhere? */
import { formatValue } from '../quantity/print.js';
import type { Path, Problem } from '../source/place.js';
import { packagesOf } from './packages.js';
import { field, isFields, type Profile } from './profile.js';
import { fault, fieldsOf, figureOf, highest, listOf, lowest, pointsOf, textOf } from './stated.js';

const sources = (from: unknown): readonly string[] => (Array.isArray(from) ? from : [from]).map(textOf);

/**
 * What is wrong with a board.
 *
 * @param look finds the profile of the chip
 */
export function senseBoard(profile: Profile, look: (id: string) => Profile | undefined): readonly Problem[] {
  const chip = look(textOf(profile['chip']));
  if (!chip) return [fault(['chip'], `there is no chip ${textOf(profile['chip'])}`)];
  const rails = fieldsOf(profile['rails']);
  const rail = (name: string): readonly Problem[] =>
    Object.hasOwn(rails, textOf(profile[name])) ? [] : [fault([name], `there is no rail ${textOf(profile[name])}`)];
  return [
    ...sensePinMap(profile, chip),
    ...sensePackage(profile, chip),
    ...senseTree(profile),
    ...senseRegulators(profile),
    ...rail('chip-supply'),
    ...(profile['draws'] === undefined ? [] : rail('draws-from')),
  ];
}

/** A board says which of the packages that its chip's limits tell apart is on it. */
function sensePackage(profile: Profile, chip: Profile): readonly Problem[] {
  const known = packagesOf(chip);
  const own = profile['package'];
  const right = known.length === 0 ? own === undefined : known.includes(textOf(own));
  return right
    ? []
    : [
        fault(
          ['package'],
          `limits of ${chip.id} are for these packages: ${known.join(', ') || 'none'}`,
          'the one that is on the board',
        ),
      ];
}

function sensePinMap(profile: Profile, chip: Profile): readonly Problem[] {
  const chipPins = new Set(listOf(chip['pins']).map(textOf));
  const header = fieldsOf(profile['pins']);
  const known = new Set([...Object.keys(header), ...chipPins]);
  const targets = Object.values(header).map(textOf);
  const inputOnly = listOf(profile['input-only']).map(textOf);
  const lost = (path: Path, pin: string): readonly Problem[] =>
    known.has(pin) ? [] : [fault(path, `there is no pin ${pin}`)];
  return [
    ...Object.entries(header).flatMap(([name, pin]) =>
      chipPins.has(textOf(pin)) ? [] : [fault(['pins', name], `${chip.id} has no pin ${textOf(pin)}`)],
    ),
    ...(new Set(targets).size === targets.length ? [] : [fault(['pins'], 'two header pins are one pin of the chip')]),
    ...inputOnly.flatMap((pin, i) => lost(['input-only', i], pin)),
    ...['reserved', 'strapping'].flatMap((name) =>
      Object.keys(fieldsOf(profile[name])).flatMap((pin) => lost([name, pin], pin)),
    ),
    ...Object.entries(fieldsOf(profile['pin-leds'])).flatMap(([name, led]) =>
      lost(['pin-leds', name, 'pin'], textOf(field(led, 'pin'))),
    ),
  ];
}

/** Every part and rail hangs on something that exists, and nothing feeds itself. */
function senseTree(profile: Profile): readonly Problem[] {
  const inlets = fieldsOf(profile['inlets']);
  const feeds = new Map<string, { readonly path: Path; readonly from: readonly string[] }>();
  const twice: Problem[] = [];
  for (const group of ['parts', 'rails'] as const) {
    for (const [name, part] of Object.entries(fieldsOf(profile[group]))) {
      const path = [group, name, 'from'];
      if (feeds.has(name) || Object.hasOwn(inlets, name)) twice.push(fault(path, `two things are called ${name}`));
      feeds.set(name, { path, from: sources(field(part, 'from')) });
    }
  }
  const lost = [...feeds.values()].flatMap(({ path, from }) =>
    from
      .filter((name) => !feeds.has(name) && !Object.hasOwn(inlets, name))
      .map((name) => fault(path, `there is no ${name}`)),
  );
  return [...twice, ...lost, ...loops(feeds)];
}

function loops(
  feeds: ReadonlyMap<string, { readonly path: Path; readonly from: readonly string[] }>,
): readonly Problem[] {
  const reaches = (name: string, goal: string, seen: Set<string>): boolean =>
    (feeds.get(name)?.from ?? []).some((next) => {
      if (next === goal) return true;
      if (seen.has(next)) return false;
      seen.add(next);
      return reaches(next, goal, seen);
    });
  return [...feeds].flatMap(([name, { path }]) =>
    reaches(name, name, new Set()) ? [fault(path, `${name} feeds itself`)] : [],
  );
}

/** A regulator's output and dropout fit under the highest input that it bears; its input window holds its output. */
function senseRegulators(profile: Profile): readonly Problem[] {
  return Object.entries(fieldsOf(profile['parts'])).flatMap(([name, part]) => {
    if (!isFields(part) || part['type'] !== 'linear-regulator') return [];
    const [output, input] = [figureOf(part, 'voltage', 'voltage'), figureOf(part, 'input', 'voltage')];
    const most = highest(input);
    if (output === undefined || most === undefined) return [];
    const dropout = Math.max(0, ...pointsOf(part, 'dropout', 'voltage', 'current').map(({ value }) => highest(value)!));
    const needs = lowest(output)! + dropout;
    return needs < most
      ? []
      : [
          fault(
            ['parts', name, part['dropout'] === undefined ? 'input' : 'dropout'],
            `${name} needs ${formatValue(needs, 'voltage')} before it, and bears ${formatValue(most, 'voltage')}`,
          ),
        ];
  });
}
