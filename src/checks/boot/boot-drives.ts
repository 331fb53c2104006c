/** Protects what a load drives from a start before firmware runs: it comes on, or its safe state is not kept. */
import type { WiringRule } from '../finding.js';
import { startFindings, startOf } from './at-boot.js';

export default {
  name: 'boot-drives',
  family: 'boot',
  find: (judged) =>
    startFindings(judged, 'boot-drives', (started) => {
      const start = startOf(started);
      return start === 'against' ? 'breach' : start === 'acts' ? 'note' : undefined;
    }),
} satisfies WiringRule;
