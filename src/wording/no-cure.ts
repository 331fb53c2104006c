/** Why nothing that is offered here cures a finding, and what would. */
import type { Finding } from '../checks/finding.js';
import { asks } from './sentences.js';

/** A voltage that is too low is lost on the way; one that is too high comes from its source. */
const LOST = 'less has to be lost on the way to it: a stiffer supply, a shorter cable, a regulator that keeps less';

const WHY: { readonly [rule: string]: string } = {
  'boot-drives':
    'a pin that rests the other way until firmware runs, or a driver that the level of this one switches off',
  'boot-floats': 'a resistor has to hold its control on the side on which its load does no harm',
  'waiver-expired': 'see to what it set aside, or say until when it may stand',
  'dead-drives': 'feed its input from the same supply as the chip, or switch its supply off with that of the chip',
  'dead-fed':
    'feed both ends of the line from one supply, or part them with something that lets nothing through without supply',
  'dead-pushed':
    'feed both ends of the line from one supply, or part them with something that lets nothing through without supply',
  'dead-lifted':
    'feed both ends of the line from one supply, or part them with something that lets nothing through without supply',
  'measured-disagrees': 'the file and the bench differ, and only a look at the bench tells which of them is wrong',
  'no-source': 'the file has to say what feeds it',
  'level-high': 'a level shifter has to stand between them, or what sends has to stand on a higher supply',
  'level-low': 'a level shifter has to stand between them, or what sends has to pull harder',
  'level-over': 'a level shifter or a divider has to stand between them',
  'pin-injected': 'what stands above the pin’s supply wants a transistor between them, or a larger resistor',
  'input-levels':
    'its input wants other levels than the pin gives: a transistor before it, or a board with another input',
  'input-release': 'its input wants less than the pin leaves it: a transistor before it, or one with another input',
  'contact-current':
    'a relay whose contact is rated for such a load, or a contactor that this one switches; for a lamp or a power supply, something that limits its inrush',
  'safe-state':
    'a relay with the other contact, or a supply of its own for the load that lives when the other one dies',
  'contact-life':
    'fewer switchings (a wider span between on and off), or electronics in its place; where nobody says how long it lasts, its sheet',
  'contact-minimum':
    'a relay made for small loads (gold-plated contacts, a reed or a signal relay), or electronics in its place',
  'contact-suppression':
    'a part for the voltage of the load’s supply with a tenth in hand, and for what the load stores; behind a capacitor a larger resistor',
  'contact-drop': LOST,
  'contact-sides': 'a relay of its own for one of the two loads',
  'contact-leak': 'a load that takes more, a resistor beside it, or a contact of metal',
  'contact-heat': 'a larger heat sink, or a relay that keeps less for itself',
  'contact-arc': 'what takes an alternating load’s kick over is an RC element or a varistor',
  'coil-one-way': 'an H-bridge in place of its driver, or a latching relay with a coil to set it and one to reset it',
  'coil-release': 'the coil holds with so little that another board is wanted, or an input fed from the pin’s own rail',
  'coil-pull-in': 'a supply that stands higher where the coil hangs, a coil for less, or a driver that keeps less',
  'phase-current': 'a motor rated for more current, or less of it',
  'chopper-starved': 'a higher supply, a motor of lower resistance, or less current',
  'coil-holds': 'less resistance in the way while it holds, or a coil that is held by less',
  'chip-heat': 'less has to flow through its pins: a driver for the heaviest of them',
  'rail-voltage': 'a supply of the voltage that the rail is made for',
  'load-voltage': 'a supply of the voltage that it is made for',
  'scan-stops': 'a larger resistor at each segment, or a watchdog that resets the controller before anything is hot',
  'display-flickers': 'firmware has to scan faster',
  'leds-glow': 'LEDs of one kind between these pins, those of another colour on pins of their own',
  'load-dip': 'a capacitor at its terminals, or a supply of its own',
  'battery-sags': 'a battery that bears bursts, or a capacitor that carries them',
  'battery-life': 'a larger battery, or less of the time awake',
  'relay-pulsed': 'pulses belong on a transistor of their own, 1 kHz and faster where a coil is to be held with less',
  'slow-clamp': 'a Schottky or a fast diode in its place, or slower pulses',
  'coil-heat': 'the coil wants a cooler place, or one that bears more heat',
  'coil-voltage': 'the coil wants a cooler place, or one that bears more',
  'driver-heat': 'no driver of the catalogue stays cooler: more copper to cool it, or a part with a lower resistance',
  'driver-voltage': 'no driver of the catalogue bears more in its place',
  'driver-release': 'a resistor has to hold its input on the side on which it is off, or what drives it has to do so',
  'driver-drive': 'nothing of the catalogue is driven with less in its place',
  'regulator-heat': 'a regulator that sheds more heat is wanted, or a switching one',
  'regulator-input': 'a regulator that bears more at its input is wanted',
  'regulator-back-fed': 'feed an inlet in place of the rail behind the regulator, or part it with a diode',
  'pin-reserved': 'no other pin is free',
  'pin-input-only': 'no other pin is free',
  'pin-used-twice': 'no other pin is free',
};

const SAGGING = new Set(['rail-voltage', 'load-voltage', 'regulator-dropout', 'regulator-starved']);

/** What is said where nobody has said more. */
export const NO_CURE_KNOWN = 'no cure is known for it';

/** A clause without a full stop. */
export function whyNoCure(f: Finding): string {
  const question = f.verdict === 'unproven' ? asks(f) : undefined;
  if (question !== undefined) return `it is a question, and an answer settles it: ${question.replace(/[.?]$/, '')}`;
  if (f.account?.direction === 'at-least' && SAGGING.has(f.rule)) return LOST;
  return WHY[f.rule] ?? NO_CURE_KNOWN;
}
