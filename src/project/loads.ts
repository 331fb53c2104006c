/** The loads of a project, each lowered by its type. */
import type { Profile } from '../catalogue/profile.js';
import { Figures, isMapping } from '../loads/figures.js';
import type { Bench, Lowered } from '../loads/lowering.js';
import { NOTHING } from '../loads/lowering.js';
import type { CircuitPlan, LatchingPlan } from '../loads/circuit-plan.js';
import { lowerContact } from '../loads/contacts/contact.js';
import { pulsesOf } from '../loads/pulses.js';
import { latchingOf } from '../loads/latching.js';
import { formOf } from '../loads/contacts/contact-figures.js';
import { contactOf, purposeOf } from '../loads/purpose.js';
import { LOAD_TYPES, loadType } from '../loads/registry.js';
import type { EntryKind } from '../source/check.js';
import { checkEntry, isEntryKind } from '../source/check.js';
import { didYouMean } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import type { Surroundings } from './bench.js';
import { reportPart } from './bench.js';
import { ofLoad } from './capacitances.js';
import type { Capacitance, DipPlan, SupplyWindow } from './tree-plan.js';
import { loadDip, loadWindow } from './windows.js';

type Raw = Readonly<Record<string, unknown>>;

/** What `like` does not take over: a load's own connections. */
const OWN_KEYS = ['pin', 'pins', 'joined-pins', 'inputs', 'signals', 'like'];

/** Loads with what they have at their inputs. */
export interface LoweredLoads extends Lowered {
  readonly capacitances: readonly Capacitance[];
  readonly windows: readonly SupplyWindow[];
  readonly dips: readonly DipPlan[];
}

const NONE: LoweredLoads = { ...NOTHING, capacitances: [], windows: [], dips: [] };

export function lowerLoads(raw: unknown, around: Surroundings, bench: Bench): LoweredLoads {
  if (!isMapping(raw)) return NONE;
  const parts = Object.keys(raw).map((id) => lowerLoad(raw, id, around, bench));
  return {
    circuits: parts.flatMap((p) => p.circuits),
    networks: parts.flatMap((p) => p.networks),
    accounts: parts.flatMap((p) => p.accounts),
    interlocks: parts.flatMap((p) => p.interlocks ?? []),
    open: parts.flatMap((p) => p.open ?? []),
    ends: parts.flatMap((p) => p.ends ?? []),
    capacitances: parts.flatMap((p) => p.capacitances),
    windows: parts.flatMap((p) => p.windows),
    dips: parts.flatMap((p) => p.dips),
  };
}

