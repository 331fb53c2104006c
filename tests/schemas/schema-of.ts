import { readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';

export type Schema = { readonly [keyword: string]: unknown };

export const readSchema = (name: string): Schema =>
  JSON.parse(readFileSync(new URL(`../../schemas/${name}.schema.json`, import.meta.url), 'utf8')) as Schema;

/** A strict compiler: an unknown keyword, or one that cannot apply, throws. */
export const strict = (): Ajv2020 =>
  new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true });

/** Every schema inside a schema, with its JSON pointer. */
export function* inside(schema: unknown, pointer = ''): Generator<[pointer: string, schema: Schema]> {
  if (typeof schema !== 'object' || schema === null) return;
  if (!Array.isArray(schema)) yield [pointer, schema as Schema];
  for (const [key, inner] of Object.entries(schema)) {
    if (['examples', 'enum', 'required', 'const'].includes(key)) continue;
    yield* inside(inner, `${pointer}/${encodeURIComponent(key.replaceAll('~', '~0').replaceAll('/', '~1'))}`);
  }
}

export const says = (validate: ValidateFunction): string[] =>
  (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message ?? ''}`);
