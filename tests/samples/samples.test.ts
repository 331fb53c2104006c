/**
 * Every sample with its story's end: the headline verdict, all findings worse than a note and no other, and the figures that
 * its first lines work out by hand. Those figures were reckoned before the tool was asked, from the data sheets' points:
 * drops read off between two points, 2 mV/K from 25 °C, copper by (234.5 + T) / 254.5, currents by repeated substitution.
 */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { accountOf, reportOf, sampleText, worseThanNote } from './audited.js';

interface Figure {
  readonly account: string;
  readonly direction: string;
  readonly quantity?: string;
  readonly of: 'min' | 'typ' | 'max' | 'margin';
  readonly is: number;
  /** Share by which it may differ; of a margin, how much of the limit. 1 % unless said. */
  readonly within?: number;
  readonly mode?: string;
}

interface Sample {
  readonly verdict: string;
  readonly findings: readonly string[];
  readonly figures: readonly Figure[];
  readonly variants?: readonly {
    readonly name: string;
    readonly verdict: string;
    /** Of the tightest account. */
    readonly margin: number;
    /** 'before → after' of the accounts that it makes better or worse. */
    readonly moves: readonly string[];
    readonly new: readonly string[];
  }[];
}

const pullIn = (circuit: string, margin: number, mode?: string): Figure => ({
  account: `${circuit}.coil`,
  direction: 'at-least',
  quantity: 'voltage',
  of: 'margin',
  is: margin,
  ...(mode !== undefined && { mode }),
});

