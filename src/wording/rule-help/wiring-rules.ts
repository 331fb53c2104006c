/** Help on the rules about how something is wired. */
import type { RuleHelp } from './rule-help.js';

export const WIRING_RULE_HELP: { readonly [rule: string]: RuleHelp } = {
  'coil-on-pin': {
    title: 'A coil hangs straight on a pin',
    means:
      'A relay, solenoid or motor winding is fed by a controller pin, which is made for a few milliamperes and bears no kick.',
    todo: 'Put a transistor or driver between the pin and the winding, a clamp across the winding, and feed it from a supply.',
  },
  'coil-no-clamp': {
    title: 'Nothing clamps a winding',
    means:
      'When the switch of a winding opens, its current has no way on, and the voltage rises until something breaks down.',
    todo: 'Fit a diode or another clamp across the winding, close to it.',
  },
  'clamp-reversed': {
    title: 'A clamp is fitted the wrong way round',
    means:
      'The diode across a winding either shorts the supply while the winding is on or clamps nothing when it goes off.',
    todo: 'Turn the diode: its cathode belongs on the positive end of the winding.',
  },
  'driver-inverted': {
    title: 'A driver switches at the other level than the file says',
    means: 'The level that the file gives for on is the one at which the wired driver is off.',
    todo: 'Correct the active level in the file and in the firmware, or change the driver.',
  },
  'clamp-tied-low': {
    title: 'The clamps of an array lead to too low a voltage',
    means:
      'The common end of the clamp diodes stands below the supply of a winding, so that current flows on through them.',
    todo: 'Join the common end of the clamps to the supply that feeds the windings.',
  },
  'clamp-on-bridge': {
    title: 'A clamp lies across a load that a bridge drives both ways',
    means: 'A diode across such a load conducts whenever the bridge drives it the other way, and shorts the bridge.',
    todo: 'Take the clamp away: a bridge needs diodes to its two rails, which most have inside.',
  },
  'nothing-limits': {
    title: 'Nothing limits a current',
    means: 'Between a source and an LED or an input there is no resistor or current source that sets the current.',
    todo: 'Fit a series resistor for the current that is wanted.',
  },
  'leds-share-resistor': {
    title: 'LEDs side by side share one resistor',
    means:
      'LEDs differ in forward voltage, so that the one with the lowest takes most of the current of the shared resistor.',
    todo: 'Give each LED a resistor of its own.',
  },
  'relay-pulsed': {
    title: 'A relay is switched by pulses',
    means: 'A pulse train makes the armature of a relay chatter, which wears out its contacts.',
    todo: 'Switch the relay on and off steadily, or use a solid switch where power has to be dosed.',
  },
  'jumper-joins-supplies': {
    title: 'A jumper joins two supplies',
    means: 'The supply jumper or the one terminal of a relay board connects two sources, which then drive each other.',
    todo: 'Remove the jumper when the coils have a supply of their own, or feed both sides from one supply.',
  },
  'supplies-joined': {
    title: 'Two supplies are joined',
    means:
      'Two sources stand on one node with nothing between them, so that the higher one pushes current into the other.',
    todo: 'Feed the node from one of them, or put a diode or a power switch between.',
  },
  'no-source': {
    title: 'Something has no source',
    means: 'A rail or a load hangs on a node that nothing feeds.',
    todo: 'Name the supply that feeds it, or connect one.',
  },
  'ground-missing': {
    title: 'Signals have no way back',
    means: 'The grounds of a controller and of what it drives are separate, and no coupler carries the signal across.',
    todo: 'Join the two grounds, or use inputs with couplers.',
  },
  'pin-used-twice': {
    title: 'A pin is used twice',
    means: 'Two things of the file claim the same pin.',
    todo: 'Move one of them to a free pin, or say that they are meant to share it.',
  },
  'pins-joined': {
    title: 'Pins are joined to carry more',
    means: 'Joined outputs drive each other whenever firmware does not switch them in the same instant.',
    todo: 'Use one pin with a transistor or driver that carries the whole current.',
  },
  'channel-used-twice': {
    title: 'An array channel has two inputs',
    means: 'Two pins drive the same channel of a driver array, and drive each other where their levels differ.',
    todo: 'Give each load a channel of its own, or drive the channel from one pin.',
  },
  'two-outputs': {
    title: 'Two outputs drive one pin',
    means: 'Two outputs stand on one line and fight as soon as they disagree.',
    todo: 'Let one of them drive, make one an input, or put a resistor between them.',
  },
  'input-floats': {
    title: 'An input is held by nothing',
    means: 'While what drives it is open, an input stands wherever leakage and noise put it.',
    todo: 'Fit a pull-up or pull-down resistor, or switch on the one in the chip.',
  },
  'rail-lifted': {
    title: 'A rail is lifted by current from pins',
    means:
      'More current is pushed into a rail through the clamps of pins than the rail draws at the least, so that it rises.',
    todo: 'Limit what is pushed into the pins, or shift the level of the signal.',
  },
  'pin-input-only': {
    title: 'A pin that can only read is to drive',
    means: 'The pin has no output stage and can never switch the load that hangs on it.',
    todo: 'Move the load to a pin that can drive.',
  },
  'pin-reserved': {
    title: 'A pin is taken already',
    means: 'The controller uses this pin itself, for its memory, its clock, its console or a part on the board.',
    todo: 'Move the load to a free pin, or make sure that both uses can live together.',
  },
  'pin-clamps': {
    title: 'A pin is held by its clamp',
    means: 'What drives an input stands above the chip’s supply, and current flows through the clamp of the pin.',
    todo: 'Divide or shift the level, or limit the current with a series resistor where the chip allows it.',
  },
  'pin-drive': {
    title: 'A pin carries more than its drive setting promises',
    means: 'The levels of a pin are promised only up to the current of its drive setting.',
    todo: 'Choose a stronger setting, or make the load draw less.',
  },
  'isolation-defeated': {
    title: 'Isolation is wanted and not there',
    means: 'A shared supply or ground connects the two sides of couplers that were to keep them apart.',
    todo: 'Feed the two sides from separate supplies with separate grounds, and remove the jumper between them.',
  },
  'source-fed-back': {
    title: 'Current is pushed back into a source',
    means: 'A higher source pushes current into one that does not bear that.',
    todo: 'Put a diode or a power switch in the way, or feed from one source only.',
  },
  'dead-fed': {
    title: 'A source is fed while it is dead',
    means:
      'While a port or another source gives nothing, what still lives pushes current back into it through clamps of pins, pull-ups or loads.',
    todo: 'Put a diode between the source and what it feeds, feed both ends of the lines from one supply, or switch them off together.',
  },
  'regulator-back-fed': {
    title: 'A regulator is fed from behind',
    means: 'Its output rail is powered directly while its input is lower or open.',
    todo: 'Feed the board through the input of the regulator, or put a diode from output to input where the part asks for it.',
  },
  'safe-state': {
    title: 'Loss of power does not lead to the safe state',
    means: 'When the coil has no power, the load does the opposite of what the file calls safe.',
    todo: 'Wire the load to the other contact, and turn the active level round in the firmware.',
  },
  'contact-arc': {
    title: 'A contact has to break a current that may keep an arc',
    means:
      'At the voltage and the kind of load the arc between opening contacts may not go out by itself or wears them quickly.',
    todo: 'Damp the load, take a contact made for it, or break the current in two places.',
  },
  'contact-sides': {
    title: 'Two loads share a changeover',
    means: 'Both sides of a changeover hang on one common terminal, and it breaks the one before it makes the other.',
    todo: 'Give loads on different voltages a relay each, and put something across an inductive load.',
  },
  'contact-slow': {
    title: 'A clamp makes a contact open slowly',
    means:
      'A plain diode keeps the current of a coil going for so long that the armature leaves slowly and the contact wears under a load that arcs.',
    todo: 'Put a zener in series with the diode, if the driver bears that much more.',
  },
  'coil-one-way': {
    title: 'A latching relay can be set and never reset',
    means:
      'Its one coil wants its current turned round to reset it, and what switches it lets current flow one way only.',
    todo: 'Drive it with an H-bridge, or use a latching relay with two coils and a driver for each.',
  },
  'coil-held-on': {
    title: 'A coil is held on for long',
    means: 'The coil of a relay that is on all day or nearly so takes power and heats its board for no need.',
    todo: 'Use the other contact, a latching relay, or less current once it has pulled in.',
  },
  'contact-choice': {
    title: 'The other contact would do better',
    means: 'With the load on the other contact the coil is on for less of the day, or the safe state needs no power.',
    todo: 'Wire the load to the other contact, and turn the active level round in the firmware.',
  },
  'boot-drives': {
    title: 'A load is switched before firmware runs',
    means: 'Until firmware sets the pin, its level or its pulses at start switch the load.',
    todo: 'Move the load to a pin that is quiet at start, or hold its driver off with a resistor.',
  },
  'boot-floats': {
    title: 'A driver is held by nothing until firmware runs',
    means: 'Pins are inputs after a reset, and a driver with nothing else on its input may switch as it likes.',
    todo: 'Fit a resistor that holds the driver off.',
  },
  'dead-drives': {
    title: 'A load lives while the chip that switches it is dead',
    means:
      'A pin of a chip without supply is a clamp to 0 V, and what hangs on it from a live supply may find its way through and switch the load on.',
    todo: 'Feed the input from the supply of the chip, or switch its supply off with that of the chip.',
  },
  'dead-pushed': {
    title: 'A live pin feeds what is dead',
    means:
      'While the supply of a chip or module is dead, a pin that is driven high feeds it through the clamp of its input, with nothing but the pin and the line in the way.',
    todo: 'Put a resistor into the line, feed both ends from one supply, or keep the pin low while the other end is dead.',
  },
  'dead-lifted': {
    title: 'A dead rail is kept half alive through pins',
    means:
      'What comes in through clamps, pull-ups or loads lifts the rail of a supply that is off, so that what hangs on it is neither off nor at work, and may not start anew when the supply comes back.',
    todo: 'Put larger resistors into the lines, feed both ends from one supply, or switch them off together.',
  },
  'strap-loaded': {
    title: 'A load decides how the controller starts',
    means: 'The controller reads this pin at reset, and what hangs on it may pull it to the wrong level.',
    todo: 'Move the load to another pin, or make sure that it leaves the level alone at reset.',
  },
  'wire-idle': {
    title: 'A wire carries nothing',
    means: 'A wire of the file connects things of which neither feeds the other, so that it takes no current.',
    todo: 'Correct its ends, or take it out of the file.',
  },
};
