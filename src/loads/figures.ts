/**
 * Figures of one entry: what the project says of it first, then what its profile says. Every figure keeps its origin; a
 * figure that cannot be read is a problem with its place; `unknown` masks what the profile knows.
 */
import { citation } from '../catalogue/citation.js';
import type { Profile } from '../catalogue/profile.js';
import type { Dimension } from '../quantity/dimension.js';
import type { Interval } from '../quantity/interval.js';
import type { Point } from '../quantity/points.js';
import { parseQuantity } from '../quantity/parse.js';
import type { Quantity } from '../quantity/quantity.js';
import { closed } from '../quantity/quantity.js';
import type { Path, Problem } from '../source/place.js';
import type { Origin } from './branch-plan.js';

/** A figure with its origin. */
export interface Figure {
  readonly quantity: Quantity;
  readonly origin: Origin;
  /** Where it stands in the project file. */
  readonly path?: Path;
}

/** Points of a figure over its condition, in SI. */
export interface Curve {
  readonly points: readonly (Point & {
    readonly quantity: Quantity;
    /** No condition is stated: it holds everywhere. */
    readonly anywhere?: true;
  })[];
  readonly origin: Origin;
}

type Raw = Readonly<Record<string, unknown>>;

/** One place figures are looked for: an entry of the project, or a profile. */
export interface Layer {
  readonly data: Raw;
  /** Set for an entry of the project. */
  readonly path?: Path;
  readonly profile?: Profile;
  /** The keys on the way into the profile. */
  readonly inside?: readonly (string | number)[];
}

/** A figure of a profile that no document backs: it is common practice or from memory. */
export interface Unsourced {
  /** The profile and the way to the figure in it: `led-red-5mm forward-voltage at 10 mA`. */
  readonly figure: string;
  readonly basis: 'practice' | 'memory';
  readonly where: string;
  /** The origin under which the working names it: of points, that of the first. */
  readonly told: Origin;
}

/** Gathers what was assumed, so that the report can list it. */
export interface Remarks {
  problem(problem: Problem): void;
  assume(about: string, says: string, path?: Path): void;
  /** A figure of the project has neither tolerance nor range. */
  exact(path: Path): void;
  /** A figure that was read has no document behind it. */
  unsourced?(figure: Unsourced): void;
}

export const OWN_FIGURE: Origin = { document: 'the project file', basis: 'project' };

export class Figures {
  readonly about: string;
  readonly path: Path;
  private readonly layers: readonly Layer[];
  private readonly remarks: Remarks;
  /** What was read already: the channels of a board ask for the same figures again and again. */
  private readonly inside = new Map<string, Figures>();
  private readonly curves = new Map<string, Curve | undefined>();

  /** @param about the entry's name, for messages @param path its place in the project file */
  constructor(about: string, path: Path, layers: readonly Layer[], remarks: Remarks) {
    this.about = about;
    this.path = path;
    this.layers = layers;
    this.remarks = remarks;
  }

  private find(key: string): { raw: unknown; layer: Layer } | undefined {
    for (const layer of this.layers) {
      const raw = layer.data[key];
      if (raw !== undefined && raw !== null) return { raw, layer };
    }
    return undefined;
  }

  /** Whether anything is said under a key, `unknown` included. */
  says(key: string): boolean {
    return this.find(key) !== undefined;
  }

  /** Of several keys that state the same thing in other words, the one that the nearest layer has; in one layer the first. */
  nearest(...keys: readonly string[]): string | undefined {
    for (const { data } of this.layers) {
      const key = keys.find((each) => data[each] !== undefined && data[each] !== null);
      if (key !== undefined) return key;
    }
    return undefined;
  }

  /** Whether the project calls a figure unknown. */
  masked(key: string): boolean {
    const raw = this.find(key)?.raw;
    return raw === 'unknown' || (isMapping(raw) && raw['value'] === 'unknown');
  }

