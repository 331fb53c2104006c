/** The project around a load: pins, supplies, parts and array channels by name, with what is used noted down. */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { ProfileKind } from '../catalogue/profile.js';
import { Figures, isMapping } from '../loads/figures.js';
import type { Signal } from '../loads/lines/signal.js';
import type { ArrayChannel, Bench } from '../loads/lowering.js';
import type { EntryKind } from '../source/check.js';
import { checkEntry, isEntryKind } from '../source/check.js';
import { didYouMean, oneOf } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import type { Chip } from './chip.js';
import { nodeNamed, pinNamed, spelledOut } from './names.js';
import type { Places } from './places.js';
import type { PinUse } from './pin-plan.js';
import type { Gathered } from './remarks.js';
import type { Tree } from './tree.js';
import type { Wires } from './wires.js';

/** An array entry with its figures. */
export interface ArrayEntry {
  readonly figures: Figures;
  readonly channels: number;
  readonly common?: string;
  readonly path: Path;
}

export interface Surroundings {
  readonly tree: Tree;
  readonly catalogue: Catalogue;
  readonly remarks: Gathered;
  readonly chips: ReadonlyMap<string, Chip>;
  readonly controllers: readonly string[];
  readonly arrays: ReadonlyMap<string, ArrayEntry>;
  readonly wires: Wires;
  /** Answers to what the file leaves open, by load and figure: 'vents input.indicator'. */
  readonly answers: ReadonlyMap<string, string>;
  readonly places: Places;
}

export interface UsedBench extends Bench {
  readonly uses: readonly PinUse[];
  readonly signals: readonly Signal[];
  readonly channels: readonly ArrayChannel[];
}

