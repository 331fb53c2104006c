/**
 * Which way the supply tree leans when a current in it is at its most or its least. More volts mean more current nearly
 * everywhere; but where a switching regulator or a constant power outweighs the rest, less of them do. What every node's
 * current does with its voltage is read off a solution, and with it which way each link, each supply and what hangs beside
 * have to stand; the solution so found is asked again, until it stands.
 */
import type { Link } from '../project/tree-plan.js';
import type { Corner, End } from './corner.js';
import { cornerKey, opposite } from './corner.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import type { Surroundings } from './surroundings.js';
import { surroundingsOf } from './surroundings.js';

/** Ends that turn others over settle in a step or two. */
const MOST_TURNS = 3;

/** What is asked of the tree. */
export interface Asked {
  /** The node whose feed it is about. */
  readonly at: string;
  /** Whether its most is looked for, or its least. */
  readonly most: boolean;
  /** How what is asked rises with that node's voltage, where anything draws more from less. */
  readonly falling?: (s: Solution, at: string) => number;
}

/** The candidate that is furthest out, from one in which everything leans one way. */
export function furthest(solver: Solver, first: Candidate, asked: Asked): Candidate {
  let candidate = first;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const next = leant(solver, candidate, first.corner, asked);
    if (next.focus === candidate.focus && cornerKey(next.corner) === cornerKey(candidate.corner)) break;
    candidate = next;
  }
  return candidate;
}

/** How what flows into each node rises with its voltage, with all that it feeds; siemens. */
export function answersOf(s: Solution): readonly number[] {
  const known = answers.get(s);
  if (known) return known;
  const found = s.slopes.slice();
  for (let k = s.circuitry.links.length - 1; k >= 0; k--) {
    const { link, from, to } = s.circuitry.links[k]!;
    if (s.isLive(k)) found[from]! += through(s, link, k, from, found[to]!);
  }
  answers.set(s, found);
  return found;
}

const answers = new WeakMap<Solution, readonly number[]>();

/** What a node answers through a link that feeds another, siemens. */
function through(s: Solution, link: Link, k: number, from: number, behind: number): number {
  if (!s.regulates(link)) return behind / (1 + s.ohmsOf(link) * behind);
  if (link.kind !== 'switching-regulator') return 0;
  return -(s.linkInputs[k]! - s.ownCurrent(link)) / Math.max(s.volts[from]!, 0.1);
}

function leant(solver: Solver, candidate: Candidate, plain: Corner, { at, most, falling }: Asked): Candidate {
  const { moment } = candidate;
  const s = solver.solve(candidate);
  const around = surroundingsOf(s, at);
  // Where nothing draws more from less, more volts are more current everywhere.
  const corner = falling ? standing(s, around, plain, { at, most, falling }) : plain;
  const rises = falling === undefined || falling(s, at) >= 0;
  // What hangs beside it lowers it, and leans the other way; where less volts mean more of it, it leans as all do.
  if (!rises || (around.beside.length === 0 && around.regulators.size === 0))
    return { moment, corner, focus: solver.nobody };
  return { moment, corner: turned(corner, most), focus: solver.wholeBut(around.beside, around.regulators) };
}

/** A corner with what is not in question drawing little, or much; the same object for the same corner. */
function turned(corner: Corner, most: boolean): Corner {
  const known = turnedOver.get(corner) ?? { ...corner, rest: most ? ('low' as const) : ('high' as const) };
  turnedOver.set(corner, known);
  return known;
}

const turnedOver = new WeakMap<Corner, Corner>();

/** The corner with each link, and the supply, at the end at which most, or least, is drawn. */
function standing(
  s: Solution,
  { path, top, inside, around }: Surroundings,
  plain: Corner,
  { at, most, falling }: Asked,
): Corner {
  const { links, nodeIndex, project } = s.circuitry;
  const rises = answersOf(s);
  const end = (rising: boolean, wanted: boolean): End => (rising === wanted ? 'high' : 'low');
  const own = end(falling!(s, at) >= 0, most);
  const apart = new Map<string, End>();
  const stand = (id: string, at: End, usual: readonly End[]): void => {
    if (usual.some((u) => u !== at)) apart.set(id, at);
  };
  links.forEach(({ link, to }, k) => {
    const losing = link.kind === 'switching-regulator' && !link.dropout ? [] : [opposite(plain.losses)];
    const usual = [...(link.volts ? [plain.outputs] : []), ...losing];
    if (path.includes(k)) stand(link.id, own, usual);
    else if (inside.has(link.from)) stand(link.id, end(wantsVolts(s, link, k, rises[to]!), most), usual);
    // What hangs beside takes from it what it draws itself, and adds to it where less volts are more current.
    else if (around.has(link.from)) stand(link.id, end(wantsVolts(s, link, k, rises[to]!), own === 'low'), usual);
  });
  for (const { id, volts } of project.nodes) if (volts && nodeIndex.get(id) === top) stand(id, own, [plain.sources]);
  return apart.size > 0 ? { ...plain, apart } : plain;
}

/** Whether a link lets more be taken from its input as its output rises. */
const wantsVolts = (s: Solution, link: Link, k: number, rises: number): boolean =>
  link.kind === 'switching-regulator' && s.regulates(link)
    ? s.linkCurrents[k]! + s.volts[s.circuitry.links[k]!.to]! * rises >= 0
    : rises >= 0;
