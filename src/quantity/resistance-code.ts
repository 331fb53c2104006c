/**
 * The letter and digit code for resistance values: the letter stands where the decimal point would and gives the
 * multiplier. IEC 60062:2016 + A1:2019, "Marking codes for resistors and capacitors".
 */
export interface ResistanceCode {
  /** In ohm. */
  readonly value: number;
  /** From a tolerance letter behind the value: 0.05 for `4K7J`. */
  readonly tolerance?: number;
}

/**
 * Capitals, though everybody writes `k`, and some `r`; a lower-case `m` would be milli. A decimal point before the letter
 * is no part of the code (`4.7k`), but can mean one thing only. What looks on like a unit (`10kΩ`, `10Mohm`) is none of ours.
 */
const CODE = /(\d+\.\d+|\d*)([RrKkMG])(\d*)([BCDFGJKM])?(?![\w.Ω°%µ])\s*/y;
const POWERS: Readonly<Record<string, number>> = { R: 0, r: 0, K: 3, k: 3, M: 6, G: 9 };
/** From memory of IEC 60062. */
const TOLERANCES: Readonly<Record<string, number>> = {
  B: 0.001,
  C: 0.0025,
  D: 0.005,
  F: 0.01,
  G: 0.02,
  J: 0.05,
  K: 0.1,
  M: 0.2,
};

/** Reads a code at a place in a text: its value and where it ends, or nothing. `4k7`, `R47`, `100R`, `4K7K` (±10 %). */
export function resistanceCode(text: string, from: number): { code: ResistanceCode; end: number } | undefined {
  CODE.lastIndex = from;
  const match = CODE.exec(text);
  if (!match) return undefined;
  const [, before = '', letter = '', after = '', mark] = match;
  if (before + after === '' || (before.includes('.') && after !== '')) return undefined;
  const value = Number(`${before || '0'}${after && `.${after}`}e${POWERS[letter]}`);
  const tolerance = mark && TOLERANCES[mark];
  return { code: tolerance ? { value, tolerance } : { value }, end: CODE.lastIndex };
}
