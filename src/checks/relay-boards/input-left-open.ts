/** What is never assumed of a board, and what hangs on it: the level that switches it on, an indicator in series. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'input-left-open',
  family: 'relay boards',
  claims: (a) => /^input\.(active|indicator)$/.test(a.missing?.figure ?? ''),
} satisfies LimitRule;
