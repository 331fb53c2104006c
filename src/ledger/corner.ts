/**
 * A corner: one choice of extreme values of everything uncertain. Every parameter has one value in it wherever it appears:
 * one ambient a place, one voltage a rail, one output resistance a level for all pins.
 */
import type { Interval } from '../quantity/interval.js';
import type { LineRecipe, Recipe } from '../loads/account-plan.js';
import type { Project } from '../project/project.js';
import type { Build } from './builds.js';
import { ambientFigure, within } from './builds.js';
import type { Feeds } from './feeds.js';

export type End = 'low' | 'typ' | 'high';

/**
 * How the members of a network lean.
 * `high` draws the most (lowest resistances and drops), `low` the least, `peak` is `high` with stall and start currents,
 * `second` with what these come to over one second (their root mean square);
 * `starved` lets the least voltage reach the load (losses highest, the load heavy), `flooded` the most;
 * `stalled` is `starved` with stall and start currents;
 * `calm` is `high` and `calm-starved` is `starved` just before a peak that is as long as to be the most of the draw itself;
 * `warm` is `flooded` with the fullest junctions, which a driven base turns most into heat in.
 */
export type Lean =
  'low' | 'typ' | 'high' | 'peak' | 'second' | 'starved' | 'stalled' | 'flooded' | 'warm' | 'calm' | 'calm-starved';

/** What of peaks a question sees: nothing, the peaks themselves, or their root mean square over one second. */
export type Peaks = false | true | 'rms';

/** How circuits in question lean; of a signal line it says what becomes of its node, and each branch leans so. */
export type AskedLean = Lean | LineRecipe;

/** Where in its range an ambient stands. */
export type Ambient = 'cold' | 'typ' | 'hot';

export interface Corner {
  readonly ambient: Ambient;
  /** The place that stands at that ambient; absent: the project's own surroundings. */
  readonly place?: string;
  /** The others' ambients, by place; the project's own surroundings are ''. Absent: they stand as `ambient` does. */
  readonly elsewhere?: ReadonlyMap<string, Ambient>;
  /** Voltages of the supplies. */
  readonly sources: End;
  /** Output voltages of regulators. */
  readonly outputs: End;
  /** Losses of fuses and diodes on the way. */
  readonly losses: End;
  /** The circuits in question: what is switched, and what switches it. */
  readonly load: AskedLean;
  readonly control: AskedLean;
  /** Every other circuit. */
  readonly rest: Lean;
  /** What else hangs on a supply that stands apart leans so that it stands there: much pulls it down, little leaves it high. */
  readonly follows?: true;
  /** What feeds a rail from a stiffer supply leans the other way than what draws from it. */
  readonly pushed?: true;
  /** One resistance in question at a value of its own, ohms. */
  readonly tuned?: { readonly part: string; readonly ohms: number };
  /** Ends of supplies and regulators that feed a part of the circuit alone and so can pull the other way. */
  readonly apart?: ReadonlyMap<string, End>;
  /** Which of several sources feeds a node, where that is not left to which of them stands highest. */
  readonly feeds?: Feeds;
  /** The figures of one build instead: of the above only whether peaks flow still counts. */
  readonly build?: Build;
}

export const TYPICAL: Corner = {
  ambient: 'typ',
  sources: 'typ',
  outputs: 'typ',
  losses: 'typ',
  load: 'typ',
  control: 'typ',
  rest: 'typ',
};

const STRONG = { sources: 'high', outputs: 'high', losses: 'low', rest: 'low' } as const;
const WEAK = { sources: 'low', outputs: 'low', losses: 'high', rest: 'high' } as const;

type Cast = Omit<Corner, 'ambient' | 'apart'>;

