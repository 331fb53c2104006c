/** What has to be known around a controller, an expander or an array to bind its names. */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { Chip } from './chip.js';
import type { Places } from './places.js';
import type { Gathered } from './remarks.js';
import type { SupplyStates } from './supply-states.js';
import type { Tree } from './tree.js';
import type { Wires } from './wires.js';

export interface Around {
  readonly tree: Tree;
  readonly catalogue: Catalogue;
  readonly remarks: Gathered;
  /** Names of all controllers. */
  readonly controllers: readonly string[];
  readonly places: Places;
  /** There is one controller only. */
  readonly alone: boolean;
  readonly wires: Wires;
  readonly states: SupplyStates;
  /** The modes in which no firmware runs yet. */
  readonly starts: ReadonlySet<string>;
  /** The modes of the file share its time. */
  readonly shared: boolean;
  /** The controllers and expanders that sleep in some mode. */
  readonly sleepers: ReadonlySet<string>;
  /** All chips, as far as they are known yet. */
  readonly chips: ReadonlyMap<string, Chip>;
}
