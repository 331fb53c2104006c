/** What a figure measures. A `gauge` is an AWG number; the two per-day figures are seconds per day and times per day. */
export type Dimension =
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'power'
  | 'temperature'
  | 'thermal-resistance'
  | 'temperature-difference'
  | 'time'
  | 'frequency'
  | 'capacitance'
  | 'inductance'
  | 'charge'
  | 'energy'
  | 'length'
  | 'area'
  | 'gauge'
  | 'ratio'
  | 'time-per-day'
  | 'times-per-day';

/** What messages need to know about a dimension, and the range outside which a figure is a slip. */
interface Facts {
  /** With its article: 'a voltage'. */
  readonly name: string;
  readonly example: string;
  /** The units somebody who left the unit out is likely to have meant. */
  readonly usual: readonly string[];
  /** In SI; 0 when absent. */
  readonly least?: number;
  readonly most?: number;
}

export const FACTS: Readonly<Record<Dimension, Facts>> = {
  voltage: { name: 'a voltage', example: '5 V', usual: ['V'], least: -Infinity },
  current: { name: 'a current', example: '20 mA', usual: ['mA', 'A'], least: -Infinity },
  resistance: { name: 'a resistance', example: '330 Ω', usual: ['Ω'] },
  power: { name: 'a power', example: '0.25 W', usual: ['W', 'mW'] },
  temperature: { name: 'a temperature', example: '40 °C', usual: ['°C'], least: -273.15 },
  'thermal-resistance': { name: 'a thermal resistance', example: '90 K/W', usual: ['K/W'] },
  'temperature-difference': { name: 'a temperature difference', example: '25 K', usual: ['K'], least: -Infinity },
  time: { name: 'a time', example: '150 ms', usual: ['s', 'ms'] },
  frequency: { name: 'a frequency', example: '1 kHz', usual: ['Hz', 'kHz'] },
  capacitance: { name: 'a capacitance', example: '100 µF', usual: ['µF', 'nF'] },
  inductance: { name: 'an inductance', example: '120 mH', usual: ['mH', 'µH'] },
  charge: { name: 'a charge', example: '2000 mAh', usual: ['mAh', 'Ah'] },
  energy: { name: 'an energy', example: '20 Wh', usual: ['Wh', 'J'] },
  length: { name: 'a length', example: '2 m', usual: ['m', 'mm'] },
  area: { name: 'an area', example: '0.25 mm²', usual: ['mm²'] },
  gauge: { name: 'a wire gauge', example: 'AWG 24', usual: ['AWG'] },
  ratio: { name: 'a ratio', example: '20 %', usual: ['%'] },
  'time-per-day': { name: 'a time per day', example: '6 h/day', usual: ['h/day'], most: 86_400 },
  'times-per-day': { name: 'a number of times per day', example: '12 /day', usual: ['/day'] },
};

/** One unit. Its size in SI is 10^power · factor: the power is kept apart so that `330 mA` is 0.33 to the last bit. */
export interface Unit {
  /** The first is the one that is printed. */
  readonly symbols: readonly string[];
  readonly dimension: Dimension;
  readonly power: number;
  readonly factor: number;
  /** Prefixes it may take. Those that could only be a slip are left out: a megaampere, a millihertz. */
  readonly prefixes: string;
}

const unit = (dimension: Dimension, symbols: string, prefixes = '', factor = 1, power = 0): Unit => ({
  dimension,
  symbols: symbols.split(' '),
  prefixes,
  factor,
  power,
});

/** Powers of ten of the SI prefixes, smallest first. */
export const PREFIXES: ReadonlyMap<string, number> = new Map([
  ['p', -12],
  ['n', -9],
  ['µ', -6],
  ['m', -3],
  ['k', 3],
  ['M', 6],
  ['G', 9],
]);

/** Every unit the format knows. The first of a dimension is its SI unit, or the one that people read it in. */
export const UNITS: readonly Unit[] = [
  unit('voltage', 'V', 'nµmk'),
  unit('current', 'A', 'pnµm'),
  unit('resistance', 'Ω ohm ohms Ohm', 'µmkMG'),
  unit('power', 'W', 'nµmk'),
  unit('temperature', '°C degC C'),
  unit('thermal-resistance', 'K/W °C/W degC/W C/W'),
  unit('temperature-difference', 'K'),
  unit('time', 's', 'nµm'),
  unit('time', 'min', '', 60),
  unit('time', 'h', '', 3600),
  unit('time', 'days day', '', 86_400),
  unit('time', 'weeks week', '', 604_800),
  // The Julian year of 365.25 days.
  unit('time', 'years year', '', 31_557_600),
  unit('frequency', 'Hz', 'kMG'),
  unit('capacitance', 'F', 'pnµm'),
  unit('inductance', 'H', 'nµm'),
  unit('charge', 'C', 'pnµm'),
  unit('charge', 'Ah', 'µm', 3600),
  unit('energy', 'J', 'nµmk'),
  unit('energy', 'Wh', 'mk', 3600),
  unit('length', 'm', 'µmk'),
  unit('length', 'cm', '', 1, -2),
  unit('length', 'ft', '', 0.3048),
  unit('area', 'mm² mm2 mm^2', '', 1, -6),
  unit('gauge', 'AWG'),
  unit('ratio', '%', '', 1, -2),
  unit('time-per-day', 'h/day', '', 3600),
  unit('time-per-day', 'min/day', '', 60),
  unit('time-per-day', 's/day'),
  unit('times-per-day', '/day'),
];

/** The units of a dimension, in the order of `UNITS`. */
export const unitsOf = (dimension: Dimension): readonly Unit[] => UNITS.filter((u) => u.dimension === dimension);
