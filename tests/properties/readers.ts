/** How each account of a project is read off a second reckoning: by its plan's words, and by nothing of the ledger's. */
import type { Account } from '../../src/ledger/account.js';
import { linearLoss } from '../../src/circuit/regulator.js';
import type { PinAccountPlan } from '../../src/project/pin-plan.js';
import type { Project } from '../../src/project/project.js';
import type { Reckoned } from './reckoning.js';

export interface Reader {
  readonly account: Account;
  /** Circuits that have to be off for it: it asks what flows then. */
  readonly off: readonly string[];
  /** It sees stall and start currents, or what they come to over one second. */
  readonly peaks: boolean | 'rms';
  readonly read: (r: Reckoned) => number | undefined;
}

/** A reader for each account; that there is one for all of them is part of the test. */
export function readersOf(project: Project, accounts: readonly Account[]): Reader[] {
  return accounts.filter((a) => a.draw !== undefined).map((account) => ({ account, ...readerOf(project, account) }));
}

function readerOf(project: Project, a: Account): Omit<Reader, 'account'> {
  const plan = project.accounts.find(
    (p) => p.id === a.id && p.title === a.title && p.quantity === a.quantity && p.direction === a.direction,
  );
  if (plan) {
    const off = plan.off || plan.whileOff || plan.recipes.some((r) => r.startsWith('let-go')) ? plan.circuits : [];
    return {
      off,
      peaks: plan.peaks ?? false,
      read: (r) => plan.read(r.at(plan.kind === 'array' ? plan.id : (plan.circuits[0] ?? plan.id))),
    };
  }
  const pins = project.pinAccounts.find(
    (p) => p.id === a.id && p.direction === a.direction && (p.heat === undefined) === (a.quantity === 'current'),
  );
  if (pins?.heat) return { off: [], peaks: true, read: (r) => meanOf(r, (at) => pinHeat(pins, at)) };
  if (pins) return { off: [], peaks: true, read: (r) => pinSum(pins, r) };
  // What a supply has to charge is no current of a build.
  if (a.quantity === 'charge') return { off: [], peaks: false, read: () => undefined };
  if (a.title.endsWith(', regulation')) {
    const regulator = project.links.find((l) => l.id === a.id)!;
    return { off: [], peaks: true, read: (r) => r.voltage(regulator.from) - r.dropout(regulator) };
  }
  // A joint behind a cable goes by the cable’s name, and is no account.
  const node = project.nodes.find((n) => n.kind !== 'joint' && n.id === a.id.replace(/\.output$/, ''));
  if (node && a.quantity === 'voltage' && a.title.endsWith(', voltage'))
    return { off: [], peaks: a.direction === 'at-least', read: (r) => r.voltage(node.id) };
  if (node && a.quantity === 'power')
    return { off: [], peaks: true, read: (r) => r.voltage(node.id) * r.nodes.get(node.id)! };
  const out = (r: Reckoned): number => r.nodes.get(node!.id)!;
  if (node?.kind === 'rail') return { off: [], peaks: 'rms', read: (r) => rmsOf(r, out) };
  if (node) return { off: [], peaks: true, read: out };
  const link = project.links.find((l) => l.id === a.id);
  if (link === undefined) throw new Error(`nothing in the project is called '${a.id}'`);
  const amps = (r: Reckoned): number => r.links.get(link.id)!;
  if (a.quantity === 'voltage') return { off: [], peaks: false, read: (r) => r.voltage(link.from) };
  if (a.quantity === 'current')
    return link.kind === 'fuse' || link.kind === 'cable'
      ? { off: [], peaks: 'rms', read: (r) => rmsOf(r, amps) }
      : { off: [], peaks: true, read: amps };
  const loss = (r: Reckoned): number =>
    linearLoss(r.voltage(link.from), r.voltage(link.to), amps(r), r.figure(link, 'quiescent'));
  return { off: [], peaks: false, read: (r) => r.at(link.id).ambient + r.figure(link, 'thermal') * meanOf(r, loss) };
}

/** Over a period of what pulses, by what was reckoned of each part of it. */
const meanOf = (r: Reckoned, read: (r: Reckoned) => number): number =>
  r.phases.reduce((sum, { share, at }) => sum + share * read(at), 0);
const rmsOf = (r: Reckoned, read: (r: Reckoned) => number): number => Math.sqrt(meanOf(r, (at) => read(at) ** 2));

/** Of pins joined for one load one may take a fifth more than its even share: a build has them alike. */
const uneven = (joined: readonly string[] | undefined, pins: readonly string[]): number =>
  joined === undefined ? 1 : Math.min(1.2, joined.length / joined.filter((pin) => pins.includes(pin)).length);

/** Current squared times resistance in each pin, and what the chip takes of its rail. */
function pinHeat(plan: PinAccountPlan, r: Reckoned): number {
  let sum = plan.own.reduce((watts, own) => watts + r.current(own.part) * r.voltage(plan.heat!.rail), 0);
  for (const net of r.nets)
    for (const { plan: branch, amps, elements } of net.lines) {
      if (branch.pin === undefined || !plan.pins.includes(branch.pin.pin)) continue;
      sum += amps ** 2 * elements.find((e) => e.member.kind === 'pin')!.ohms;
    }
  return sum;
}

function pinSum(plan: PinAccountPlan, r: Reckoned): number {
  let sum = plan.own.reduce((amps, own) => amps + r.current(own.part), 0);
  for (const net of r.nets)
    for (const { plan: branch, amps } of net.lines) {
      if (branch.pin === undefined || !plan.pins.includes(branch.pin.pin)) continue;
      const side = branch.pin.level === 'high' ? 'source' : 'sink';
      if (plan.direction === 'at-most' || plan.direction === side)
        sum +=
          uneven(branch.pin.joined, plan.pins) * Math.max(branch.pin.outward * amps * (side === 'source' ? 1 : -1), 0);
    }
  return sum;
}
