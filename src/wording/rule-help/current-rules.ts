/** Help on the rules about limits of loads, contacts, wires and supplies. */
import type { RuleHelp } from './rule-help.js';

export const CURRENT_RULE_HELP: { readonly [rule: string]: RuleHelp } = {
  'load-dip': {
    title: 'A load’s supply dips too far',
    means: 'In current peaks the supply of a load sags by more than it bears.',
    todo: 'Put a capacitor at the load, shorten or thicken its wires, or give it a supply of its own.',
  },
  'load-voltage': {
    title: 'A load works outside its voltage',
    means: 'At the worst case the load gets less than it works from, or more than it is made for.',
    todo: 'Feed it from a supply that suits it, or lose less on the way.',
  },
  'leds-glow': {
    title: 'LEDs glow that are not lit',
    means:
      'Between the pins of a charlieplexed display two LEDs in series lie beside each one, and drop no more than that: they glow with it.',
    todo: 'Use LEDs of one kind, or give those of another colour pins of their own.',
  },
  'scan-stops': {
    title: 'A display bears its scan, but not that it stops',
    means:
      'LEDs that are lit in turns may carry more than they bear for ever, as long as their turns are short; when firmware hangs, the one that is lit stays lit.',
    todo: 'Use larger resistors, so that what is lit bears it, or have a watchdog reset the controller and let the pins go.',
  },
  'display-flickers': {
    title: 'A display is seen to flicker',
    means: 'Its digits take turns, and come round more seldom than an eye takes for steady light.',
    todo: 'Scan faster, by a timer in place of the main loop.',
  },
  'load-needs': {
    title: 'A load does not get what it needs',
    means: 'The current or voltage that reaches a load is less than it needs to do its job.',
    todo: 'Use a smaller series resistor, a higher supply, or a driver that drops less.',
  },
  'input-release': {
    title: 'An input is not sure to switch off',
    means: 'Switched off, the input still carries more current than that at which it is sure to be off.',
    todo: 'Drive the input from its own rail’s voltage, or add a resistor that takes the rest.',
  },
  'load-current': {
    title: 'A load carries too much',
    means: 'The current through a load at its worst case is beyond what it may carry.',
    todo: 'Use a larger series resistor, a lower supply, or a load made for more.',
  },
  'resistor-power': {
    title: 'A resistor gets too hot',
    means: 'A resistor turns more power into heat than it is rated for.',
    todo: 'Use one with a higher rating, or share the power among several.',
  },
  'wire-current': {
    title: 'A wire carries too much',
    means: 'A wire or connector carries more than its thickness or rating allows at this ambient.',
    todo: 'Use a thicker wire or another connector, or feed the load over a way of its own.',
  },
  'series-current': {
    title: 'A part in the supply’s way carries too much',
    means: 'A diode, switch or other part in series with a supply carries more than it is made for.',
    todo: 'Use a stronger part, or feed part of the load past it.',
  },
  'fuse-holds': {
    title: 'A fuse may open',
    means: 'The current is more than a fuse is sure to hold at this ambient.',
    todo: 'Draw less through it, feed the loads from elsewhere, or fit a larger fuse if what is behind it allows.',
  },
  'regulator-heat': {
    title: 'A regulator gets too hot',
    means: 'What the regulator drops times its current heats its junction beyond what it may reach.',
    todo: 'Feed it with fewer volts, draw less, cool it, or use a switching one.',
  },
  'regulator-current': {
    title: 'A regulator gives too much',
    means: 'The loads on its rail together ask for more than the regulator may give.',
    todo: 'Feed some of them from another supply, or use a stronger regulator.',
  },
  'regulator-starved': {
    title: 'A regulator’s input is too low',
    means: 'Under load the input of a regulator falls below what it needs to hold its output.',
    todo: 'Feed it from a higher or stronger source, with less resistance on the way.',
  },
  'regulator-input': {
    title: 'A regulator’s input is too high',
    means: 'The source can stand above what the input of a regulator bears.',
    todo: 'Use a lower source or a regulator for more volts.',
  },
  'regulator-dropout': {
    title: 'A regulator has too little to work with',
    means: 'Its input is not far enough above its output, so that the output falls.',
    todo: 'Feed it with more volts, or use a regulator with a lower drop-out.',
  },
  'contact-current': {
    title: 'A contact switches too much',
    means: 'The load on a contact is beyond its rating for that kind of load, its inrush included.',
    todo: 'Use a relay with a higher rating for this kind of load, or limit the inrush.',
  },
  'contact-leak': {
    title: 'An open contact lets too much through',
    means: 'What leaks through an open switch or the damping across it is enough to keep the load from going off.',
    todo: 'Take a smaller damping capacitor, a mechanical contact, or a resistor across the load.',
  },
  'contact-heat': {
    title: 'A switch gets too hot',
    means: 'A solid switch drops enough at its current to get hotter than it may.',
    todo: 'Fit a heat sink, or use one for more current.',
  },
  'contact-minimum': {
    title: 'A contact switches too little',
    means: 'Contacts need some current and voltage to stay clean, and this load gives less.',
    todo: 'Use a relay with contacts for small signals, or load the contact more.',
  },
  'contact-suppression': {
    title: 'What spares a contact does not bear it',
    means:
      'What lies across a load or its contact to take the current over is held against the voltage, the current and the energy that it meets.',
    todo: 'Take one that is made for the voltage with a tenth in hand, and for the energy of the load.',
  },
  'contact-drop': {
    title: 'A contact leaves its load too little',
    means: 'Behind its wires and its closed contact a load gets a voltage outside the window in which it works.',
    todo: 'Use a stiffer supply, thicker wires or a contact of lower resistance.',
  },
  'contact-life': {
    title: 'A contact wears out too soon',
    means: 'At the stated number of switchings a day the contacts last less long than is wanted.',
    todo: 'Switch less often, damp the load, or use a relay with a longer life or a solid switch.',
  },
  'rail-voltage': {
    title: 'A rail leaves its window',
    means: 'The voltage of a rail falls below or rises above what the things on it work at.',
    todo: 'Lose less on the way, draw less, add a capacitor for peaks, or use another supply.',
  },
  'rail-current': {
    title: 'A rail carries too much',
    means: 'The loads on a rail together draw more than the board may pass on.',
    todo: 'Feed some of them straight from a supply.',
  },
  'inlet-current': {
    title: 'An inlet carries too much',
    means: 'The connector through which a board is fed carries more than it may.',
    todo: 'Feed loads past the board, or use another inlet.',
  },
  'divider-sags': {
    title: 'A divider is used as a supply',
    means: 'The voltage of a divider falls with every current drawn from it.',
    todo: 'Use a regulator for what draws current, and a divider for signals alone.',
  },
  'supply-current': {
    title: 'A supply is asked for too much',
    means: 'All that a supply feeds together draws more than it can give, or nothing says what it can give.',
    todo: 'Use a stronger supply, spread the loads, or state what the supply gives.',
  },
  'battery-sags': {
    title: 'A battery falls too low under load',
    means: 'The internal resistance takes the battery’s voltage below that at which it counts as empty.',
    todo: 'Use a battery with less resistance, more cells side by side, or draw less at once.',
  },
  'battery-life': {
    title: 'A battery does not last as long as wanted',
    means: 'The mean current over the modes’ shares empties the battery sooner than the file wants.',
    todo: 'Draw less, sleep more, or use a larger battery.',
  },
  'supply-power': {
    title: 'A supply is asked for too much power',
    means: 'The outputs of a supply together are asked for more power than it gives in all.',
    todo: 'Use a stronger supply, or spread the loads.',
  },
  'supply-capacitance': {
    title: 'A supply has too much to charge',
    means: 'The capacitors that a source has to charge when it comes on are more than it is made for.',
    todo: 'Use smaller capacitors, or switch large ones on slowly.',
  },
  'measured-disagrees': {
    title: 'A meter shows something else',
    means: 'A reading in the file lies outside what the figures of the file allow.',
    todo: 'Check the reading, then the wiring and the figures that the finding names.',
  },
};