const SAMPLES: Readonly<Record<string, Sample>> = {
  'balcony-taps-wake-up': {
    verdict: 'breach',
    findings: ['breach supply-current brick-5v', 'strain dead-pushed bar.data'],
    figures: [
      { account: 'brick-5v', direction: 'at-most', of: 'max', is: 0.567, mode: 'boot' },
      { account: 'brick-5v', direction: 'at-most', of: 'margin', is: (400 - 567) / 400 },
    ],
    variants: [
      {
        name: 'held',
        verdict: 'sound',
        // 5.25 V of the 5.5 V that the chip bears
        margin: (5.5 - 5.25) / 5.5,
        moves: ['brick-5v: breach → sound'],
        new: [],
      },
    ],
  },
  'bee-counter-spare-cell': {
    verdict: 'breach',
    findings: ['breach divider-sags half'],
    figures: [
      { account: 'half.divider', direction: 'at-least', quantity: 'voltage', of: 'min', is: 2.376 - 2.0, within: 0.01 },
      { account: 'half.divider', direction: 'at-least', quantity: 'voltage', of: 'margin', is: (0.376 - 2.257) / 2.257 },
      { account: 'logic', direction: 'at-least', quantity: 'voltage', of: 'margin', is: (4.1 - 3.234) / 3.234 },
      { account: 'logic', direction: 'at-most', quantity: 'temperature', of: 'max', is: 60.2 },
      { account: 'logic', direction: 'at-most', quantity: 'current', of: 'margin', is: (416 - 92) / 416 },
      { account: 'adapter', direction: 'at-most', of: 'max', is: 478e-3 },
      { account: 'cell', direction: 'at-most', of: 'max', is: 0 },
    ],
  },
  'cellar-fan-all-day': {
    verdict: 'breach',
    findings: ['breach boot-drives fan.1', 'breach safe-state fan.1'],
    figures: [
      { account: 'fan.1.contact', direction: 'at-most', of: 'max', is: 0.45 },
      { account: 'fan.1.contact', direction: 'at-most', of: 'margin', is: (2 - 0.45) / 2 },
      { account: 'fan.1.contact', direction: 'at-least', of: 'margin', is: (0.3 - 0.1) / 0.1 },
      { account: 'fan-24v', direction: 'at-most', of: 'max', is: 1.4 },
      // 5.2 V / (63 Ω x 242.5 / 254.5), less its transistor; the input takes 4.7 mA at most.
      { account: 'brick-5v', direction: 'at-most', of: 'margin', is: (2 - 0.177) / 2, within: 0.03 },
    ],
    variants: [
      {
        name: 'closed',
        verdict: 'sound',
        margin: 0.05,
        moves: [],
        new: [],
      },
    ],
  },
  'plotter-two-axes': {
    verdict: 'sound',
    findings: [],
    figures: [
      { account: 'brick-12v', direction: 'at-most', of: 'max', is: 0.275 + 0.004 + 0.254 + 0.008 },
      { account: 'carriage.windings', direction: 'at-most', of: 'max', is: 0.7455 },
      { account: 'carriage.windings', direction: 'at-least', of: 'min', is: 4.04 },
      { account: 'carriage.driver', direction: 'at-most', quantity: 'temperature', of: 'max', is: 85.4 },
    ],
  },
  'potting-shed-heater': {
    verdict: 'breach',
    findings: ['breach boot-drives shed.1', 'breach contact-current shed.1', 'breach safe-state shed.1'],
    figures: [
      { account: 'shed.1.contact', direction: 'at-most', of: 'max', is: 1500 / 230 },
      { account: 'shed.1.contact', direction: 'at-most', of: 'margin', is: (5 - 6.52) / 5 },
      // A tenth of 10 A.
      { account: 'shed.2.contact', direction: 'at-most', of: 'margin', is: (1 - 0.174) / 1 },
      { account: 'shed.2.contact', direction: 'at-least', of: 'margin', is: (0.174 - 0.1) / 0.1 },
    ],
    variants: [
      {
        name: 'open',
        verdict: 'sound',
        margin: 0.05,
        moves: ['shed.1.contact: breach → sound'],
        new: [],
      },
    ],
  },
  'gate-lock-stays-shut': {
    verdict: 'sound',
    findings: [],
    figures: [
      // 12.6 V / 24 Ω of the 4 A that its maker has for inductive loads at 30 V
      { account: 'gate.contact', direction: 'at-most', of: 'max', is: 0.525 },
      { account: 'gate.contact', direction: 'at-most', of: 'margin', is: (4 - 0.525) / 4 },
      // 11.4 V / 24 Ω
      { account: 'gate.contact', direction: 'at-least', of: 'min', is: 0.475 },
      { account: 'lock-12v', direction: 'at-most', of: 'max', is: 0.525 },
      ],
    },
  'terrace-blinds-laptop-off': {
    verdict: 'breach',
    findings: [
      'breach dead-drives blinds',
      'breach dead-fed laptop',
      'strain pin-injected main.D5', 'strain pin-injected main.D6'],
    figures: [
      { account: 'main.D5', direction: 'injected', of: 'max', is: 2.26e-3, within: 0.03 },
      { account: 'main.D6', direction: 'injected', of: 'max', is: 2.26e-3, within: 0.03 },
    ],
    variants: [
      {
        name: 'own-logic',
        verdict: 'sound',
        margin: 0.03,
        // With its inputs fed by the chip's own rail nothing pushes into the pins.
        moves: ['main.D5: strain → undefined', 'main.D6: strain → undefined'],
        new: [],
      },
    ],
  },
  'rain-tank-boot-click': {
    verdict: 'breach',
    findings: ['breach boot-drives drain', 'strain boot-floats pump'],
    figures: [
      { account: 'laptop', direction: 'at-most', of: 'max', is: 421e-3 },
      { account: 'laptop', direction: 'at-most', of: 'margin', is: (900 - 421) / 900 },
      { account: 'main.D3', direction: 'source', of: 'max', is: 5.7e-3, within: 0.03 },
    ],
  },
  'seedling-house': {
    verdict: 'breach',
    findings: [
      'breach coil-no-clamp frost-bell',
      'breach coil-on-pin frost-bell',
      'breach pin-current frost-bell',
      'strain coil-pull-in flaps.1',
      'strain coil-pull-in flaps.2',
      'strain coil-pull-in flaps.3',
      'strain coil-pull-in flaps.4',
      'strain coil-pull-in frost-bell',
      'thin level-high main.A4',
      'thin level-high main.A5',
      'thin total-current bar.supply-pins',
    ],
    figures: [
      // (5.25 V - 0.15 Ω x 0.18 A) / (59.29 Ω + 12.5 Ω)
      { account: 'main.D9', direction: 'source', of: 'max', is: 72.7e-3, mode: 'frost' },
      { account: 'main.D9', direction: 'source', of: 'margin', is: (40 - 72.7) / 40 },
      // 8 x (5.23 V - 1.67 V) / (446.5 Ω + 14.06 Ω)
      { account: 'bar.supply-pins', direction: 'source', of: 'max', is: 61.9e-3 },
      // 3.3 V - 3.5 % on the bus, where 0.6 x 5.242 V are surely high.
      { account: 'main.A4', quantity: 'voltage', direction: 'at-least', of: 'margin', is: (3.1845 - 3.145) / 3.145 },
      // By day 4.498 V on the rail leave 4.073 V at the coil; after its own heat, at 56.1 °C, it needs 4.283 V.
      pullIn('flaps.1', (4.073 - 4.283) / 4.283, 'day'),
      // 4.573 V x 67.95 / (67.95 + 43.75) = 2.78 V, where 4.04 V x (274.5 + 7.8) / 274.5 = 4.16 V is needed.
      pullIn('frost-bell', (2.78 - 4.16) / 4.16, 'frost'),
    ],
  },
  'yard-horn-high-side': {
    verdict: 'breach',
    findings: ['breach coil-release horn', 'breach pin-injected main.D8', 'strain dead-fed laptop'],
    figures: [
      // (12.6 - 0.498 - 5.222) V / 2.09 kΩ
      { account: 'main.D8', direction: 'injected', of: 'max', is: 3.29e-3 },
      // 12.6 V / (324 Ω x 244.5 / 254.5)
      { account: 'horn.coil', direction: 'at-most', quantity: 'current', of: 'max', is: 40.5e-3 },
      { account: 'horn.coil', direction: 'at-most', quantity: 'current', of: 'margin', is: (3.03 - 40.5) / 3.03 },
      // 11.4 V x 9.5 / (9.5 + 1.05), less 0.02 V in the NPN.
      { account: 'lamp.driver', direction: 'at-least', quantity: 'voltage', of: 'min', is: 10.25 },
      { account: 'lamp.off', direction: 'at-most', of: 'max', is: 0 },
    ],
  },
  'loft-fan-four-ways': {
    verdict: 'strain',
    findings: ['strain coil-pull-in fan-relay'],
    figures: [
      // (4.63 - 0.9) V / 1619 Ω - 0.09 mA
      { account: 'fan-relay.driver', direction: 'at-least', of: 'min', is: 2.21e-3 },
      pullIn('fan-relay', (4.22 - 4.37) / 4.37),
    ],
    variants: [
      { name: 'own-supply', verdict: 'strain', margin: (4.31 - 4.38) / 4.38, moves: [], new: [] },
      {
        name: 'more-base',
        verdict: 'sound',
        margin: (4.49 - 4.4) / 4.4,
        moves: ['fan-relay.coil: strain → sound'],
        new: [],
      },
      {
        name: 'mosfet',
        verdict: 'sound',
        margin: (4.63 - 4.43) / 4.43,
        moves: ['fan-relay.coil: strain → sound'],
        new: [],
      },
      {
        name: 'no-diode',
        verdict: 'breach',
        margin: (4.22 - 4.37) / 4.37,
        moves: [],
        new: ['breach coil-no-clamp fan-relay'],
      },
    ],
  },
  'roof-drier-long-cable': {
    verdict: 'strain',
    findings: ['strain coil-pull-in flap'],
    figures: [
      // 0.4 A + (12.6 V - 3.107 Ω x 0.434 A - 0.06 V) / 330.4 Ω, and 0.3 s of 0.75 A + 33.0 mA: root mean square.
      { account: 'roof-cable', direction: 'at-most', of: 'max', is: 562e-3 },
      // 9.847 V, and 10.62 V needed at 65.8 °C.
      pullIn('flap', (9.847 - 10.62) / 10.62),
    ],
  },
  'greenhouse-vents-usb': {
    verdict: 'strain',
    findings: [
      'strain coil-pull-in vents.1',
      'strain coil-pull-in vents.2',
      'strain coil-pull-in vents.3',
      'strain coil-pull-in vents.4',
      'thin fuse-holds main.fuse-usb',
      'thin supply-current laptop',
    ],
    figures: [
      // At 5 °C: 50 + 1.5 + 4 x (86.98 + 4.73 + 2.61) mA.
      { account: 'laptop', direction: 'at-most', of: 'max', is: 428.8e-3 },
      // At 40 °C: 51.5 + 4 x (75.99 + 4.81 + 2.76) = 385.7 mA of 440 mA.
      { account: 'main.fuse-usb', direction: 'at-most', of: 'margin', is: (440 - 385.7) / 440 },
      // One channel on by itself leaves the rail at 5.23 V: (5.231 - 1.577 - 0.957) V / 962.5 Ω at 40 °C.
      { account: 'main.D4', direction: 'sink', of: 'max', is: 2.8e-3 },
      // 4.422 V less 0.436 V in the transistor, and 4.273 V needed at 55.5 °C.
      pullIn('vents.1', (3.986 - 4.273) / 4.273),
    ],
  },
  'greenhouse-vents-barrel': {
    verdict: 'breach',
    findings: ['breach regulator-heat main.regulator-5v', 'breach regulator-current main.regulator-5v'],
    figures: [
      // ((125 - 40) K / 100 K/W - 11.879 V x 10 mA) / (11.879 - 5.1) V = 107.9 mA that its heat allows.
      { account: 'main.regulator-5v', direction: 'at-most', quantity: 'current', of: 'margin', is: (107.9 - 379.5) / 107.9, within: 0.02 },
      // (11.879 - 5.1) V x 0.3795 A + 11.879 V x 10 mA = 2.691 W, at 100 K/W over 40 °C.
      { account: 'main.regulator-5v', direction: 'at-most', quantity: 'temperature', of: 'max', is: 309.1 },
      { account: 'main.regulator-5v', direction: 'at-most', quantity: 'temperature', of: 'margin', is: -2.166, within: 0.02 },
      // At 5 °C: 51.5 + 4 x (85.5 + 4.64 + 2.54) mA.
      { account: 'main.regulator-5v', direction: 'at-most', of: 'max', is: 422.3e-3 },
      // 4.9 V less 0.375 V, and 4.335 V needed at 59.7 °C.
      pullIn('vents.1', (4.525 - 4.335) / 4.335),
    ],
  },
  'greenhouse-vents-own-supply': {
    verdict: 'sound',
    findings: [],
    figures: [
      // At 5 °C: 4 x (86.38 + 4.69) mA.
      { account: 'adapter', direction: 'at-most', of: 'max', is: 364.3e-3 },
      // At 40 °C: 51.5 + 4 x 2.81 mA.
      { account: 'laptop', direction: 'at-most', of: 'max', is: 62.7e-3 },
      // 4.85 V less 0.407 V, and 4.325 V needed at 59 °C.
      pullIn('vents.1', (4.443 - 4.325) / 4.325),
    ],
  },
  'gate-latch-on-pin': {
    verdict: 'breach',
    findings: [
      'breach coil-no-clamp latch',
      'breach coil-on-pin latch',
      'breach pin-current latch',
      'strain coil-pull-in latch',
    ],
    figures: [
      // 5.233 V / (59.29 Ω + 12.5 Ω)
      { account: 'main.D9', direction: 'source', of: 'max', is: 72.9e-3 },
      // 4.944 V / (70.69 Ω + 25 Ω)
      { account: 'main.D9', direction: 'source', of: 'typ', is: 51.7e-3 },
      { account: 'main.right-group', direction: 'source', of: 'max', is: 72.9e-3 },
      // 4.657 V x 67.95 / 111.7 = 2.833 V, and 4.163 V needed at 48 °C.
      pullIn('latch', (2.833 - 4.163) / 4.163),
    ],
  },
  'attic-fan-economiser': {
    verdict: 'sound',
    findings: [],
    figures: [
      // 4.8 V less 0.13 V, over (64.2 + 9.1) Ω
      { account: 'fan.coil', direction: 'at-least', quantity: 'voltage', of: 'min', is: 4.09 },
      pullIn('fan', (4.09 - 3.94) / 3.94),
      // (4.8 - 0.08) V / (49.35 + 78.5) Ω against 2 V / 63 Ω
      { account: 'fan.coil', direction: 'at-least', quantity: 'current', of: 'min', is: 36.9e-3 },
      // 5.2 V / 64.2 Ω
      { account: 'fan.driver', direction: 'at-most', quantity: 'current', of: 'max', is: 80.9e-3 },
      { account: 'brick-5v', direction: 'at-most', of: 'max', is: 80.9e-3 },
    ],
  },
  'mist-valve-measured': {
    verdict: 'unproven',
    findings: ['unproven measured-disagrees mist-valve.coil'],
    figures: [
      // 4.8 V less 0.155 V + 0.845 V x (23 - 10) / (60 - 10)
      { account: 'measured.3', direction: 'at-most', quantity: 'voltage', of: 'min', is: 4.43, mode: 'misting' },
      { account: 'measured.1', direction: 'at-most', quantity: 'voltage', of: 'max', is: 5.2, mode: 'misting' },
    ],
  },
  'lane-lamps-port-group': {
    verdict: 'breach',
    findings: ['breach group-current main.right-group'],
    figures: [
      // (5.225 V - 1.75 V) / (209 Ω + 12.5 Ω), once and eight times
      { account: 'main.D5', direction: 'sink', of: 'max', is: 15.7e-3 },
      { account: 'main.right-group', direction: 'sink', of: 'max', is: 125.5e-3 },
      // (4.918 V - 1.94 V) / (220 Ω + 25 Ω), eight times
      { account: 'main.right-group', direction: 'sink', of: 'typ', is: 97.2e-3 },
      { account: 'main.ground-pins', direction: 'sink', of: 'max', is: 134.5e-3 },
    ],
  },
  'meadow-sensor-coin-cell': {
    verdict: 'strain',
    findings: ['strain load-voltage radio', 'strain rail-voltage coin', 'thin supply-current coin'],
    figures: [
      { account: 'coin', direction: 'at-least', quantity: 'voltage', of: 'min', is: 1.754, within: 1e-3 },
      { account: 'radio', direction: 'at-least', quantity: 'voltage', of: 'min', is: 1.754, within: 1e-3 },
      { account: 'coin', direction: 'at-most', of: 'max', is: 14.6e-3, within: 5e-3 },
      { account: 'coin', direction: 'at-least', quantity: 'time', of: 'min', is: 180.9 * 86_400, within: 1e-3 },
      // At its typical 2.9 V: 41.6 mV before the burst, 204 mV in it.
      { account: 'coin.end-voltage', direction: 'at-least', quantity: 'voltage', of: 'min', is: 2.9 - 0.0416 - 0.204, within: 1e-3 },
    ],
    variants: [
      {
        name: 'bigger-capacitor',
        verdict: 'sound',
        // Of the battery's life; the rail has 1.910 V of 1.8.
        margin: (180.9 - 180) / 180,
        moves: ['radio: strain → sound', 'coin: strain → sound', 'coin: thin → sound'],
        new: [],
      },
    ],
  },
  'beehive-scale-lines': {
    verdict: 'breach',
    findings: [
      'breach pin-injected reading',
      'strain bus-current main.GP0',
      'strain bus-current main.GP1',
      'strain input-floats tilt',
      'unproven level-high amplifier.clock',
    ],
    figures: [
      // (5.25 V - 3.234 V - 0.482 V) / 950 Ω
      { account: 'main.GP11', direction: 'injected', of: 'max', is: 1.615e-3 },
      // 3 x (3.366 V - 0.4 V) / 2090 Ω
      { account: 'main.GP0', quantity: 'current', direction: 'at-most', of: 'max', is: 4.257e-3 },
      // 3.234 V less what 1 µA loses in 80 kΩ
      { account: 'lid', quantity: 'voltage', direction: 'at-least', of: 'min', is: 3.154 },
    ],
  },
  'rain-barrel-shift-register': {
    verdict: 'breach',
    findings: ['breach total-current bar.supply-pins'],
    figures: [
      // (5.225 V - 1.74 V) / (209 Ω + 14.06 Ω), once, and eight times with 80 µA of the chip's own
      { account: 'bar.q0', direction: 'source', of: 'max', is: 15.62e-3 },
      { account: 'bar.supply-pins', direction: 'source', of: 'max', is: 125.0e-3 },
      { account: 'bar.supply-pins', direction: 'source', of: 'margin', is: (70 - 125) / 70 },
    ],
  },
  'workshop-fan-3v3-logic-5v': {
    verdict: 'sound',
    findings: [],
    figures: [
      // 4.56 µA through indicator and coupler, times 160.4 %, times 400; a junction at microamperes doubles in 56 mV.
      { account: 'fan.1.coil', direction: 'at-most', of: 'max', is: 2.93e-3, within: 0.02 },
      // 1.41 mA, times 136 %, lets the transistor keep 0.417 V; 4.242 V is needed at 53.4 °C.
      pullIn('fan.1', (4.333 - 4.242) / 4.242),
    ],
  },
  'workshop-fan-3v3-logic-3v3': {
    verdict: 'strain',
    findings: ['strain coil-pull-in fan.1', 'strain driver-drive fan.1'],
    figures: [
      // At 10 °C 170.1 µA through the coupler, which keeps 1.400 V + 30 mV - 28.1 mV * ln(20 / 0.170) - 5.33 Ω * 19.8 mA
      // = 1.190 V of them, times 86.8 %.
      { account: 'fan.1.driver', direction: 'at-least', of: 'min', is: 147.7e-6 },
      // The port may stand at 5.25 V while the regulator is at its lowest: (5.25 - 0.029) V / 60.52 Ω / 111 = 777 µA.
      { account: 'fan.1.driver', direction: 'at-least', of: 'margin', is: (147.7 - 777.1) / 777.1 },
      // 4.75 V less the 1 V at which the gain is stated; 4.178 V is needed at 49 °C.
      pullIn('fan.1', (3.75 - 4.178) / 4.178),
    ],
  },
  'workshop-fan-3v3-no-indicator': {
    verdict: 'breach',
    findings: ['breach coil-release fan.1', 'strain pin-injected main.GP15'],
    figures: [
      // All that the coil takes: 5.25 V / (63 Ω x 244.5/254.5) less what the transistor keeps; 6.49 mA lets it go.
      { account: 'fan.1.coil', direction: 'at-most', of: 'max', is: 86.7e-3, within: 0.05 },
    ],
  },
  'shed-pump-3v3-pnp-input': {
    verdict: 'breach',
    findings: ['breach coil-release pump.1', 'breach pin-injected main.GP15'],
    figures: [
      // (4.75 - 0.92) V / (1050 Ω + 123 Ω)
      { account: 'pump.1.driver', direction: 'at-least', of: 'min', is: 3.27e-3 },
      // 1.38 mA in the base would be 550 mA: all that the coil takes, 5.25 V / (63 Ω x 244.5/254.5).
      { account: 'pump.1.coil', direction: 'at-most', of: 'max', is: 86.7e-3 },
    ],
  },
};