export function benchOf(around: Surroundings): UsedBench {
  const { tree, catalogue, remarks, chips, controllers, arrays, wires } = around;
  const uses: PinUse[] = [];
  const signals: Signal[] = [];
  const channels: ArrayChannel[] = [];

  const pin = (name: unknown, path: Path) => {
    const bound = pinNamed(chips, controllers, String(name), path);
    if ('found' in bound) return bound.found;
    remarks.problem(bound.problem);
    return undefined;
  };
  const note = (
    found: NonNullable<ReturnType<typeof pin>>,
    use: Omit<PinUse, 'pin' | 'label' | 'reserved' | 'inputOnly'>,
  ): void => {
    const { account, told, reserved, inputOnly } = found.pin;
    uses.push({
      ...use,
      pin: account,
      label: told,
      ...(reserved !== undefined && { reserved }),
      ...(inputOnly && { inputOnly }),
    });
  };

  return {
    uses,
    signals,
    channels,
    outputPin(name, path, by, active) {
      const names: readonly unknown[] = Array.isArray(name) ? name : [name];
      const found = names.flatMap((each, k) => pin(each, names.length > 1 ? [...path, k] : path) ?? []);
      if (found.length < names.length) return undefined;
      const accounts = found.map((f) => f.pin.account);
      const twice = accounts.findIndex((account, k) => accounts.indexOf(account) < k);
      if (twice >= 0) {
        remarks.problem({
          path: [...path, twice],
          on: 'value',
          says: `pin ${found[twice]!.pin.told} is joined with itself`,
          expected: 'each pin once',
        });
        return undefined;
      }
      const joined = found.length > 1 ? { joined: accounts } : {};
      found.forEach((f, k) =>
        note(f, { by, as: 'output', active, path: found.length > 1 ? [...path, k] : path, ...joined }),
      );
      const [first, ...others] = found.map((f) => f.chip.bind(f.pin));
      return others.length > 0 ? { ...first!, joined: others } : first;
    },
    inputPin(name, path, by, driven) {
      const found = pin(name, path);
      if (found === undefined) return undefined;
      note(found, { by, as: driven ? 'driven' : 'input', path });
      return found.chip.input(found.pin);
    },
    outside(id, title, volts, path, life) {
      const outside = { outside: true as const, ...(life !== undefined && { life }) };
      tree.add({ id, kind: 'joint', title, path, limits: [], volts, ...outside });
      return id;
    },
    elsewhere(id, title, volts, path) {
      tree.add({ id, kind: 'joint', title, path, limits: [], volts, elsewhere: true });
      return id;
    },
    sources: (node) => tree.sources(node),
    assume: (about, says, path) => remarks.assume(about, says, path),
    signalPin(name, path, by, role, end) {
      const found = pin(name, path);
      if (found === undefined) return;
      note(found, end.isOutput ? { by, as: 'output', active: 'high', path } : { by, as: 'signal', role, path });
      signals.push({ ...end, output: found.chip.bind(found.pin), input: found.chip.input(found.pin), by, role, path });
    },
    pinNames(raw, path) {
      if (raw === undefined) return [];
      const list: readonly unknown[] = Array.isArray(raw) ? raw : [raw];
      return list.flatMap((item, k) => {
        const at = Array.isArray(raw) ? [...path, k] : path;
        const names = spelledOut(String(item));
        if (names === undefined) {
          remarks.problem({
            path: at,
            on: 'value',
            says: `\`${String(item)}\` is no range of pins`,
            expected: '`D5..D11`, or `bar.q0..q7`',
          });
          return [];
        }
        return names.map((name) => ({ name, path: at }));
      });
    },
    node(name, path) {
      const ids = tree.nodes.filter((n) => n.kind !== 'joint').map((n) => n.id);
      const bound = nodeNamed(ids, controllers, String(name), path);
      // A load that a wire leads to is fed at the wire's end.
      if ('found' in bound) return wires.through(bound.found, String(path[1]));
      remarks.problem(bound.problem);
      return undefined;
    },
    nominal: (node) => tree.window(node).typ,
    window: (node) => tree.window(node),
    unsteady: (node) => tree.unsteady(node),
    check(kind, raw, path) {
      if (isEntryKind(kind)) checkEntry(kind as EntryKind, raw, path).forEach(remarks.problem);
    },
    part(kind, raw, path, about) {
      if (!isMapping(raw)) return undefined;
      const named = raw['part'];
      const profile = typeof named === 'string' ? catalogue.profile(named) : undefined;
      if (typeof named === 'string' && profile?.kind !== kind) {
        reportPart(around, named, [...path, 'part'], kind);
        return undefined;
      }
      const type = typeof raw['type'] === 'string' ? raw['type'] : profile?.type;
      if (type === undefined) {
        remarks.problem({
          path,
          on: 'key',
          says: `this ${kind} says neither what part nor what type it is`,
          expected:
            kind === 'driver' ? '`part: npn-2n2222a`, or `type: npn`' : '`part: diode-1n4148`, or `type: diode`',
        });
        return undefined;
      }
      const sort = kind === 'clamp' ? 'clamp' : `driver:${type}`;
      if (isEntryKind(sort)) checkEntry(sort as EntryKind, raw, path).forEach(remarks.problem);
      return { figures: new Figures(about, path, [{ data: raw, path }], remarks).over(profile), type };
    },
    driverType(raw) {
      if (!isMapping(raw)) return undefined;
      const named = raw['part'];
      return typeof raw['type'] === 'string'
        ? raw['type']
        : typeof named === 'string'
          ? catalogue.profile(named)?.type
          : undefined;
    },
    behind(figures, kind) {
      const named = figures.word('part');
      if (named === undefined) return figures;
      const profile = catalogue.profile(named);
      if (profile?.kind === kind) return figures.over(profile);
      reportPart(around, named, figures.at('part'), kind);
      return figures;
    },
    channel(name, path) {
      const [owner = '', number = ''] = String(name).split('.');
      const array = arrays.get(owner);
      const n = Number(number);
      if (array === undefined || !Number.isInteger(n) || n < 1 || n > array.channels) {
        const known = [...arrays].flatMap(([id, a]) => Array.from({ length: a.channels }, (_, k) => `${id}.${k + 1}`));
        remarks.problem({
          path,
          on: 'value',
          says: `there is no array channel \`${String(name)}\``,
          expected: didYouMean(
            String(name),
            known,
            array
              ? `${owner}.1 to ${owner}.${array.channels}`
              : 'an entry in `arrays:`, and its channel, as in `sink.1`',
          ),
        });
        return undefined;
      }
      return {
        figures: array.figures,
        array: owner,
        channel: n,
        ...(array.common !== undefined && { common: array.common }),
      };
    },
    answer: (about, figure) => around.answers.get(`${about} ${figure}`),
    use: (channel) => void channels.push(channel),
    usersOf: (array, channel) => channels.filter((c) => c.array === array && c.channel === channel),
    problem: (problem) => remarks.problem(problem),
  };
}

/** A part that is not in the catalogue, or is another kind of thing. */
export function reportPart(
  around: Pick<Surroundings, 'catalogue' | 'remarks'>,
  name: string,
  path: Path,
  kind: ProfileKind,
): void {
  const { catalogue, remarks } = around;
  const other = catalogue.profile(name);
  const known = catalogue.ids(kind);
  remarks.problem({
    path,
    on: 'value',
    says: other ? `\`${name}\` is a ${other.kind}, not a ${kind}` : `no ${kind} \`${name}\` is in the catalogue`,
    expected: didYouMean(name, known, known.length === 0 ? `a ${kind} of the catalogue` : oneOf(known)),
  });
}
