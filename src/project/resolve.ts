/** From a checked document and a catalogue to the resolved project, or to all that stands in the way at once. */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { Profile } from '../catalogue/profile.js';
import { withParts } from '../catalogue/with-parts.js';
import { arrayAccounts } from '../loads/drivers/array-accounts.js';
import { isMapping } from '../loads/figures.js';
import type { Lowered, NetworkSketch } from '../loads/lowering.js';
import type { LoweredLine } from '../loads/lines/line.js';
import { lowerSignals } from '../loads/lines/signals.js';
import type { AccountPlan } from '../loads/account-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { EntryKind } from '../source/check.js';
import { checkEntry, checkFrame, isEntryKind } from '../source/check.js';
import type { Problem } from '../source/place.js';
import { assemble } from './assemble.js';
import { arraysFrom, serialArrays } from './arrays.js';
import type { UsedBench } from './bench.js';
import { benchOf } from './bench.js';
import { bootPlan } from './boot-plan.js';
import { capacitancesOf } from './capacitances.js';
import { cautionsOf } from './cautions.js';
import type { Chip } from './chip.js';
import { controlLines, steeredArray } from './control-lines.js';
import type { Around } from './around.js';
import type { Bench as ControllerBench } from './controllers.js';
import { controller } from './controllers.js';
import { deadLoads } from './dead-loads.js';
import { outputsOff } from './held-off.js';
import { joined, lowerAllIncoming } from './incoming.js';
import { letGoAccounts } from './let-go.js';
import { lowerLoads } from './loads.js';
import { measuredFrom } from './measured.js';
import { waiversFrom } from './waivers.js';
import { interlocksFrom, modesFrom } from './modes.js';
import { ambientFrom, placeOf, placesOf } from './places.js';
import { inputNamed, pinFacts, usedPins } from './pin-facts.js';
import { withPinLeds, withPulls } from './pin-fittings.js';
import type { PinAccountPlan } from './pin-plan.js';
import type { Project } from './project.js';
import type { Link } from './tree-plan.js';
import { checkPulses } from './pulsed-pins.js';
import type { Gathered } from './remarks.js';
import { gathering } from './remarks.js';
import { policyFrom } from './policy.js';
import { supply } from './supplies.js';
import { feedingOrder } from './feeding-order.js';
import { bootModes, checkDead, checkStates, isShared, sleepersIn, supplyStates } from './supply-states.js';
import { emptyTree } from './tree.js';
import { wiresOf } from './wires.js';

type Raw = Readonly<Record<string, unknown>>;

const USUAL_AMBIENT: Interval = { min: 10, typ: 25, max: 40 };
const SECTIONS = ['supplies', 'controllers', 'expanders', 'arrays', 'loads', 'incoming'] as const;

export type Resolved =
  { readonly project: Project; readonly catalogue: Catalogue } | { readonly problems: readonly Problem[] };

/**
 * Resolves a project.
 *
 * @param data plain data of the document @param file its name, for the report
 * @param options.ambient °C, in place of the file's @param options.answers to what the file leaves open: 'vents input.indicator'
 */
