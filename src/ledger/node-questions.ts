/** What flows through the nodes of the supply tree: supplies, inlets, rails. */
import { rmsOf, rmsSteps } from '../loads/pulses.js';
import type { TreeNode } from '../project/tree-plan.js';
import type { Shares } from './bookings.js';
import { booksOf, flowsOf } from './bookings.js';
import { rmsShares } from './phases.js';
import type { TreeQuestion } from './question.js';
import type { Solution } from './solution.js';
import { sumSteps } from './working.js';

export function nodeQuestions(node: TreeNode): TreeQuestion[] {
  const shares = (s: Solution): Shares => booksOf(s).nodes.get(node.id)!;
  const amps = (s: Solution): number => flowsOf(s).get(node.id) ?? 0;
  // A rail is copper and contacts, which heat slowly.
  const slow = node.kind === 'rail';
  return [
    {
      id: node.id,
      kind: node.kind === 'joint' ? 'rail' : node.kind,
      title: node.title,
      quantity: 'current',
      direction: 'at-most',
      path: node.path,
      limits: node.limits,
      ...(node.missing && { missing: node.missing }),
      read: (s) => (slow ? rmsOf(s, amps) : amps(s)),
      shares: slow ? rmsShares(shares) : shares,
      at: node.id,
      steps: (s) => [
        ...sumSteps(node.title, shares(s), undefined, s),
        ...(slow ? rmsSteps(s, 'I_rms', 'its root mean square over a period of the pulses', 'A', amps) : []),
      ],
    },
  ];
}
