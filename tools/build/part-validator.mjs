/** Compiles the schema of a part, reports included, to plain code: parts come from other machines, and may be anything. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import standalone from 'ajv/dist/standalone/index.js';
import { transform } from 'esbuild';
import { inRoot, writeIfChanged } from './files.mjs';

const declaration = `/** Tells whether a value is a part's first line, or another line of it; then \`errors\` has the first fault. */
export interface Check {
  (value: unknown): boolean;
  readonly errors?: readonly { readonly instancePath: string }[] | null;
}
export declare const known: () => { readonly head: Check; readonly line: Check };
`;

export async function compilePartValidator() {
  const read = (name) => readFileSync(inRoot('schemas', name), 'utf8');
  const [part, report] = [read('part.schema.json'), read('report.schema.json')];
  const made = createHash('sha256')
    .update(part)
    .update(report)
    .update(readFileSync(new URL(import.meta.url)));
  const mark = `// Made by tools/build.mjs from schemas/, ${made.digest('hex').slice(0, 16)}\n`;
  const path = 'src/reports/generated/part-validator.js';
  writeIfChanged(path.replace(/js$/, 'd.ts'), declaration);
  if (existsSync(inRoot(path)) && readFileSync(inRoot(path), 'utf8').startsWith(mark))
    return 'part-validator up to date';
  const ajv = new Ajv2020({ messages: false, inlineRefs: false, code: { source: true, esm: true } });
  ajv.addSchema([JSON.parse(report), JSON.parse(part)].map((schema) => lean(schema)));
  const names = { head: 'urn:ampledger:part:1#/$defs/head', line: 'urn:ampledger:part:1#/$defs/line' };
  const code = standalone.default(ajv, names).replaceAll('export const', 'const');
  if (code.includes('require(')) throw new Error('a keyword of the schemas needs the run-time library');
  // In a function, so that only a merge pays for it.
  const module = `let made; export const known = () => (made ??= make()); function make() { ${code}\nreturn { head, line }; }`;
  const { code: small } = await transform(module, { minify: true, format: 'esm', target: 'es2022' });
  writeIfChanged(path, mark + small);
  return `part-validator ${Math.round(small.length / 1024)} kB`;
}

/** Without words for people, which code does not need. A key of a mapping may be called as they are. */
function lean(schema, isMapping = false) {
  if (Array.isArray(schema)) return schema.map((each) => lean(each));
  if (typeof schema !== 'object' || schema === null) return schema;
  const words = isMapping ? [] : ['title', 'description', 'examples'];
  const kept = Object.entries(schema).filter(([key]) => !words.includes(key));
  return Object.fromEntries(
    kept.map(([key, value]) => [
      key,
      key === 'enum' || key === 'const' ? value : lean(value, !isMapping && ['properties', '$defs'].includes(key)),
    ]),
  );
}
