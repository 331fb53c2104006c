/** Every case of every rule. */
import { BOOT } from './boot.js';
import { DEAD } from './dead.js';
import type { Case } from './case.js';
import { COILS } from './coils.js';
import { CONTACTS } from './contacts.js';
import { DATA } from './data.js';
import { DRIVERS } from './drivers.js';
import { GROUPS } from './groups.js';
import { LINES } from './lines.js';
import { PARTS } from './parts.js';
import { PINS } from './pins.js';
import { RELAY_BOARDS } from './relay-boards.js';
import { SUPPLIES } from './supplies.js';

export const CASES: readonly Case[] = [
  ...BOOT,
  ...DEAD,
  ...PINS,
  ...LINES,
  ...GROUPS,
  ...COILS,
  ...CONTACTS,
  ...DATA,
  ...DRIVERS,
  ...PARTS,
  ...RELAY_BOARDS,
  ...SUPPLIES,
];
