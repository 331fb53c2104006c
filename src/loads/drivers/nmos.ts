/** A pin that drives the gate of an N-channel MOSFET: a voltage is what counts, and where its resistance is specified. */
import { branchSteps } from '../branch-working.js';
import { interpolate } from '../../quantity/points.js';
import { closed } from '../../quantity/quantity.js';
import type { Figures } from '../figures.js';
import type { LoadInput, NetworkSketch } from '../lowering.js';
import { rating } from '../limits.js';
import type { AccountPlan, LimitPlan, Member, Reading, Step } from '../plan.js';
import { GROUND } from '../plan.js';
import type { Driver, DriverSetting } from './driver.js';
import { carriedCurrent, offVoltage } from './ratings.js';
import { heatAccount, heatOf } from './junction-heat.js';

export function nmosDriver(input: LoadInput, setting: DriverSetting, figures: Figures): Driver | undefined {
  const { circuit, path, supply, load } = setting;
  const pin = input.bench.outputPin(setting.pin.name, setting.pin.path, circuit, setting.active);
  if (pin === undefined) return undefined;
  const id = `${circuit}.driver`;
  const resistor = figures.figure('gate-resistor', 'resistance');
  const pullDown = figures.figure('pull-down', 'resistance');
  const before: Member[] = resistor
    ? [
        {
          kind: 'resistance',
          part: `${circuit}.gate-resistor`,
          ohms: closed(resistor.quantity),
          origin: resistor.origin,
        },
      ]
    : [];
  // Without a pull-down nothing flows at rest and the gate stands at the pin's level; a gate never loads the pin.
  const networks: NetworkSketch[] = pullDown
    ? [
        {
          id,
          circuits: [circuit],
          side: 'control',
          inner: [],
          hooks: [
            {
              pin,
              active: setting.active,
              flows: 'out',
              to: GROUND,
              circuit,
              members: [
                ...before,
                {
                  kind: 'resistance',
                  part: `${circuit}.pull-down`,
                  ohms: closed(pullDown.quantity),
                  load: true,
                  origin: pullDown.origin,
                },
              ],
            },
          ],
          on: [],
          off: [],
        },
      ]
    : [];
  const gate = (s: Reading): number => (pullDown ? s.across(`${circuit}.pull-down`) : s.voltage(pin.rail));
  const resistance = figures.curve('on-resistance', 'resistance', 'voltage', { min: () => 0 });
  const nominal = input.bench.nominal(pin.rail);
  const ohms = resistance
    ? interpolate(resistance.points, Math.max(nominal, resistance.points[0]!.at)).value
    : { min: 0, typ: 0, max: 0 };
  const base = { id, kind: 'driver' as const, circuits: [circuit], path };
  const maximumCurrent = rating(figures, 'maximum-current', 'current');
  const maximumVoltage = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  const opens: AccountPlan = {
    ...base,
    title: `driver of ${circuit}, gate voltage`,
    quantity: 'voltage',
    direction: 'at-least',
    recipes: ['drive-worst', 'drive-best'],
    read: gate,
    limits: gateLimits(figures, resistance?.points[0]),
    ...(!resistance && {
      missing: {
        figure: 'on-resistance',
        asks: `at which gate voltages is the on-resistance of the MOSFET that drives ${circuit} specified (its \`on-resistance\`)?`,
      },
    }),
    steps: (s) => gateSteps(s, pullDown ? `${circuit}.pull-down` : undefined, gate(s)),
  };
  const carries = carriedCurrent(base, circuit, load, maximumCurrent);
  const bears = maximumVoltage ? [offVoltage(base, circuit, supply, maximumVoltage)] : [];
  const lost = (s: Reading): number => s.current(load) ** 2 * (s.typical ? ohms.typ : ohms.max);
  const warm = heatAccount({ ...base, title: `driver of ${circuit}, junction` }, heatOf(figures, id), lost, [
    'draw-most',
    'draw-least',
  ]);
  return {
    by: 'driver',
    pin: pin.account,
    members: [{ kind: 'resistance', part: id, ohms, ...(resistance && { origin: resistance.origin }) }],
    networks,
    accounts: [opens, carries, ...bears, ...(resistance ? [warm] : [])],
    clamps: false,
    unlimited: [],
  };
}

/** Below its highest threshold a gate fails; below the lowest voltage its resistance is specified at, nothing is promised. */
function gateLimits(
  figures: Figures,
  lowestPoint: { at: number; quantity: { stated: string } } | undefined,
): LimitPlan[] {
  if (lowestPoint === undefined) return [];
  const threshold = figures.figure('threshold', 'voltage');
  const specified = figures.curve('on-resistance', 'resistance', 'voltage')!;
  const limits: LimitPlan[] = [
    {
      value: lowestPoint.at,
      stated: `${lowestPoint.at} V, the lowest gate voltage at which its resistance is specified`,
      grade: 'characterised',
      margin: 'none',
      origin: specified.origin,
    },
  ];
  if (threshold) {
    const volts = closed(threshold.quantity);
    limits.push({
      value: (s) => (s.typical ? volts.typ : volts.max),
      stated: threshold.quantity.stated,
      grade: 'operating',
      isFunction: true,
      margin: 'function-voltage',
      origin: threshold.origin,
      condition: 'gate threshold, where it only begins to conduct',
    });
  }
  return limits;
}

function gateSteps(s: Reading, pullDown: string | undefined, volts: number): Step[] {
  if (pullDown === undefined)
    return [
      {
        name: 'V_gate',
        says: 'the gate stands at the pin’s level',
        formula: 'V_pin',
        with: { V_pin: [volts, 'V'] },
        gives: [volts, 'V'],
      },
    ];
  return [
    ...branchSteps(s.branch(pullDown), 'current through the gate’s pull-down'),
    {
      name: 'V_gate',
      says: 'what the pull-down leaves at the gate',
      formula: 'I * R',
      with: { I: [s.current(pullDown), 'A'], R: [s.ohms(pullDown), 'Ω'] },
      gives: [volts, 'V'],
    },
  ];
}