/** The corners a recipe asks for, ambient and control-side supplies apart. */
const CASTS: { readonly [R in Exclude<Recipe, LineRecipe>]: readonly Cast[] } = {
  'draw-most': [{ ...STRONG, load: 'high', control: 'high' }],
  'draw-least': [{ ...WEAK, load: 'low', control: 'low' }],
  // Where a resistor in series weighs more than what the driver keeps, most current is the hottest.
  hottest: [
    { ...STRONG, load: 'starved', control: 'warm' },
    { ...STRONG, load: 'high', control: 'warm' },
  ],
  lightest: [{ ...STRONG, load: 'low', control: 'low' }],
  starved: [{ ...WEAK, load: 'starved', control: 'starved' }],
  flooded: [{ ...STRONG, load: 'flooded', control: 'flooded' }],
  'drive-worst': [
    { ...WEAK, load: 'high', control: 'starved' },
    { ...STRONG, load: 'high', control: 'starved' },
  ],
  'drive-best': [
    { ...WEAK, load: 'low', control: 'flooded' },
    { ...STRONG, load: 'low', control: 'flooded' },
  ],
  'let-go-worst': [
    { ...WEAK, load: 'high', control: 'flooded' },
    { ...STRONG, load: 'high', control: 'flooded' },
  ],
  'let-go-best': [{ ...WEAK, load: 'low', control: 'starved' }],
};

/** Supplies and regulators that feed one side of a circuit alone. */
export interface Apart {
  /** The rail of the pins that control it. */
  readonly pins: readonly string[];
  /** What else feeds the control side: a relay board's logic supply. */
  readonly control: readonly string[];
  /** What feeds pins and control side alike, and not the load: the controller's rail beside a coil supply of its own. */
  readonly both: readonly string[];
}

/** Where they stand when it matters: a weak drive is low all through; a coupler lets go least when its pin is too low to match its supply. */
const PULLS: {
  readonly [R in Exclude<Recipe, LineRecipe>]?: { readonly pins: End; readonly control: End; readonly both?: End };
} = {
  'drive-worst': { pins: 'low', control: 'low', both: 'low' },
  'drive-best': { pins: 'high', control: 'high', both: 'high' },
  'let-go-worst': { pins: 'low', control: 'high' },
  'let-go-best': { pins: 'high', control: 'low' },
};

/** All corners of a recipe. @param peaks what of the load's peaks counts */
export function cornersOf(recipe: Exclude<Recipe, LineRecipe>, apart: Apart, peaks: Peaks): readonly Corner[] {
  const pulls = PULLS[recipe];
  const ends = new Map<string, End>();
  for (const side of ['pins', 'control', 'both'] as const)
    for (const id of apart[side]) if (pulls?.[side] !== undefined) ends.set(id, pulls[side]);
  if (ends.size === 0) return plainFor(peaks)[recipe];
  return spelled(recipe, ends, peaks);
}

function spelled(recipe: Exclude<Recipe, LineRecipe>, apart: Corner['apart'], peaks: Peaks): Corner[] {
  return CASTS[recipe].flatMap((cast) => {
    // What stands at that end anyhow does not pull apart.
    const pulling = new Map([...(apart ?? [])].filter(([, end]) => end !== cast.sources));
    return (['cold', 'hot'] as const).map((ambient, k) => {
      const load = peakedLean(cast.load, peaks);
      // Others stall on the same rail as well.
      const rest = load === 'stalled' ? 'peak' : cast.rest;
      if (apart !== undefined && pulling.size === 0) return plainOf(recipe, peaks, cast, k);
      return { ...cast, ...(pulling.size > 0 && { apart: pulling, follows: true as const }), ambient, load, rest };
    });
  });
}

/** A lean with the load's peaks. */
const peakedLean = (lean: AskedLean, peaks: Peaks): AskedLean => {
  if (lean === 'high' && peaks) return peaks === 'rms' ? 'second' : 'peak';
  return lean === 'starved' && peaks === true ? 'stalled' : lean;
};

/** The shared corner of a recipe with nothing apart. */
const plainOf = (recipe: Exclude<Recipe, LineRecipe>, peaks: Peaks, cast: Cast, ambient: number): Corner =>
  plainFor(peaks)[recipe][2 * CASTS[recipe].indexOf(cast) + ambient]!;

