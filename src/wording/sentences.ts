/** Every sentence a finding says, keyed by the name of its rule. */
import type { Finding } from '../checks/finding.js';
import { formatValue } from '../quantity/print.js';
import { CHOICE_SENTENCES } from './choice-sentences.js';
import { clampRating, coilHolds, coilPullIn, coilRelease } from './coil-sentences.js';
import { CONTACT_SENTENCES } from './contact-sentences.js';
import { bootDrives, bootFloats, strapLoaded } from './boot-sentences.js';
import { deadDrives, deadFed, deadLifted, deadPushed } from './dead-sentences.js';
import { chopperStarved, driverDrive, driverRelease, inputLevels, partOf, stageOf } from './driver-sentences.js';
import { LINE_SENTENCES } from './line-sentences.js';
import { inputLeftOpen } from './left-open.js';
import { batteryLife, batterySags, fuseHolds, loadDip, railVoltage, regulatorDropout } from './rail-sentences.js';
import { atMost, figure, limitFigure, met, percent, sentence, subjectOf, trimmed, typically, when } from './phrases.js';
import type { Say } from './phrases.js';

/** Names of the two ways a pin's current goes. */
const pinVerb = (f: Finding): string => (f.account?.direction === 'sink' ? 'sinks' : 'sources');

/** How many circuits bring a sum about, the chip's own current not among them. */
const sumOf = (f: Finding): string => {
  const own = `${f.account?.id.split('.')[0]}.`;
  const entries = (f.account?.entries ?? []).filter((e) => e.max > 0 && !e.circuit.startsWith(own));
  return entries.length > 1 ? ` from ${entries.length} circuits` : '';
};

/** A sentence about a function that wants at least so much. @param fails what is the matter when it does not get it */
function atLeast(f: Finding, subject: string, fails: string): string {
  const m = met(f);
  if (m === undefined) return sentence(`nothing says what ${subject} needs.`);
  const { account, by } = m;
  const [gets, needs] = [figure(account, by.draw), limitFigure(account, by.value)];
  if (f.verdict === 'thin')
    return sentence(`${when(f)}${subject} gets ${gets} and needs ${needs}: ${percent(by.left)} more than needed.`);
  return sentence(`${when(f)}${subject} gets ${gets} and needs ${needs}: ${fails}.${typically(f, account, by)}`);
}

const measuredDisagrees: Say = (f) => {
  const { of, reading, mode, bounds, contradicts, explains } = f.names;
  const told = `The meter shows ${reading} at ${of}${mode === undefined ? '' : ` in mode ${mode}`}`;
  if (bounds === undefined) return `${told}, where nothing can be reckoned.`;
  return `${told}, and the figures of the file allow ${bounds}.${
    contradicts ? ` By the figures alone, ${contradicts}.` : ''
  } ${explains ? `It would be explained if ${explains}.` : f.names['untold'] ? 'What would explain it is told once the other readings agree.' : 'No single fault of wiring that was tried explains it.'}`;
};

/** What a load leaves open besides what it may bear, by the figure that would tell. */
const MISSING: { readonly [figure: string]: (about: string) => string } = {
  draws: (about) => `Nothing says what ${about} draws itself.`,
  stall: (about) => `Nothing says what the motor ${about} draws when it starts or is blocked.`,
  inrush: (about) => `Nothing says what the load on ${about} draws when it is switched on.`,
  'transfer-ratio': (about) => `Nothing says how much of its LED’s current the coupler of ${about} passes on.`,
  'input.current': (about) => `Nothing says what the input of ${about} draws.`,
};

