/** From a checked document and a catalogue to the resolved project, or to all that stands in the way at once. */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { Profile } from '../catalogue/profile.js';
import { withParts } from '../catalogue/with-parts.js';
import { arrayAccounts } from '../loads/drivers/array-accounts.js';
import { Figures, isMapping } from '../loads/figures.js';
import { junctionSpread } from '../loads/laws.js';
import type { Hook, Lowered, NetworkSketch } from '../loads/lowering.js';
import { USUAL_PIN } from '../loads/lowering.js';
import type { InputPin, LoweredLine } from '../loads/lines/line.js';
import { controlEnd } from '../loads/lines/signal.js';
import { lowerSignals } from '../loads/lines/signals.js';
import type { AccountPlan, Member } from '../loads/plan.js';
import { carriesAnything, GROUND } from '../loads/plan.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import type { EntryKind } from '../source/check.js';
import { checkEntry, checkFrame, isEntryKind } from '../source/check.js';
import type { Path, Problem } from '../source/place.js';
import { assemble } from './assemble.js';
import type { ArrayEntry, UsedBench } from './bench.js';
import { benchOf, reportPart } from './bench.js';
import { bootPlan } from './boot-plan.js';
import { capacitancesOf } from './capacitances.js';
import { cautionsOf } from './cautions.js';
import type { Chip } from './chip.js';
import type { Around, Bench as ControllerBench } from './controllers.js';
import { controller } from './controllers.js';
import { heldOff, outputsOff } from './held-off.js';
import { joined, lowerAllIncoming } from './incoming.js';
import { letGoAccounts } from './let-go.js';
import { lowerLoads } from './loads.js';
import { measuredFrom } from './measured.js';
import { waiversFrom } from './waivers.js';
import { interlocksFrom, modesFrom } from './modes.js';
import { nodeNamed, nodeNames } from './names.js';
import { ambientFrom, placeOf, placesOf } from './places.js';
import type { Link, PinAccountPlan, PinFact, Project, StrapPlan, TreeFact } from './project.js';
import type { ChipPin, Strap } from './chip-setting.js';
import { checkPulses } from './pulsed-pins.js';
import type { Gathered } from './remarks.js';
import { gathering } from './remarks.js';
import { policyFrom } from './policy.js';
import { supply } from './supplies.js';
import { feedingOrder } from './feeding-order.js';
import { bootModes, checkDead, checkStates, sleepersIn, supplyStates } from './supply-states.js';
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
    ends: lines.ends,
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

function arraysFrom(raw: unknown, around: Around): ReadonlyMap<string, ArrayEntry> {
  const { remarks, catalogue } = around;
  const arrays = new Map<string, ArrayEntry>();
  for (const [id, entry] of entries(raw)) {
    if (!isMapping(entry)) continue;
    const path: Path = ['arrays', id];
    checkEntry('array', entry, path).forEach(remarks.problem);
    const named = entry['part'];
    const profile = typeof named === 'string' ? catalogue.profile(named) : undefined;
    if (typeof named === 'string' && profile?.kind !== 'array') {
      reportPart({ catalogue, remarks }, named, [...path, 'part'], 'array');
      continue;
    }
    const figures = new Figures(id, path, [{ data: entry, path }], remarks).over(profile);
    const common =
      entry['common'] === undefined
        ? undefined
        : nodeNamed(nodeNames(around.tree), around.controllers, String(entry['common']), [...path, 'common']);
    if (common && 'problem' in common) remarks.problem(common.problem);
    arrays.set(id, {
      figures,
      path,
      channels: figures.count('channels') ?? 7,
      ...(common && 'found' in common && { common: common.found }),
    });
  }
  return arrays;
}

/** A pin as one that takes what is pushed in, by its account. */
function inputNamed(chips: ReadonlyMap<string, Chip>, account: string): InputPin | undefined {
  for (const chip of chips.values())
    for (const pin of chip.pins.values()) if (pin.account === account) return chip.input(pin);
  return undefined;
}

/** Shares of its supply up to which an input of unpublished levels reads low, and from which it reads high (rule 8 of the format). */
const USUAL_LEVELS = { low: 0.3, high: 0.7 };

