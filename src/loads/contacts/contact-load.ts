/** What hangs on a contact: its kind, its voltage, what it takes and what it takes when it starts. */
import type { ContactLoadKind } from '../../circuit/contact.js';
import { rmsOverSecond } from '../../circuit/pulse.js';
import { formatValue } from '../../quantity/print.js';
import type { Interval } from '../../quantity/interval.js';
import { closed } from '../../quantity/quantity.js';
import { drawOf, withPeak } from '../draw.js';
import type { Figures } from '../figures.js';
import { USUAL_COLD } from '../lamp.js';
import type { Bench } from '../lowering.js';
import type { Member, Origin } from '../branch-plan.js';
import { LOAD_KINDS } from './contact-rating.js';

export interface ContactLoad {
  readonly kind: ContactLoadKind;
  /** Nominal volts that its contact breaks: its own, or those of a supply that is not made for it. */
  readonly volts: number;
  /** Nominal volts at which its current is stated. */
  readonly rated: number;
  readonly waveform: 'AC' | 'DC';
  /** Its voltage is stated without a tolerance. */
  readonly exact?: true;
  /** Amperes as stated; absent where nobody states them. */
  readonly amps?: Interval;
  /** Amperes when it starts, where stated, and the seconds they last. */
  readonly peak?: number;
  readonly lasts: number;
  /** What keeps this node at its voltage feeds it. */
  readonly node: string;
  /** A supply of the project, by the node that it hangs on. */
  readonly supply?: string;
  readonly origin: Origin;
}

/** What a load takes when it starts is stated under this key. */
const STARTS: { readonly [K in ContactLoadKind]: 'stall' | 'inrush' } = {
  resistive: 'inrush',
  inductive: 'inrush',
  motor: 'stall',
  lamp: 'inrush',
  capacitive: 'inrush',
};

export const startKey = (kind: ContactLoadKind): 'stall' | 'inrush' => STARTS[kind];

/** A stall, a start or a burst without a stated time lasts this long, seconds (rule 8 of the format). */
const USUAL_TIME = 0.5;

/**
 * So many times the voltage that it states a load may have to bear: 12 V from a battery that is being charged is 1.2 times as
 * much and usual. Common practice, no source.
 */
export const MISFIT: Interval = { min: 1.25, typ: 1.4, max: 1.5 };

/** What a load's contact is called: in sentences, and the node of a supply that the file does not describe. */
interface Called {
  readonly circuit: string;
  /** 'contact of vents.1'. */
  readonly title: string;
  readonly node: string;
}

/** Reads a contact's load; undefined after a problem. @param contact figures of the contact */
export function contactLoad(contact: Figures, called: Called, bench: Bench): ContactLoad | undefined {
  const figures = contact.within('load');
  const on = called.title.replace(called.circuit, `\`${called.circuit}\``);
  const kind = LOAD_KINDS.find((each) => each === figures.word('type'));
  if (kind === undefined) return undefined;
  const stated = figures.figure('voltage', 'voltage')?.quantity;
  const named = figures.word('supply');
  const supply = named === undefined ? undefined : bench.node(named, figures.at('supply'));
  if (named !== undefined && supply === undefined) return undefined;
  if (stated === undefined && supply === undefined) {
    figures.problem(
      'voltage',
      `nothing says what voltage the load on the ${on} works on`,
      '`voltage: 24 V DC`, `voltage: 230 V AC`, or `supply:` with the name of a supply',
    );
    return undefined;
  }
  const waveform = stated?.waveform ?? (supply === undefined ? undefined : 'DC');
  if (waveform === undefined) {
    figures.problem(
      'voltage',
      `nothing says whether the load on the ${on} is on direct or alternating voltage`,
      `\`${stated!.stated} DC\` or \`${stated!.stated} AC\``,
    );
    return undefined;
  }
  if (waveform === 'AC' && supply !== undefined) {
    figures.problem(
      'supply',
      `\`${named}\` gives a direct voltage, and the load on the ${on} wants ${stated!.stated}`,
      'no `supply`: what feeds an alternating load is none of the project’s supplies',
    );
    return undefined;
  }
  const window = stated === undefined ? undefined : closed(stated);
  if (window !== undefined && window.min <= 0) {
    figures.problem('voltage', `the load on the ${on} works on no voltage`, 'a voltage above zero');
    return undefined;
  }
  const key = startKey(kind);
  const other = key === 'stall' ? 'inrush' : 'stall';
  for (const said of [other, `${other}-time`].filter((each) => figures.says(each)))
    figures.problem(
      said,
      `what the load on the ${on} takes when it is switched on is its \`${key}\`, since it is of type \`${kind}\``,
      `\`${said.replace(other, key)}\` in its place`,
    );
  const peak = figures.interval(key, 'current')?.max;
  const amps = drawOf(figures, 'current');
  if (amps !== undefined && (amps.min < 0 || amps.max <= 0)) {
    figures.problem('current', `the load on the ${on} takes no current`, 'a current above zero');
    return undefined;
  }
  const node =
    supply ?? bench.elsewhere(called.node, `what feeds the load on ${called.circuit}`, window!, figures.at('voltage'));
  const lasts = figures.interval(`${key}-time`, 'time')?.max ?? (kind === 'lamp' ? USUAL_COLD.time : USUAL_TIME);
  const rated = window?.typ ?? bench.nominal(node);
  return {
    kind,
    volts: bench.nominal(node) > MISFIT.min * rated ? bench.nominal(node) : rated,
    rated,
    ...(stated?.exact !== false && supply === undefined && { exact: true as const }),
    waveform,
    ...(amps && { amps }),
    ...(peak !== undefined && { peak }),
    lasts,
    node,
    ...(supply !== undefined && { supply }),
    origin: figures.figure('current', 'current')?.origin ?? { document: 'the project file', basis: 'project' },
  };
}

/**
 * The load as a member of its branch. What is stated at a voltage follows the supply's own: a heater or a valve as a resistance,
 * a lamp as a filament; a motor and a power supply take their current whatever they get.
 *
 * @param part 'vents.1.contact'
 */
export function loadMember(load: ContactLoad, amps: Interval, part: string, figures: Figures): Member {
  const { kind, rated: volts, peak, lasts, origin } = load;
  // A filament needs a least current to be one.
  if (kind === 'lamp' && amps.min > 0) {
    const ratio = peak === undefined ? USUAL_COLD.ratio : Math.max(peak / amps.max, 1);
    if (peak === undefined)
      figures.assume(
        `a cold filament takes up to ${USUAL_COLD.ratio} times its ${formatValue(amps.typ, 'current')}, since nobody states its inrush`,
      );
    const cold = { peak: ratio, second: rmsOverSecond(1, ratio, lasts), lasts };
    return { kind: 'filament', part, volts, amps, cold, origin };
  }
  const isPlain = (kind === 'resistive' || kind === 'inductive') && peak === undefined && amps.min > 0;
  if (isPlain) {
    const ohms = { min: volts / amps.max, typ: volts / amps.typ, max: volts / amps.min };
    return { kind: 'resistance', part, ohms, load: true, origin };
  }
  return { kind: 'current', part, ...withPeak(amps, peak, lasts), starts: true, origin };
}