describe('samples', () => {
  it('are all told here', () => {
    const files = readdirSync(new URL('../../samples/', import.meta.url)).filter((f) => f.endsWith('.yaml'));
    expect(files.sort()).toEqual(Object.keys(SAMPLES).map((name) => `${name}.yaml`).sort());
  });

  it.each(Object.keys(SAMPLES))('%s begins with the schema that editors complete it by', (name) => {
    expect(sampleText(name).split('\n')[0]).toBe('# yaml-language-server: $schema=../schemas/project.schema.json');
  });
});

describe.each(Object.entries(SAMPLES))('%s', (name, { verdict, findings, figures, variants = [] }) => {
  const report = reportOf(sampleText(name), `${name}.yaml`);

  it(`is ${verdict}, by these findings and no others`, () => {
    expect(worseThanNote(report)).toEqual([...findings].sort());
    expect(report.verdict).toBe(verdict);
  });

  it('tells its accounts apart by id, quantity and direction', () => {
    const keys = report.accounts.map((a) => `${a.id} ${a.quantity} ${a.direction}`);
    expect(keys.filter((key, k) => keys.indexOf(key) !== k)).toEqual([]);
  });

  it('has the variants that were reckoned by hand', () => {
    const told = (report.variants ?? []).map((v) => ({
      name: v.name,
      verdict: v.verdict,
      moves: [...v.better, ...v.worse].map((c) => `${c.account}: ${c.before?.verdict} → ${c.after?.verdict}`),
      new: v.new.map((f) => `${f.verdict} ${f.rule} ${f.about}`),
    }));
    expect(told).toEqual(variants.map(({ name: of, verdict: is, moves, new: fresh }) => ({ name: of, verdict: is, moves, new: fresh })));
    for (const { name: of, margin } of variants)
      expect(report.variants!.find((v) => v.name === of)!.tightest!.margin).toBeCloseTo(margin, 2);
  });

  it.each(figures.map((f) => [`${f.of} of ${f.account}, ${f.direction}`, f] as const))('has the %s that was reckoned by hand', (_, f) => {
    const account = accountOf(report, f.account, f.direction, f.quantity);
    const got = f.of === 'margin' ? account.margin : account.draw?.[f.of];
    const room = (f.within ?? 0.01) * (f.of === 'margin' ? 1 : Math.abs(f.is));
    expect(got).toBeGreaterThanOrEqual(f.is - room);
    expect(got).toBeLessThanOrEqual(f.is + room);
    if (f.mode !== undefined) expect(account.mode).toBe(f.mode);
  });
});
