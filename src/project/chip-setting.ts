/** A chip as the project sets it up: its entry and profile, its rail, and its pins by their names. */
import type { Profile } from '../catalogue/profile.js';
import type { Figures } from '../loads/figures.js';
import { isMapping } from '../loads/figures.js';
import type { BootState } from '../loads/circuit-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Path } from '../source/place.js';
import type { Gathered } from './remarks.js';

/** What the level of a pin at a reset decides. */
export interface Strap {
  /** The level that starts the program. */
  readonly level: 'high' | 'low';
  /** Why, in words of its profile. */
  readonly says?: string;
}

export interface ChipPin {
  /** 'main.D9'. */
  readonly account: string;
  readonly label: string;
  /** As sentences say it: with its owner unless there is one controller only. */
  readonly told: string;
  readonly chipPin: string;
  readonly reserved?: string;
  /** The level that it has to have at a reset, and what that decides. */
  readonly strap?: Strap;
  readonly inputOnly: boolean;
  /** A builder can put a wire on it: a board's header has it, or the chip is bare. */
  readonly reachable: boolean;
}

export interface ChipSetting {
  readonly owner: string;
  /** The project's only controller: its pins need no owner's name. */
  readonly alone: boolean;
  readonly rail: string;
  /** Volts of the rail as stated. */
  readonly window: Interval;
  readonly path: Path;
  readonly profile: Profile;
  /** The entry's figures with the chip's behind them. */
  readonly figures: Figures;
  /** Header name → chip pin; absent for a bare chip. */
  readonly headers?: Readonly<Record<string, unknown>>;
  readonly reserved: Readonly<Record<string, unknown>>;
  readonly inputOnly: readonly string[];
  /** Limit rows of the project's own, before the profile's. */
  readonly ownLimits: unknown;
  readonly ambientHottest: number;
  /** What its outputs do until firmware runs while a control line holds them off; asked only once all chips are known. */
  readonly heldOff?: () => BootState | undefined;
  readonly remarks: Gathered;
}

export type Raw = Readonly<Record<string, unknown>>;

export const list = (raw: unknown): readonly unknown[] => (Array.isArray(raw) ? raw : []);
export const mapping = (raw: unknown): Raw => (isMapping(raw) ? raw : {});
