/** All rules, in the order in which findings of one verdict are told. */
import bootDrives from './boot/boot-drives.js';
import bootFloats from './boot/boot-floats.js';
import deadDrives from './boot/dead-drives.js';
import deadLifted from './boot/dead-lifted.js';
import deadPushed from './boot/dead-pushed.js';
import strapLoaded from './boot/strap-loaded.js';
import clampRating from './coils/clamp-rating.js';
import clampReversed from './coils/clamp-reversed.js';
import coilHeat from './coils/coil-heat.js';
import coilHeldOn from './coils/coil-held-on.js';
import coilHolds from './coils/coil-holds.js';
import phaseCurrent from './coils/phase-current.js';
import chopperStarved from './drivers/chopper-starved.js';
import coilNoClamp from './coils/coil-no-clamp.js';
import coilOnPin from './coils/coil-on-pin.js';
import coilOneWay from './coils/coil-one-way.js';
import coilPullIn from './coils/coil-pull-in.js';
import coilRelease from './coils/coil-release.js';
import coilVoltage from './coils/coil-voltage.js';
import contactChoice from './choice/contact-choice.js';
import safeState from './choice/safe-state.js';
import contactArc from './contacts/contact-arc.js';
import contactCurrent from './contacts/contact-current.js';
import contactDrop from './contacts/contact-drop.js';
import contactHeat from './contacts/contact-heat.js';
import contactLeak from './contacts/contact-leak.js';
import contactLife from './contacts/contact-life.js';
import contactMinimum from './contacts/contact-minimum.js';
import contactSides from './contacts/contact-sides.js';
import contactSlow from './contacts/contact-slow.js';
import contactSuppression from './contacts/contact-suppression.js';
import channelUsedTwice from './drivers/channel-used-twice.js';
import clampOnBridge from './drivers/clamp-on-bridge.js';
import clampTiedLow from './drivers/clamp-tied-low.js';
import driverCurrent from './drivers/driver-current.js';
import driverDrive from './drivers/driver-drive.js';
import driverHeat from './drivers/driver-heat.js';
import driverInverted from './drivers/driver-inverted.js';
import driverRelease from './drivers/driver-release.js';
import driverVoltage from './drivers/driver-voltage.js';
import gateVoltage from './drivers/gate-voltage.js';
import type { Family, LimitRule, WiringRule } from './finding.js';
import chipHeat from './groups/chip-heat.js';
import groupCurrent from './groups/group-current.js';
import totalCurrent from './groups/total-current.js';
import inputRelease from './parts/input-release.js';
import ledsGlow from './parts/leds-glow.js';
import scanStops from './parts/scan-stops.js';
import displayFlickers from './parts/display-flickers.js';
import ledsShareResistor from './parts/leds-share-resistor.js';
import loadCurrent from './parts/load-current.js';
import loadDip from './supplies/load-dip.js';
import loadNeeds from './parts/load-needs.js';
import relayPulsed from './parts/relay-pulsed.js';
import resistorPower from './parts/resistor-power.js';
import slowClamp from './parts/slow-clamp.js';
import wireCurrent from './parts/wire-current.js';
import { WAIVER_RULES } from './waived.js';
import wireIdle from './parts/wire-idle.js';
import batteryLife from './budget/battery-life.js';
import batterySags from './supplies/battery-sags.js';
import busCurrent from './pins/bus-current.js';
import busRise from './pins/bus-rise.js';
import levelOver from './pins/level-over.js';
import inputFloats from './pins/input-floats.js';
import levelHigh from './pins/level-high.js';
import levelLow from './pins/level-low.js';
import nothingLimits from './pins/nothing-limits.js';
import pinClamps from './pins/pin-clamps.js';
import pinCurrent from './pins/pin-current.js';
import pinDrive from './pins/pin-drive.js';
import pinInjected from './pins/pin-injected.js';
import pinInputOnly from './pins/pin-input-only.js';
import pinReserved from './pins/pin-reserved.js';
import pinUsedTwice from './pins/pin-used-twice.js';
import railLifted from './pins/rail-lifted.js';
import twoOutputs from './pins/two-outputs.js';
import pinsJoined from './pins/pins-joined.js';
import groundMissing from './relay-boards/ground-missing.js';
import inputLeftOpen from './relay-boards/input-left-open.js';
import inputLevels from './relay-boards/input-levels.js';
import isolationDefeated from './relay-boards/isolation-defeated.js';
import jumperJoinsSupplies from './relay-boards/jumper-joins-supplies.js';
import measuredDisagrees from './data/measured-disagrees.js';
import deadFed from './supplies/dead-fed.js';
import dividerSags from './supplies/divider-sags.js';
import fuseHolds from './supplies/fuse-holds.js';
import inletCurrent from './supplies/inlet-current.js';
import loadVoltage from './supplies/load-voltage.js';
import noSource from './supplies/no-source.js';
import railCurrent from './supplies/rail-current.js';
import railVoltage from './supplies/rail-voltage.js';
import regulatorBackFed from './supplies/regulator-back-fed.js';
import regulatorCurrent from './supplies/regulator-current.js';
import regulatorHeat from './supplies/regulator-heat.js';
import regulatorDropout from './supplies/regulator-dropout.js';
import regulatorStarved from './supplies/regulator-starved.js';
import regulatorInput from './supplies/regulator-input.js';
import seriesCurrent from './supplies/series-current.js';
import suppliesJoined from './supplies/supplies-joined.js';
import supplyCapacitance from './supplies/supply-capacitance.js';
import sourceFedBack from './supplies/source-fed-back.js';
import supplyCurrent from './supplies/supply-current.js';
import supplyPower from './supplies/supply-power.js';

