import { textOf } from './stated.js';

/** Longest range that is spelled out: no chip has more pins, and a hostile file shall not fill the memory. */
const LONGEST = 512;
/** What is beyond so many is left out. */
const MOST = 4096;

/**
 * The pins of a list that may hold ranges: `['PC0..PC2', 'PD7']` → PC0, PC1, PC2, PD7. What is no range stands for itself.
 * A range that runs backwards, changes its letters or is too long gives nothing, so that its pins are found missing.
 */
export function pinsIn(list: readonly unknown[]): readonly string[] {
  const pins: string[] = [];
  for (const each of list) if (pins.length < MOST) pins.push(...range(textOf(each)));
  return pins;
}

function range(text: string): readonly string[] {
  const [, letters = '', from = '', again = '', to = ''] = /^(.*?)(\d+)\.\.(.*?)(\d+)$/.exec(text) ?? [];
  if (from === '') return [text];
  const [first, last] = [Number(from), Number(to)];
  const length = last - first + 1;
  if ((again !== letters && again !== '') || length < 1 || length > LONGEST) return [];
  // Names with leading zeros keep them: PA08..PA11.
  const digits = from.startsWith('0') && from.length === to.length ? from.length : 0;
  return Array.from({ length }, (_, i) => `${letters}${String(first + i).padStart(digits, '0')}`);
}
