/**
 * Protects a source that is dead from what lives: through the clamps of pins, pull-ups and loads it is fed from behind. Where
 * no mode says that it is dead it is judged as what only comes about when something else goes wrong.
 */
import type { FedSource } from '../../ledger/fed-dead.js';
import { mayBeLifted } from '../../ledger/lifted.js';
import { formatValue } from '../../quantity/print.js';
import type { Finding, Judged, WiringRule } from '../finding.js';
import { oncePerThing } from '../once.js';

/** Amperes that are worth no more than the note an injected current is, and up to which it is a strain (rule 18 of the format). */
const LITTLE = 1e-4;
const MUCH = 1e-3;

/** Volts up to which a source that no document forbids to be fed does not wake: what two junctions leave. Common practice, no source. */
const ASLEEP = 1.3;

/** Whether a document or the file forbids it, and not practice alone. */
const isForbidden = ({ reverse, reverseOrigin }: FedSource['source']): boolean =>
  reverse !== undefined && reverseOrigin?.basis !== 'practice' && reverseOrigin?.basis !== 'memory';

/** What is forbidden weighs more than what practice advises against, or what comes on a way that is assumed. */
function verdictOf({ source, stated, feeds }: FedSource): Finding['verdict'] {
  const assumed = feeds.every((f) => f.assumed);
  if (source.reverse === undefined) return stated && !assumed ? 'unproven' : 'note';
  const mild = !isForbidden(source) || assumed;
  return stated ? (mild ? 'strain' : 'breach') : mild ? 'note' : 'strain';
}

function find({ ways, ledger: { project } }: Judged): Finding[] {
  // That a rail is fed while its supply is dead is said already where it is lifted.
  const lifted = new Set(ways.lifted.filter(mayBeLifted).map(({ dead }) => dead.join()));
  return ways.fed.flatMap((fed): Finding[] => {
    const { dead, source, amps, feeds, steps } = fed;
    const verdict = verdictOf(fed);
    const sleeps = !isForbidden(source) && fed.lifted < ASLEEP;
    if (amps <= (verdict === 'note' ? MUCH : LITTLE) || sleeps || (verdict === 'note' && lifted.has(dead.join())))
      return [];
    const circuits = [...new Set(feeds.map((f) => f.circuit))];
    const pathOf = (id: string) => project.circuits.find((c) => c.id === id)?.path;
    return [
      {
        rule: 'dead-fed',
        family: 'supplies',
        verdict,
        about: source.id,
        path: source.path,
        names: {
          source: source.id,
          dead: dead.join(', '),
          amps: formatValue(amps, 'current'),
          through: feeds.map((f) => f.name).join(', '),
          circuits: circuits.join(', '),
          ...(feeds.every((f) => f.assumed) && { assumed: 'yes' }),
          ...(source.reverse === undefined && {
            asks: `does ${source.id} bear current that is pushed back into it while it is dead (its \`reverse\`)?`,
          }),
        },
        related: circuits.slice(0, 8).flatMap((name) => {
          const path = pathOf(name);
          return path ? [{ path, name }] : [];
        }),
        steps,
      },
    ];
  });
}

export default {
  name: 'dead-fed',
  family: 'supplies',
  find: (judged) => oncePerThing(find(judged)),
} satisfies WiringRule;
