import { Composer, Lexer, Parser, type CST, type Document } from 'yaml';
import type { Source } from './diagnostic.js';
import { yamlWords } from './yaml-words.js';

/** Takes what is wrong with `text[from..to]`. */
export type Report = (from: number, to: number, says: string, expected?: string) => void;

/** Levels of brackets and indentation that a file may have. A project needs about eight. */
const deepest = 60;

class TooDeep extends Error {
  constructor(readonly offset: number) {
    super('nested too deep');
  }
}

/** The tree of the first document; everything that the parser complains of, warnings too, is reported. */
export function parse(source: Source, report: Report): Document | undefined {
  // Keys are held against each other in tree.ts: there in linear time, and `1` is the same as `"1"`.
  const composer = new Composer({ version: '1.2', schema: 'core', stringKeys: true, uniqueKeys: false, prettyErrors: false });
  const documents: Document[] = [];
  try {
    for (const document of composer.compose(tokens(source, report), true, source.text.length)) documents.push(document);
  } catch (error) {
    if (!(error instanceof TooDeep)) throw error;
    report(error.offset, error.offset + 1, `this is nested more than ${deepest} levels deep`, 'a project file needs about eight');
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
 * The parser's tokens, but for directives, which are refused: one could make `on` a boolean, or give tags a meaning.
 *
 * The stages behind the parser call themselves for every level, and ten thousand levels would kill the whole process. The
 * parser has a stack instead, so levels are counted there, before anything is handed on. Throws TooDeep.
 */
function* tokens({ text }: Source, report: Report): Generator<CST.Token, void> {
  const parser = new Parser();
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) {
      if (token.type === 'directive' && !/^%YAML 1\.2\s*$/.test(token.source))
        report(token.offset, token.offset + token.source.length, 'a project file has no YAML directives', 'leave the line out');
      else yield token;
    }
    // One entry of the stack is the document, one may be a scalar.
    if (parser.stack.length > deepest + 2) throw new TooDeep(parser.offset - 1);
  }
  yield* parser.end();
}