  /** The place of a key in the project file, or of the entry when the key comes from a profile. */
  at(key: string): Path {
    const found = this.find(key);
    return found?.layer.path ? [...found.layer.path, key] : this.path;
  }

  /** A word such as `low` or `opto`. */
  word(key: string): string | undefined {
    const raw = valueOf(this.find(key)?.raw);
    return typeof raw === 'string' ? raw : typeof raw === 'number' ? String(raw) : undefined;
  }

  /** Where a word comes from; undefined when nobody says it. */
  wordOrigin(key: string): Origin | undefined {
    const found = this.find(key);
    return found && this.origin([found.raw], found.layer, key);
  }

  /** A figure as it is written; of points the first. */
  text(key: string): string | undefined {
    const raw = this.find(key)?.raw;
    const first: unknown = valueOf(Array.isArray(raw) ? raw[0] : raw);
    return typeof first === 'string' || typeof first === 'number' ? String(first) : undefined;
  }

  /** A plain count. */
  count(key: string): number | undefined {
    const raw = this.find(key)?.raw;
    return typeof raw === 'number' ? raw : undefined;
  }

  flag(key: string): boolean {
    return this.find(key)?.raw === true;
  }

  /** The figures inside a mapping, layer by layer. */
  within(key: string): Figures {
    const known = this.inside.get(key) ?? this.enter(key);
    this.inside.set(key, known);
    return known;
  }

  private enter(key: string): Figures {
    const layers = this.layers.flatMap((layer) => {
      const raw = layer.data[key];
      const inside = [...(layer.inside ?? []), key];
      return isMapping(raw) ? [{ ...layer, data: raw, inside, ...(layer.path && { path: [...layer.path, key] }) }] : [];
    });
    return new Figures(`${this.about}.${key}`, this.at(key), layers, this.remarks);
  }

  /** The rows of a list, each with figures of its own; the first layer that has the list counts. */
  rows(key: string): readonly Figures[] {
    const found = this.find(key);
    if (found === undefined || !Array.isArray(found.raw)) return [];
    return found.raw.flatMap((raw: unknown, k) =>
      isMapping(raw)
        ? [
            new Figures(
              this.about,
              this.at(key),
              [
                {
                  ...found.layer,
                  data: raw,
                  inside: [...(found.layer.inside ?? []), key, k],
                  ...(found.layer.path && { path: [...found.layer.path, key, k] }),
                },
              ],
              this.remarks,
            ),
          ]
        : [],
    );
  }

  /** Where a row as a whole comes from: in a profile a row carries one source for all that it states. */
  rowOrigin(): Origin {
    const [layer] = this.layers;
    return layer === undefined ? OWN_FIGURE : this.origin([layer.data], layer);
  }

  /** The same figures with a profile's behind them. */
  over(profile: Profile | undefined): Figures {
    if (profile === undefined) return this;
    return new Figures(this.about, this.path, [...this.layers, { data: profile, profile }], this.remarks);
  }

  /** One figure; of several points the first. Undefined when nobody states it, or it is called unknown. */
  figure(key: string, dimension: Dimension): Figure | undefined {
    const found = this.find(key);
    if (found === undefined || this.masked(key)) return undefined;
    const first: unknown = Array.isArray(found.raw) ? found.raw[0] : found.raw;
    const path = found.layer.path && [...found.layer.path, key, ...(Array.isArray(found.raw) ? [0] : [])];
    const quantity = this.read(
      valueOf(first),
      dimension,
      path && isMapping(first) ? [...path, 'value'] : path,
      found.layer,
      key,
    );
    return quantity && { quantity, origin: this.origin([first], found.layer, key), ...(path && { path }) };
  }

  /** A figure's closed interval in SI, or undefined. */
  interval(key: string, dimension: Dimension): Interval | undefined {
    const figure = this.figure(key, dimension);
    return figure && closed(figure.quantity);
  }