function strapPlan(chip: Chip, pin: ChipPin, { level, says }: Strap): StrapPlan {
  const { thresholds, pulls, rail } = chip.input(pin);
  const side = level === 'high' ? 'rail' : 'ground';
  return {
    level,
    rail,
    reads: thresholds ? thresholds[level].volts : (supply) => USUAL_LEVELS[level] * supply,
    held:
      chip.bootState(pin) === (level === 'high' ? 'pulled-up' : 'pulled-down') ||
      pulls.some((p) => !p.inside && p.to === side),
    ...(says !== undefined && { says }),
  };
}

/** The pins of a chip that a builder can reach. */
const pinFacts = (chip: Chip, inUse: ReadonlySet<string>): PinFact[] =>
  [...new Set(chip.pins.values())]
    .filter((pin) => pin.reachable)
    .map((pin) => ({
      id: pin.account,
      label: pin.told,
      owner: chip.owner,
      reserved: pin.reserved !== undefined,
      inputOnly: pin.inputOnly,
      sums: chip.sumsOf(pin),
      rail: chip.rail,
      boot: chip.bootState(pin),
      ...(inUse.has(pin.account) && fittedAt(chip, pin)),
      ...(pin.strap && { strap: strapPlan(chip, pin, pin.strap) }),
    }));

function fittedAt(chip: Chip, pin: ChipPin): Pick<PinFact, 'fitted'> {
  const ohms = chip.fitted(pin).map((p) => p.ohms.max);
  return ohms.length === 0 ? {} : { fitted: Math.min(...ohms) };
}

/** Arrays that are set over control lines, and whether these hold their channels off at boot. */
const serialArrays = (
  raw: unknown,
  arrays: ReadonlyMap<string, ArrayEntry>,
  chips: ReadonlyMap<string, Chip>,
  controllers: readonly string[],
): Project['serial'] =>
  new Map(
    [...arrays].flatMap(([id, { figures }]) => {
      const entry = isMapping(raw) ? raw[id] : undefined;
      const control: unknown = isMapping(entry) ? entry['control'] : undefined;
      return figures.flag('serial') ? [[id, heldOff(figures, control, chips, controllers) !== undefined]] : [];
    }),
  );

/** The lines that control an expander are signals, read by its own levels. */
function controlLines(bench: UsedBench, id: string, raw: unknown, chip: Chip | undefined): void {
  if (!isMapping(raw) || chip === undefined) return;
  for (const [role, pin] of entries(raw['control']))
    bench.signalPin(pin, ['expanders', id, 'control', role], id, role, { supply: chip.rail, reader: chip.input(role) });
}

/** The same of an array whose channels are set over them. */
function steeredArray(bench: UsedBench, id: string, raw: unknown, figures: Figures | undefined): void {
  if (!isMapping(raw) || figures === undefined) return;
  const supply = raw['supply'] === undefined ? undefined : bench.node(raw['supply'], ['arrays', id, 'supply']);
  const end = figures.flag('serial') ? controlEnd(figures, supply) : {};
  for (const [role, pin] of entries(raw['control']))
    bench.signalPin(pin, ['arrays', id, 'control', role], id, role, end);
}

/** What comes in from outside, and the signals between pins and loads. */
function linesOf(raw: unknown, bench: UsedBench, loads: Lowered, remarks: Gathered): LoweredLine {
  const incoming = lowerAllIncoming(raw, bench, remarks);
  const told = new Set(bench.uses.flatMap((u) => (u.as === 'driven' || u.as === 'input' ? [u.pin] : [])));
  const loaded = new Set(loads.networks.flatMap((n) => n.hooks.map((h) => h.pin.account)));
  return joined([incoming, ...lowerSignals(bench.signals, bench, told, loaded)]);
}

