/** Strapping pins at the moment of a reset: what hangs on them outside, and whether they may read the wrong level. */
import type { StrapPlan } from '../project/pin-plan.js';
import type { Project } from '../project/project.js';
import { TYPICAL, cornersOf } from './corner.js';
import { BOOT } from './moments.js';
import { solver } from './solver.js';

export interface StrapAt {
  /** The pin, by account. */
  readonly pin: string;
  readonly strap: StrapPlan;
  /** Who hangs on it. */
  readonly by: readonly string[];
  /** Volts at its worst and what it would have to be; absent where something outside decides, or nothing does. */
  readonly stands?: { readonly volts: number; readonly needs: number };
}

const TOGETHER = { pins: [], control: [], both: [] };
/** Whatever of these draws the pin furthest. */
const RECIPES = ['draw-most', 'draw-least', 'drive-worst', 'drive-best', 'let-go-worst', 'let-go-best'] as const;
const BUS = new Set(['sda', 'scl', 'i2c-data', 'i2c-clock']);

/** The strapping pins that could read wrong. A pin on which nothing hangs is its board's, or its builder's, own affair. */
export function wrongStraps(project: Project): StrapAt[] {
  const strapped = project.pins.flatMap(({ id, strap }) => (strap ? [{ pin: id, strap }] : []));
  const hung = strapped.flatMap((s) => {
    const uses = project.uses.filter((u) => u.pin === s.pin);
    return uses.length === 0 ? [] : [{ ...s, uses, by: [...new Set(uses.map((u) => u.by))] }];
  });
  if (hung.length === 0) return [];
  const nodes = new Set(project.boot.strapped.flatMap((n) => n.inner));
  const bench = nodes.size === 0 ? undefined : solver({ ...project, networks: project.boot.strapped, accounts: [] });
  return hung.flatMap(({ pin, strap, uses, by }): StrapAt[] => {
    const found = { pin, strap, by };
    // Somebody outside decides: a button, a sensor that sends.
    if (uses.some((u) => u.as === 'driven' || u.as === 'input')) return [found];
    const bus = uses.some((u) => u.role !== undefined && BUS.has(u.role.toLowerCase()));
    if (bus && strap.level === 'low') return [found];
    if (bench === undefined || !nodes.has(`${pin}:pin`)) return bus || strap.held ? [] : [found];
    const corners = [TYPICAL, ...RECIPES.flatMap((recipe) => cornersOf(recipe, TOGETHER, false))];
    const left = corners.map((corner) => {
      const s = bench.solve({ moment: { mode: BOOT, on: bench.resting }, corner, focus: bench.nobody });
      const [volts, needs] = [s.voltage(`${pin}:pin`), strap.reads(s.voltage(strap.rail))];
      return { volts, needs, left: strap.level === 'high' ? volts - needs : needs - volts };
    });
    const { volts, needs, left: least } = left.reduce((a, b) => (b.left < a.left ? b : a));
    return least >= 0 ? [] : [{ ...found, stands: { volts, needs } }];
  });
}