const RECIPES = Object.keys(CASTS) as Exclude<Recipe, LineRecipe>[];
const spellAll = (peaks: Peaks) =>
  Object.fromEntries(RECIPES.map((r) => [r, spelled(r, undefined, peaks)])) as unknown as Record<
    Exclude<Recipe, LineRecipe>,
    readonly Corner[]
  >;
/** The same objects for everybody who asks, so that equal questions are seen to be equal at once. */
const PLAIN = spellAll(false);
const PLAIN_PEAKS = spellAll(true);
const PLAIN_RMS = spellAll('rms');
const plainFor = (peaks: Peaks) => (peaks === 'rms' ? PLAIN_RMS : peaks ? PLAIN_PEAKS : PLAIN);

/** Where what pushes into a line and what feeds its receiver stand, and how others lean, when its recipe is at its worst. */
const LINES: {
  readonly [R in LineRecipe]: { readonly from: End; readonly at: readonly End[]; readonly rest: Lean };
} = {
  raised: { from: 'high', at: ['low', 'high'], rest: 'low' },
  lowered: { from: 'low', at: ['low', 'high'], rest: 'high' },
  pressed: { from: 'high', at: ['low'], rest: 'high' },
  loaded: { from: 'high', at: ['low', 'high'], rest: 'low' },
  braked: { from: 'high', at: ['low', 'high'], rest: 'low' },
  eased: { from: 'low', at: ['high'], rest: 'low' },
  idle: { from: 'low', at: ['low', 'high'], rest: 'low' },
  lifted: { from: 'high', at: ['high'], rest: 'low' },
  sunk: { from: 'low', at: ['low'], rest: 'high' },
};

export const isLineRecipe = (recipe: Recipe): recipe is LineRecipe => recipe in LINES;

/** Supplies and regulators at the two ends of a line; what feeds both ends stands with all others. */
export interface Ends {
  readonly from: readonly string[];
  readonly at: readonly string[];
  readonly below: boolean;
}

/** All corners of a line's recipe: what feeds one end alone may stand anywhere, whatever the others do. */
export function lineCornersOf(recipe: LineRecipe, { from, at, below }: Ends): readonly Corner[] {
  const { rest, ...stand } = LINES[recipe];
  // What goes below ground as well as above a supply pushes least in between.
  const pushing: readonly End[] = below
    ? ['low', ...(recipe === 'eased' ? (['typ'] as const) : []), 'high']
    : [stand.from];
  const receiving: readonly End[] = at.length === 0 ? [stand.at[0]!] : stand.at;
  return pushing.flatMap((push) =>
    receiving.flatMap((feed) => {
      const apart = new Map<string, End>([
        ...from.map((id) => [id, push] as const),
        ...at.map((id) => [id, feed] as const),
      ]);
      return (['low', 'high'] as const).flatMap((sources) =>
        (['cold', 'hot'] as const).map((ambient): Corner => ({
          ambient,
          sources,
          outputs: sources,
          losses: sources === 'low' ? 'high' : 'low',
          load: recipe,
          control: recipe,
          rest,
          ...(apart.size > 0 && { apart, follows: true as const }),
        })),
      );
    }),
  );
}

/** What each lean is without its stalls and starts. */
const CALM: { readonly [L in AskedLean]?: Lean } = { peak: 'high', stalled: 'starved' };
/** The same where peaks last so long that they are the most of a draw. */
const LONG_CALM: typeof CALM = { peak: 'calm', stalled: 'calm-starved' };
const calms = { short: new WeakMap<Corner, Corner>(), long: new WeakMap<Corner, Corner>() };

