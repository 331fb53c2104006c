/** Which profiles somebody looks for: by kind, type, voltage, channels and words. */
import { documentText } from './citation.js';
import { headline } from './headline.js';
import { field, type Fields, isFields, isFigure, type Profile } from './profile.js';
import { highest, lowest, quantityOf } from './stated.js';

export interface Wanted {
  readonly kind?: string;
  readonly type?: string;
  /** Volts. */
  readonly volts?: number;
  readonly channels?: number;
  /** All of them have to be somewhere in its id, title, type, headline or documents. */
  readonly words?: readonly string[];
}

/** How far a rated voltage may be from the one that is looked for. */
const NEAR = 0.05;

/** Voltages that a thing is made for, windows that it works in, and voltages that it bears. */
const RATED = ['voltage', 'coil.voltage', 'zener-voltage'];
const WINDOWS = ['supply-voltage', 'supply.operating', 'input.window', 'input'];
const BORNE = ['maximum-voltage', 'reverse-voltage'];

export const fits = (profile: Profile, wanted: Wanted): boolean =>
  (wanted.kind === undefined || profile.kind === wanted.kind) &&
  (wanted.type === undefined || profile.type === wanted.type) &&
  (wanted.channels === undefined || profile['channels'] === wanted.channels) &&
  (wanted.volts === undefined || worksAt(profile, wanted.volts)) &&
  (wanted.words ?? []).every((word) => haystack(profile).includes(word.toLowerCase()));

const haystack = (profile: Profile): string =>
  [
    profile.id,
    profile.title,
    profile.kind,
    profile.type ?? '',
    headline(profile),
    ...Object.values(profile.documents).map(documentText),
  ]
    .join(' ')
    .toLowerCase();

/** Rated for that voltage, or with it in its window, or made to bear it; of a board, one of its rails. */
function worksAt(profile: Profile, volts: number): boolean {
  const at = (of: Fields, way: string): unknown => way.split('.').reduce<unknown>((node, key) => field(node, key), of);
  const spans = (of: Fields, ways: readonly string[]): readonly (readonly [low: number, high: number])[] =>
    ways.flatMap((way) => {
      const figure = at(of, way);
      const quantity = isFigure(figure) ? quantityOf(figure.value, 'voltage') : undefined;
      return quantity ? [[lowest(quantity)!, highest(quantity)!] as const] : [];
    });
  const parts = isFields(profile['parts']) ? Object.values(profile['parts']).filter(isFields) : [];
  const rated = [profile, ...parts].flatMap((each) => spans(each, RATED));
  if (rated.length > 0) return rated.some(([low, high]) => volts >= low * (1 - NEAR) && volts <= high * (1 + NEAR));
  const windows = spans(profile, WINDOWS);
  if (windows.length > 0) return windows.some(([low, high]) => volts >= low && volts <= high);
  return spans(profile, BORNE).some(([, high]) => volts <= high);
}
