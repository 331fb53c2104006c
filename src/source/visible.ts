/**
 * Text from a file may hold anything; what is shown must not move a cursor, colour a terminal or turn a line round.
 * These functions put a visible sign in the place of what would.
 */

/** Control characters, line and paragraph separators, direction overrides, lone surrogates, the byte order mark. */
// eslint-disable-next-line no-control-regex
const unsafe =
  /[\u0000-\u001f\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff0-\uffff]|\p{Surrogate}/gu;

/** The same text with a visible sign for each character that a terminal would obey: `␛` for escape, `␊` for a line end. */
export function visible(text: string): string {
  return text.replace(unsafe, (character) => {
    const code = character.charCodeAt(0);
    if (code < 0x20) return String.fromCharCode(0x2400 + code);
    return code === 0x7f ? '␡' : '\ufffd';
  });
}

/**
 * A word from a file, fit for a sentence: visible, cut to `longest` characters, between backticks.
 * Backticks inside become apostrophes, so that the word cannot leave its quotes.
 */
export function quote(word: string | number, longest = 50): string {
  const characters = [...String(word).slice(0, 2 * longest + 2)];
  const cut = characters.length > longest ? [...characters.slice(0, longest - 1), '…'] : characters;
  return '`' + visible(cut.join('')).replaceAll('`', "'") + '`';
}

/** Several words as a sentence lists them: `a`, `b` or `c`. */
export function quoteList(words: readonly string[], joint = 'or'): string {
  const quoted = words.map((word) => quote(word));
  const last = quoted.pop() ?? '';
  return quoted.length > 0 ? `${quoted.join(', ')} ${joint} ${last}` : last;
}

const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;
const unseen = /[\p{Mn}\p{Me}\u200c\u200d\ufe00-\ufe0f]/u;

/** Columns that a terminal gives to a text: two for wide letters and pictures, none for combining marks. */
export function columns(text: string): number {
  let sum = 0;
  for (const character of text) sum += unseen.test(character) ? 0 : wide.test(character) ? 2 : 1;
  return sum;
}
