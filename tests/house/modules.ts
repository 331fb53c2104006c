/** Reads modules with the compiler's parser: what they import, types included, and what they reach for. */
import { readFileSync, readdirSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export interface Mention {
  readonly name: string;
  readonly line: number;
}

export interface Module {
  /** From the root of the repository: 'src/quantity/parse.ts'. */
  readonly path: string;
  /** What stands in import and export declarations, `import()`, `import('…').Type` and `require()`, as written. */
  readonly imports: readonly Mention[];
  /** Names of things that were not declared as a property: 'process', 'Math.random', 'new Date()', 'import.meta'. */
  readonly reaches: readonly Mention[];
  readonly exportsDefault: boolean;
}

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Paths of all files below src/ that end in `ending`. */
export const filesOfSrc = (ending: string): readonly string[] =>
  readdirSync(`${root}src`, { recursive: true, encoding: 'utf8' })
    .map((path) => `src/${path.replaceAll('\\', '/')}`)
    .filter((path) => path.endsWith(ending))
    .sort();

export const readModule = (path: string): Module => moduleOf(path, readFileSync(root + path, 'utf8'));

export function moduleOf(path: string, text: string): Module {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
  const imports: Mention[] = [];
  const reaches: Mention[] = [];
  let exportsDefault = false;
  const at = (node: ts.Node, name: string): Mention => ({
    name,
    line: file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1,
  });
  const visit = (node: ts.Node): void => {
    const specifier = importedBy(node);
    if (specifier) imports.push(at(node, ts.isStringLiteralLike(specifier) ? specifier.text : '(computed)'));
    const reached = reachedBy(node);
    if (reached !== undefined) reaches.push(at(node, reached));
    if (ts.isExportAssignment(node) || node.kind === ts.SyntaxKind.DefaultKeyword) exportsDefault = true;
    ts.forEachChild(node, visit);
  };
  visit(file);
  return { path, imports, reaches, exportsDefault };
}

/** The expression that names a module, if `node` imports one. */
function importedBy(node: ts.Node): ts.Node | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier;
  if (ts.isExternalModuleReference(node)) return node.expression;
  if (ts.isImportTypeNode(node)) return ts.isLiteralTypeNode(node.argument) ? node.argument.literal : node.argument;
  if (!ts.isCallExpression(node)) return undefined;
  const { expression } = node;
  const isRequire = ts.isIdentifier(expression) && expression.text === 'require';
  return isRequire || expression.kind === ts.SyntaxKind.ImportKeyword ? node.arguments[0] : undefined;
}

/** The name of what `node` uses. Of `Math` and `Date` only what is not the same every time. */
function reachedBy(node: ts.Node): string | undefined {
  if (node.kind === ts.SyntaxKind.AsyncKeyword) return 'async';
  if (ts.isAwaitExpression(node)) return 'await';
  if (ts.isMetaProperty(node)) return 'import.meta';
  if (!ts.isIdentifier(node) || !isUse(node)) return undefined;
  const { parent, text } = node;
  if (text === 'Math')
    return ts.isPropertyAccessExpression(parent) && parent.name.text !== 'random' ? undefined : 'Math.random';
  if (text !== 'Date') return text;
  if (ts.isNewExpression(parent)) return parent.arguments?.length ? undefined : 'new Date()';
  return ts.isPropertyAccessExpression(parent) && ['UTC', 'parse'].includes(parent.name.text) ? undefined : 'Date.now';
}

/** Whether an identifier stands for a thing, and is not the name of a property, a type, or an import's own name. */
function isUse(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isBindingElement(parent)) return parent.propertyName !== node;
  if (ts.isTypeNode(parent) || ts.isQualifiedName(parent)) return ts.isTypeQueryNode(parent);
  if (ts.isShorthandPropertyAssignment(parent)) return true;
  if (ts.isClassElement(parent) || ts.isTypeElement(parent) || ts.isObjectLiteralElement(parent))
    return parent.name !== node;
  return !ts.isImportSpecifier(parent) && !ts.isExportSpecifier(parent);
}

/** The file in src/ that a relative import leads to, before its ending is known: 'src/quantity/parse'. */
export const targetOf = (from: string, specifier: string): string =>
  posix.join(posix.dirname(from), specifier).replace(/\.[jt]s$/, '');
