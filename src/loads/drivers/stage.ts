/** A stage of a driver: what it is given, and what it gives to the load or to the stage behind it. */
import type { Figures } from '../figures.js';
import type { LoadInput, NetworkSketch } from '../lowering.js';
import type { AccountPlan, Reading, Step } from '../account-plan.js';
import type { DeadWay, Member } from '../branch-plan.js';
import type { LineEnd } from '../lines/line.js';
import type { Wiring } from '../circuit-plan.js';
import type { Drive, Level, State } from './drive.js';

export interface StageSetting {
  readonly input: LoadInput;
  readonly figures: Figures;
  readonly circuit: string;
  /** Its account: 'horn.driver' for the stage that switches the load, 'horn.stage-1' for those before it. */
  readonly id: string;
  /** What its parts' names begin with: 'horn', 'horn.stage-1'. */
  readonly prefix: string;
  /** In sentences: 'driver of horn', 'stage 1 of the driver of horn'. */
  readonly title: string;
  readonly path: readonly (string | number)[];
  readonly drive: Drive;
  /** Node that feeds the load and the stages. */
  readonly supply: string;
  /** Node that a stage with a supply of its own is fed from when it names none: on a relay board there is no other. */
  readonly feed?: string;
  /** Amperes that it is expected to carry, for reading curves off at. */
  readonly expected: number;
  /** The state of the circuit in which it conducts: a stage may conduct while the load is off, to hold the next one off. */
  readonly conducts: State;
  /** Names of the networks behind it that its output loads. */
  readonly loads: readonly string[];
}

/** What all accounts of a stage share: whose they are, and the state in which they are asked. */
export type StageAccount = Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path' | 'off' | 'loads'>;

export const stageAccount = ({
  id,
  circuit,
  path,
  conducts,
  loads,
}: StageSetting): StageAccount & { kind: 'driver' } => ({
  id,
  kind: 'driver',
  circuits: [circuit],
  path,
  ...(conducts === 'off' && { off: true }),
  ...(loads.length > 0 && { loads }),
});

export interface Stage {
  /** Node that its high side stands at, where that is not what feeds the load. */
  readonly rail?: string;
  /** What it puts in series with what it switches; the one named as the stage carries all of that. */
  readonly members: readonly Member[];
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
  /** Its input, where a junction leads from that to its supply. */
  readonly ends?: readonly LineEnd[];
  /** Where the base of a Darlington that a pin drives lies. */
  readonly darlington?: DeadWay['from'];
  readonly unlimited: NonNullable<Wiring['unlimited']>;
  /** Amperes that it can carry as it is driven; absent: as much as there is. */
  readonly most?: (s: Reading, aged?: boolean) => number;
  /** It has parts that age. */
  readonly ages?: true;
  readonly steps: (s: Reading) => readonly Step[];
  /** Volts it loses beyond what its members take: a transistor that is not driven hard enough. */
  readonly shortfall?: (s: Reading) => number;
  /** The sums behind all that it loses. */
  readonly lossSteps?: (s: Reading) => readonly Step[];
  /** Amperes that it lets through when it should not conduct, before what it switches limits them. */
  readonly leak: (s: Reading) => number;
  readonly leakSteps: (s: Reading) => readonly Step[];
}

/** A type of stage. */
export interface StageType {
  /** Whether it conducts with its input at a level. @param active the level that the file says energises, if it does */
  readonly conducts: (level: Level, figures: Figures, active: 'high' | 'low' | undefined) => boolean;
  /** Where its output stands. */
  readonly gives: (conducts: boolean, figures: Figures) => Level;
  /** Undefined with a problem. */
  readonly lower: (setting: StageSetting) => Stage | undefined;
}

/** Where an input stands: where its drive does, or where what is fitted at it takes it. */
export const settled = (level: Level, figures: Figures): Level =>
  level !== 'open' ? level : figures.says('pull-up') ? 'high' : figures.says('pull-down') ? 'low' : 'open';