  /**
   * A figure's points over its condition; a figure without a condition is one point that holds everywhere.
   *
   * @param at dimension of the condition
   * @param close what closes an open bound
   */
  curve(key: string, dimension: Dimension, at: Dimension, close: Parameters<typeof closed>[1] = {}): Curve | undefined {
    if (!this.curves.has(key)) this.curves.set(key, this.readCurve(key, dimension, at, close));
    return this.curves.get(key);
  }

  private readCurve(
    key: string,
    dimension: Dimension,
    at: Dimension,
    close: Parameters<typeof closed>[1],
  ): Curve | undefined {
    const found = this.find(key);
    if (found === undefined || this.masked(key)) return undefined;
    const list: readonly unknown[] = Array.isArray(found.raw) ? found.raw : [found.raw];
    const points = list.flatMap((item, k) => {
      const path = found.layer.path && [...found.layer.path, key, ...(Array.isArray(found.raw) ? [k] : [])];
      const inside = (name: string): Path | undefined => (path && isMapping(item) ? [...path, name] : path);
      const quantity = this.read(valueOf(item), dimension, inside('value'), found.layer, key);
      const condition =
        isMapping(item) && item['at'] !== undefined
          ? this.read(item['at'], at, inside('at'), found.layer, key)
          : undefined;
      if (quantity === undefined) return [];
      const holds = condition ? { at: closed(condition).typ } : { at: 0, anywhere: true as const };
      return [{ ...holds, value: closed(quantity, close), quantity }];
    });
    if (points.length === 0) return undefined;
    return { points: points.sort((a, b) => a.at - b.at), origin: this.origin(list, found.layer, key) };
  }

  /** Lists a value that the file leaves open. */
  assume(says: string, about = this.about): void {
    this.remarks.assume(about, says, this.path);
  }

  problem(key: string, says: string, expected?: string): void {
    this.remarks.problem({ path: this.at(key), on: 'value', says, ...(expected && { expected }) });
  }

  private read(
    raw: unknown,
    dimension: Dimension,
    path: Path | undefined,
    layer: Layer,
    key: string,
  ): Quantity | undefined {
    if (typeof raw !== 'string' && typeof raw !== 'number') {
      if (path) this.remarks.problem({ path, on: 'value', says: `\`${key}\` has to be a quantity` });
      return undefined;
    }
    const parsed = parseQuantity(raw, dimension);
    if ('quantity' in parsed) {
      if (parsed.quantity.exact && path) this.remarks.exact(path);
      return parsed.quantity;
    }
    // An own profile may hold what nothing else asked for so far: it is told where it is used.
    const whose = path === undefined && layer.profile ? `in the profile \`${layer.profile.id}\`, \`${key}\`: ` : '';
    const { problem, expected } = parsed;
    this.remarks.problem({ path: path ?? this.path, on: 'value', says: whose + problem, expected });
    return undefined;
  }

  /** Where a figure comes from; of points, the first. Each that no document backs is noted. */
  private origin(items: readonly unknown[], layer: Layer, key?: string): Origin {
    const { profile } = layer;
    if (profile === undefined) return OWN_FIGURE;
    const cites = items.map((item) => citation(isMapping(item) ? item['cite'] : undefined, profile.documents));
    const told = cites[0] ?? OWN_FIGURE;
    for (const [k, cite] of cites.entries()) {
      if (cite === undefined || cite.basis === 'document') continue;
      const { basis, where = '' } = cite;
      const at = isMapping(items[k]) ? items[k]['at'] : undefined;
      const way = [...(layer.inside ?? []), ...(key === undefined ? [] : [key])].join('.');
      const figure = `${profile.id} ${way}${at === undefined ? '' : ` at ${String(at)}`}`;
      this.remarks.unsourced?.({ figure, basis, where, told });
    }
    return told;
  }
}

export const isMapping = (raw: unknown): raw is Raw => typeof raw === 'object' && raw !== null && !Array.isArray(raw);

const valueOf = (item: unknown): unknown => (isMapping(item) ? item['value'] : item);
