/** `ampledger headroom FILE --more LOAD` */
import * as ampledger from '../index.js';
import { headroomJson, headroomTree } from '../reports/headroom.js';
import { headOf, toJson } from '../reports/json.js';
import type { Arguments } from './arguments.js';
import { fileAndVariant, readConditions } from './conditions.js';
import { openDocument } from './open-document.js';
import { page, say } from './output.js';
import { refuse, unread } from './refuse.js';

/** Prints how many more of a load fit. */
export async function headroom(given: Arguments): Promise<number> {
  const [file = ''] = given.operands;
  const { more } = given.options;
  if (typeof more !== 'string') return refuse(['--more is missing: headroom of what? As in --more vents.1.']);
  const conditions = readConditions(given);
  if ('problem' in conditions) return refuse([conditions.problem]);
  const json = given.options['format'] === 'json';
  const opened = await openDocument(file);
  if ('unread' in opened) return unread(opened, json);
  const { project, headroom: found, nearest = [], errors } = ampledger.headroom(opened.document, more, conditions);
  if (errors) return unread({ file, errors }, json);
  if (found === undefined)
    return refuse([
      `Nothing in ${file} is called ${more}.`,
      ...(nearest.length > 0 ? [`Do you mean ${nearest.join(' or ')}?`] : []),
    ]);
  if (json) say(toJson(headroomJson(found, headOf(project, file, conditions.variant))));
  else {
    const { print } = await import('./print.js');
    say(print(headroomTree(found, project, fileAndVariant(file, conditions)), page()));
  }
  return 0;
}
