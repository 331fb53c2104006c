import { Composer, Lexer, Parser, type CST, type Document } from 'yaml';
import type { Source } from './diagnostic.js';
import { yamlWords } from './yaml-words.js';

/** Takes what is wrong with `text[from..to]`. */
export type Report = (from: number, to: number, says: string, expected?: string) => void;

/** Levels of brackets and indentation that a file may have. A project needs about eight. */
const deepest = 60;

/** Words and signs that a file may have. A large project has some ten thousand; all work on a file grows with them. */
const mostPieces = 100_000;

/** More misplaced signs than this say nothing new, and the rest of the file is not looked at. */
const mostStray = 50;

/** A file that is not read to its end. */
class Beyond extends Error {
  constructor(
    readonly offset: number,
    readonly says: string,
    readonly expected: string,
  ) {
    super(says);
  }
}

/** The tree of the first document; everything that the parser complains of, warnings too, is reported. */
export function parse(source: Source, report: Report): Document | undefined {
  // Keys are held against each other in tree.ts: there in linear time, and `1` is the same as `"1"`.
  const composer = new Composer({
    version: '1.2',
    schema: 'core',
    stringKeys: true,
    uniqueKeys: false,
    prettyErrors: false,
  });
  const documents: Document[] = [];
  try {
    for (const document of composer.compose(tokens(source, report), true, source.text.length))
      if (documents.push(document) > 1) break;
  } catch (error) {
    if (!(error instanceof Beyond)) throw error;
    report(error.offset, error.offset + 1, error.says, error.expected);
    return undefined;
  }

  const [first, second] = documents;
  for (const { pos, code, message } of [...(first?.errors ?? []), ...(first?.warnings ?? [])]) {
    if (code === 'TAG_RESOLVE_FAILED' || code === 'NON_STRING_KEY') continue; // refused in tree.ts, in better words
    report(Math.max(0, pos[0]), Math.max(pos[0] + 1, pos[1]), ...yamlWords(code, message));
  }
  if (second) {
    const at = second.range?.[0] ?? 0;
    report(at, at + 1, 'a second document begins here', 'one project a file: leave out the line of three hyphens');
  }
  return first;
}

/**
 * The parser's tokens, but for misplaced signs, and for directives: one of these could make `on` a boolean.
 *
 * The stages behind the parser call themselves for every level, and ten thousand levels would kill the whole process. The
 * parser has a stack instead, so levels are counted there, before anything is handed on. Throws Beyond.
 */
function* tokens({ text }: Source, report: Report): Generator<CST.Token, void> {
  const parser = new Parser();
  let stray = 0;
  let pieces = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) {
      if (token.type === 'directive' && !/^%YAML 1\.2\s*$/.test(token.source))
        report(
          token.offset,
          token.offset + token.source.length,
          'a project file has no YAML directives',
          'leave the line out',
        );
      else if (token.type === 'error') {
        report(token.offset, token.offset + token.source.length, ...yamlWords('UNEXPECTED_TOKEN', token.message));
        stray += 1;
      } else yield token;
    }
    if (stray > mostStray) break;
    // One entry of the stack is the document, one may be a scalar.
    if (parser.stack.length > deepest + 2)
      throw new Beyond(
        parser.offset - 1,
        `this is nested more than ${deepest} levels deep`,
        'a project needs about eight',
      );
    if ((pieces += 1) > mostPieces)
      throw new Beyond(
        parser.offset - 1,
        `the file has more than ${mostPieces} words and signs`,
        'a large project has some 10000',
      );
  }
  yield* parser.end();
}