export function resolve(
  data: unknown,
  file: string,
  builtIn: Catalogue,
  options: { readonly ambient?: Interval; readonly answers?: ReadonlyMap<string, string> } = {},
): Resolved {
  const remarks = gathering();
  checkFrame(data).forEach(remarks.problem);
  if (!isMapping(data)) return { problems: remarks.problems };
  const layered = withParts(builtIn, data['parts']);
  layered.problems.forEach(remarks.problem);
  const { catalogue } = layered;
  checkParts(data['parts'], catalogue, remarks);
  uniqueNames(data, remarks);

  const ambient = options.ambient ?? ambientOf(data['ambient'], remarks);
  const places = placesOf(data['places'], ambient, remarks);
  const tree = emptyTree();
  const wires = wiresOf(data, tree, places, catalogue, remarks);
  const controllers = Object.keys(isMapping(data['controllers']) ? data['controllers'] : {});
  const chips = new Map<string, Chip>();
  const around: Around = {
    tree,
    catalogue,
    remarks,
    places,
    controllers,
    alone: controllers.length === 1,
    wires,
    states: supplyStates(data['modes']),
    starts: bootModes(data['modes']),
    shared: isShared(data['modes']),
    sleepers: sleepersIn(data, remarks),
    chips,
  };
  const benches = new Map<string, ControllerBench>();
  const divided: NetworkSketch[] = [];
  for (const { section, id, raw, path, circular } of feedingOrder(data, remarks)) {
    if (circular && section === 'supplies') {
      tree.add({ id, kind: 'supply', title: id, path, limits: [] });
    } else if (section === 'supplies') {
      divided.push(...supply(around, id, raw, path));
    } else {
      const cut = circular && isMapping(raw) ? { ...raw, powered: {} } : raw;
      const bench = controller(around, id, cut, path, section === 'controllers' ? 'controller' : 'expander');
      if (bench) benches.set(id, bench);
      if (bench) chips.set(id, bench.chip);
    }
  }

  const arrays = arraysFrom(data['arrays'], around);
  const answers = options.answers ?? new Map<string, string>();
  const surroundings = { tree, catalogue, remarks, chips, controllers, arrays, wires, places, answers };
  const bench = benchOf(surroundings);
  const loads = lowerLoads(data['loads'], surroundings, bench);
  for (const [id, raw] of entries(data['expanders'])) controlLines(bench, id, raw, benches.get(id)?.chip);
  for (const [id, raw] of entries(data['arrays'])) steeredArray(bench, id, raw, arrays.get(id)?.figures);
  const lines = linesOf(data['incoming'], bench, loads, remarks);
  const lowered: Lowered = {
    ...loads,
    circuits: [...loads.circuits, ...lines.circuits],
    networks: [...loads.networks, ...lines.networks],
    accounts: [...loads.accounts, ...lines.accounts],
  };
  checkStates(data['modes'], tree.nodes, remarks);
  checkDead(data['modes'], tree.nodes, remarks);
  checkPulses(lowered.circuits, remarks);
  const wired = wires.finish();
  const capacitances = [...capacitancesOf(data, { tree, catalogue, remarks }), ...loads.capacitances];

  const { modes, interlocks, policy } = {
    modes: modesFrom(data['modes'], lowered.circuits, remarks),
    interlocks: [
      ...interlocksFrom(data['interlocks'], lowered.circuits, remarks),
      ...(lowered.interlocks ?? []).map((i) => ({ ...i, kind: 'at-most' as const })),
    ],
    policy: policyFrom(data['policy'], catalogue, remarks),
  };
  if (remarks.problems.length > 0) return { problems: remarks.problems };

  const sketches = [...divided, ...[...benches.values()].flatMap((b) => b.networks), ...lowered.networks];
  const whole = withPulls(withPinLeds(sketches, benches, remarks), benches);
  const networks = assemble(whole);
  const arrayPlans: AccountPlan[] = [...arrays].flatMap(([id, array]) => {
    const used = bench.channels.filter((c) => c.array === id);
    return used.length === 0 ? [] : arrayAccounts(id, array.figures, array.path, used, array.common);
  });
  const accounts = [
    ...lowered.accounts.filter((a) => a.atBoot !== true),
    ...arrayPlans,
    ...[...benches.values()].flatMap((b) => b.accounts),
    ...letGoAccounts(networks, {
      input: (account) => inputNamed(chips, account),
      window: (node) => tree.window(node),
      sources: (node) => tree.sources(node),
      pathOf: (circuit) => lowered.circuits.find((c) => c.id === circuit)?.path,
    }),
  ];
  const waivers = waiversFrom(data['waivers'], remarks);
  const measured = measuredFrom(
    data['measured'],
    {
      networks,
      circuits: lowered.circuits,
      accounts,
      nodes: tree.nodes,
      links: tree.inOrder(),
      modes,
      chips,
      controllers,
    },
    remarks,
  );
  if (remarks.problems.length > 0) return { problems: remarks.problems };
  const exact = remarks.exactCount();
  if (exact > 0)
    remarks.assume(
      'tolerances',
      `${exact} ${exact === 1 ? 'figure of the file has' : 'figures of the file have'} no tolerance and ${exact === 1 ? 'is' : 'are'} taken as exact`,
    );
  const used = usedPins(networks);
  const inUse = new Set(bench.uses.map((u) => u.pin));
  const pins = [...chips.values()].flatMap((chip) => pinFacts(chip, inUse));
  const project: Project = {
    title: String(data['title']),
    file,
    ambient,
    places: places.ambients,
    located: places.located,
    policy,
    nodes: tree.nodes,
    links: tree.inOrder().map((link) => inPlace(link, placeOf(places, link.id))),
    spares: tree.spares(),
    capacitances,
    dips: loads.dips,
    windows: [...[...benches.values()].flatMap((b) => b.windows), ...loads.windows],
    circuits: [...lowered.circuits, ...[...benches.values()].flatMap((b) => b.awake ?? [])],
    networks,
    boot: bootPlan(
      whole,
      lowered.accounts,
      new Map(pins.flatMap(({ id, strap }) => (strap ? [[id, strap.level]] : []))),
    ),
    accounts,
    open: loads.open ?? [],
    pinAccounts: [...benches.values()].flatMap((b): readonly PinAccountPlan[] => b.chip.accounts(used, b.own)),
    uses: bench.uses,
    pins,
    expanders: new Set(entries(data['expanders']).map(([id]) => id)),
    outputsOff: new Map([
      ...[...chips].flatMap(([id, chip]) => (chip.outputsOff ? [[id, chip.outputsOff] as const] : [])),
      ...[...arrays].flatMap(([id, { figures }]) => {
        const off = outputsOff(figures);
        return off ? [[id, off] as const] : [];
      }),
    ]),
    serial: serialArrays(data['arrays'], arrays, chips, controllers),
    channels: new Map([...arrays].map(([id, a]) => [id, a.channels])),
    facts: [...[...benches.values()].flatMap((b) => b.facts), ...wired, ...deadLoads(lowered.circuits, tree.alive)],
    ends: [...lines.ends, ...(loads.ends ?? [])],
    lines: lines.facts,
    modes,
    interlocks,
    measured,
    waivers,
    assumptions: remarks.assumptions,
    unsourced: remarks.figuresUnsourced(),
    notes: notesOf(data),
    cautions: cautionsOf(lowered.circuits, tree.nodes),
  };
  return { project, catalogue };
}

