import type { Dimension } from './dimension.js';
import { type ResistanceCode, resistanceCode } from './resistance-code.js';

/** One figure as written, before its unit is looked up. */
export interface Figure {
  readonly text: string;
  readonly digits: string;
  /** Empty when none was written: then the figure after it may lend its own. */
  readonly unit: string;
  readonly waveform: 'AC' | 'DC' | undefined;
  readonly code: ResistanceCode | undefined;
}

/** `value` is a figure that stands alone, or before a tolerance. */
export type Role = 'min' | 'typ' | 'max' | 'value';
export interface Bound {
  readonly role: Role;
  readonly figure: Figure;
}

/** How far a figure may lie off, upwards and downwards. */
export interface Tolerance {
  readonly up: Figure;
  readonly down: Figure;
}

/** What was written, the bounds in their order. */
export interface Written {
  readonly bounds: readonly Bound[];
  readonly tolerance: Tolerance | undefined;
  /** Where reading stopped: the whole length when everything was understood. */
  readonly end: number;
}

interface Cursor {
  readonly text: string;
  readonly dimension: Dimension;
  at: number;
}

const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?`;
const UNIT = String.raw`(?!(?:to|typ|max)\b)[A-Za-zΩµ°%]+(?:\^?2|²)?(?:\/(?:W|day)\b)?|\/day\b`;
const FIGURE = new RegExp(String.raw`(AWG\s*)?(${NUMBER})\s*(${UNIT})?(?:\s*(AC|DC)\b)?\s*`, 'y');
const SPACE = /\s*/y;

/**
 * Reads as far as one of the forms goes: `5 V`, `5 V ±5 %`, `5 V +10/-5 %`, `4.75 to 5.25 V typ 5 V`, `18 / 20 / 25 mA`,
 * `typ 20 mA max 25 mA`. Nothing when no form begins here.
 */
export function scan(text: string, dimension: Dimension): Written | undefined {
  const cursor: Cursor = { text, dimension, at: 0 };
  const bounds = namedBounds(cursor);
  if (bounds.length > 0) return { bounds, tolerance: undefined, end: cursor.at };
  const first = figure(cursor);
  if (!first) return undefined;
  const range = windowFrom(first, cursor) ?? rowFrom(first, cursor);
  if (range) return { bounds: range, tolerance: undefined, end: cursor.at };
  const tolerance = toleranceOf(cursor);
  return { bounds: [{ role: 'value', figure: first }], tolerance, end: cursor.at };
}

/** `… to 5.25 V`, perhaps with its typical value: `… to 4.2 V typ 3.7 V`. Like all below: on failure nothing is taken. */
function windowFrom(min: Figure, cursor: Cursor): Bound[] | undefined {
  const start = cursor.at;
  const max = take(cursor, 'to') ? figure(cursor) : undefined;
  if (!max) return back(cursor, start);
  return [{ role: 'min', figure: min }, { role: 'max', figure: max }, ...namedBounds(cursor)];
}

/** `… / 20 / 25 mA` */
function rowFrom(min: Figure, cursor: Cursor): Bound[] | undefined {
  const start = cursor.at;
  const typ = take(cursor, '/') ? figure(cursor) : undefined;
  const max = typ && take(cursor, '/') ? figure(cursor) : undefined;
  if (!typ || !max) return back(cursor, start);
  return [
    { role: 'min', figure: min },
    { role: 'typ', figure: typ },
    { role: 'max', figure: max },
  ];
}

/** `typ 20 mA max 25 mA`, in any order. */
function namedBounds(cursor: Cursor): Bound[] {
  const bounds: Bound[] = [];
  for (;;) {
    const start = cursor.at;
    const role = takeRole(cursor);
    const written = role && figure(cursor);
    if (!role || !written) {
      cursor.at = start;
      return bounds;
    }
    bounds.push({ role, figure: written });
  }
}

function takeRole(cursor: Cursor): Role | undefined {
  if (take(cursor, 'typ')) return 'typ';
  if (take(cursor, 'max')) return 'max';
  return take(cursor, 'min') ? 'min' : undefined;
}

/** `±5 %`, `+/- 0.5 V`, or both signs on their own: `+10 % -5 %`, `+10/-5 %`. */
function toleranceOf(cursor: Cursor): Tolerance | undefined {
  const start = cursor.at;
  if (take(cursor, '±') || take(cursor, '+/-') || take(cursor, '+-')) {
    const both = figure(cursor);
    return both && !signOf(both) ? { up: both, down: both } : back(cursor, start);
  }
  const first = figure(cursor);
  if (!first) return undefined;
  take(cursor, '/');
  const second = figure(cursor);
  if (!second) return back(cursor, start);
  const signs = signOf(first) + signOf(second);
  if (signs === '+-') return { up: first, down: second };
  return signs === '-+' ? { up: second, down: first } : back(cursor, start);
}

function back(cursor: Cursor, start: number): undefined {
  cursor.at = start;
}

const signOf = ({ digits }: Figure): string => (digits[0] === '+' || digits[0] === '-' ? digits[0] : '');

/** A number with its unit, `AWG 24`, or a resistance code. */
function figure(cursor: Cursor): Figure | undefined {
  const { text, at: start } = cursor;
  const coded = cursor.dimension === 'resistance' ? resistanceCode(text, start) : undefined;
  if (coded) {
    cursor.at = coded.end;
    return { text: text.slice(start, coded.end).trim(), digits: '', unit: '', waveform: undefined, code: coded.code };
  }
  FIGURE.lastIndex = start;
  const match = FIGURE.exec(text);
  if (!match) return undefined;
  cursor.at = FIGURE.lastIndex;
  const [all, gauge, digits = '', symbol = '', apart] = match;
  const joined = symbol.length > 2 ? waveformOf(symbol.slice(-2)) : undefined;
  const behind = joined ? symbol.slice(0, -2) : symbol;
  const unit = gauge ? `AWG${behind}` : behind;
  return { text: all.trim(), digits, unit, waveform: waveformOf(apart) ?? joined, code: undefined };
}

const waveformOf = (word: string | undefined): 'AC' | 'DC' | undefined =>
  word === 'AC' || word === 'DC' ? word : undefined;

/** Steps over a word or sign, and the space behind it. */
function take(cursor: Cursor, word: string): boolean {
  if (!cursor.text.startsWith(word, cursor.at)) return false;
  SPACE.lastIndex = cursor.at + word.length;
  SPACE.exec(cursor.text);
  cursor.at = SPACE.lastIndex;
  return true;
}
