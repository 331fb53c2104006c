/**
 * What the YAML parser finds wrong, in the words of somebody who writes a project file and not a parser, and where that
 * person would look for it: an open bracket is marked where it opens, not where the file ends.
 */
import type { Refusal } from './tree.js';

/** What the parser says: a code, a sentence, the stretch of text. */
export interface SyntaxFault {
  readonly code: string;
  readonly message: string;
  readonly pos: readonly [from: number, to: number];
}

type Words = readonly [says: string, expected?: string];

const like = 'write `like: other-load` for a load like another, or put shared figures under `parts`';
const indented: Words = [
  'this line is indented unlike the ones it belongs to',
  'keys of one mapping start in one column',
];

const entriesApart: Words = [
  'this entry is indented unlike the ones before it',
  'entries of a list start in one column',
];

const byCode: Readonly<Record<string, Words>> = {
  BAD_ALIAS: ['project files have no aliases and anchors', like],
  BAD_DIRECTIVE: ['project files have no directives', 'leave the line out'],
  BAD_DQ_ESCAPE: [
    'this escape means nothing in a double-quoted text',
    'write the text without quotes, or in single ones',
  ],
  BAD_INDENT: indented,
  BAD_PROP_ORDER: ['project files have no anchors and tags', like],
  BAD_SCALAR_START: ['a text cannot begin with this sign', 'put the text in quotes'],
  BLOCK_IN_FLOW: ['a key stands inside the value of another', 'is a comma missing, or braces round it?'],
  KEY_OVER_1024_CHARS: ['this key is longer than any key can be'],
  MULTIPLE_ANCHORS: ['project files have no anchors', like],
  MULTIPLE_TAGS: ['project files have no tags', 'leave it out'],
  TAB_AS_INDENT: ['a tab is used as indentation', 'indent with spaces'],
  UNEXPECTED_TOKEN: ['this was not expected here'],
};

const byMessage: readonly (readonly [RegExp, ...Words])[] = [
  [/Missing , or :/, 'something is missing between these two', 'a comma between entries, a colon after a key'],
  [/Missing , between/, 'a comma is missing before this'],
  [/Missing space after :/, 'a space is missing after the colon'],
  [/followed by map values/, 'this key has no value', 'a colon and a space come after a key'],
  [/Comments must be separated/, 'a comment needs a space before its #'],
  [/without - indicator/, 'this entry of the list has no `- ` before it'],
  [/Unexpected , in|Unexpected empty item/, 'there is a comma too much'],
  [/Block scalar header/, 'only a comment may follow `|` or `>` on its line'],
  [/sequence items must start/, ...entriesApart],
  [
    /block-seq-ind/,
    'a list cannot begin on the line of its key',
    'put each `- ` on a line of its own, or write [a, b]',
  ],
];

/** How far a bracket or quote is looked for. */
const reach = 20_000;

/** A fault of the syntax with its best place and words. */
export function syntaxRefusal(text: string, { code, message, pos }: SyntaxFault): Refusal {
  const from = Math.max(0, Math.min(pos[0], text.length));
  const there = { from, to: Math.max(from + 1, pos[1]) };
  const say = ([says, expected]: Words, place: { from: number; to: number } = there): Refusal => ({
    ...place,
    says,
    ...(expected === undefined ? {} : { expected }),
  });

  if (/must end with|end with a [\]}]/.test(message)) return openBracket(text, from, say);
  if (/closing ['"]quote/.test(message)) {
    const opener = text.lastIndexOf(message.includes('"') ? '"' : "'", from - 1);
    return say(['this quote is never closed', 'close it where the text ends'], { from: opener, to: opener + 1 });
  }
  const line = text.slice(from, from + 200).split('\n', 1)[0]!;
  if (code === 'MULTILINE_IMPLICIT_KEY')
    return say(
      /^[\w-]+:\S/.test(line)
        ? ['a space is missing after the colon']
        : ['a key goes over several lines', 'is a `:` missing here, or a quote?'],
    );
  if (code === 'BLOCK_AS_IMPLICIT_KEY' && /^\s*- /.test(line)) return say(entriesApart);
  if (code === 'BLOCK_AS_IMPLICIT_KEY')
    return say(
      /:(?:\s|$)/.test(line)
        ? [
            'a second key stands on this line',
            'a text with a colon in it stands in quotes; keys stand on lines of their own',
          ]
        : ['the line after this is indented more than its neighbours', indented[1]!],
    );
  if (code === 'UNEXPECTED_TOKEN' && /["']\s*$/.test(text.slice(Math.max(0, from - 5), from)))
    return say([
      'this stands after the closing quote',
      "put the whole text in double quotes, or write '' for a quote in single ones",
    ]);
  const special = byMessage.find(([pattern]) => pattern.test(message));
  if (special) return say([special[1], special[2]] as Words);
  return say(byCode[code] ?? ['this is not YAML as a project file uses it']);
}

/** A bracket that is open at `from`: never closed, or closed behind a line that is indented too little to be inside it. */
function openBracket(
  text: string,
  from: number,
  say: (words: Words, place?: { from: number; to: number }) => Refusal,
): Refusal {
  const opener = openerBefore(text, from);
  if (opener === -1) return say(['a bracket is not closed before here']);
  for (let at = opener, open = 0; at < Math.min(text.length, opener + reach); at++) {
    if (text[at] === '[' || text[at] === '{') open += 1;
    else if ((text[at] === ']' || text[at] === '}') && (open -= 1) === 0)
      return say([
        'this line stands inside brackets and is indented too little',
        'indent it more than the line that opens them',
      ]);
  }
  return say(['this bracket is never closed'], { from: opener, to: opener + 1 });
}

/** The bracket before `from` that nothing before `from` closes, or -1. */
function openerBefore(text: string, from: number): number {
  let closed = 0;
  for (let at = from - 1; at >= Math.max(0, from - reach); at--) {
    if (text[at] === ']' || text[at] === '}') closed += 1;
    else if (text[at] === '[' || text[at] === '{') {
      if (closed === 0) return at;
      closed -= 1;
    }
  }
  return -1;
}
