/**
 * The pull-ups of a two-wire bus: so weak that a line rises too slowly, one more is fitted at the controller; so strong that a
 * device cannot pull it down, those on the modules come off until what is left may be carried. Values between both bounds are
 * preferred ones, and which of them holds is proved.
 */
import { isMapping } from '../loads/figures.js';
import type { Case, Way } from './cures.js';
import { entryOf } from './entries.js';
import type { Change, Cure } from './prove.js';

/** Pull-ups to try, ohms as they are sold: those that most buses have first (common practice, no source). */
const PULLS = ['4.7 kΩ', '3.3 kΩ', '2.2 kΩ', '10 kΩ', '1.8 kΩ'];

export const busPulls: Way = (of) => {
  if (of.finding.rule === 'bus-rise') return PULLS.flatMap((ohms) => held(of, ohms, []));
  if (of.finding.rule !== 'bus-current') return [];
  const pulled = withPulls(of);
  const fewer = pulled.slice(1).map((_, k) => off(of, pulled.slice(0, k + 1)));
  return [...fewer, ...PULLS.flatMap((ohms) => held(of, ohms, pulled))];
};

/** The modules on the line that have pull-ups of their own. */
function withPulls({ finding, judgement: { project }, data }: Case): readonly string[] {
  const on = new Set(project.uses.filter((u) => u.pin === finding.about).map((u) => u.by));
  return [...on].filter((owner) => entryOf(data, 'loads', owner)?.['pull-up'] !== undefined);
}

const without = (owners: readonly string[]): Change[] =>
  owners.map((owner) => ({ path: ['loads', owner, 'pull-up'], value: undefined }));

function off({ finding }: Case, owners: readonly string[]): Cure {
  const names = owners.join(' and ');
  return {
    title: `Take the pull-ups off ${names}`,
    changes: without(owners),
    parts: [],
    steps: owners.map(
      (owner) =>
        `Unsolder the pull-up resistors of ${owner} (often marked 472, 222 or 103), or cut the jumper that connects them.`,
    ),
    watch: [finding.about],
  };
}

/** One resistor at the controller's pin, to its own rail. */
function held(
  { finding, judgement: { project }, data }: Case,
  ohms: string,
  owners: readonly string[],
): readonly Cure[] {
  const use = project.uses.find((u) => u.pin === finding.about);
  const owner = finding.about.slice(0, finding.about.lastIndexOf('.'));
  const section = ['controllers', 'expanders'].find((s) => entryOf(data, s, owner) !== undefined);
  if (use === undefined || section === undefined) return [];
  const label = use.label.slice(use.label.lastIndexOf('.') + 1);
  const pins = entryOf(data, section, owner)?.['pins'];
  // The pin may be known by another of its names there.
  const known = isMapping(pins)
    ? Object.keys(pins).find(
        (k) => k.toLowerCase() === label.toLowerCase() || `${owner}.${k}`.toLowerCase() === finding.about.toLowerCase(),
      )
    : undefined;
  return [
    {
      title: `Pull ${label} up with ${ohms}${owners.length > 0 ? `, in place of what ${owners.join(' and ')} ${owners.length > 1 ? 'have' : 'has'}` : ''}`,
      changes: [
        ...without(owners),
        { path: [section, owner, 'pins', known ?? label, 'pull-up'], value: `${ohms} ±5 %` },
      ],
      parts: [ohms],
      steps: [
        ...off({ finding } as Case, owners).steps,
        `Put ${ohms} from ${label} to the supply of ${owner}; the other line of the bus wants one, too.`,
      ],
      watch: [finding.about],
    },
  ];
}
