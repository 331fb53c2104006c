/** `ampledger working FILE NAME` */
import * as ampledger from '../index.js';
import { toJson } from '../reports/json.js';
import type { Arguments } from './arguments.js';
import { fileAndVariant, readConditions } from './conditions.js';
import { openDocument } from './open-document.js';
import { page, say } from './output.js';
import { refuse, unread } from './refuse.js';

/** Prints the sums behind a name of the file; a name that is none is answered with those that come near. */
export async function working(given: Arguments): Promise<number> {
  const [file = '', name = ''] = given.operands;
  const conditions = readConditions(given);
  if ('problem' in conditions) return refuse([conditions.problem]);
  const opened = await openDocument(file);
  const json = given.options['format'] === 'json';
  if ('unread' in opened) return unread(opened, json);
  const found = ampledger.workingOf(opened.document, name, conditions);
  if (found.errors) return unread({ file, errors: found.errors }, json);
  if (found.nearest) return refuse([`Nothing in ${file} is called ${name}.`, ...near(found.nearest)]);
  if (json) {
    const { variant } = conditions;
    say(
      toJson({
        ampledger: 1,
        file,
        ...(variant !== undefined && { variant }),
        name,
        title: found.title,
        steps: found.steps,
      }),
    );
    return 0;
  }
  const [{ print }, { workingReport }] = await Promise.all([import('./print.js'), import('../reports/working.js')]);
  say(print(workingReport(found, fileAndVariant(file, conditions)), page()));
  return 0;
}

const near = (names: readonly string[]): readonly string[] =>
  names.length === 0 ? [] : [`Do you mean ${names.join(' or ')}?`];
