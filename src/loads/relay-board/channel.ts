/** One channel of a relay board: from the pin through its input to the transistor and the coil. */
import { copperFactor } from '../../circuit/copper.js';
import type { Clamp } from '../clamp.js';
import { clampFrom } from '../clamp.js';
import { windingOf } from '../coil-working.js';
import { coilAccounts, unsteadyAt } from '../coil-accounts.js';
import type { CoilFigures } from '../coil-figures.js';
import type { TransistorSetting } from '../drivers/transistor.js';
import { shortfallOf, switchMember, transistorAccounts, transistorOf } from '../drivers/transistor.js';
import { isMapping } from '../figures.js';
import type { Hook, Lowered } from '../lowering.js';
import { NOTHING } from '../lowering.js';
import type { BranchPlan, CircuitPlan, Member, Reading } from '../plan.js';
import { GROUND } from '../plan.js';
import type { Board, Channel } from './board.js';
import { fittedAt } from './fitted.js';
import { optoStage } from './opto-input.js';
import { transistorStage } from './transistor-input.js';

export function lowerChannel(board: Board, number: number, raw: unknown, path: readonly (string | number)[]): Lowered {
  const { input, active, coil } = board;
  const { bench, figures } = input;
  const circuit = `${input.id}.${number}`;
  const named = bench.pinNames(isMapping(raw) ? raw['pin'] : raw, isMapping(raw) ? [...path, 'pin'] : path)[0];
  if (named === undefined) return NOTHING;
  const pin = bench.outputPin(named.name, named.path, circuit, active);
  if (pin === undefined) return NOTHING;
  const { logic, supply } = board;
  const coilPart = `${circuit}.coil`;
  const winding: Member = {
    kind: 'resistance',
    part: coilPart,
    ohms: coil.ohms,
    copper: coil.reference,
    load: true,
    origin: coil.origin,
  };
  const plan = (wiring: Partial<CircuitPlan['wiring']>): CircuitPlan => ({
    id: circuit,
    owner: input.id,
    path,
    type: 'relay-board',
    always: false,
    wiring: {
      by: 'board',
      pin: pin.account,
      inductive: true,
      coil: coilPart,
      clamp: figures.says('clamp') ? 'fitted' : 'none',
      ...(supply && { supply }),
      board: board.wiring,
      figures: { coilVolts: coil.nominal },
      ...wiring,
    },
  });
  // Without a source nothing can be reckoned; that it has none is reported by a rule of its own.
  if (supply === undefined || (board.coupling === 'opto' && active === 'low' && logic === undefined))
    return { circuits: [plan({})], networks: [], accounts: [] };

  const fitted = fittedAt(board, circuit, pin, raw, path);
  if (board.coupling === 'none') {
    const hook: Hook = {
      pin,
      active,
      flows: active === 'high' ? 'out' : 'in',
      to: active === 'high' ? GROUND : supply,
      members: [winding],
      circuit,
    };
    return {
      circuits: [plan({ bare: true })],
      networks: [
        { id: circuit, circuits: [circuit], side: 'load', inner: [], hooks: [hook, ...fitted], on: [], off: [] },
      ],
      accounts: coilAccounts(coil, { circuit, part: coilPart, path, ...unsteadyAt(bench, supply) }),
    };
  }
  const transistor = transistorOf(bench.behind(figures.within('output'), 'driver'), `the drivers of ${input.id}`);
  const site: Channel = { board, circuit, path, pin, supply, fitted };
  const stage = (board.coupling === 'opto' ? optoStage : transistorStage)(site, transistor);
  if (stage === undefined) return NOTHING;
  const setting: TransistorSetting = {
    circuit,
    id: `${circuit}.driver`,
    path,
    supply,
    load: coilPart,
    base: `${circuit}.base`,
    baseCurrent: stage.baseCurrent,
    baseSteps: stage.baseSteps,
    ...(stage.aged && { aged: stage.aged }),
  };
  const expected = coil.nominal / coil.ohms.typ;
  const drop = switchMember(transistor, `${circuit}.driver`, expected);
  const branch: BranchPlan = { from: supply, to: GROUND, members: [winding, drop], circuit };
  const clamp = clampOn(site, coilPart);
  return {
    circuits: [plan({ ...clamp?.wiring })],
    networks: [
      ...stage.networks,
      { id: `${circuit}.coil`, circuits: [circuit], side: 'load', inner: [], hooks: [], on: [branch], off: [] },
    ],
    accounts: [
      ...stage.accounts,
      ...(clamp?.atSwitchingOff(transistorAccounts(transistor, setting)) ?? transistorAccounts(transistor, setting)),
      ...coilAccounts(coil, {
        circuit,
        part: coilPart,
        path,
        shortfall: shortfallOf(transistor, setting, expected),
        leak: (s) => Math.min(stage.leak(s), s.voltage(supply) / ohmsNow(coil, s)),
        leakSteps: stage.leakSteps,
        ...unsteadyAt(bench, supply),
      }),
      ...(clamp?.accounts ?? []),
    ],
  };
}

/** The clamp that the board has across a coil. */
function clampOn({ board, circuit, path, supply }: Channel, part: string): Clamp | undefined {
  const { figures, bench } = board.input;
  if (!figures.says('clamp')) return undefined;
  const fitted = bench.behind(figures.within('clamp'), 'clamp');
  const setting = { circuit, part, supply, ...windingOf(board.coil) };
  return clampFrom(fitted, fitted.word('type') ?? 'diode', setting, path);
}

/** Resistance of a coil that is off, at the ambient: the lowest, which lets the most through. */
const ohmsNow = (coil: CoilFigures, s: Reading): number =>
  (s.typical ? coil.ohms.typ : coil.ohms.min) * copperFactor(s.ambient, coil.reference);
