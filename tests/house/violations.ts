/** Holds modules of src/ to the rules of order.ts. */
import { builtinModules } from 'node:module';
import { type Mention, type Module, targetOf } from './modules.js';
import { order, outside, packages, shell } from './order.js';

const parts: readonly string[] = order.map(({ part }) => part);

/** The part that a path belongs to: 'quantity', or 'index' for src/index. Undefined outside src/ and its parts. */
function partOf(path: string): string | undefined {
  const [src, part, ...rest] = path.replace(/(\.d)?\.[jt]s$/, '').split('/');
  const isPart = src === 'src' && part !== undefined && parts.includes(part);
  return isPart && (part === 'index') === (rest.length === 0) ? part : undefined;
}

/** A rule is a module below a family's folder that has a default export. */
const isRule = ({ path, exportsDefault }: Module): boolean => path.startsWith('src/checks/') && exportsDefault;

/** One line for everything that is against the rules, with the place and the reason. */
export function violations(modules: readonly Module[]): readonly string[] {
  const rules = new Set(modules.filter(isRule).map(({ path }) => path.replace(/\.ts$/, '')));
  return modules.flatMap((module) => {
    const part = partOf(module.path);
    if (part === undefined) return [`${module.path}: this is in none of the folders of src/`];
    const say = ({ name, line }: Mention, why: string | undefined) =>
      why === undefined ? [] : [`${module.path}:${line}: ${name}: ${why}`];
    return [
      ...module.imports.flatMap((mention) => say(mention, againstImport(module, part, mention.name, rules))),
      ...module.reaches.flatMap((mention) => say(mention, part === shell ? undefined : againstReach(mention.name))),
    ];
  });
}

function againstImport(module: Module, part: string, name: string, rules: ReadonlySet<string>): string | undefined {
  if (name === '(computed)') return 'nobody can tell what this imports';
  if (!name.startsWith('.')) return againstPackage(part, name);
  const target = targetOf(module.path, name);
  const other = partOf(target);
  if (other === undefined) return 'this leads to none of the folders of src/';
  if (parts.indexOf(other) > parts.indexOf(part)) {
    return `${part} stands below ${other}: ${order.find((each) => each.part === part)?.why}`;
  }
  return isRule(module) && rules.has(target)
    ? 'rules never import each other: each is read and switched alone'
    : undefined;
}

function againstPackage(part: string, name: string): string | undefined {
  if (name.startsWith('node:') || builtinModules.includes(name)) {
    return part === shell ? undefined : `only ${shell} knows Node: the core runs in a browser`;
  }
  const known = packages.find((each) => name === each.name || name.startsWith(`${each.name}/`));
  if (!known) return 'no package is used here but those listed';
  return known.parts.some((each) => each === part) ? undefined : `only for ${known.parts.join(', ')}: ${known.why}`;
}

const againstReach = (name: string): string | undefined => outside.find(({ names }) => names.includes(name))?.why;
