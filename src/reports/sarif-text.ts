/** Text and names of files as SARIF writes them. */
import { neutral } from './neutral.js';

/**
 * Text of a message: harmless, and nothing in it is taken for a placeholder (`{0}`) or a link (`[text](target)`), which a
 * plain text message may have (SARIF 2.1.0, 3.11.5 and 3.11.6).
 */
export const message = (text: string): string =>
  neutral(text)
    .replace(/[\\[\]]/g, '\\$&')
    .replace(/[{}]/g, '$&$&');

/** Half of a pair of surrogates, which no URI can have. */
const half = /\p{Surrogate}/gu;

/** What relative names hang on, by the name that hosting sites know it by. */
export const ROOT = '%SRCROOT%';

/** The run's word on it: where the repository lies is another place on every machine. */
export const BASES = {
  [ROOT]: {
    description: { text: 'The root of the repository; without one, the folder in which the command ran.' },
  },
} as const;

/** @param folder in which the command ran, from the root of the repository: '' for the root itself, 'firmware/boards' */
export function located(file: string, folder = ''): { readonly uri: string; readonly uriBaseId?: typeof ROOT } {
  const path = file.replace(half, '\uFFFD').replaceAll('\\', '/');
  const encoded = (whole: string): string => whole.split('/').map(encodeURIComponent).join('/');
  if (/^[A-Za-z]:\//.test(path)) return { uri: `file:///${path.slice(0, 2)}${encoded(path.slice(2))}` };
  if (path.startsWith('//')) return { uri: `file:${encoded(path)}` };
  if (path.startsWith('/')) return { uri: `file://${encoded(path)}` };
  return { uri: encoded(plain(`${folder}/${path}`)), uriBaseId: ROOT };
}

/** A relative path without '.' and without '..' but at its start. */
function plain(path: string): string {
  const kept: string[] = [];
  for (const part of path.split('/')) {
    if (part === '' || part === '.') continue;
    if (part === '..' && kept.length > 0 && kept.at(-1) !== '..') kept.pop();
    else kept.push(part);
  }
  return kept.join('/');
}
