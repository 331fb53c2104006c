/** Help on the rules about limits. */
import { CURRENT_RULE_HELP } from './current-rules.js';
import type { RuleHelp } from './rule-help.js';

export const LIMIT_RULE_HELP: { readonly [rule: string]: RuleHelp } = {
  'pin-injected': {
    title: 'Too much current is pushed into a pin',
    means: 'A signal beyond the supply rails pushes more current through the clamp of a pin than the chip bears.',
    todo: 'Limit the current with a larger series resistor, or shift or divide the level.',
  },
  'chip-heat': {
    title: 'A chip turns too much into heat',
    means: 'What the pins or channels of a package drop at their currents adds up to more heat than it may have.',
    todo: 'Spread the loads over more packages, or lower their currents.',
  },
  'pin-current': {
    title: 'A pin carries too much',
    means: 'The current of a pin at its worst case is held against the limits that its documents give.',
    todo: 'Make the load draw less, or drive it through a transistor, an array or a relay board.',
  },
  'level-high': {
    title: 'A high level is not sure to be read as high',
    means: 'Under load and at the worst case a high output stands too low for the input that reads it.',
    todo: 'Shift the level, lighten the load on the line, or take a receiver with other thresholds.',
  },
  'level-low': {
    title: 'A low level is not sure to be read as low',
    means: 'Under load and at the worst case a low output stands too high for the input that reads it.',
    todo: 'Lighten the pull-ups or the load on the line, or shift the level.',
  },
  'level-over': {
    title: 'An input gets a voltage beyond its range',
    means: 'A line stands above what the input on it may see.',
    todo: 'Divide or shift the level, or feed both ends from the same rail.',
  },
  'bus-rise': {
    title: 'A bus rises too slowly',
    means: 'The pull-ups charge the capacitance of the bus more slowly than its speed allows.',
    todo: 'Use smaller pull-ups, shorten the bus, or make it slower.',
  },
  'bus-current': {
    title: 'A bus asks too much of what pulls it low',
    means: 'The pull-ups of all modules together give more current than a device on the bus is sure to sink.',
    todo: 'Take pull-ups away or use larger ones.',
  },
  'group-current': {
    title: 'A group of pins carries too much',
    means: 'Pins that share a supply or ground inside the chip add up to more than the group may carry.',
    todo: 'Move loads to pins of other groups, or drive them through transistors or an array.',
  },
  'total-current': {
    title: 'A chip carries too much in all',
    means: 'The currents of all pins and of the chip itself add up to more than its supply and ground pins may carry.',
    todo: 'Drive loads through transistors or an array that are fed past the chip, or let fewer be on together.',
  },
  'phase-current': {
    title: 'A winding of a stepper carries too much',
    means:
      'The current that flows in each winding while as many are on is beyond what the motor is rated for: it overheats at rest.',
    todo: 'Set the chopper lower, or use a motor for more current.',
  },
  'chopper-starved': {
    title: 'A chopper cannot hold its current',
    means:
      'With its bridge on all the time a warm winding takes less from the lowest supply than the chopper is set to: it has nothing left to chop, and the motor has less torque.',
    todo: 'Feed the motor from a higher supply, set the chopper lower, or use a motor of lower resistance.',
  },
  'coil-holds': {
    title: 'A coil is not sure to stay pulled in',
    means: 'With its lowest volts or its economised current a coil keeps less than it needs to hold.',
    todo: 'Hold it with more current, or feed it from a steadier supply.',
  },
  'coil-pull-in': {
    title: 'A coil is not sure to pull in',
    means: 'The hottest coil at the lowest volts gets less than it needs to pull in.',
    todo: 'Feed the coil from a higher or nearer supply, use a driver that drops less, or a coil for fewer volts.',
  },
  'coil-voltage': {
    title: 'A coil gets too many volts',
    means: 'At the highest supply the coil gets more than its maximum, and overheats.',
    todo: 'Use a coil for more volts, or a resistor in series.',
  },
  'coil-heat': {
    title: 'A winding gets too hot',
    means: 'The ambient and the coil’s own heat take the winding beyond what its insulation bears.',
    todo: 'Lower the voltage once it has pulled in, switch it on for less time, or let air to it.',
  },
  'coil-release': {
    title: 'A coil is not sure to let go',
    means: 'Switched off, the coldest coil still gets more than that at which it is sure to drop out.',
    todo: 'Use a driver that leaks less or swings to the rail, or a resistor that takes the leakage.',
  },
  'slow-clamp': {
    title: 'A clamp is too slow for the pulses',
    means:
      'The diode across a pulsed winding still conducts when the switch turns on again, so that both carry a short surge.',
    todo: 'Use a fast or Schottky diode.',
  },
  'clamp-rating': {
    title: 'A clamp is beyond its rating',
    means: 'The clamp takes over more current, voltage or energy than it is made for.',
    todo: 'Use a clamp with a higher rating.',
  },
  'driver-drive': {
    title: 'A driver does not get enough drive',
    means:
      'The base current, gate voltage or input current that reaches a driver does not make it sure to conduct fully.',
    todo: 'Use a smaller base resistor, a switch for lower gate voltages, or a stage between.',
  },
  'driver-release': {
    title: 'A driver is not sure to switch off',
    means: 'At its off level the driver’s input still gets enough to conduct.',
    todo: 'Pull the input to the off level harder, or drive it from the driver’s own supply.',
  },
  'gate-voltage': {
    title: 'A gate gets too many volts',
    means: 'The voltage between gate and source is beyond what the gate’s insulation bears.',
    todo: 'Divide the gate drive or clamp it.',
  },
  'driver-current': {
    title: 'A driver carries too much',
    means: 'The load’s current at its worst case is beyond what the transistor, array or coupler may carry.',
    todo: 'Use a stronger driver, or a load that draws less.',
  },
  'driver-voltage': {
    title: 'A driver has to bear too many volts',
    means: 'Switched off, with the clamp’s voltage on top of the supply, the driver sees more than it bears.',
    todo: 'Use a driver for more volts, or a clamp that holds lower.',
  },
  'driver-heat': {
    title: 'A driver gets too hot',
    means: 'What the driver drops at its current heats its junction beyond what it may reach.',
    todo: 'Use a driver that drops less, cool it better, or spread the load.',
  },
  'input-levels': {
    title: 'A module’s input is not sure to switch',
    means: 'The voltage at the input of a module is between the levels at which it is surely on and surely off.',
    todo: 'Feed the input side from the controller’s own rail, or shift the level.',
  },
  'input-left-open': {
    title: 'The file leaves open how an input works',
    means:
      'Nothing says which level switches an input on or what stands in series with it, and the answers differ in what follows.',
    todo: 'Look at the board or its circuit diagram, and state it in the file.',
  },
  ...CURRENT_RULE_HELP,
};
