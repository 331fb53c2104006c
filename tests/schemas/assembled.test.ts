import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assembled, isUpToDate } from '../../tools/build/schemas.mjs';
import { inside, readSchema, strict, type Schema } from './schema-of.js';

const names = ['project', 'profile'];
const fragments = readdirSync(new URL('../../schemas/fragments', import.meta.url), {
  recursive: true,
  encoding: 'utf8',
})
  .filter((name) => name.endsWith('.json'))
  .map((name): [string, Schema] => [
    name,
    JSON.parse(readFileSync(new URL(`../../schemas/fragments/${name}`, import.meta.url), 'utf8')) as Schema,
  ]);

describe('the assembled schemas', () => {
  it('are what the fragments make', () => {
    const made = Object.entries(assembled());
    expect(made.map(([path]) => path)).toEqual(names.map((name) => `schemas/${name}.schema.json`));
    for (const [path, schema] of made) expect(isUpToDate(path, schema), `${path}: run the build`).toBe(true);
  });

  it.each(names)('compile strictly: %s', (name) => {
    expect(() => strict().compile(readSchema(name))).not.toThrow();
  });

  it.each(names)('say of every key what it is: %s', (name) => {
    const schema = readSchema(name);
    const defs = schema['$defs'] as Record<string, Schema>;
    const described = (each: Schema): boolean => {
      const target = typeof each['$ref'] === 'string' ? defs[each['$ref'].replace('#/$defs/', '')] : undefined;
      return (
        each['description'] !== undefined || each['const'] !== undefined || (target !== undefined && described(target))
      );
    };
    const silent = [...inside(schema)].flatMap(([pointer, each]) =>
      Object.entries((each['properties'] ?? {}) as Record<string, Schema>)
        .filter(([, property]) => !described(property))
        .map(([key]) => `${pointer}/${key}`),
    );
    expect(silent).toEqual([]);
  });

  it.each(names)('have examples that are right: %s', (name) => {
    const schema = readSchema(name);
    const ajv = strict();
    ajv.addSchema(schema);
    const shown = [...inside(schema)].filter(([pointer, each]) => pointer !== '' && Array.isArray(each['examples']));
    expect(shown.length).toBeGreaterThan(100);
    for (const [pointer, { examples }] of shown)
      for (const example of examples as unknown[])
        expect(
          ajv.validate(`${String(schema['$id'])}#${pointer}`, example),
          `${pointer}: ${JSON.stringify(example)}`,
        ).toBe(true);
  });

  it.each(names)('have no key or value that some YAML readers take for a truth value: %s', (name) => {
    const taken = ['on', 'off', 'yes', 'no', 'y', 'n'];
    for (const [, each] of inside(readSchema(name))) {
      const words = [...Object.keys((each['properties'] ?? {}) as object), ...((each['enum'] ?? []) as unknown[])];
      expect(words.filter((word) => taken.includes(String(word).toLowerCase()))).toEqual([]);
    }
  });

  it('use no length keywords, which would need the compiler at run time', () => {
    for (const [name, fragment] of fragments)
      for (const [, each] of inside(fragment))
        expect([name, 'minLength' in each || 'maxLength' in each]).toEqual([name, false]);
  });
});
