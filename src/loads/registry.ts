/** The types of load that are computed, in the order the documentation lists them. */
import { buzzer } from './buzzer.js';
import { coil } from './coil.js';
import { constantPower } from './constant-power.js';
import { constantCurrent, other } from './constant-current.js';
import { dcMotor, servo } from './dc-motor.js';
import { lamp } from './lamp.js';
import { led } from './led.js';
import type { LoadType } from './lowering.js';
import { display } from './display.js';
import { module } from './module.js';
import { pixels } from './pixels.js';
import { relayBoard } from './relay-board/relay-board.js';
import { resistor } from './resistor.js';
import { solidStateRelay } from './solid-state-relay.js';
import { stepper } from './stepper.js';

export const LOAD_TYPES: readonly LoadType[] = [
  led,
  resistor,
  lamp,
  coil,
  relayBoard,
  solidStateRelay,
  dcMotor,
  servo,
  stepper,
  module,
  display,
  pixels,
  buzzer,
  constantCurrent,
  other,
  constantPower,
];

export const loadType = (name: string): LoadType | undefined => LOAD_TYPES.find((t) => t.type === name);
