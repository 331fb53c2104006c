/** A control that nothing holds until firmware runs: a microampere decides whether its load is on. */
import type { WiringRule } from '../finding.js';
import { startFindings, startOf } from './at-boot.js';

export default {
  name: 'boot-floats',
  family: 'boot',
  find: (judged) =>
    startFindings(judged, 'boot-floats', (started) => {
      if (startOf(started) !== 'unsure') return undefined;
      return started.plan.purpose?.safeWhen === undefined ? 'note' : 'strain';
    }),
} satisfies WiringRule;