/** Rules about how something is wired. */
export const WIRING_RULES: readonly WiringRule[] = [
  coilOnPin,
  coilNoClamp,
  clampReversed,
  coilOneWay,
  driverInverted,
  clampTiedLow,
  clampOnBridge,
  nothingLimits,
  ledsShareResistor,
  relayPulsed,
  jumperJoinsSupplies,
  suppliesJoined,
  noSource,
  groundMissing,
  pinUsedTwice,
  pinsJoined,
  channelUsedTwice,
  twoOutputs,
  inputFloats,
  railLifted,
  pinInputOnly,
  pinReserved,
  pinClamps,
  pinDrive,
  isolationDefeated,
  sourceFedBack,
  deadFed,
  regulatorBackFed,
  safeState,
  contactArc,
  contactSlow,
  contactSides,
  coilHeldOn,
  contactChoice,
  bootDrives,
  bootFloats,
  strapLoaded,
  deadDrives,
  deadPushed,
  deadLifted,
  wireIdle,
];

/** Rules about limits; an account goes to the first that claims it. */
export const LIMIT_RULES: readonly LimitRule[] = [
  pinInjected,
  chipHeat,
  pinCurrent,
  levelHigh,
  levelLow,
  levelOver,
  busRise,
  busCurrent,
  groupCurrent,
  totalCurrent,
  phaseCurrent,
  chopperStarved,
  coilHolds,
  coilPullIn,
  coilVoltage,
  coilHeat,
  coilRelease,
  slowClamp,
  clampRating,
  driverDrive,
  driverRelease,
  gateVoltage,
  driverCurrent,
  driverVoltage,
  driverHeat,
  inputLevels,
  inputLeftOpen,
  loadDip,
  scanStops,
  displayFlickers,
  ledsGlow,
  loadVoltage,
  loadNeeds,
  inputRelease,
  loadCurrent,
  resistorPower,
  wireCurrent,
  seriesCurrent,
  fuseHolds,
  regulatorHeat,
  regulatorCurrent,
  regulatorStarved,
  regulatorInput,
  regulatorDropout,
  contactSuppression,
  contactDrop,
  contactCurrent,
  contactLeak,
  contactHeat,
  contactMinimum,
  contactLife,
  railVoltage,
  railCurrent,
  inletCurrent,
  dividerSags,
  supplyCurrent,
  batterySags,
  batteryLife,
  supplyPower,
  supplyCapacitance,
  measuredDisagrees,
];

/** Names of all rules, in the order of telling. */
export const RULE_NAMES: readonly string[] = [...[...WIRING_RULES, ...LIMIT_RULES].map((r) => r.name), ...WAIVER_RULES];

/** The family of each. */
export const FAMILY_OF: ReadonlyMap<string, Family> = new Map([
  ...[...WIRING_RULES, ...LIMIT_RULES].map(({ name, family }) => [name, family] as const),
  ...WAIVER_RULES.map((name) => [name, 'data'] as const),
]);
