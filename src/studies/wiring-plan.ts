/** The wiring of an arrangement, step by step in the board's own labels, and what to measure before the controller joins. */
import type { Judgement } from '../checks/judge.js';
import type { BoardWiring } from '../loads/circuit-plan.js';
import { hasControllersGround } from '../project/grounds.js';
import { railOfPin } from '../project/rail-of-pin.js';
import type { CoilSupply } from '../remedies/supply-for.js';
import { formatInterval, formatValue } from '../quantity/print.js';
import { trimmed } from '../wording/phrases.js';
import type { Arrangement } from './arrangements.js';
import type { SupplySize } from './new-supply.js';
import type { SupplyLead } from './supply-lead.js';

export interface WiringPlan {
  readonly steps: readonly string[];
  /** What to measure with a meter before the controller is connected. */
  readonly checks: readonly string[];
}

type Chosen = Arrangement & { readonly fresh?: CoilSupply };

/** @param after the audit of the arrangement, for the voltages to expect @param size of the new supply, where one is needed */
export function wiringPlan(
  after: Judgement,
  owner: string,
  board: BoardWiring,
  chosen: Chosen,
  size: SupplySize | undefined,
): WiringPlan {
  const { terminals: t } = board;
  const label = (role: string, plain: string): string => t[role] ?? plain;
  const [ground, logicIn, coilIn] = [
    label('ground', 'ground'),
    label('logic-supply', 'logic supply'),
    label('coil-supply', 'coil supply'),
  ];
  const coil = chosen.coil ?? chosen.fresh!.name;
  const fed = chosen.jumper === 'fitted';
  const inputs = inputsOf(after, owner, board);
  const joined = hasControllersGround(after.project, coil);
  const separate = chosen.grounds === 'separate' && !joined;
  const steps = [
    'Switch everything off and pull the controller’s plugs.',
    ...(chosen.fresh ? [`Get a supply of ${chosen.fresh.words}.`, ...(size?.lead ? leadSteps(size.lead) : [])] : []),
    ...(board.hasJumper
      ? [
          fed
            ? `Fit the jumper (${label('jumper', 'supply jumper')}): one supply feeds inputs and coils.`
            : `Take the jumper off (${label('jumper', 'supply jumper')}), and keep it off.`,
        ]
      : []),
    ...(board.oneTerminal ? [] : [`Put ${plusOf(after, chosen.logic)} on ${logicIn}.`]),
    ...(fed && coil === chosen.logic
      ? [`Leave ${coilIn} empty: the jumper feeds it.`]
      : [`Put ${plusOf(after, coil)} on ${coilIn}.`]),
    separate
      ? `Put the minus of ${coil} on ${ground}, and nothing else: the controller’s ground stays away from it.`
      : `Put the controller’s ground on ${ground}${joined ? '' : `, and the minus of ${coil}, too`}.`,
    ...(inputs.length > 0 ? [`Put ${inputs.map(({ pin, label: l }) => `${pin} on ${l}`).join(', ')}.`] : []),
  ];
  return { steps, checks: checksOf(after, owner, board, chosen, coil, separate, { ground, logicIn, coilIn }, inputs) };
}

function leadSteps({ fuse, largestFuse, length, stated, awg, metric }: SupplyLead): string[] {
  const reach = Math.min(awg.reach, metric.reach);
  const over = `${length} m one way${stated ? ', as in the file' : ', since the file states no length'}`;
  return [
    `Cut its two wires from ${awg.gauge} (${metric.gauge}) or thicker: they are chosen for ${over}, and lose too much beyond ${trimmed(formatValue(reach, 'length', 2))}.`,
    `Put a ${ampsOf(fuse.amps)} fuse into the plus wire, close to the supply${largestFuse > fuse.amps ? `; no larger one than ${ampsOf(largestFuse)}, or the wire burns before it` : ''}.`,
  ];
}

