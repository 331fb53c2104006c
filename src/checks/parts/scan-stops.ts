/** What is lit in turns stays lit when firmware stops in the middle of a scan, and carries for good what it was to carry for a moment. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'scan-stops',
  family: 'parts',
  claims: (a) => (a.kind === 'input' || a.kind === 'series') && a.id.endsWith('.stuck'),
} satisfies LimitRule;
