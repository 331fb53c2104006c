import { Composer, Lexer, Parser, type CST, type Document } from 'yaml';
import { lineAndColumn, type Source } from './diagnostic.js';
import { syntaxRefusal, type SyntaxFault } from './syntax.js';

/** Takes what is wrong with `text[from..to]`. */
export type Report = (from: number, to: number, says: string, expected?: string) => void;

/** Levels of brackets and indentation that a file may have. A project needs about eight. */
const deepest = 60;

/** Words and signs that a file may have. A large project has some ten thousand; all work on a file grows with them. */
const mostPieces = 100_000;

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
  let lost: SyntaxFault | undefined;
  const loseTrack = (fault: SyntaxFault) => (lost = fault);
  try {
    for (const document of composer.compose(tokens(source, report, loseTrack), true, source.text.length))
      if (documents.push(document) > 1) break;
  } catch (error) {
    if (!(error instanceof Beyond)) throw error;
    report(error.offset, error.offset + 1, error.says, error.expected);
    return undefined;
  }

  const [first, second] = documents;
  // Warnings are faults too: each is about something that one reader understands and another does not.
  const faults = firstOfEachLine(source, [...(first?.errors ?? []), ...(first?.warnings ?? [])]);
  // Where the parser lost track it only did so for another fault, if there is one.
  for (const fault of faults.length === 0 && lost ? [lost] : faults) {
    const { from, to, says, expected } = syntaxRefusal(source.text, fault);
    report(from, to, says, expected);
  }
  if (second) {
    const at = second.range?.[0] ?? 0;
    report(at, at + 1, 'a second document begins here', 'one project a file: leave out the line of three hyphens');
  }
  return first;
}

/** One slip often throws the parser off for the rest of the line: what it says then is no help. */
function firstOfEachLine({ starts }: Source, faults: readonly SyntaxFault[]): SyntaxFault[] {
  const lines = new Set<number>();
  return faults
    .filter(({ code }) => code !== 'TAG_RESOLVE_FAILED' && code !== 'NON_STRING_KEY') // tree.ts has better words
    .sort((a, b) => a.pos[0] - b.pos[0])
    .filter(({ pos }) => {
      const { line } = lineAndColumn(starts, Math.max(0, pos[0]));
      return lines.size < lines.add(line).size;
    });
}

/**
 * The parser's tokens, as far as it keeps track of the text, but for directives: one could make `on` a boolean.
 *
 * The stages behind the parser call themselves for every level, and ten thousand levels would kill the whole process. The
 * parser has a stack instead, so levels are counted there, before anything is handed on. Throws Beyond.
 */
function* tokens(
  { text }: Source,
  report: Report,
  loseTrack: (fault: SyntaxFault) => void,
): Generator<CST.Token, void> {
  const parser = new Parser();
  let pieces = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) {
      const end = token.offset + ('source' in token ? token.source.length : 0);
      if (token.type === 'directive' && !/^%YAML 1\.2\s*$/.test(token.source))
        report(token.offset, end, 'a project file has no YAML directives', 'leave the line out');
      else if (token.type === 'error') {
        // All that follows would be strange to it.
        loseTrack({ code: 'UNEXPECTED_TOKEN', message: token.message, pos: [token.offset, end] });
        return yield* parser.end();
      } else yield token;
    }
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
