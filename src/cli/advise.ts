/** `ampledger advise FILE` */
import * as ampledger from '../index.js';
import { adviceJson, adviceTree } from '../reports/advice.js';
import { headOf, toJson } from '../reports/json.js';
import type { Arguments } from './arguments.js';
import { fileAndVariant, readConditions } from './conditions.js';
import { openDocument } from './open-document.js';
import { complain, page, say } from './output.js';
import { refuse, unread } from './refuse.js';
import { type Diagnostic, renderDiagnostic } from '../source/diagnostic.js';
import { writeWhole } from './write-whole.js';

/** What keeps a document's text with changes from being audited: a variant that sets what the changes took away, say. */
function errorsOf(text: string, former: ampledger.WithFolders): readonly Diagnostic[] {
  const { document, errors } = ampledger.read(text, former.file);
  if (!document || errors.length > 0) return errors;
  return ampledger.audit(ampledger.withFolders(document, former.folders), { advice: false }).errors;
}

/** Prints what to change, and writes it into the file when asked. */
export async function advise(given: Arguments): Promise<number> {
  const [file = ''] = given.operands;
  const { options } = given;
  const into = options['into-file'] === true;
  if (into && file === '-') return refuse(['--into-file needs a file; standard input cannot be written to.']);
  if (into && options['variant'] !== undefined)
    return refuse([
      '--into-file does not go with --variant: what a variant changes is not written into the file. Advise on the file as it stands, or make the variant the file.',
    ]);
  if (options['keep'] === true && !into) return refuse(['--keep goes with --into-file.']);
  const conditions = readConditions(given);
  if ('problem' in conditions) return refuse([conditions.problem]);
  const json = options['format'] === 'json';
  const opened = await openDocument(file);
  if ('unread' in opened) return unread(opened, json);
  const { project, advice, text, errors } = ampledger.advise(opened.document, conditions);
  if (errors || advice === undefined) return unread({ file, errors: errors ?? [] }, json);
  if (json) say(toJson(adviceJson(advice, headOf(project, file, conditions.variant))));
  else {
    const { print } = await import('./print.js');
    say(print(adviceTree(advice, project, fileAndVariant(file, conditions), options['all'] === true), page()));
  }
  if (!into) return 0;
  if (text === opened.document.text) {
    complain([`${file} stays as it is: there is nothing to write.`]);
    return 0;
  }
  const broken = errorsOf(text, opened.document);
  if (broken.length > 0)
    return refuse([
      `${file} stays as it is: with these changes it could not be audited any more. What does not fit them:`,
      ...broken.flatMap((error) => [renderDiagnostic(error), '']),
    ]);
  const problem = await writeWhole(file, text, options['keep'] === true ? opened.document.text : undefined);
  if (problem !== undefined) return refuse([problem]);
  complain([`${file} is written${options['keep'] === true ? `; its former text is in ${file}.before` : ''}.`]);
  return 0;
}