/** The sentence of each rule. */
export const SENTENCES: { readonly [rule: string]: Say } = {
  ...LINE_SENTENCES,
  ...CONTACT_SENTENCES,
  ...CHOICE_SENTENCES,
  'coil-on-pin': (f) => {
    const carries = f.account?.draw ? `, which ${pinVerb(f)} up to ${figure(f.account, f.account.draw.max)}` : '';
    const by = met(f)?.by;
    const line =
      by && by.left < 0
        ? ` where ${trimmed(formatValue(by.value, 'current'))} is ${by.limit.grade === 'absolute' ? 'a damage limit' : 'its limit'}`
        : '';
    const rest = f.names['clamp'] === 'none' ? ', with nothing to clamp it' : '';
    return `The ${f.names['winding']} of ${f.about} hangs straight on pin ${f.names['pin']}${carries}${line}${rest}.`;
  },
  'coil-no-clamp': (f) =>
    `Nothing clamps the ${f.names['winding']} of ${f.about}: when ${f.names['switch']} switches it off, ${
      f.account?.draw ? `its ${figure(f.account, f.account.draw.max)} find no other way and ` : ''
    }its voltage rises until something breaks down.`,
  'clamp-reversed': (f) => {
    const coil = f.account?.draw ? `, not the ${figure(f.account, f.account.draw.max)} of the winding` : '';
    return `The clamp of ${f.about} is fitted the wrong way round: ${
      f.names['acts'] === 'clamps-nothing'
        ? 'its diode blocks what the coil throws, so that nothing is clamped'
        : `it shorts the supply as soon as the driver switches on, which then carries all that it can${coil}`
    }.`;
  },
  'clamp-tied-low': (f) =>
    f.verdict === 'breach'
      ? `The clamps of ${f.names['array']} lead to ${f.names['common']}, which stands below ${f.names['supply']}: when the channel of ${f.about} lets go, its current flows on into ${f.names['common']}.`
      : `The clamps of ${f.names['array']} lead to ${f.names['common']}, which may stand below ${f.names['supply']}: then current flows on through ${f.about} when its channel lets go.`,
  'clamp-on-bridge': (f) =>
    `The clamp of ${f.about} lies across a load that a bridge drives either way: one way round it shorts the bridge.`,
  'nothing-limits': (f) => {
    const carries = f.account?.draw ? `: up to ${figure(f.account, f.account.draw.max)}` : '';
    const what = f.names['kind'] === 'led' ? `the LED ${f.about}` : `what drives ${f.about}`;
    return sentence(
      f.names['pin'] === undefined
        ? `nothing limits the current of ${what}${carries}.`
        : `nothing but the resistance of pin ${f.names['pin']} limits the current of ${what}${carries}.`,
    );
  },
  'jumper-joins-supplies': (f) =>
    f.names['terminal'] !== undefined
      ? `One terminal, ${f.names['terminal']}, feeds inputs and coils of ${f.about}, and two supplies are put on it, ${f.names['logic']} and ${f.names['coil']}: they drive each other.`
      : `The supply jumper of ${f.about} is fitted between two supplies, ${f.names['logic']} and ${f.names['coil']}: they drive each other.`,
  'supplies-joined': (f) =>
    f.names['by'] !== undefined
      ? `The wire ${f.names['by']} joins two supplies, ${f.names['other']} and ${f.names['from']}: they drive each other.`
      : `The rail ${f.about} is fed by ${f.names['from']} and, through the board, by ${f.names['other']}: nothing keeps the two apart.`,
  'no-source': (f) => `Nothing feeds ${f.about}: its ${f.names['rail']} has no source.`,
  'ground-missing': (f) =>
    f.verdict === 'unproven'
      ? `The grounds of ${f.about} are separate, and nothing says whether its inputs have couplers: without them the signals have no way back.`
      : f.names['terminal'] !== undefined
        ? `The grounds of ${f.about} are separate, and one terminal, ${f.names['terminal']}, feeds its inputs and its coils: the signals have no way back.`
        : `The grounds of ${f.about} are separate, and its inputs have no couplers: the signals have no way back.`,
  'pin-used-twice': (f) => `Pin ${f.names['pin']} is used twice, by ${f.names['first']} and by ${f.names['second']}.`,
  'channel-used-twice': (f) =>
    `Array channel ${f.names['channel']} is driven by two pins, ${f.names['first']} for ${f.names['other']} and ${f.names['second']} for ${f.about}: where their levels differ they drive each other.`,
  'pins-joined': (f) => {
    const each = f.names['amps'] === undefined ? '' : ` at ${f.names['amps']}`;
    return f.names['apart'] === undefined
      ? `Pins ${f.names['pins']} are joined to carry ${f.about}: while one is high and another low they drive each other${each}, so firmware has to switch them in one instant.`
      : `Pins ${f.names['pins']} are joined to carry ${f.about}, and belong to ${f.names['apart']}: nothing switches them in one instant, and until then they drive each other${each}.`;
  },
  'pin-input-only': (f) => `Pin ${f.names['pin']} has no output stage: it can never switch ${f.about}.`,
  'pin-reserved': (f) =>
    `Pin ${f.names['pin']} belongs to something else already (${f.names['why']}), and ${f.about} uses it too.`,
  'isolation-defeated': (f) =>
    f.verdict === 'unproven'
      ? `Isolation is wanted of ${f.about}, and nothing says whether it has couplers.`
      : `The couplers of ${f.about} isolate nothing, since ${f.names['why']}${f.verdict === 'note' ? '; its relays keep their contacts apart all the same' : ''}.`,
  'regulator-back-fed': (f) =>
    `The regulator ${f.about} is fed backwards, since ${f.names['rail']} is powered directly${f.names['forbidden'] ? ', which it does not bear' : ''}.`,
  'boot-drives': bootDrives,
  'boot-floats': bootFloats,
  'strap-loaded': strapLoaded,
  'dead-drives': deadDrives,
  'dead-fed': deadFed,
  'dead-lifted': deadLifted,
  'dead-pushed': deadPushed,
  'wire-idle': (f) =>
    f.names['from'] === undefined
      ? `Nothing of ${f.names['to']} returns over the wire ${f.about}.`
      : `The wire ${f.about} carries nothing to ${f.names['to']}, which ${f.names['from']} does not feed.`,
  'source-fed-back': (f) =>
    sentence(
      `up to ${formatValue(Number(f.names['amps']), 'current')} may be pushed back into ${f.names['title']}, which does not bear that.`,
    ),
  'pin-current': (f) =>
    met(f) ? atMost(f, subjectOf(f), pinVerb(f)) : `Nothing says what current ${subjectOf(f)} may carry.`,
  'chip-heat': (f) =>
    met(f) === undefined
      ? `Nothing says what ${f.account?.title.replace(/, heat$/, '') ?? f.about} turns into heat.`
      : atMost(
          f,
          subjectOf(f)
            .replace(/, heat$/, '')
            .replace(/^package/, 'the chip'),
          /pins/.test(f.account?.title ?? '') ? 'turn into heat' : 'turns into heat',
        ),
  'group-current': (f) => atMost(f, subjectOf(f), pinVerb(f), sumOf(f)),
  'total-current': (f) => atMost(f, subjectOf(f), 'carry', sumOf(f)),
  'phase-current': (f) =>
    met(f) ? atMost(f, subjectOf(f), 'carries') : `Nothing says what current ${subjectOf(f)} may carry for ever.`,
  'chopper-starved': chopperStarved,
  'coil-holds': coilHolds,
  'coil-pull-in': coilPullIn,
  'coil-voltage': (f) => atMost(f, `the coil of ${f.about}`, 'gets'),
  'coil-heat': (f) => atMost(f, `the winding of ${f.about}`, 'reaches'),
  'coil-release': coilRelease,
  'clamp-rating': clampRating,
  'driver-drive': driverDrive,
  'driver-release': driverRelease,
  'driver-inverted': (f) =>
    `The file says that a ${f.names['says']} ${f.names['pin']} switches ${f.about} on, but its driver conducts when ${f.names['pin']} is ${f.names['says'] === 'high' ? 'low' : 'high'}.`,
  'gate-voltage': (f) => atMost(f, `the gate of ${stageOf(f)}`, 'gets'),
  'driver-current': (f) => atMost(f, subjectOf(f), 'carries'),
  'driver-voltage': (f) =>
    f.account?.missing?.figure === 'zener-voltage'
      ? `Nothing says at what voltage the clamp of ${f.about} breaks down, and so what its driver bears at switching off.`
      : atMost(f, f.account?.title.endsWith(', supply') ? partOf(f) : `${partOf(f)}, switched off,`, 'bears'),
  'driver-heat': (f) => atMost(f, `the junction of ${subjectOf(f).replace(/, junction$/, '')}`, 'reaches'),
  'input-levels': inputLevels,
  'input-left-open': inputLeftOpen,
  'load-current': (f) => {
    const missing = MISSING[f.account?.missing?.figure ?? ''];
    return met(f) === undefined && missing ? missing(f.about) : atMost(f, subjectOf(f), 'carries');
  },
  'scan-stops': (f) =>
    atMost(
      f,
      `should firmware stop in the middle of a scan, ${f.account?.title.replace(/, should the scan stop$/, '') ?? f.about}`,
      f.account?.quantity === 'power' ? 'turns into heat, for good,' : 'stays lit and carries, for good,',
    ),
  'display-flickers': (f) => {
    const m = met(f);
    if (m === undefined) return `Nothing says how often ${f.about} shows its whole picture.`;
    const often = (seconds: number): string => trimmed(formatValue(1 / seconds, 'frequency'));
    return f.verdict === 'note'
      ? `The display ${f.about} shows its whole picture at ${often(m.by.draw)}: below ${often(m.by.value)} it is seen to flicker.`
      : `The display ${f.about} shows its whole picture at ${often(m.by.draw)}: below ${often(m.by.value)} an eye sees one digit after another.`;
  },
  'leds-glow': (f) => {
    const m = met(f);
    return m === undefined
      ? `Nothing says whether LEDs of ${f.about} glow that are not lit.`
      : `A lit LED of ${f.about} leaves up to ${figure(m.account, m.by.draw)} across two others in series, which are dark only below ${limitFigure(m.account, m.by.value)}: they glow with it.`;
  },
  'load-needs': (f) =>
    /turning on/.test(f.account?.title ?? '')
      ? atLeast(f, `the input of ${f.about}`, 'it is not sure to turn on')
      : /to be lit/.test(f.account?.title ?? '')
        ? atLeast(f, `the string ${f.about}`, 'its drops add up to more than there is, and it is not sure to light')
        : atLeast(f, f.about, 'it is not sure to do its job'),
  'slow-clamp': (f) => {
    const m = met(f);
    if (m === undefined) return `Nothing says how fast the clamp of ${f.about} blocks again.`;
    const [takes, may] = [figure(m.account, m.by.draw), limitFigure(m.account, m.by.value)];
    return f.verdict === 'unproven'
      ? `Nothing says how fast the clamp of ${f.about} blocks again: at these pulses it should within ${may}.`
      : `The clamp of ${f.about} takes ${takes} to block again, and at these pulses it should within ${may}: until then every pulse runs through it and its switch.`;
  },
  'relay-pulsed': (f) =>
    f.names['board'] === 'true'
      ? `The input of ${f.about} is pulsed: a relay is no dimmer, its contact would switch at every pulse or chatter.`
      : `The coil of ${f.about} is pulsed ${f.names['hertz']} times a second: its armature follows pulses as slow as that, and chatters.`,
  'leds-share-resistor': (f) => {
    const draw = f.account?.draw;
    const worst = draw
      ? `: one of them may take ${formatValue(draw.max, 'current')} where a typical one takes ${formatValue(draw.typ, 'current')}`
      : '';
    return `The ${f.names['many']} LEDs of ${f.about} hang side by side on one resistor and do not share its current${worst}.`;
  },
  'input-release': (f) => {
    const m = met(f);
    if (m === undefined) return `Nothing says with what current the input of ${f.about} is sure to be off.`;
    const [keeps, off] = [figure(m.account, m.by.draw), limitFigure(m.account, m.by.value)];
    return sentence(
      `${when(f)}switched off, the input of ${f.about} may still carry ${keeps}, and it is sure to be off only below ${off}: ${f.verdict === 'breach' ? 'once on it stays on' : 'it is not sure to turn off'}.`,
    );
  },
  'load-dip': loadDip,
  'load-voltage': (f) => {
    const motor = /to start/.test(f.account?.title ?? '');
    const [, logic] = /^logic supply of the (driver of .*)$/.exec(f.account?.title ?? '') ?? [];
    const about = logic === undefined ? f.about : `the logic of the ${logic}`;
    if (/turning on/.test(f.account?.title ?? ''))
      return met(f)
        ? atLeast(f, `the input of ${f.about}`, 'it is not sure to turn on')
        : `Nothing says from what current or voltage on the input of ${f.about} turns on.`;
    if (f.account?.direction === 'at-least')
      return atLeast(
        f,
        motor ? `the motor ${f.about}` : about,
        motor ? 'it is not sure to start' : 'it is not sure to work',
      );
    const m = met(f);
    if (m === undefined) return `Nothing says at what voltage ${about} works.`;
    const [gets, bears] = [figure(m.account, m.by.draw), limitFigure(m.account, m.by.value)];
    return sentence(
      f.verdict === 'thin'
        ? `${when(f)}${about} gets up to ${gets} of the ${bears} that it works at: ${percent(m.by.left)} in hand.`
        : `${when(f)}${about} gets up to ${gets}, and is made for no more than ${bears}.`,
    );
  },
  'resistor-power': (f) => atMost(f, `the resistor ${f.account?.id ?? f.about}`, 'turns into heat'),
  'wire-current': (f) =>
    met(f) === undefined
      ? `Nothing says how much ${subjectOf(f)} may carry: neither its thickness nor a rating.`
      : atMost(f, subjectOf(f), 'carries'),
  'series-current': (f) => atMost(f, subjectOf(f), 'carries'),
  'fuse-holds': fuseHolds,
  'regulator-heat': (f) => atMost(f, `the junction of ${subjectOf(f).replace(/, junction$/, '')}`, 'reaches'),
  'regulator-current': (f) => atMost(f, subjectOf(f), 'gives'),
  'regulator-input': (f) => atMost(f, subjectOf(f), 'gets'),
  'regulator-dropout': regulatorDropout,
  'rail-voltage': railVoltage,
  'regulator-starved': (f) =>
    atLeast(
      f,
      `the input of ${f.about}`,
      met(f)?.by.limit.stated.startsWith('half of')
        ? 'more power is asked of its source than that can give, and both collapse'
        : 'it is not sure to hold its output',
    ),
  'divider-sags': (f) =>
    atLeast(
      f,
      `what hangs on the divider ${f.about.replace('.divider', '')}`,
      'a divider is no supply, its voltage falls with every load',
    ),
  'rail-current': (f) => atMost(f, subjectOf(f), 'carries'),
  'inlet-current': (f) => atMost(f, subjectOf(f), 'carries'),
  'waiver-expired': (f) =>
    `The waiver of ${f.names['rule']} for ${f.about} has run out on ${f.names['until']}: what it set aside counts again.`,
  'waiver-unused': (f) =>
    f.names['damage'] === 'true'
      ? `The waiver of ${f.names['rule']} for ${f.about} does not hold: what damages a chip is set aside with \`accepts: damage\` alone.`
      : `The waiver of ${f.names['rule']} for ${f.about} sets nothing aside: there is no such finding.`,
  'measured-disagrees': measuredDisagrees,
  'battery-sags': batterySags,
  'battery-life': batteryLife,
  'supply-power': (f) => atMost(f, subjectOf(f).replace(/, power$/, ''), 'is asked for'),
  'supply-capacitance': (f) => {
    const supply = subjectOf(f).replace(/, capacitance to charge$/, '');
    const own =
      f.names['builtIn'] === undefined ? '' : `, ${f.names['builtIn']} of it on boards and modules themselves`;
    const limit = met(f)?.by.limit;
    return sentence(
      `${supply} has to charge up to ${f.names['farads']} when it comes on${own}, and is made for ${limit?.stated}: ${f.verdict === 'note' ? 'what the file adds is within that' : 'its voltage sags, or it shuts down'}.`,
    );
  },
  'supply-current': (f) => {
    const m = met(f);
    if (m?.by.limit.failing !== undefined && f.verdict === 'note')
      return sentence(
        `until firmware runs ${subjectOf(f)} is asked for up to ${figure(m.account, m.by.draw)}, and a port that nobody has configured owes ${limitFigure(m.account, m.by.value)}.`,
      );
    if (m && f.verdict !== 'unproven') return atMost(f, subjectOf(f), 'is asked for');
    const state = m?.by.limit.condition === undefined ? '' : ` ${m.by.limit.condition}`;
    return sentence(`nothing says what current ${subjectOf(f)} can give${state}.`);
  },
};

/** What a finding says: one sentence with its numbers. @throws when a rule has no sentence, which a test rules out */
export function says(finding: Finding): string {
  const say = SENTENCES[finding.rule];
  if (say === undefined) throw new Error(`the rule '${finding.rule}' has no sentence`);
  const { onlyIf } = finding;
  if (onlyIf === undefined) return say(finding);
  const then = say({ ...finding, verdict: onlyIf.verdict as Finding['verdict'] });
  return `If ${onlyIf.answer}: ${then.charAt(0).toLowerCase()}${then.slice(1)}`;
}

/** The question that settles an unproven finding. */
export const asks = (f: Finding): string | undefined =>
  f.verdict === 'unproven'
    ? (f.onlyIf?.asks ?? f.by?.limit.asks ?? f.account?.missing?.asks ?? f.names['asks'])
    : undefined;