const ampsOf = (amps: number): string => trimmed(formatValue(amps, 'current'));

function checksOf(
  after: Judgement,
  owner: string,
  board: BoardWiring,
  chosen: Chosen,
  coil: string,
  separate: boolean,
  at: { readonly ground: string; readonly logicIn: string; readonly coilIn: string },
  inputs: readonly { readonly label: string; readonly rail: string }[],
): string[] {
  const volts = voltsOf(after, coil);
  const logic = board.oneTerminal ? undefined : voltsOf(after, chosen.logic);
  const node = after.project.circuits.find((c) => c.owner === owner)?.wiring.supply ?? coil;
  const terminal = voltsOf(after, node);
  const first = inputs[0];
  const rail = first && voltsOf(after, first.rail);
  const ground = separate ? 'the controller’s ground' : at.ground;
  return [
    ...(board.hasJumper
      ? [
          `All off, meter on ohms: ${at.logicIn} against ${at.coilIn} ${chosen.jumper === 'fitted' ? 'reads nearly nothing' : 'reads more than 1 kΩ, for the jumper is off'}.`,
        ]
      : []),
    ...(separate ? [`All off: ${at.ground} against the controller’s ground reads more than 1 MΩ.`] : []),
    ...(volts
      ? [`${coil} on, inputs not connected: ${at.coilIn} against ${at.ground} reads ${volts.words}; no relay clicks.`]
      : []),
    ...(logic && coil !== chosen.logic
      ? [`${chosen.logic} on: ${at.logicIn} against ${ground} reads ${logic.words}.`]
      : []),
    ...(first && rail
      ? [
          `${first.label}, with no pin on it, against ${ground} reads no more than ${trimmed(formatValue(rail.max, 'voltage'))}, which the pin bears. More: leave it off.`,
        ]
      : []),
    ...(first && terminal && board.fedByLogic
      ? [
          `${first.label} held to the controller’s ground by a wire, as its pin will: the relay clicks, and ${at.coilIn} against ${at.ground} stays above ${trimmed(formatValue(terminal.min, 'voltage'))}. Let go: it clicks again.`,
        ]
      : []),
  ];
}

/** The board's inputs with the pins on them, and the rail of those. */
function inputsOf(
  { project }: Judgement,
  owner: string,
  { terminals }: BoardWiring,
): { readonly pin: string; readonly label: string; readonly rail: string }[] {
  const circuits = project.circuits.filter((c) => c.owner === owner && c.wiring.pin !== undefined);
  return circuits.map((c) => {
    const number = c.id === owner ? '1' : c.id.slice(owner.length + 1);
    const use = project.uses.find((u) => u.pin === c.wiring.pin);
    return {
      pin: use?.label ?? c.wiring.pin!,
      label: (terminals['input'] ?? 'input {n}').replace('{n}', number),
      rail: railOfPin(project, c.wiring.pin) ?? '',
    };
  });
}

/** Lowest and highest volts of a node over the audit. */
function voltsOf(
  { ledger, project }: Judgement,
  node: string,
): { readonly min: number; readonly max: number; readonly words: string } | undefined {
  const seen = ledger.accounts.flatMap((a) => {
    const { least, most } = a.solutions();
    return [least, most].flatMap((s) => (s === undefined ? [] : [s.voltage(node)]));
  });
  const own = project.nodes.find((n) => n.id === node)?.volts;
  const all = [...seen, ...(own ? [own.min, own.max] : [])].filter((v) => v > 0);
  if (all.length === 0) return undefined;
  const [min, max] = [Math.min(...all), Math.max(...all)];
  return { min, max, words: formatInterval({ min, max }, 'voltage') };
}

/** 'the 5v of main', 'the plus of adapter'. */
function plusOf({ project }: Judgement, node: string): string {
  const rail = project.nodes.find((n) => n.id === node)?.kind === 'rail';
  return rail ? node : `the plus of ${node}`;
}
