/** `ampledger rule [NAME]` */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { FAMILY_OF, RULE_NAMES } from '../checks/rules.js';
import { toJson } from '../reports/json.js';
import { ruleParts } from '../reports/rule-page.js';
import { heading, mark, table, type Tree } from '../reports/tree.js';
import { nearestSpelling } from '../source/nearest-spelling.js';
import { GROUNDS } from '../wording/rule-help/grounds.js';
import { RULE_HELP } from '../wording/rule-help/rule-help.js';
import type { Arguments } from './arguments.js';
import { page, say } from './output.js';
import { print } from './print.js';
import { refuse } from './refuse.js';

/** Prints the page of a rule, or the names of all. */
export function rule({ operands: [name], options }: Arguments): Promise<number> {
  const json = options['format'] === 'json';
  if (name !== undefined && !RULE_NAMES.includes(name)) {
    const nearest = nearestSpelling(name, RULE_NAMES);
    return Promise.resolve(refuse([`There is no rule ${name}.${nearest ? ` Do you mean ${nearest}?` : ''}`]));
  }
  if (name === undefined)
    say(json ? toJson({ ampledger: 1, rules: RULE_NAMES.map(inShort) }) : print(listOfRules(), page()));
  else {
    const markdown = pageOf(name);
    say(json ? toJson({ ampledger: 1, ...inShort(name), page: markdown }) : shown(markdown));
  }
  return Promise.resolve(0);
}

const inShort = (name: string): object => ({
  rule: name,
  family: FAMILY_OF.get(name),
  ...RULE_HELP[name],
  grounds: GROUNDS[name],
});

/** The pages come with the package, in a folder beside that of the program. */
const pageOf = (name: string): string => readFileSync(join(__dirname, '../docs/rules', `${name}.md`), 'utf8');

const shown = (markdown: string): string =>
  ruleParts(markdown)
    .map((part) => (typeof part === 'string' ? part : print(part, page())))
    .join('\n');

function listOfRules(): Tree {
  const families = [...new Set(FAMILY_OF.values())];
  return families.map((family) => [
    heading(mark('strong', family)),
    table(
      [
        { title: 'rule', align: 'left' },
        { title: 'what it finds', align: 'left' },
      ],
      RULE_NAMES.filter((name) => FAMILY_OF.get(name) === family).map((name) => [name, RULE_HELP[name]!.title]),
    ),
  ]);
}