/** Resistors fitted outside at a pin that something else hangs on: they share its voltage. */
function withPulls(sketches: readonly NetworkSketch[], benches: ReadonlyMap<string, ControllerBench>): NetworkSketch[] {
  const hooks = new Map(sketches.flatMap((s) => s.hooks).map((h) => [h.pin.account, h]));
  const pulls = [...benches.values()].flatMap(({ chip }) =>
    [...new Set(chip.pins.values())].flatMap((pin): NetworkSketch[] => {
      const hook = hooks.get(pin.account);
      if (hook === undefined) return [];
      return chip
        .input(pin)
        .pulls.filter((p) => !p.inside)
        .map(({ part, to, ohms, origin }): NetworkSketch => {
          const own: Hook = {
            ...{ pin: hook.pin, active: hook.active, circuit: part },
            flows: to === 'rail' ? 'in' : 'out',
            to: to === 'rail' ? chip.rail : GROUND,
            members: [{ kind: 'resistance', part, ohms, origin }],
          };
          return { id: part, circuits: [], side: 'control', inner: [], hooks: [own], on: [], off: [] };
        });
    }),
  );
  return [...sketches, ...pulls];
}

/** LEDs that the board itself has on a pin that something else uses. */
function withPinLeds(
  sketches: readonly NetworkSketch[],
  benches: ReadonlyMap<string, ControllerBench>,
  remarks: Gathered,
): NetworkSketch[] {
  const hooks = sketches.flatMap((s) => s.hooks);
  const lit = [...benches.values()].flatMap((bench) =>
    bench.pinLeds.flatMap((led): NetworkSketch[] => {
      const pin = bench.chip.pins.get(led.pin.toLowerCase());
      const hook = hooks.find((h) => h.pin.account === pin?.account);
      const curve = led.figures.curve('forward-voltage', 'voltage', 'current');
      const resistor = led.figures.figure('series', 'resistance');
      if (hook === undefined || curve === undefined || resistor === undefined) return [];
      // An amplifier drives it: the pin does not.
      if (led.figures.flag('buffered')) return [];
      const members: Member[] = [
        { kind: 'resistance', part: `${led.name}.series`, ohms: closed(resistor.quantity), origin: resistor.origin },
        { kind: 'junction', part: led.name, law: junctionSpread(curve), origin: curve.origin },
      ];
      const way =
        led.figures.word('active') === 'low'
          ? { flows: 'in' as const, to: hook.pin.rail }
          : { flows: 'out' as const, to: GROUND };
      const own: Hook = { pin: hook.pin, active: hook.active, ...way, members, circuit: led.name };
      return [{ id: led.name, circuits: [], side: 'control', inner: [], hooks: [own], on: [], off: [] }];
    }),
  );
  for (const h of hooks)
    if (h.pin.high === undefined || h.pin.low === undefined)
      remarks.assume(
        h.pin.owner,
        `output resistance of a pin: ${USUAL_PIN.min} to ${USUAL_PIN.max} Ω, since nobody states it`,
      );
  return [...sketches, ...lit];
}

/** Each pin in use and the directions its current can take. */
function usedPins(networks: Project['networks']): ReadonlyMap<string, ReadonlySet<'source' | 'sink'>> {
  const used = new Map<string, Set<'source' | 'sink'>>();
  for (const network of networks)
    for (const plans of [network.on, network.off])
      for (const branch of plans) {
        if (branch.pin === undefined || !carriesAnything(branch, plans)) continue;
        const directions = used.get(branch.pin.pin) ?? new Set();
        directions.add(branch.pin.level === 'high' ? 'source' : 'sink');
        used.set(branch.pin.pin, directions);
      }
  return used;
}

/** Loads whose supply nothing feeds. */
function deadLoads(circuits: Project['circuits'], alive: (id: string) => boolean): TreeFact[] {
  const facts = new Map<string, TreeFact>();
  for (const c of circuits) {
    const { supply, board } = c.wiring;
    const missing = board ? (board.coil ?? (board.jumper === 'fitted' ? board.logic : undefined)) : supply;
    const path: Path = ['loads', c.owner];
    if (board && missing === undefined)
      facts.set(c.owner, { kind: 'no-source', about: c.owner, path, with: { rail: 'coil supply' } });
    else if (board?.fedByLogic && board.logic === undefined && board.jumper === 'removed')
      facts.set(c.owner, { kind: 'no-source', about: c.owner, path, with: { rail: 'logic supply' } });
    else if (missing !== undefined && !alive(missing))
      facts.set(c.owner, { kind: 'no-source', about: c.owner, path, with: { rail: missing } });
  }
  return [...facts.values()];
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
