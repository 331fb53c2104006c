/**
 * Utilisation categories: what kind of load a rating was proved with, and how many times that current the contact was proved to
 * close on. Sources: names as IEC 60947-4-1 and IEC 60947-5-1 have them ("Overview of conventional utilization categories", Elesta);
 * 10 times of AC-15: "D4MC limit switches", Omron, p. 2, A300: makes 30 A and breaks 3 A at 240 V AC; 6 times of AC-14: "Contact
 * load classifications", LogicNeed, after EN 60947-5-1; 6 times of AC-3 and once of the direct ones: from memory.
 */
interface Category {
  readonly of: string;
  /** Multiples of the rating that the contact may close on; absent where nobody counts on it. */
  readonly makes?: number;
}

export const CATEGORIES: { readonly [category: string]: Category } = {
  'AC-1': { of: 'hardly inductive loads' },
  'AC-3': { of: 'squirrel-cage motors', makes: 6 },
  'AC-5a': { of: 'discharge lamps' },
  'AC-5b': { of: 'incandescent lamps' },
  'AC-6b': { of: 'capacitor banks' },
  'AC-7a': { of: 'hardly inductive household loads' },
  'AC-7b': { of: 'household motors' },
  'AC-12': { of: 'resistive loads' },
  'AC-14': { of: 'electromagnets up to 72 VA', makes: 6 },
  'AC-15': { of: 'electromagnets above 72 VA', makes: 10 },
  'DC-1': { of: 'hardly inductive loads' },
  'DC-3': { of: 'shunt motors' },
  'DC-5': { of: 'series motors' },
  'DC-6': { of: 'incandescent lamps' },
  'DC-12': { of: 'resistive loads' },
  'DC-13': { of: 'electromagnets', makes: 1 },
};
