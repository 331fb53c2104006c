/**
 * Compiles the schemas to plain code for src/source (ajv at build time only, none of it is shipped): one validator an
 * entry, and the keys that each sort of entry knows.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import Ajv from 'ajv';
import standalone from 'ajv/dist/standalone/index.js';
import { transform } from 'esbuild';
import { checkerSchema } from './checker-schema.mjs';
import { inRoot, writeIfChanged } from './files.mjs';
import { readFragments } from './fragments.mjs';
import { profileCheckerSchema } from './profile-schema.mjs';
import { compilePartValidator } from './part-validator.mjs';
import { mapValues } from './shapes.mjs';

/** Words for people, which code does not need. */
const forPeople = ['title', 'description', 'examples'];

/**
 * A schema as the compiler makes least code of it: no words; one figure in the place of all, since they look alike; keys
 * that are checked alike together; lists of fixed length as older drafts write them, whose compiler is the lighter one.
 */
function lean(schema, figures) {
  if (Array.isArray(schema)) return schema.map((item) => lean(item, figures));
  if (typeof schema !== 'object' || schema === null) return schema;
  const out = {};
  for (const [keyword, value] of Object.entries(schema)) {
    if (forPeople.includes(keyword)) continue;
    if (keyword === '$ref') out.$ref = oneFigure(value, figures);
    else if (keyword === 'properties') out.properties = mapValues(value, (inner) => lean(inner, figures));
    else if (keyword === 'prefixItems') out.items = lean(value, figures);
    else if (keyword === 'items' && schema.prefixItems) out.additionalItems = value;
    else out[keyword] = keyword === 'enum' || keyword === 'required' ? value : lean(value, figures);
  }
  return grouped(out);
}

function oneFigure(pointer, figures) {
  const [, dimension, points = ''] = /^#\/\$defs\/(.+?)(-points)?$/.exec(pointer);
  return figures.includes(dimension) ? `#/$defs/${figures[0]}${points}` : pointer;
}

/** Keys of a mapping that are checked alike become one pattern: `^(?:voltage|current)$`. */
function grouped(schema) {
  if (schema.additionalProperties !== false || !schema.properties) return schema;
  const byCheck = {};
  for (const [key, check] of Object.entries(schema.properties)) (byCheck[JSON.stringify(check)] ??= []).push(key);
  const alike = Object.values(byCheck);
  return {
    ...schema,
    properties: Object.fromEntries(
      alike.filter((keys) => keys.length === 1).map(([key]) => [key, schema.properties[key]]),
    ),
    patternProperties: Object.fromEntries(
      alike.filter((keys) => keys.length > 1).map((keys) => [`^(?:${keys.join('|')})$`, schema.properties[keys[0]]]),
    ),
  };
}

/**
 * One module of code: a validator for `frame` and for each definition whose name begins with one of `prefixes`. What is
 * `asleep` stands in a function, so that a start pays for it only when it is asked.
 */
async function compile({ $id, $defs }, prefixes, figures, asleep) {
  const ajv = new Ajv.default({
    ...{ allErrors: true, messages: false, verbose: true, inlineRefs: false },
    ...{ strictSchema: true, strictTypes: true, allowUnionTypes: true },
    code: { source: true, esm: true },
  });
  ajv.addSchema({ $id, $defs: mapValues($defs, (schema) => lean(schema, figures)) });
  const names = Object.keys($defs).filter(
    (name) => name === 'frame' || prefixes.some((prefix) => name.startsWith(prefix)),
  );
  const variable = (name) => name.replaceAll('-', '_');
  const source = standalone.default(
    ajv,
    Object.fromEntries(names.map((name) => [variable(name), `${$id}#/$defs/${name}`])),
  );
  const keys = Object.fromEntries(names.map((name) => [name, Object.keys($defs[name].properties)]));
  const table = names.map((name) => `${JSON.stringify(name)}: ${variable(name)}`);
  const made = `{ validators: { ${table.join(', ')} }, keys: ${JSON.stringify(keys)} }`;
  const code = source.replaceAll('export const', 'const').replaceAll('export default', 'void');
  const module = asleep
    ? `let made; export const known = () => (made ??= make()); function make() { ${code}\nreturn ${made}; }`
    : `${code}\nconst made = ${made}; export const known = () => made;`;
  if (module.includes('require('))
    throw new Error('a keyword of the schemas needs the run-time library: use `pattern`');
  return (await transform(module, { minify: true, format: 'esm', target: 'es2022' })).code;
}

const declaration = `import type { Validators } from '../fault.js';
export declare const known: () => Validators;
`;

/** Writes a generated module, unless the one that is there was made from the same schema by the same compiler. */
async function generate(name, schema, prefixes, figures, asleep = false) {
  const made = createHash('sha256')
    .update(JSON.stringify(schema))
    .update(readFileSync(new URL(import.meta.url)));
  const mark = `// Made by tools/build.mjs from schemas/fragments, ${made.digest('hex').slice(0, 16)}\n`;
  const path = `src/source/generated/${name}.js`;
  writeIfChanged(`src/source/generated/${name}.d.ts`, declaration);
  if (existsSync(inRoot(path)) && readFileSync(inRoot(path), 'utf8').startsWith(mark)) return `${name} up to date`;
  const code = await compile(schema, prefixes, figures, asleep);
  writeIfChanged(path, mark + code);
  return `${name} ${Math.round(code.length / 1024)} kB`;
}

export async function compileValidators() {
  const all = readFragments();
  const figures = Object.keys(all.figures);
  const says = [
    await generate('validators', checkerSchema(all), ['entry-', 'part-'], figures),
    await generate('profile-validators', profileCheckerSchema(all), ['profile-'], figures, true),
    await compilePartValidator(),
  ];
  return says.join(', ');
}
