/**
 * What reads a pin's level on a higher supply than the pin's is fed from the pin's own rail, where it works there: then high is
 * high for it. So is an input that a supply above the pin's high level never lets go.
 */
import { railOfPin } from '../project/rail-of-pin.js';
import type { Way } from './cures.js';
import { entryOf } from './entries.js';
import { rewired } from './rewire.js';

const RULES = new Set(['level-high', 'level-over', 'input-release']);
const SECTIONS = ['expanders', 'loads'];

export const feedReader: Way = ({ finding, judgement, data }) => {
  const [section, owner] = finding.path;
  if (!RULES.has(finding.rule) || !SECTIONS.includes(String(section))) return [];
  const { project } = judgement;
  const ids = [finding.about, ...(finding.account?.entries ?? []).map((e) => e.circuit), finding.account?.id];
  const pins = project.uses.filter((u) => u.by === owner || ids.includes(u.pin)).map((u) => u.pin);
  const rail = pins.map((pin) => railOfPin(project, pin)).find((r) => r !== undefined);
  const entry = entryOf(data, String(section), String(owner));
  if (rail === undefined || entry?.['supply'] === undefined || entry['supply'] === rail) return [];
  return [
    {
      title: `Feed ${String(owner)} from ${rail}`,
      changes: [
        { path: [String(section), String(owner), 'supply'], value: rail },
        ...(section === 'loads' ? rewired(data, project, String(owner), [rail]) : []),
      ],
      parts: [],
      steps: [
        `Take the plus of ${String(owner)} off ${String(entry['supply'])} and put it on ${rail}, on which the pin stands.`,
      ],
      watch: finding.account ? [finding.account.id] : [],
    },
  ];
};
