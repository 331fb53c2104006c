/** Sums as they are printed, read back: figures with their units, and the signs of print. */
import { all, create } from 'mathjs/number';

const math = create(all!);

const UNITS = ['A', 'V', 'W', 'Ω', 'Hz', 'F', 'H', 'C', 'J', 's', 'm', 'K', 'K/W', 'Wh', 'Ah'];
const PREFIXES: Readonly<Record<string, number>> = {
  p: 1e-12,
  n: 1e-9,
  µ: 1e-6,
  m: 1e-3,
  '': 1,
  k: 1e3,
  M: 1e6,
  G: 1e9,
};
const LONGER: Readonly<Record<string, number>> = {
  '°C': 1,
  '%': 0.01,
  min: 60,
  h: 3600,
  days: 86_400,
  Ah: 3600,
  Wh: 3600,
  mAh: 3.6,
  mWh: 3.6,
};
const SIZES: Readonly<Record<string, number>> = {
  ...Object.fromEntries(UNITS.flatMap((unit) => Object.entries(PREFIXES).map(([p, size]) => [p + unit, size]))),
  ...LONGER,
};
const figures = new RegExp(
  `(\\d+(?:\\.\\d+)?(?:e[+-]?\\d+)?) (${Object.keys(SIZES)
    .sort((a, b) => b.length - a.length)
    .join('|')})(?![\\p{L}/%])`,
  'gu',
);

const inAscii = (text: string): string =>
  text.replaceAll('−', '-').replaceAll('·', '*').replaceAll('×', '*').replaceAll('²', '^2').replaceAll('³', '^3');

/** What a printed sum comes to in SI units. @throws when it cannot be read */
export function sumOf(text: string): number {
  const plain = inAscii(text).replace(figures, (_, number: string, unit: string) => `(${number} * ${SIZES[unit]!})`);
  const value: unknown = math.evaluate(plain);
  if (typeof value !== 'number') throw new Error(`'${text}' is no sum`);
  return value;
}

/** What a printed formula comes to with values put in. */
export const formulaOf = (text: string, values: Readonly<Record<string, number>>): number =>
  Number(math.evaluate(inAscii(text), { ...values }));

/** A printed result in SI units, and half of its last digit. */
export function resultOf(text: string): { readonly value: number; readonly half: number } {
  const value = sumOf(text);
  const [, decimals = '', power = '0', unit = ''] =
    /^-?\d+(?:\.(\d+))?(?:e([+-]?\d+))?(?: (\S+))?$/u.exec(text.replaceAll('−', '-')) ?? [];
  if (unit === '°C') return { value, half: Math.abs(value) < 100 ? 0.05 : 0.5 };
  // A bare number is printed to four digits without the noughts at its end.
  if (unit === '') return { value, half: 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value) || 1)) - 3) };
  const size = (SIZES[unit] ?? 1) * 10 ** Number(power);
  const digit = decimals === '' ? 10 ** Math.max(0, Math.floor(Math.log10(Math.abs(value / size) || 1)) - 2) : 1;
  return { value, half: value === 0 ? 1e-12 : 0.5 * digit * 10 ** -decimals.length * size };
}

/** The equations of a printed working, lines that were wrapped put together again: its name, then each side. */
export function equationsOf(text: string): readonly (readonly [name: string, ...sides: string[]])[] {
  const found: [string, ...string[]][] = [];
  let open: [string, ...string[]] | undefined;
  for (const line of text.split('\n')) {
    const start = /^(?:\d+)? *([\p{L}_][\p{L}\p{N}_]*) = (.+)$/u.exec(line);
    const next = /^ *= (.+)$/.exec(line);
    if (start) found.push((open = [start[1]!, start[2]!]));
    else if (next && open) open.push(next[1]!);
    else if (line.trim() === '' || /^ *from \S/.test(line)) open = undefined;
    else if (open) open.push(`${open.pop()!} ${line.trim()}`);
  }
  return found;
}