/** A corner just before the peaks that flow in it; itself where none do. @param long any of them is the most of its draw itself */
export function calmed(corner: Corner, long = false): Corner {
  const { load, control, rest } = corner;
  const without = long ? LONG_CALM : CALM;
  if (without[load] === undefined && without[control] === undefined && without[rest] === undefined) return corner;
  const known = long ? calms.long : calms.short;
  const calm = known.get(corner) ?? {
    ...corner,
    load: without[load] ?? load,
    control: without[control] ?? control,
    rest: without[rest] ?? rest,
  };
  known.set(corner, calm);
  return calm;
}

const pushes = new WeakMap<Corner, readonly Corner[]>();

/**
 * A corner where something feeds a rail from a stiffer supply: that leans the other way than the rest, and where it outweighs
 * what is drawn, losses before the rail raise it, so that they stand at either end.
 */
export function pushing(corner: Corner): readonly Corner[] {
  const pushed = { ...corner, pushed: true as const };
  const found = pushes.get(corner) ?? [pushed, { ...pushed, losses: opposite(corner.losses) }];
  pushes.set(corner, found);
  return found;
}

/** Whether circuits other than those in question should be few (`STRONG` supplies) or many. */
export const wantsCrowd = ({ rest }: Corner): boolean => rest === 'high' || rest === 'peak' || rest === 'calm';

/** A short key; two corners with one key are the same corner. */
export const cornerKey = (c: Corner): string =>
  `${c.ambient}${c.sources}${c.outputs}${c.losses}${c.load}${c.control}${c.rest}${c.apart ? [...c.apart].join() : ''}${c.follows ?? ''}${c.pushed ? 'pushed' : ''}${c.place ? `@${c.place}` : ''}${c.elsewhere ? [...c.elsewhere].join() : ''}${c.tuned ? `${c.tuned.part}=${c.tuned.ohms}` : ''}${c.feeds ? `<${[...c.feeds].map(([node, f]) => `${node} ${f.link}`).join()}` : ''}`;

/** The value of an interval at an end. */
export const atEnd = (interval: Interval, end: End): number =>
  end === 'typ' ? interval.typ : end === 'low' ? interval.min : interval.max;

export const opposite = (end: End): End => (end === 'low' ? 'high' : end === 'high' ? 'low' : 'typ');

/** Where in its range the ambient of a place stands in a corner. */
export const ambientAt = (corner: Corner, place: string | undefined): Ambient =>
  place === corner.place ? corner.ambient : (corner.elsewhere?.get(place ?? '') ?? corner.ambient);

/** Degrees Celsius of a place in a corner. */
export function celsiusOf(
  { ambient, places }: Pick<Project, 'ambient' | 'places'>,
  corner: Corner,
  place: string | undefined,
): number {
  const range = (place === undefined ? undefined : places.get(place)) ?? ambient;
  if (corner.build) return within(range, corner.build.share(ambientFigure(place)));
  const at = ambientAt(corner, place);
  return at === 'typ' ? range.typ : at === 'cold' ? range.min : range.max;
}

/** Up to so many other places each is tried at either end; more of them stand at one end together. */
const MOST_ELSEWHERE = 3;

/**
 * Corners as an account in a place needs them: the other places' ambients move by themselves, so each is tried cold and hot.
 *
 * @param places the names of all that anything stands in; '' is the project's own surroundings
 */
export function cornersIn(
  corners: readonly Corner[],
  place: string | undefined,
  places: readonly string[],
): readonly Corner[] {
  const others = places.filter((other) => other !== (place ?? ''));
  const own = place === undefined ? {} : { place };
  if (others.length === 0) return place === undefined ? corners : corners.map((c) => ({ ...c, ...own }));
  const many = others.length > MOST_ELSEWHERE ? 2 : 2 ** others.length;
  return corners.flatMap((corner) =>
    Array.from({ length: many }, (_, k): Corner => {
      const isHot = (other: number): boolean => ((many === 2 ? k : k >> other) & 1) === 1;
      const elsewhere = new Map(others.map((other, n) => [other, isHot(n) ? ('hot' as const) : ('cold' as const)]));
      return { ...corner, ...own, elsewhere };
    }),
  );
}
