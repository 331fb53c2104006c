/**
 * The two wires from a new supply to a board and the fuse that guards them: the fuse is above what the load asks for good, and the
 * wire bears more than the fuse. What they lose is put into the project as a wire, so that the audit of the option counts it.
 */
import { ampacity } from '../circuit/ampacity.js';
import { copperFactor } from '../circuit/copper.js';
import type { SmallFuse } from '../circuit/small-fuse.js';
import { SMALL_FUSES, fuseFor } from '../circuit/small-fuse.js';
import { awgArea, wireOhms } from '../circuit/wire.js';

/** The wires to a load lose no more than this share of its voltage (common practice, no source). */
const DROP = 0.02;
/** What screw terminals hold well, thinnest first (common practice, no source); 0.5 mm² and up are those of IEC 60228 (from memory). */
const GAUGES = [26, 24, 22, 20, 18, 16, 14, 12, 10];
const SECTIONS = [0.14, 0.25, 0.34, 0.5, 0.75, 1, 1.5, 2.5, 4, 6];

/** A wire: how thick, what it bears, how far it reaches. */
export interface LeadWire {
  /** As it is sold: 'AWG 24', '0.25 mm²'. */
  readonly gauge: string;
  /** Amperes among other wires. */
  readonly bears: number;
  /** Metres one way over which plus and minus together lose what may be lost. */
  readonly reach: number;
}

export interface SupplyLead {
  readonly fuse: SmallFuse;
  /** The largest fuse that still guards the wires, amperes. */
  readonly largestFuse: number;
  /** Metres one way that they are chosen for, and whether the file states that length. */
  readonly length: number;
  readonly stated: boolean;
  /** Volts that the two wires may lose. */
  readonly drop: number;
  /** The thinnest that do, by American gauge and by cross-section. */
  readonly awg: LeadWire;
  readonly metric: LeadWire;
}

/**
 * @param amps asked of the supply in the worst moment @param volts its nominal voltage @param hottest °C around the wires
 * @param length metres one way, where the file states it; one metre otherwise
 * @returns undefined where no fuse of the series or no wire of the tables is for it
 */
export function leadFor(
  amps: number,
  volts: number,
  hottest: number,
  length: number | undefined,
): SupplyLead | undefined {
  const fuse = fuseFor(amps);
  if (fuse === undefined) return undefined;
  const drop = DROP * volts;
  const metres = length ?? 1;
  const wire = (gauge: string, area: number): LeadWire => ({
    gauge,
    bears: ampacity(area, true),
    reach: drop / (amps * 2 * wireOhms(1, area) * copperFactor(hottest)),
  });
  const does = (w: LeadWire): boolean => w.bears >= fuse.amps && w.reach >= metres;
  const awg = GAUGES.map((g) => wire(`AWG ${g}`, awgArea(g))).find(does);
  const metric = SECTIONS.map((a) => wire(`${a} mm²`, a * 1e-6)).find(does);
  if (awg === undefined || metric === undefined) return undefined;
  const bears = Math.min(awg.bears, metric.bears);
  const largest = SMALL_FUSES.findLast((f) => f.amps <= bears) ?? fuse;
  return { fuse, largestFuse: largest.amps, length: metres, stated: length !== undefined, drop, awg, metric };
}

/** The lead as an entry of `wires`: of the two gauges the thinner one, the fuse among its contacts. */
export const leadEntry = (lead: SupplyLead, from: string, to: string): Readonly<Record<string, unknown>> => ({
  from,
  to,
  length: `${lead.length} m`,
  gauge: (lead.awg.bears < lead.metric.bears ? lead.awg : lead.metric).gauge,
  'contact-resistance': `${lead.fuse.ohms.min} to ${round(lead.fuse.ohms.max)} Ω`,
});

const round = (value: number): number => Number(value.toPrecision(3));
