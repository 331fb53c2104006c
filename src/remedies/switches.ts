/**
 * Small transistors for a pin to switch a load with, at its lower end: their resistors reckoned from the pin's lowest level, for a
 * forced gain of ten at the base and for the pin's characterised current at the gate.
 */
import { nextAbove, nextBelow } from '../quantity/preferred.js';
import type { Case } from './cures.js';
import { partText } from './entries.js';

/** A saturated small transistor is driven at this ratio of collector to base current (common practice, no source). */
const FORCED_GAIN = 10;
/** Highest base-emitter voltage at a few milliamperes, volts (P2N2222A/D, figure 'On voltages', from memory). */
const BASE_EMITTER = 0.95;
/** Collector current up to which the small transistor of the catalogue is offered, amperes. */
const SMALL = 0.15;

export interface Switch {
  readonly words: string;
  readonly driver: Readonly<Record<string, string>>;
  readonly resistors: readonly string[];
  /** Where the load's lower end goes: the collector, or the drain. */
  readonly end: string;
  readonly steps: (pin: string) => readonly string[];
}

/** Ways to switch a load from a pin, the simplest first. @param pin as an account id @param amps of the load at the most */
export function switchesFor({ judgement }: Case, pin: string, amps: number): Switch[] {
  const account = judgement.accounts.find((j) => j.account.id === pin && j.account.kind === 'pin')?.account;
  const member = judgement.project.networks
    .flatMap((n) => n.on)
    .flatMap((b) => b.members)
    .find((m) => m.kind === 'pin' && m.part === pin);
  const ohms = member?.kind === 'pin' ? member.ohms : { min: 0, typ: 0, max: 0 };
  const rail = account?.solutions().most?.branch(pin);
  const volts = rail === undefined ? 5 : Math.max(rail.from.volts, rail.to.volts);
  const gentle = account?.limits.find((l) => l.limit.grade === 'characterised')?.value ?? 0.01;
  const gate = ohmsText(nextAbove('E24', Math.max(volts / gentle - ohms.min, 10)));
  const mosfet: Switch = {
    words: 'an N-channel MOSFET AO3400A',
    driver: { part: 'nmos-ao3400a', 'gate-resistor': gate, 'pull-down': '100 kΩ' },
    resistors: [`${gate} and 100 kΩ`],
    end: 'drain',
    steps: (at) => [
      `Put ${gate} from ${at} to the gate, and 100 kΩ from the gate to ground; the source goes to ground.`,
    ],
  };
  const wanted = (0.95 * volts - BASE_EMITTER) / (amps / FORCED_GAIN) - ohms.max;
  if (amps > SMALL || !(wanted >= 47)) return [mosfet];
  const base = ohmsText(nextBelow('E24', Math.min(wanted, 10e3)));
  const npn: Switch = {
    words: 'an NPN 2N2222A',
    driver: { part: 'npn-2n2222a', 'base-resistor': base, 'pull-down': '10 kΩ' },
    resistors: [`${base} and 10 kΩ`],
    end: 'collector',
    steps: (at) => [
      `Put ${base} from ${at} to the base, and 10 kΩ from the base to ground; the emitter goes to ground.`,
    ],
  };
  return [npn, mosfet];
}

const ohmsText = (ohms: number): string => partText(ohms, 'resistance');
