/** Protects a board whose input is only known by its levels: the pin's real level has to switch it on, and off again. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'input-levels',
  family: 'relay boards',
  claims: (a) =>
    a.kind === 'input' &&
    /^input of .*, switched (on|off)$/.test(a.title) &&
    a.quantity === 'voltage' &&
    !/^input\.(active|indicator)$/.test(a.missing?.figure ?? ''),
} satisfies LimitRule;
