/** A control that nothing holds until firmware runs: a microampere decides whether its load is on, or what it hears. */
import type { WiringRule } from '../finding.js';
import { careOf, startFindings, startOf } from './at-boot.js';

export default {
  name: 'boot-floats',
  family: 'boot',
  find: (judged) => [
    ...startFindings(judged, 'boot-floats', (started) => {
      if (startOf(started) !== 'unsure') return undefined;
      return careOf(started.plan).safe === undefined ? 'note' : 'strain';
    }),
    // What comes over a line that pulses is no more a signal than what one picks up that floats.
    ...startFindings(
      judged,
      'boot-floats',
      ({ plan }) => (careOf(plan).safe === undefined ? 'note' : 'strain'),
      judged.boot.listening,
    ),
  ],
} satisfies WiringRule;
