/** Slips in how a driver is wired, each put right by one word of the file: clamps, channels, levels, resistors that let go. */
import { isMapping } from '../loads/figures.js';
import { beforeCables } from '../project/same-node.js';
import type { Way } from './cures.js';
import { entryOf } from './entries.js';
import { freeChannel } from './free-channel.js';
import type { Cure } from './prove.js';

const PULL = '10 kΩ';

/** A diode across a motor that turns either way shorts the bridge: it comes out. */
export const noClampOnBridge: Way = ({ finding, judgement }) => {
  const circuit =
    finding.rule === 'clamp-on-bridge' ? judgement.project.circuits.find((c) => c.id === finding.about) : undefined;
  if (circuit === undefined) return [];
  return [
    {
      title: `Take the clamp of ${circuit.owner} out`,
      changes: [{ path: ['loads', circuit.owner, 'clamp'], value: undefined }],
      parts: [],
      steps: [`Take the diode across ${circuit.owner} out: the bridge has its own inside.`],
      watch: [`${circuit.id}.driver`],
    },
  ];
};

/** The common pin of an array's clamps goes to the supply of what they clamp. */
export const commonToSupply: Way = ({ finding, judgement }) => {
  const rules = ['clamp-tied-low', 'coil-no-clamp', 'source-fed-back'];
  if (!rules.includes(finding.rule) && finding.names['clamps'] === undefined) return [];
  const circuit = judgement.project.circuits.find(
    (c) =>
      c.wiring.by === 'array' &&
      (c.id === finding.about ||
        finding.related.some((r) => r.name === c.id) ||
        c.wiring.clampedBelow?.array === finding.about ||
        c.wiring.clampedBelow?.common === finding.about),
  );
  const array = circuit?.wiring.clampedBelow?.array ?? circuit?.wiring.channels?.[0]?.split('.')[0];
  const supply = circuit?.wiring.supply && beforeCables(judgement.project, circuit.wiring.supply);
  if (circuit === undefined || array === undefined || supply === undefined) return [];
  return [
    {
      title: `Tie the common pin of ${array} to ${supply}`,
      changes: [{ path: ['arrays', array, 'common'], value: supply }],
      parts: [],
      steps: [
        `Put the common pin of ${array} (the cathodes of its clamps) on the plus of ${supply}, which feeds its loads.`,
      ],
      watch: [`${circuit.id}.clamp`],
    },
  ];
};

/** A channel that two pins drive: one of the loads moves to one that is free. */
export const otherChannel: Way = ({ finding, judgement, data }) => {
  if (finding.rule !== 'channel-used-twice') return [];
  const circuit = judgement.project.circuits.findLast(
    (c) => c.id === finding.about || c.wiring.channels?.includes(finding.about),
  );
  const [array] = circuit?.wiring.channels?.[0]?.split('.') ?? [];
  const free = array && freeChannel(data, array, judgement.project.channels.get(array) ?? 0);
  if (circuit === undefined || !array || free === undefined || free === '') return [];
  return [
    {
      title: `Move ${circuit.owner} to ${array}.${free}`,
      changes: [{ path: ['loads', circuit.owner, 'driver', 'array'], value: `${array}.${free}` }],
      parts: [],
      steps: [`Take ${circuit.owner} and its pin off their channel and put them on channel ${free} of ${array}.`],
      watch: [`${array}.${free}`],
    },
  ];
};

/** A driver that conducts at the other level than the file says: the file is wrong, or the firmware has to turn over. */
export const rightLevel: Way = ({ finding, judgement, data }) => {
  const circuit =
    finding.rule === 'driver-inverted' ? judgement.project.circuits.find((c) => c.id === finding.about) : undefined;
  const says = circuit && entryOf(data, 'loads', circuit.owner)?.['active'];
  if (circuit === undefined || (says !== 'high' && says !== 'low')) return [];
  const other = says === 'high' ? 'low' : 'high';
  return [
    {
      title: `Have the firmware switch ${circuit.owner} on with its pin ${other}`,
      changes: [{ path: ['loads', circuit.owner, 'active'], value: other }],
      parts: [],
      steps: [`In the firmware turn the level of ${circuit.owner} over: ${other} switches it on.`],
      watch: [],
    },
  ];
};

/** A gate that nothing discharges, or that a divider holds half way, gets a resistor to its off side. */
export const dischargeGate: Way = ({ finding, judgement, data }) => {
  if (finding.rule !== 'driver-release' && finding.rule !== 'coil-release' && finding.rule !== 'gate-voltage')
    return [];
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  const driver = circuit && entryOf(data, 'loads', circuit.owner)?.['driver'];
  if (circuit === undefined || !isMapping(driver)) return [];
  const at = ['loads', circuit.owner, 'driver'];
  const stages = Array.isArray(driver['stages']) ? (driver['stages'] as readonly unknown[]) : undefined;
  const last: unknown = stages?.at(-1);
  const to = (
    key: 'pull-up' | 'pull-down',
    path: Cure['changes'][number]['path'],
    more: Cure['changes'] = [],
  ): Cure => ({
    title: `Hold the gate of ${circuit.owner} off with ${PULL}`,
    changes: [{ path: [...path, key], value: `${PULL} ±5 %` }, ...more],
    parts: [PULL],
    steps: [
      `Put ${PULL} from the gate of ${circuit.owner} to its ${key === 'pull-up' ? 'source, at the supply' : 'source, at ground'}${more.length > 0 ? '; what pulled it the other way comes out, and as much again goes between stage and gate' : ''}.`,
    ],
    watch: [`${circuit.id}.driver`],
  });
  if (stages !== undefined && isMapping(last)) {
    const path = [...at, 'stages', stages.length - 1];
    const isP = /^(pmos|pnp)/.test(String(last['part'] ?? last['type']));
    const half: Cure = {
      title: `Halve what the gate of ${circuit.owner} gets with ${PULL} before it`,
      changes: [{ path: [...path, 'gate-resistor'], value: `${PULL} ±5 %` }],
      parts: [PULL],
      steps: [
        `Put ${PULL} between the stage before and the gate of ${circuit.owner}: with as much from gate to source the gate gets half.`,
      ],
      watch: [`${circuit.id}.driver`],
    };
    return finding.rule === 'gate-voltage' ? [half] : [to(isP ? 'pull-up' : 'pull-down', path)];
  }
  const isP = /^(pmos|pnp)/.test(String(driver['part'] ?? driver['type']));
  return [to(isP ? 'pull-up' : 'pull-down', at, isP ? [{ path: [...at, 'pull-down'], value: undefined }] : [])];
};
