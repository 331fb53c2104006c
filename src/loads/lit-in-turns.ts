/** What displays share whose LEDs are lit in turns: the resistors before them, and limits that hold for their mean. */
import { closed } from '../quantity/quantity.js';
import type { Figure } from './figures.js';
import type { LoadInput } from './lowering.js';
import type { LimitPlan, Member } from './plan.js';

/** A lead, ohms: next to nothing, but a node needs a resistance to be solved. */
const LEAD = { min: 1e-3, typ: 1e-3, max: 1e-3 };
/** What a resistor bears when nobody says so, watts (rule 8 of the format). */
export const USUAL_POWER = { min: 0.25, typ: 0.25, max: 0.25 };

export const leadMember = (part: string): Member => ({ kind: 'resistance', part, ohms: LEAD });

/** The resistor before each LED, or at each pin. */
export function seriesFigure({ figures }: LoadInput): Figure | undefined {
  const spelled = figures.within('series');
  return spelled.says('resistance')
    ? spelled.figure('resistance', 'resistance')
    : figures.figure('series', 'resistance');
}

/** The same in a branch; none where nobody fitted one. */
export function resistorMember(input: LoadInput, part: string): Member | undefined {
  const figure = seriesFigure(input);
  return figure && { kind: 'resistance', part, ohms: closed(figure.quantity), origin: figure.origin };
}

/** A limit for ever, for something that is lit a share of the time: its mean current counts. */
export function averaged(limit: LimitPlan, share: number): LimitPlan {
  if (share >= 1) return limit;
  const { value } = limit;
  return {
    ...limit,
    value: typeof value === 'number' ? value / share : (s) => value(s) / share,
    condition: `${limit.stated} for ever; lit ${Math.round(share * 1000) / 10} % of the time`,
  };
}