const inPlace = (link: Link, place: string | undefined): Link => (place === undefined ? link : { ...link, place });

const entries = (raw: unknown): [string, unknown][] => (isMapping(raw) ? Object.entries(raw) : []);

/** Own profiles are held against the schema of what they turn out to be. */
function checkParts(raw: unknown, catalogue: Catalogue, remarks: Gathered): void {
  for (const [id, part] of entries(raw)) {
    const profile: Profile | undefined = catalogue.profile(id);
    if (profile === undefined || !isMapping(part)) continue;
    const kinds = [`part:${profile.kind}:${profile.type ?? ''}`, `part:${profile.kind}`];
    const kind = kinds.find(isEntryKind);
    if (kind !== undefined) checkEntry(kind as EntryKind, part, ['parts', id]).forEach(remarks.problem);
  }
}

/** Names are unique across sections, or `main.D4` could mean two things. */
function uniqueNames(data: Raw, remarks: Gathered): void {
  const seen = new Map<string, string>();
  for (const section of SECTIONS)
    for (const [name] of entries(data[section])) {
      const known = seen.get(name);
      if (known !== undefined)
        remarks.problem({
          path: [section, name],
          on: 'key',
          says: `the name \`${name}\` is taken already, in \`${known}\``,
          expected: 'a name that no other supply, controller, expander, array or load has',
        });
      seen.set(name, section);
    }
}

function ambientOf(raw: unknown, remarks: Gathered): Interval {
  if (raw === undefined) remarks.assume('ambient', '10 to 40 °C, since the file does not say');
  return (raw === undefined ? undefined : ambientFrom(raw, ['ambient'], remarks)) ?? USUAL_AMBIENT;
}

/** What comes in from outside, and the signals between pins and loads. */
function linesOf(raw: unknown, bench: UsedBench, loads: Lowered, remarks: Gathered): LoweredLine {
  const incoming = lowerAllIncoming(raw, bench, remarks);
  const told = new Set(bench.uses.flatMap((u) => (u.as === 'driven' || u.as === 'input' ? [u.pin] : [])));
  const loaded = new Set(loads.networks.flatMap((n) => n.hooks.map((h) => h.pin.account)));
  return joined([incoming, ...lowerSignals(bench.signals, bench, told, loaded)]);
}

/** The notes of all entries, which the report repeats. */
function notesOf(data: Raw): Project['notes'] {
  const own = typeof data['note'] === 'string' ? [{ about: 'project', text: data['note'] }] : [];
  return [
    ...own,
    ...[...SECTIONS, 'modes', 'parts'].flatMap((section) =>
      entries(data[section]).flatMap(([about, entry]) =>
        isMapping(entry) && typeof entry['note'] === 'string' ? [{ about, text: entry['note'] }] : [],
      ),
    ),
  ];
}
