/**
 * What each rule rests on: the law, the standard or the document behind it, or that it is common practice. Figures with their
 * own citations are in the catalogue and in the working; what is said here is why anybody asks at all.
 */

const AVR = 'ATmega48A/PA/88A/PA/168A/PA/328/P data sheet, Atmel, 8271H, 29.1 and Table 29-1';
const COPPER = 'copper has no resistance at −234.5 °C on the straight line that holds near 20 °C (IEC 60028)';
const PRACTICE = 'Common practice, no source';
const HEAT = 'T = T_ambient + P · R_th, with the thermal resistance that the data sheet states as mounted';
const NODE = 'Kirchhoff’s current law';

/** One or two sentences a rule, by its name; a test holds it to the list of rules. */
export const GROUNDS: { readonly [rule: string]: string } = {
  'coil-on-pin': `A pin of such a controller is characterised to 20 mA, and 40 mA is where damage begins (${AVR}). ${PRACTICE}: a winding belongs behind a transistor.`,
  'coil-no-clamp':
    'v = −L · di/dt: an unclamped 12 V relay coil throws 1000 to 1500 V (“The application of relay coil suppression with DC relays”, TE Connectivity, 13C3311).',
  'clamp-reversed': `A diode whose anode is at the plus carries the supply’s current past the winding. ${PRACTICE}.`,
  'driver-inverted':
    'An NPN or N-channel stage conducts with its input high, a PNP or P-channel stage with it low: how bipolar and field-effect transistors work.',
  'clamp-tied-low':
    'The clamp diodes of an array lead to its common pin, which belongs on the supply of the windings (ULN2003A, Texas Instruments, SLRS027); on a lower one they conduct for good.',
  'clamp-on-bridge': `A bridge turns its load’s voltage round, and a diode conducts one way. ${PRACTICE}.`,
  'nothing-limits':
    'Shockley’s law: some 60 mV more make the current of a junction ten times as large, so that only a resistance sets it. That a series resistor below the pin’s own resistance counts as none is this tool’s own rule.',
  'leds-share-resistor': `Shockley’s law: side by side the one with the least forward voltage takes most of the current. ${PRACTICE}.`,
  'relay-pulsed': `${PRACTICE}: an armature follows slow pulses, and feels the mean from about 1 kHz on.`,
  'jumper-joins-supplies':
    'Kirchhoff’s voltage law: two sources on one net drive each other with the difference of their voltages over next to no resistance.',
  'supplies-joined':
    'Kirchhoff’s voltage law: two sources on one node drive each other with the difference of their voltages over next to no resistance.',
  'no-source': `${NODE}: what nothing feeds carries nothing.`,
  'ground-missing': `${NODE}: what goes out over a signal has to come back.`,
  'pin-used-twice': `${PRACTICE}: one output does one thing. Branches of one level on one output, and lines of a shared bus, are one thing.`,
  'pins-joined':
    'While firmware has switched one pin and not yet the other, both output resistances in a row are all that limits what flows between them (rows VOH and VOL of the data sheet).',
  'channel-used-twice':
    'Two outputs on one input drive each other through their output resistances alone (rows VOH and VOL of the data sheet).',
  'two-outputs':
    'Two outputs on one net drive each other through their output resistances alone (rows VOH and VOL of the data sheet).',
  'input-floats': `${PRACTICE}: a CMOS input takes a microampere at most, so that leakage and a hand nearby set an open one.`,
  'rail-lifted': `${NODE}: a regulator gives current and takes none back, so that what is pushed into its rail has to be drawn by what hangs on it.`,
  'pin-input-only': 'The pin table of the chip’s data sheet: such a pin has no output stage.',
  'pin-reserved': 'The schematic or the user’s guide of the board, which says what uses the pin already.',
  'pin-clamps': `Shockley’s law: the clamp of a pin begins to conduct some tenths of a volt above the supply. ${PRACTICE}: less than 0.1 mA is worth a note where the maker states nothing.`,
  'pin-drive':
    'Data sheets promise VOH and VOL at the current of each drive setting, and nothing beyond it (RP2040 Datasheet, Raspberry Pi Ltd, Table 625).',
  'isolation-defeated': `${PRACTICE}: a coupler isolates while nothing else joins its two sides.`,
  'source-fed-back':
    'Whether a source bears current that is pushed into it is for its maker to say; USB forbids it of a device (Universal Serial Bus Specification 2.0, 7.2.1).',
  'dead-fed':
    'A device supplies no current on VBUS at its upstream port at any time (Universal Serial Bus Specification 2.0, 7.2.1): ports and hubs that are fed back fail to start or to resume (“Back Voltage”, testusb.com, a test laboratory). Of other sources their makers have to say what they bear; that a dead one is taken at 0 V is this tool’s own rule.',
  'regulator-back-fed':
    'Fed at its output, a linear regulator conducts through its pass element or its body diode; makers ask for a diode from output to input where that may be (application notes on linear regulators, from memory).',
  'safe-state': `${PRACTICE}: what must not run without power hangs on the normally open contact, what must go on running on the normally closed one.`,
  'contact-arc': `${PRACTICE}: a diode takes over the current of an inductive load on direct voltage, an RC element or a varistor on alternating voltage, where a diode shorts every other half wave. RC elements have 0.5 to 1 µF an ampere and 0.5 to 1 Ω a volt (PCI-7256 User’s Manual, ADLINK Technology, appendix A, p. 37).`,
  'contact-sides': `${PRACTICE}: a changeover (form C) has one common terminal and breaks before it makes.`,
  'contact-slow':
    'A plain diode makes a relay drop out several times slower; a zener in series with it is asked for where loads arc (“The application of relay coil suppression with DC relays”, TE Connectivity, 13C3311).',
  'coil-one-way': `${PRACTICE}: of a polarised latching relay with one coil the sign of the pulse decides, which a bridge turns round.`,
  'coil-held-on': `${PRACTICE}: a latching relay is driven by pulses; its winding need not be made to be on for good.`,
  'contact-choice':
    'W = P · t over the hours a day that either contact has the coil on. Less than a tenth of a kilowatt-hour a year is not told, which is this tool’s own rule.',
  'boot-drives':
    'After a reset all pins are inputs, with the pulls and pulses that the data sheet or the user’s guide lists, until firmware sets them.',
  'boot-floats':
    'A pin that is an input leaks up to 1 µA (row I_IL of the data sheet), and that over the pull-up or pull-down resistor is all that holds a control.',
  'dead-drives':
    'The clamp of a pin leads to the chip’s supply, which is at 0 V or open when it is dead; both are tried and the worse counts.',
  'dead-pushed':
    'Inputs have a diode to their supply, through which they feed it when that is off (“Power through I/O”, Microchip Technology, 1.3); held at 0 V it takes all that pin and line let through.',
  'dead-lifted':
    'What stands at an input comes up at the supply pin, less one diode (“Back powering”, Texas Instruments, Analog Wire), until what hangs on the rail draws as much. A power-on reset works only after the supply has been below 0.6 V at the least (ATmega48P/88P/168P/328P, Atmel, 8025I, Table 26-3).',
  'strap-loaded':
    'The data sheet lists the pins that a chip samples at reset, and the levels V_IL and V_IH that it is sure to read.',
  'wire-idle': `${NODE}: no current flows where no loop is closed.`,
  'pin-injected': `The injected current that the chip’s maker publishes. ${PRACTICE} where there is none: up to 0.1 mA is a note, up to 1 mA a strain, more a breach.`,
  'chip-heat': `P = Σ I² · R over the outputs, and the supply voltage times what the chip draws itself, against the power or the junction temperature that its data sheet allows; ${HEAT}.`,
  'pin-current': `Absolute maximum and test conditions of the pin in the chip’s data sheet, as in ${AVR}.`,
  'level-high':
    'Rows V_IH and V_IL of the receiver’s data sheet. Where there are none 0.3, 0.5 and 0.7 of its supply are taken: common practice, no source.',
  'level-low':
    'Rows V_IH and V_IL of the receiver’s data sheet. Where there are none 0.3, 0.5 and 0.7 of its supply are taken: common practice, no source.',
  'level-over': 'The highest input voltage in the receiver’s absolute maximum ratings.',
  'bus-rise':
    'From 0.3 to 0.7 of its supply a line takes 0.8473 · R · C (UM10204, I²C-bus specification and user manual, NXP, 7.1).',
  'bus-current': 'R_min = (V_DD − V_OL) / I_OL (UM10204, I²C-bus specification and user manual, NXP, 7.1).',
  'group-current':
    'Sums over ports, which data sheets state in footnotes (ATmega48A/PA/88A/PA/168A/PA/328/P data sheet, Atmel, 8271H, notes 3 and 4 to Table 29-1).',
  'total-current': `${NODE}, and the current that supply and ground pins bear by the data sheet, as in ${AVR}.`,
  'phase-current':
    'P = I² · R in each winding, and the current per phase on the motor’s sheet, which is stated with both windings on; or its rated voltage over the resistance of a winding.',
  'chopper-starved':
    'Ohm’s law: I = V / (R_winding + R_bridge), with the winding as warm as it gets; a chopper only takes away from that.',
  'coil-holds': `V_hold(T) = V_hold20 · (234.5 + T) / 254.5: a coil holds by its current, and ${COPPER}. Without a figure the drop-out voltage is taken at its highest, 40 % of the rated one: common practice, no source.`,
  'coil-pull-in': `V_operate(T) = V_operate20 · (234.5 + T) / 254.5: a coil pulls in by its current, and ${COPPER}; “Temperature considerations for DC relays”, TE Connectivity; Application note 102, Leach. It is asked twice: cold, and switched on again after its own heat.`,
  'coil-voltage':
    'The highest continuous voltage on the relay’s sheet. Without one 110, 120 and 130 % of the rated voltage are taken: common practice, no source (operative range classes 1 and 2 of IEC 61810-1 end at 110 %, from memory).',
  'coil-heat': `T_coil = T_ambient + R_th · V² / R(T), with R(T) = R_20 · (234.5 + T) / 254.5: ${COPPER}.`,
  'coil-release':
    'A coil lets go by its current: drop-out voltage over its resistance, both at 20 °C. Without a figure 5, 20 and 40 % of the rated voltage are taken: common practice, no source.',
  'slow-clamp':
    'The reverse recovery time on the diode’s sheet, over the period of the pulses: for so long the supply is shorted through the switch.',
  'clamp-rating':
    'The clamp takes over the winding’s whole current, E = ½ · L · I² each time, and bears the supply while the winding is on: forward current, power and reverse voltage on its sheet.',
  'driver-drive':
    'I_B ≥ I_C / h_FE at the least gain, 0.5 %/K less of it when cold (from memory); a gate needs the voltage at which the sheet specifies R_DS(on), not its threshold; a coupler passes on CTR · I_F, half of it at the end of its life (common practice, no source).',
  'driver-release': `${PRACTICE}: off means a tenth of what the load takes, or less.`,
  'gate-voltage': 'V_GS among the absolute maximum ratings of the transistor.',
  'driver-current': 'The continuous and peak current among the ratings of the transistor, array or coupler.',
  'driver-voltage':
    'At switching off the driver sees the supply and the clamp on top of it: V = V_supply + V_clamp, against V_CEO or V_DSS on its sheet.',
  'driver-heat': `P = V_sat · I or I² · R_DS(on), switching losses added under PWM; ${HEAT}. A junction bears 150 °C where nobody says otherwise: common practice, no source.`,
  'input-levels':
    'The levels between which the maker of the board promises nothing; a typical input is taken to switch midway.',
  'input-left-open':
    'Never assumed: which level switches an input on, and whether an indicator stands in series with its coupler. Boards that look alike differ in both.',
  'load-dip':
    'ΔV = ΔI · R, and C · ΔV = I · t where a capacitor carries the peak; counted from the steady voltage just before.',
  'load-voltage':
    'The supply range on the load’s own sheet, held against what reaches its terminals: V = V_supply − I · R.',
  'scan-stops':
    'An LED’s forward current is rated for ever, its peak current for pulses of a length and a share of the time (a display’s sheet has 30 mA and 70 mA at a tenth of the time and 0.1 ms); a resistor turns P = I² · R to heat. Stopped, a turn has neither length nor share.',
  'display-flickers': `${PRACTICE}: from some 60 pictures a second on light is seen as steady, and below some 24 single pictures are seen.`,
  'leds-glow':
    'Shockley’s law: of two LEDs in series each gets half of what the lit one drops. Common practice, no source: 10 µA are seen in the dark.',
  'load-needs':
    'Ohm’s law over what is left after the drops on the way, against the current that the load is said to need.',
  'input-release':
    'The current or voltage below which the input’s sheet calls it off, against what a pin that is high leaves over it.',
  'load-current': `The rating on the load’s sheet. Where only a typical current is known it bears 1.5 times that, a radio twice: ${PRACTICE.toLowerCase()}.`,
  'resistor-power': `P = I² · R. A resistor of which nobody says more bears 0.25 W: ${PRACTICE.toLowerCase()}.`,
  'wire-current':
    'Amperes for chassis wiring by gauge (Handbook of Electronic Tables and Formulas for American Wire Gauge, as widely printed), or the rating of the plug; heat goes by the root mean square.',
  'series-current': 'The forward current on the part’s sheet.',
  'fuse-holds':
    'The hold current on the sheet’s thermal derating chart: a resettable fuse holds less the warmer it is (MF-R and MF-MSMF series, Bourns).',
  'regulator-heat': `P = (V_in − V_out) · I + V_in · I_quiescent for a linear regulator, P_out · (1 / η − 1) for a switching one; ${HEAT}.`,
  'regulator-current': 'The output current on the regulator’s sheet.',
  'regulator-starved':
    'A linear regulator needs V_out plus its dropout; a switching one draws I = P / (η · V), more the lower its input stands, until the source gives no more.',
  'regulator-input': 'The highest input voltage on the regulator’s sheet.',
  'regulator-dropout':
    'Regulation holds while V_in − V_dropout(I) is at or above the output’s lower bound; the dropout is the one that the sheet states at that current.',
  'contact-current': `The rating for the load’s kind on the relay’s sheet (utilisation categories of IEC 60947-4-1 and IEC 60947-5-1). Without one a share of the resistive rating: inductive 40 %, motor 20 %, lamp 10 %, capacitive 5 %: ${PRACTICE.toLowerCase()}.`,
  'contact-leak':
    'I = 2 · π · f · C · V through a capacitor across the contact, or the leakage on the sheet of a solid switch.',
  'contact-heat': `P = V_drop · I in the output; ${HEAT}.`,
  'contact-minimum': 'The least load on the relay’s sheet: less does not keep the contact clean.',
  'contact-suppression':
    'The working voltage, current and energy on the sheet of the part; the mains may stand a tenth above its nominal voltage (EN 50160). A load stores E = L · I² / 2.',
  'contact-drop':
    'V = V_supply − I · R over the wires and the closed contact, against the supply range on the load’s sheet.',
  'contact-life':
    'The operations on the relay’s sheet at that load, over how many a day there are. Less than a year is told, which is common practice with no source.',
  'rail-voltage':
    'The supply range and the brown-out level on the chip’s sheet, held against the rail in stalls and bursts, too.',
  'rail-current': 'What the maker of the board says that the rail may give, or what practice trusts it with.',
  'inlet-current': 'The rating of the connector; where its maker is unknown what practice trusts that kind with.',
  'divider-sags':
    'V = V_in · R_2 / (R_1 + R_2) without load; with one its source resistance is R_1 · R_2 / (R_1 + R_2) (Thévenin).',
  'supply-current': `${NODE} over everything that the supply feeds, peaks counted, against its rating; of a USB port 500 mA configured and 100 mA before (Universal Serial Bus Specification 2.0, 7.2.1).`,
  'battery-sags': 'V = V_open − I · R_internal, against the voltage at which the cell counts as empty.',
  'battery-life': 't = Q / I, with the mean current over the shares of the modes, and what the cell loses by itself.',
  'supply-power': 'P = V · I of the outputs together, against the power of the supply.',
  'supply-capacitance':
    'At most 10 µF may hang on the VBUS of a port (Universal Serial Bus Specification 2.0, 7.2.4.1); a limiter has to charge what hangs on it before it trips: t = C · V / I.',
  'measured-disagrees':
    'A reading lies between the bounds of every build that the file describes, or a figure of the file is wrong.',
  'waiver-expired': 'What is set aside has a last day, so that somebody looks at it again: this tool’s own rule.',
  'waiver-unused': 'What sets nothing aside hides what comes next: this tool’s own rule.',
};
