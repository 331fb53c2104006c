/**
 * A general-purpose circuit simulator (ngspice, compiled for this engine): a netlist in, the operating point or the state after some time out. An element
 * line that it cannot read is only a warning to it and is left out, so that what it solved is held against what was asked.
 */
import { Simulation } from 'eecircuit-engine';
import { vi } from 'vitest';

export interface OperatingPoint {
  /** Volts of a node of the netlist. */
  readonly volts: (node: string) => number;
  /** Amperes through a voltage source, from its first node through it to the second. */
  readonly amps: (source: string) => number;
}

export interface Simulator {
  /**
   * Solves for the operating point.
   *
   * @param lines element lines, voltages to be read as `V…` sources
   * @throws when the simulator drops a line, finds no solution, or says anything that is an error
   */
  readonly solve: (lines: readonly string[]) => Promise<OperatingPoint>;
  /**
   * The state after some time, from the operating point on.
   *
   * @param lasts seconds, so long that what is to end by then has not ended before
   */
  readonly after: (lines: readonly string[], lasts: number) => Promise<OperatingPoint>;
}

/**
 * Tighter than the simulator's own settings, which stop at a thousandth. Saturation currents below 1e-28 A are real where an
 * LED's law is written with its ideality. A teraohm from every node to ground keeps nodes that only blocked diodes touch
 * from floating. Among conductances so far apart, pivots that are not chosen carefully lose all digits: `pivrel`.
 */
const OPTIONS =
  '.options temp=27 tnom=27 reltol=1e-5 vntol=1e-7 abstol=1e-12 epsmin=1e-290 rshunt=1e12 itl1=2000 pivrel=0.1';
/**
 * Siemens across every junction, by the order in which they are tried: where one does not lead to a solution the next one may.
 * At 5 V the most of them is half a nanoampere.
 */
const SHUNTS = ['1e-12', '1e-11', '1e-10'];

/** Thermal voltage at 27 °C with the simulator's own constants, volts: it writes laws with an ideality beside it. */
export const THERMAL = (1.38064852e-23 / 1.6021766208e-19) * 300.15;

/** What it tells of the ways by which it found its way to a solution; when none of them leads there, it says more. */
const TRIALS =
  /^(Note: (Starting|Dynamic|True|Source|Transient|Trying)|Note: .*completed|Warning: (Dynamic|True) gmin|Warning: source stepping|\s*$)/i;

/** One engine forgets nothing, and answers no more after some twenty thousand circuits. */
const MOST_RUNS = 4000;

async function started(): Promise<Simulation> {
  const engine = new Simulation();
  await engine.start();
  return engine;
}

export async function simulator(): Promise<Simulator> {
  // It says on the console, too, what it is asked for below.
  vi.spyOn(console, 'error').mockReturnValue();
  let engine = await started();
  let runs = 0;
  const run = async (lines: readonly string[], analysis: string): Promise<OperatingPoint> => {
    let data: Awaited<ReturnType<Simulation['runSim']>>['data'] = [];
    let said: readonly string[] = [];
    if (++runs > MOST_RUNS) [engine, runs] = [await started(), 0];
    for (const shunt of SHUNTS) {
      engine.setNetList(['circuit', `${OPTIONS} gmin=${shunt}`, ...lines, analysis, '.end'].join('\n'));
      ({ data } = await engine.runSim());
      said = engine.getError().filter((line) => !TRIALS.test(line));
      if (said.length === 0) break;
    }
    if (said.length > 0) throw new Error(`the simulator: ${said.join(' ')}`);
    // Of a run over time, the last moment.
    const found = new Map(data.map(({ name, values }) => [name.toLowerCase(), Number(values.at(-1))]));
    const get = (name: string): number => {
      const value = found.get(name);
      if (value === undefined) throw new Error(`the simulator knows no ${name}`);
      return value;
    };
    for (const name of asked(lines)) get(name);
    return {
      volts: (node) => (node === '0' ? 0 : get(`v(${node})`)),
      amps: (source) => get(`i(${source})`),
    };
  };
  return {
    solve: (lines) => run(lines, '.op'),
    after: (lines, lasts) => run(lines, `.tran ${lasts / 1000} ${lasts} 0 ${lasts / 1000}`),
  };
}

/** Every node, and every source, that a netlist names: what is missing of them was dropped. */
function asked(lines: readonly string[]): ReadonlySet<string> {
  const names = new Set<string>();
  for (const line of lines) {
    if (line.startsWith('.')) continue;
    const [element, from, to] = line.toLowerCase().split(' ');
    for (const node of [from!, to!]) if (node !== '0') names.add(`v(${node})`);
    if (element!.startsWith('v')) names.add(`i(${element})`);
  }
  return names;
}