function lowerLoad(loads: Raw, id: string, around: Surroundings, bench: Bench): LoweredLoads {
  const { remarks, catalogue } = around;
  const path: Path = ['loads', id];
  const own = loads[id];
  if (!isMapping(own)) return NONE;
  const entry = withLike(loads, id, around);
  if (entry === undefined) return NONE;
  around.places.put(id, entry['place'], [...path, own['place'] === undefined ? 'like' : 'place']);
  const named = entry['part'];
  const profile = typeof named === 'string' ? catalogue.profile(named) : undefined;
  if (typeof named === 'string' && profile?.kind !== 'load') {
    reportPart(around, named, [...path, own['part'] === undefined ? 'like' : 'part'], 'load');
    return NONE;
  }
  const type = typeof entry['type'] === 'string' ? entry['type'] : profile?.type;
  if (type === undefined) {
    checkEntry('load', own, path).forEach(remarks.problem);
    remarks.problem({
      path,
      on: 'key',
      says: `\`${id}\` says neither what part nor what type of load it is`,
      expected: '`part:` from the catalogue, or `type:`',
    });
    return NONE;
  }
  const lower = loadType(type);
  const kind = `load:${type}`;
  if (isEntryKind(kind)) checkEntry(kind as EntryKind, own, path).forEach(remarks.problem);
  if (lower === undefined) {
    // The frame has refused a type that the format has and this version does not compute.
    const types = LOAD_TYPES.map((t) => t.type);
    if (typeof own['type'] !== 'string')
      remarks.problem({
        path,
        on: 'key',
        says: `\`${id}\` is a ${type}, which is not computed yet`,
        expected: didYouMean(type, types, `one of ${types.join(', ')}`),
      });
    return NONE;
  }
  const figures = figuresOf(id, path, entry, profile, around);
  const lowered = lower.lower({ id, type, path, entry, figures, bench });
  const atFeeds = <T>(make: (figures: Figures, about: string, node: string) => readonly T[]): readonly T[] =>
    lowered.circuits.flatMap(({ id: circuit, wiring }) =>
      wiring.supply === undefined ? [] : make(figures, circuit, wiring.supply),
    );
  const dips = atFeeds(loadDip);
  if (figures.says('maximum-dip') && dips.length === 0)
    figures.problem(
      'maximum-dip',
      `\`maximum-dip\` is about the supply of a load, and none feeds \`${id}\``,
      '`supply:` with the name of a supply or rail, or no `maximum-dip`',
    );
  const pulses = pulsesOf(figures);
  if (pulses && lowered.circuits.some(({ wiring }) => wiring.by === 'nothing'))
    figures.problem(
      'pwm',
      `nothing of ours switches \`${id}\`, so nothing pulses it`,
      'a `driver:` or a `pin:`, or no `pwm`',
    );
  contactsOfNobody(entry, id, lowered, remarks);
  const shared = { sort: sortOf(entry), ...(pulses && { pulses }) };
  const switched = lowered.circuits.map((circuit) => withContact(circuit, { id, type, figures, bench }));
  return {
    ...lowered,
    circuits: switched.map((s) => ({ ...s.circuit, ...shared })),
    networks: [...lowered.networks, ...switched.flatMap((s) => s.networks)],
    accounts: [...lowered.accounts, ...switched.flatMap((s) => s.accounts)],
    capacitances: atInputs(figures, lowered),
    windows: atFeeds(loadWindow),
    dips,
  };
}

/** What an entry says but for the pins that it hangs on: an input may be a pin, or have one. */
const sortOf = (entry: Raw): string =>
  JSON.stringify(entry, function (this: unknown, key: string, value: unknown) {
    if (OWN_KEYS.includes(key) && key !== 'inputs') return undefined;
    return this === entry['inputs'] && typeof value === 'string' ? '' : value;
  });

/** A contact of a channel that the file does not drive switches nothing, and would go unseen. */
function contactsOfNobody(entry: Raw, id: string, { circuits }: Lowered, remarks: Surroundings['remarks']): void {
  if (!isMapping(entry['contacts']) || circuits.length === 0) return;
  for (const channel of Object.keys(entry['contacts']))
    if (!circuits.some((c) => c.id === `${id}.${channel}`))
      remarks.problem({
        path: ['loads', id, 'contacts', channel],
        on: 'key',
        says: `\`${id}\` has no input \`${channel}\` that would switch this contact`,
        expected: `a channel of its \`inputs\`: ${circuits.map((c) => c.id.slice(id.length + 1)).join(', ')}`,
      });
}

/** Whether its coil latches: that of a relay, or that on a board. */
const latchingIn = (figures: Figures, type: string): LatchingPlan | undefined =>
  type === 'coil' ? latchingOf(figures) : type === 'relay-board' ? latchingOf(figures.within('coil')) : undefined;

