import { type Dimension, FACTS, unitsOf } from './dimension.js';
import type { Figure } from './scan.js';
import { dimensionOf, nearSymbol } from './unit-symbol.js';

/** A text that is no quantity: what was found, and what was expected instead. */
export interface Slip {
  readonly problem: string;
  readonly expected: string;
}

/** The user's own text inside a message, at a length that still reads as a sentence. */
export const quoted = (text: string): string => `\`${text.length > 60 ? `${text.slice(0, 59)}…` : text}\``;

const anExample = (dimension: Dimension): string => {
  const { name, example } = FACTS[dimension];
  return `${name}, such as \`${example}\``;
};

export const slip = (dimension: Dimension, problem: string, expected = anExample(dimension)): Slip => ({
  problem,
  expected,
});

/** Inside `{ }` YAML cuts a value at its comma without a word, so the format has no commas in figures anywhere. */
export function commaSlip(text: string, dimension: Dimension): Slip {
  const problem = `a comma ends a value inside { }, so a figure has none: ${quoted(text)}`;
  const [whole, decimal] = /^[+-]?\d+,\d+/.test(text) ? [text.replaceAll(',', ''), text.replace(',', '.')] : [];
  if (whole === undefined || decimal === undefined) return slip(dimension, problem);
  const thousands = /^[+-]?\d{1,3}(?:,\d{3})+(?!\d)/.test(text);
  if (!thousands) return slip(dimension, problem, `a decimal point: ${quoted(decimal)}`);
  const either = /,.*,/.test(text) ? '' : `, or ${quoted(decimal)} if the comma was a decimal point`;
  return slip(dimension, problem, `no mark between thousands: ${quoted(whole)}${either}`);
}

/** A number that stands where a unit is needed. `text` is the whole figure. */
export function bareSlip(text: string, dimension: Dimension): Slip {
  const { name, usual } = FACTS[dimension];
  const numbersOnly = !/[%±A-Za-z]/.test(text.replace(/\b(?:to|min|typ|max)\b/g, ''));
  const withUnit = usual.map((unit) => quoted(unit === 'AWG' ? `${unit} ${text}` : `${text} ${unit}`));
  const expected = numbersOnly ? `${name} with its unit: write ${withUnit.join(' or ')}` : undefined;
  return slip(dimension, `${quoted(text)} has a figure without a unit`, expected);
}

/** A unit that is none, or one of another dimension. */
export function unitSlip(figure: Figure, dimension: Dimension): Slip {
  const { name } = FACTS[dimension];
  const { text, unit } = figure;
  const found = dimensionOf(unit);
  const near = nearSymbol(unit, dimension);
  const problem = found
    ? `${quoted(text)} is ${FACTS[found].name}`
    : `${quoted(text)}: ${quoted(unit)} is no unit of ${name.replace(/^an? /, '')}`;

  if (dimension === 'temperature' && unit === 'K') {
    return slip(
      dimension,
      `${quoted(text)}: K is for differences of temperature`,
      'a temperature in °C: 0 °C is 273.15 K',
    );
  }
  if (dimension === 'temperature-difference' && found === 'temperature') {
    return slip(dimension, `${problem}, not a difference of two`, 'a temperature difference in K, such as `25 K`');
  }
  if (near) return slip(dimension, problem, `${name}; did you mean ${quoted(text.replace(unit, near))}?`);
  if (found) return slip(dimension, problem);
  const symbols = unitsOf(dimension).map((known) => known.symbols[0]);
  return slip(dimension, problem, `${anExample(dimension)}, in ${symbols.join(', ')}`);
}

/** What no form could take: the rest of a text, or the whole of it. */
export function leftOverSlip(text: string, rest: string, dimension: Dimension): Slip {
  const read = text.slice(0, text.length - rest.length).trim();
  if (text === '') return slip(dimension, 'there is no figure here');
  if (read === '') return slip(dimension, `${quoted(text)} is no quantity`);
  return slip(dimension, `${quoted(rest)} cannot follow ${quoted(read)}`, rightForm(text, read, rest, dimension));
}

/** The form that was probably meant, by the sign or word at which reading stopped. */
function rightForm(text: string, read: string, rest: string, dimension: Dimension): string | undefined {
  const [, whole, part] = (dimension === 'resistance' && /^(\d+)m(\d+)$/.exec(text)) || [];
  if (whole) return `\`${whole}M${part}\`, or \`${whole}.${part} mΩ\` where the small m was meant`;
  const [, second] = /^(?:-|–|—|~|\.{2,}|…)\s*([-+.\d].*)$/.exec(rest) ?? [];
  if (second && !rest.includes('%')) return `a range with \`to\`: ${quoted(`${read} to ${second}`)}`;
  if (/^[±+-]/.test(rest)) return 'a tolerance on a single figure, such as `5 V ±5 %` or `5 V +10/-5 %`';
  const [word] = /^(?:min|typ|max)\b/.exec(rest) ?? [];
  if (word) return `\`${word}\` before its figure: \`${word} ${FACTS[dimension].example}\``;
  return rest.startsWith('/') ? 'three figures, min / typ / max; a fraction is written as `0.25`' : undefined;
}
