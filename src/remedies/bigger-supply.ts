/** A supply that is asked for more than it gives is replaced by one of the next standard rating, a port by an adapter. */
import type { Way } from './cures.js';
import { entryOf, figureIn, partText } from './entries.js';
import type { Cure } from './prove.js';
import { ratingFor } from './supply-for.js';

const RULES = new Set(['supply-current', 'supply-power', 'supply-capacitance', 'regulator-starved']);

export const biggerSupply: Way = ({ finding, judgement, data }) => {
  const { about } = finding;
  const entry = RULES.has(finding.rule) ? entryOf(data, 'supplies', about) : undefined;
  const node = judgement.project.nodes.find((n) => n.id === about);
  if (entry === undefined || node?.volts === undefined || entry['from'] !== undefined) return [];
  const currents = judgement.accounts.filter((j) => j.account.id === about && j.account.quantity === 'current');
  const asked = Math.max(0, ...currents.map((j) => Math.max(j.by?.draw ?? 0, j.account.draw?.max ?? 0)));
  const rating = ratingFor(asked, judgement.project.policy.current);
  if (rating === undefined) return [];
  const now = figureIn(entry['current'], 'current');
  const text = partText(Math.max(rating, now ?? 0), 'current');
  const steps = [`Replace ${about} by a supply of the same voltage for ${text}.`];
  const own: Cure[] =
    now === undefined || rating <= now
      ? []
      : [
          {
            title: `Get a supply of ${text} for ${about}`,
            changes: [{ path: ['supplies', about, 'current'], value: text }],
            parts: [`a supply of ${String(entry['voltage'] ?? entry['type'])}, ${text}`],
            steps,
            watch: [about],
          },
        ];
  const volts = `${partText(node.volts.typ, 'voltage')} ±5 %`;
  const adapter: Cure = {
    title: `Make ${about} an adapter of ${volts}, ${text}`,
    changes: [{ path: ['supplies', about], value: { voltage: volts, current: text } }],
    parts: [`an adapter of ${volts}, ${text}`],
    steps: [...steps, `It is an adapter of its own with the same plug, no port of a computer.`],
    watch: [about],
  };
  return [...own, adapter];
};