/** A circuit with what it is there for, and with what hangs on its contact. */
function withContact(
  circuit: CircuitPlan,
  {
    id,
    type,
    figures,
    bench,
  }: { readonly id: string; readonly type: string; readonly figures: Figures; readonly bench: Bench },
): Pick<Lowered, 'networks' | 'accounts'> & { readonly circuit: CircuitPlan } {
  const contact = contactOf(figures, id, circuit.id);
  const form = type === 'solid-state-relay' ? undefined : contact && formOf({ relay: figures, bench });
  const purpose = purposeOf(figures, contact, form);
  const latching = latchingIn(figures, type);
  const coil = type === 'relay-board' ? figures.within('coil') : figures;
  const heatsClamp = figures.says('clamp') && coil.says('inductance');
  if (contact === undefined && latching === undefined && !heatsClamp && coil.says('operations'))
    coil.problem(
      'operations',
      `\`operations\` wear the contact of \`${id}\`, and the file does not say what hangs on that`,
      type === 'relay-board'
        ? '`contacts: { 1: { load: … } }`, or a `clamp` and the `inductance` whose energy it takes'
        : '`contact: { load: … }`, or a `clamp` and the `inductance` whose energy it takes',
    );
  const lowered = contact && lowerContact({ circuit: circuit.id, type, relay: figures, contact, bench });
  return {
    circuit: {
      ...circuit,
      ...(purpose && { purpose }),
      ...(lowered?.plan && { contact: lowered.plan }),
      ...(latching && { latching }),
    },
    networks: lowered?.networks ?? [],
    accounts: lowered?.accounts ?? [],
  };
}

/** What a load has at its inputs: each of its circuits, a relay board as a whole. */
function atInputs(figures: Figures, { circuits }: Lowered): readonly Capacitance[] {
  if (!figures.says('input-capacitance')) return [];
  const whole = circuits.filter(({ wiring }, k) => k === 0 || wiring.board === undefined);
  return whole.flatMap(({ id, owner, wiring }) => {
    const node = wiring.board ? (wiring.board.coil ?? wiring.board.logic) : wiring.supply;
    if (node !== undefined) return ofLoad(figures, wiring.board ? owner : id, node);
    figures.problem(
      'input-capacitance',
      `\`input-capacitance\` loads a supply when it comes on, and none feeds \`${owner}\``,
      '`supply:` with the name of a supply or rail, or no `input-capacitance`',
    );
    return [];
  });
}

const figuresOf = (id: string, path: Path, entry: Raw, profile: Profile | undefined, around: Surroundings): Figures =>
  new Figures(id, path, [{ data: entry, path }], around.remarks).over(profile);

/** An entry with what it takes over from the one it is `like`. */
function withLike(loads: Raw, id: string, { remarks }: Surroundings, seen: readonly string[] = []): Raw | undefined {
  const entry = loads[id];
  if (!isMapping(entry)) return undefined;
  const model = entry['like'];
  if (model === undefined) return entry;
  const path: Path = ['loads', id, 'like'];
  const name = String(model);
  if (seen.includes(name) || name === id) {
    remarks.problem({
      path,
      on: 'value',
      says: `\`${id}\` and \`${name}\` are like each other in a circle`,
      expected: 'the name of a load that stands for itself',
    });
    return undefined;
  }
  if (!Object.hasOwn(loads, name)) {
    remarks.problem({
      path,
      on: 'value',
      says: `there is no load \`${name}\` to be like`,
      expected: didYouMean(name, Object.keys(loads), 'the name of another load'),
    });
    return undefined;
  }
  const base = withLike(loads, name, { remarks } as Surroundings, [...seen, id]);
  if (base === undefined) return undefined;
  const taken = Object.fromEntries(Object.entries(base).filter(([key]) => !OWN_KEYS.includes(key)));
  const rest = Object.fromEntries(Object.entries(entry).filter(([key]) => key !== 'like'));
  // A driver's own pin is a connection too.
  if (isMapping(taken['driver']) && rest['driver'] === undefined) {
    const driver = Object.fromEntries(
      Object.entries(taken['driver']).filter(([key]) => key !== 'pin' && key !== 'pins'),
    );
    return { ...taken, driver, ...rest };
  }
  return { ...taken, ...rest };
}
