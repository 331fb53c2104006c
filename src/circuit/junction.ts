/**
 * The junction law of diodes, LEDs, coupler inputs and base-emitter paths (Shockley with series resistance):
 *
 *   v(i) = a·ln(1 + i / Is) + Rs·i
 *
 * with a = n·kT/q in volts, Is the saturation current in amperes and Rs in ohms. Valid for i ≥ 0, from about 1 µA to the
 * rated current of the part. Source: W. Shockley, "The theory of p-n junctions in semiconductors and p-n junction
 * transistors", Bell System Technical Journal 28 (1949), from memory.
 */

/** A fitted junction at its reference temperature. */
export interface Junction {
  /** n·kT/q at the reference temperature, volts. */
  readonly slope: number;
  /** Natural logarithm of the saturation current in amperes: the current itself can be below 1e-30. */
  readonly logSaturation: number;
  /** Series resistance, ohms. */
  readonly series: number;
  /** Current of the point at which the temperature coefficient was stated, amperes. */
  readonly referenceCurrent: number;
  /** Change of forward voltage at the reference current, volts per kelvin (negative). */
  readonly perKelvin: number;
  /** Temperature of the fitted points, °C. */
  readonly referenceTemperature: number;
}

export interface ForwardPoint {
  /** Amperes. */
  readonly current: number;
  /** Volts. */
  readonly voltage: number;
}

/** What a fit may be told besides its points. */
export interface FitOptions {
  readonly ideality?: number;
  readonly perKelvin?: number;
  readonly referenceTemperature?: number;
  readonly fixedSlope?: number;
}

/** Boltzmann constant over elementary charge, V/K (exact in the SI of 2019: 1.380649e-23 / 1.602176634e-19). */
const BOLTZMANN_OVER_CHARGE = 1.380649e-23 / 1.602176634e-19;
const KELVIN = 273.15;

/** kT/q in volts at a temperature in °C. */
export const thermalVoltage = (celsius: number): number => BOLTZMANN_OVER_CHARGE * (celsius + KELVIN);

/** Ohms that leads and bonds have at least: they keep a junction that lies straight across a supply finite. */
const LEADS = 1e-3;

/**
 * Fits a junction through forward-voltage points: one point with the given ideality, two with the series resistance they
 * leave, three or more by least squares over slope, saturation and series resistance. A fit that would need a negative
 * series resistance or a slope below that of an ideal junction is redone without the offending term. Points at one
 * current count as one, at their mean voltage.
 *
 * @param stated forward voltages in volts at currents in amperes, at least one, currents above zero
 * @param ideality n for the case that the points do not tell it (2 for LEDs, about 1 for silicon base-emitter paths)
 * @param fixedSlope n·kT/q in volts, where something else tells it: the points then leave the series resistance
 */
export function fitJunction(
  stated: readonly ForwardPoint[],
  { ideality = 2, perKelvin = -0.002, referenceTemperature = 25, fixedSlope }: FitOptions = {},
): Junction {
  const points = distinct(stated);
  const last = points.reduce((a, b) => (b.current > a.current ? b : a));
  const ideal = thermalVoltage(referenceTemperature);
  const finish = (slope: number, series: number): Junction => ({
    slope,
    logSaturation: saturation(last.current, last.voltage - series * last.current, slope),
    series: series + LEADS,
    referenceCurrent: last.current,
    perKelvin,
    referenceTemperature,
  });
  const [first] = points;
  if (fixedSlope !== undefined) return finish(fixedSlope, Math.max(seriesOf(points, fixedSlope), 0));
  if (points.length === 1 || first === undefined) return finish(ideality * ideal, 0);
  if (points.length >= 3) {
    const [slope, series] = leastSquares(points);
    if (slope >= ideal && series >= 0) return finish(slope, series);
  }
  // Two points, or three that do not bend as a junction does: the logarithm alone, or the given ideality and what
  // resistance is left between the outer points.
  const lowest = points.reduce((a, b) => (b.current < a.current ? b : a));
  const slope = (last.voltage - lowest.voltage) / Math.log(last.current / lowest.current);
  if (slope <= ideality * ideal) return finish(Math.max(slope, ideal), 0);
  const left = last.voltage - lowest.voltage - ideality * ideal * Math.log(last.current / lowest.current);
  return finish(ideality * ideal, Math.max(left / (last.current - lowest.current), 0));
}

