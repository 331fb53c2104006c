import { describe, expect, it } from 'vitest';
import { filesOfSrc, moduleOf, type Module, readModule, targetOf } from './modules.js';
import { order } from './order.js';
import { violations } from './violations.js';

/** Where the walk through src/ begins: the two ways in, and what only others need. */
const entries = [
  'src/cli/main.ts',
  'src/index.ts',
  // The build holds every profile to its schema, and the tests to sense.
  'src/source/check-profile.ts',
  'src/catalogue/sense.ts',
  // Nothing yet but its tests.
  'src/quantity/preferred.ts',
];

/** The paths that the entries lead to, themselves included, by what the modules are seen to import. */
function reached(modules: ReadonlyMap<string, Module>): ReadonlySet<string> {
  const seen = new Set<string>();
  const visit = (path: string): void => {
    const module = modules.get(path);
    if (!module || seen.has(path)) return;
    seen.add(path);
    for (const { name } of module.imports) {
      const target = targetOf(path, name);
      visit(`${target}.ts`);
      visit(`${target}.d.ts`);
    }
  };
  entries.forEach(visit);
  return seen;
}

describe('src/', () => {
  const files = filesOfSrc('.ts');
  const modules = new Map(files.map((path) => [path, readModule(path)]));

  it('keeps to the order of its folders, and its core to itself', () => {
    expect(violations([...modules.values()])).toEqual([]);
  });

  it('is seen whole: following the imports leads to every file', () => {
    const seen = reached(modules);
    expect(files.filter((path) => !seen.has(path))).toEqual([]);
    expect(seen.size).toBe(files.length);
    expect(files.length).toBeGreaterThan(100);
  });

  it('has generated code that imports nothing and reaches for nothing', () => {
    const generated = filesOfSrc('.js').map(readModule);
    expect(generated.map(({ path }) => path)).toContain('src/source/generated/validators.js');
    expect(generated.flatMap(({ imports }) => imports)).toEqual([]);
    expect(violations(generated)).toEqual([]);
  });
});

describe('the rules', () => {
  const against = (path: string, text: string): readonly string[] => violations([moduleOf(path, text)]);

  it.each([
    ['quantity', `import { read } from '../source/read.js';`],
    ['quantity', `import type { Document } from '../source/document.js';`],
    ['quantity', `import { type Document } from '../source/document.js';`],
    ['quantity', `export { read } from '../source/read.js';`],
    ['quantity', `export * from '../source/read.js';`],
    ['quantity', `export type Reading = import('../source/read.js').Reading;`],
    ['quantity', `import source = require('../source/read.js');`],
    ['quantity', `import '../source/read.js';`],
    ['reports', `export const later = () => import('../cli/print.js');`],
    ['reports', `export const later = (name: string) => import('./' + name);`],
    ['reports', `import { audit } from '../index.js';`],
    ['reports', `import { build } from '../../tools/build.mjs';`],
    ['reports', `import { readFileSync } from 'node:fs';`],
    ['reports', `import type { Stats } from 'fs';`],
    ['reports', `import { readFile } from 'fs/promises';`],
    ['reports', `import chalk from 'chalk';`],
    ['reports', `import type { Document } from 'yaml';`],
    ['cli', `import { parse } from 'yaml';`],
    ['cli', `import { x } from 'some-package';`],
    ['quantity', `export const f = (): unknown => process.env['X'];`],
    ['quantity', `export const f = (): void => console.log(1);`],
    ['quantity', `export const f = () => globalThis.process;`],
    ['quantity', `export const { env } = process;`],
    ['quantity', `export const held = { process };`],
    ['quantity', `export const f = () => typeof Buffer;`],
    ['quantity', `export const f = (): number => Date.now();`],
    ['quantity', `export const { now } = Date;`],
    ['quantity', `export const f = () => new Date();`],
    ['quantity', `export const f = () => new Date;`],
    ['quantity', `export const f = (): string => Date();`],
    ['quantity', `export const f = (): number => Math.random();`],
    ['quantity', `export const f = (): number => Math['random']();`],
    ['quantity', `export const { random } = Math;`],
    ['quantity', `export const f = () => performance.now();`],
    ['quantity', `export const f = () => new Function('return 1');`],
    ['quantity', `export const here = import.meta.url;`],
    ['quantity', `export async function f() {}`],
    ['quantity', `export const f = () => setTimeout(() => 1, 1);`],
  ])('do not let %s have: %s', (part, text) => {
    const found = against(`src/${part}/planted.ts`, `\n${text}`);
    expect(found).not.toEqual([]);
    expect(found[0]).toMatch(new RegExp(`^src/${part}/planted\\.ts:2: .+: .+`));
  });

  it.each([
    ['cli', `import { readFileSync } from 'node:fs'; import chalk from 'chalk'; import { audit } from '../index.js';`],
    ['cli', `export const f = async () => [process.argv, Date.now(), new Date(), Math.random()];`],
    ['source', `import { parse } from 'yaml';`],
    ['reports', `import { a } from './words.js'; import { b } from '../quantity/print.js';`],
    ['reports', `// process.exit(), Date.now()\nexport const text = 'console.log(process) import("node:fs")';`],
    ['reports', `export interface Plan { process: string; console?: Date } export const f = (p: Plan) => p.process;`],
    ['reports', `export const day = new Date('2027-03-01'); export const half = Math.max(1, Math.PI);`],
    ['reports', `export const f = ({ process: steps }: { process: number }) => ({ process: steps, fetch() {} });`],
  ])('let %s have: %s', (part, text) => {
    expect(against(`src/${part}/planted.ts`, text)).toEqual([]);
  });

  it('let every part import from all above it and from none below', () => {
    for (const [from, { part }] of order.entries()) {
      for (const [to, { part: other }] of order.entries()) {
        if (part === 'index' && other === 'index') continue;
        const path = part === 'index' ? 'src/index.ts' : `src/${part}/planted.ts`;
        const up = part === 'index' ? '.' : '..';
        const found = against(path, `import '${up}/${other === 'index' ? 'index' : `${other}/x`}.js';`);
        expect({ part, other, free: found.length === 0 }).toEqual({ part, other, free: to <= from });
      }
    }
  });

  it('do not let one rule import another, be it only its type', () => {
    const rule = moduleOf('src/checks/coils/coil-on-pin.ts', 'export default { name: "coil-on-pin" };');
    const helper = moduleOf('src/checks/coils/coils.ts', 'export const coils = 1;');
    const planted = (text: string) =>
      violations([rule, helper, moduleOf('src/checks/pins/planted.ts', `${text}\nexport default {};`)]);
    expect(planted(`import other from '../coils/coil-on-pin.js';`)[0]).toContain('rules never import each other');
    expect(planted(`import type other from '../coils/coil-on-pin.js';`)).toHaveLength(1);
    expect(planted(`import { coils } from '../coils/coils.js';`)).toEqual([]);
    // The list of rules is none itself.
    const list = moduleOf(
      'src/checks/rules.ts',
      `import coilOnPin from './coils/coil-on-pin.js'; export const rules = [coilOnPin];`,
    );
    expect(violations([rule, list])).toEqual([]);
  });

  it('do not let a module stand outside the folders', () => {
    expect(against('src/helpers.ts', '')).toHaveLength(1);
    expect(against('src/utils/text.ts', '')).toHaveLength(1);
    expect(against('src/index/text.ts', '')).toHaveLength(1);
  });
});
