/** `ampledger options FILE [BOARD]` */
import * as ampledger from '../index.js';
import { headOf, toJson } from '../reports/json.js';
import { optionsJson, optionsTree } from '../reports/options.js';
import type { Arguments } from './arguments.js';
import { fileAndVariant, readConditions } from './conditions.js';
import { openDocument } from './open-document.js';
import { page, say } from './output.js';
import { refuse, unread } from './refuse.js';

/** Prints every arrangement of the boards' supplies, each audited. */
export async function options(given: Arguments): Promise<number> {
  const [file = '', board] = given.operands;
  const conditions = readConditions(given);
  if ('problem' in conditions) return refuse([conditions.problem]);
  const json = given.options['format'] === 'json';
  const opened = await openDocument(file);
  if ('unread' in opened) return unread(opened, json);
  const { project, boards, nearest, errors } = ampledger.optionsOf(opened.document, board, conditions);
  if (errors) return unread({ file, errors }, json);
  if (nearest)
    return refuse([
      `There is no relay board ${board} in ${file}.`,
      ...(nearest.length > 0 ? [`Do you mean ${nearest.join(' or ')}?`] : []),
    ]);
  if (json) say(toJson(optionsJson(boards, headOf(project, file, conditions.variant))));
  else {
    const { print } = await import('./print.js');
    say(print(optionsTree(boards, project, fileAndVariant(file, conditions), given.options['all'] === true), page()));
  }
  return 0;
}