/** One point a current, less what the leads take. */
function distinct(points: readonly ForwardPoint[]): readonly ForwardPoint[] {
  const voltages = new Map<number, number[]>();
  for (const p of points) voltages.set(p.current, [...(voltages.get(p.current) ?? []), p.voltage]);
  return [...voltages].map(([current, all]) => ({
    current,
    voltage: all.reduce((sum, v) => sum + v, 0) / all.length - LEADS * current,
  }));
}

/** Logarithm of the saturation current of a junction that drops `voltage` at `current`: ln i − ln(e^(v/a) − 1). */
function saturation(current: number, voltage: number, slope: number): number {
  // A junction without any drop would need an endless saturation current.
  const z = Math.max(voltage / slope, 1e-9);
  return Math.log(current) - (z > 36 ? z : Math.log(Math.expm1(z)));
}

/** Slope and series resistance of v = c + a·ln(i) + Rs·i by least squares (normal equations about the means). */
function leastSquares(points: readonly ForwardPoint[]): [slope: number, series: number] {
  const mean = (f: (p: ForwardPoint) => number): number => points.reduce((sum, p) => sum + f(p), 0) / points.length;
  const [lm, im, vm] = [mean((p) => Math.log(p.current)), mean((p) => p.current), mean((p) => p.voltage)];
  let [ll, li, ii, lv, iv] = [0, 0, 0, 0, 0];
  for (const p of points) {
    const [l, i, v] = [Math.log(p.current) - lm, p.current - im, p.voltage - vm];
    ll += l * l;
    li += l * i;
    ii += i * i;
    lv += l * v;
    iv += i * v;
  }
  const determinant = ll * ii - li * li;
  return [(lv * ii - iv * li) / determinant, (iv * ll - lv * li) / determinant];
}

/** Series resistance of v = c + a·ln(i) + Rs·i by least squares, where a is known; none where the points are at one current. */
function seriesOf(points: readonly ForwardPoint[], slope: number): number {
  const straight = points.map((p) => ({ i: p.current, v: p.voltage - slope * Math.log(p.current) }));
  const mean = (f: (p: (typeof straight)[number]) => number): number =>
    straight.reduce((sum, p) => sum + f(p), 0) / straight.length;
  const [im, vm] = [mean((p) => p.i), mean((p) => p.v)];
  const spread = mean((p) => (p.i - im) ** 2);
  return spread === 0 ? 0 : mean((p) => (p.i - im) * (p.v - vm)) / spread;
}

/** The same junction at another temperature: slope with absolute temperature, forward voltage by its coefficient. */
export function junctionAt(junction: Junction, celsius: number): Junction {
  if (celsius === junction.referenceTemperature) return junction;
  const slope = (junction.slope * (celsius + KELVIN)) / (junction.referenceTemperature + KELVIN);
  const logReference = Math.log(junction.referenceCurrent);
  const voltage =
    junction.slope * softLog(logReference - junction.logSaturation) +
    junction.perKelvin * (celsius - junction.referenceTemperature);
  const logSaturation = saturation(junction.referenceCurrent, voltage, slope);
  return { ...junction, slope, logSaturation, referenceTemperature: celsius };
}

/**
 * A junction whose voltage lies at a share of the way from one junction's to another's, at every current at which both
 * conduct: slope, series resistance and the voltage at 1 A are each that far along.
 *
 * @param share 0 is `from`, 1 is `to`; both at one temperature
 */
export function junctionBetween(from: Junction, to: Junction, share: number): Junction {
  if (share === 0) return from;
  if (share === 1) return to;
  const along = (a: number, b: number): number => a + share * (b - a);
  const slope = along(from.slope, to.slope);
  return {
    ...from,
    slope,
    logSaturation: along(from.slope * from.logSaturation, to.slope * to.logSaturation) / slope,
    series: along(from.series, to.series),
    perKelvin: along(from.perKelvin, to.perKelvin),
  };
}

/** Voltage across a junction, volts, at a current in amperes (zero or more). */
export function junctionVoltage(junction: Junction, current: number): number {
  if (current <= 0) return 0;
  return junction.slope * softLog(Math.log(current) - junction.logSaturation) + junction.series * current;
}

/** ln(1 + e^x) without overflow. */
export const softLog = (x: number): number => (x > 36 ? x : Math.log1p(Math.exp(x)));
