/** What the YAML parser finds wrong, in the words of somebody who writes a project file and not a parser. */
type Words = readonly [says: string, expected?: string];

const byCode: Readonly<Record<string, Words>> = {
  BAD_DQ_ESCAPE: [
    'this escape means nothing in a double-quoted text',
    'write the text without quotes, or in single ones',
  ],
  BAD_INDENT: ['this line is indented like no other block that is open here', 'line it up with the keys it belongs to'],
  BAD_SCALAR_START: ['a text cannot begin with this sign', 'put the text in quotes'],
  BLOCK_AS_IMPLICIT_KEY: [
    'two keys stand on one line',
    'put the second on a line of its own, or both in braces: { a: 1, b: 2 }',
  ],
  BLOCK_IN_FLOW: ['a list or block by indentation cannot stand inside braces or brackets'],
  KEY_OVER_1024_CHARS: ['this key is longer than any key can be'],
  MULTILINE_IMPLICIT_KEY: ['a key goes over several lines', 'is a `:` missing here, or a quote?'],
  NON_STRING_KEY: ['a list or mapping cannot be a key'],
  TAB_AS_INDENT: ['a tab is used as indentation', 'indent with spaces'],
  UNEXPECTED_TOKEN: ['this was not expected here'],
};

const byMessage: readonly (readonly [RegExp, ...Words])[] = [
  [/closing ['"]quote/, 'this quote is never closed', 'close it where the text ends'],
  [/must end with a (\S)|end with a (\S)|expected .* to end with/i, 'a bracket is not closed before here'],
  [/Missing , or :/, 'something is missing between these two', 'a comma between entries, a colon after a key'],
  [/Missing , between/, 'a comma is missing before this'],
  [/Missing space after :/, 'a space is missing after the colon'],
  [/followed by map values/, 'this key has no value', 'a colon and a space come after a key'],
  [/Comments must be separated/, 'a comment needs a space before its #'],
  [/without - indicator/, 'this entry of the list has no `- ` before it'],
  [/Unexpected , in|Unexpected empty item/, 'there is a comma too much'],
  [/Block scalar header/, 'only a comment may follow `|` or `>` on its line'],
  [/must start at the same column/, 'entries of a list must start in the same column'],
  [
    /block-seq-ind on same line|Unexpected block-seq-ind/,
    'a list cannot begin on the line of its key',
    'put each `- ` on a line of its own, or write [a, b]',
  ],
];

/** Sentence and advice for an error of the parser. */
export function yamlWords(code: string, message: string): Words {
  const special = byMessage.find(([pattern]) => pattern.test(message));
  if (special) return special.slice(1) as unknown as Words;
  return byCode[code] ?? ['this is not YAML as a project file uses it'];
}
