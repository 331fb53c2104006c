/** The types of load that are computed, in the order the documentation lists them. */
import { coil } from './coil.js';
import { constantCurrent } from './constant-current.js';
import { dcMotor } from './dc-motor.js';
import { led } from './led.js';
import type { LoadType } from './lowering.js';
import { module } from './module.js';
import { relayBoard } from './relay-board/relay-board.js';
import { resistor } from './resistor.js';

export const LOAD_TYPES: readonly LoadType[] = [led, resistor, coil, relayBoard, module, constantCurrent, dcMotor];

export const loadType = (name: string): LoadType | undefined => LOAD_TYPES.find((t) => t.type === name);
