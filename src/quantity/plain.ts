/** One spelling for each sign that has several. */
const SPELLINGS: Readonly<Record<string, string>> = {
  '\u2126': 'Ω',
  '\u03bc': 'µ',
  '\u212a': 'K',
  '\u2103': '°C',
  '\u00ba': '°',
  '\u02da': '°',
  '\u2212': '-',
  '\u00a0': ' ',
  '\u2009': ' ',
  '\u202f': ' ',
};
const OTHER_SPELLING = /[\u2126\u03bc\u212a\u2103\u00ba\u02da\u2212\u00a0\u2009\u202f]/g;

/**
 * A text with one spelling of each sign, without space around it. Not Unicode's own compatibility form, which would make
 * `10²` a hundred and two.
 */
export function plain(text: string): string {
  return text.replace(OTHER_SPELLING, (sign) => SPELLINGS[sign] ?? sign).trim();
}
