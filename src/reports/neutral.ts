/**
 * Text from a project file may come from a stranger. Nothing in it may act on what shows it: no control character, no
 * escape, no invisible or direction-turning character, no line that a build server takes for a command.
 * Every replacement keeps the number of characters, so that a mark under an excerpt still points at the right place.
 */
import { visible } from '../source/visible.js';

/** Characters without a shape of their own: joiners, soft hyphens, tags. */
const formless = /\p{Cf}/gu;

/** `::name` at the start of a line and `##[name]` or `##word[name]` anywhere are commands to build servers. */
const commands = /::|##(?=\w*\[)/g;

/** `text` on one line and harmless: white space is a space, what cannot be shown has a sign in its place. */
export const neutral = (text: string): string =>
  visible(text.replace(/[\t\n\r]/g, ' '))
    .replace(formless, '\uFFFD')
    .replace(commands, (found) => (found === '::' ? ':\u2236' : '#\u266F'));
