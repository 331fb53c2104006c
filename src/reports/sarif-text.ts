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

/** A file's name as a URI reference: a path stays as it was given, relative to the folder the command ran in. */
export function uriOf(file: string): string {
  const path = file.replace(half, '\uFFFD').replaceAll('\\', '/');
  const encoded = path.split('/').map(encodeURIComponent).join('/');
  if (/^[A-Za-z]:\//.test(path)) return `file:///${path.charAt(0)}:${encoded.slice(encoded.indexOf('/'))}`;
  if (path.startsWith('//')) return `file:${encoded}`;
  return path.startsWith('/') ? `file://${encoded}` : encoded;
}
