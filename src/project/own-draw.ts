/** What a board or chip draws without what hangs on its pins, awake and asleep; the chip's own share passes its supply pins. */
import type { Profile } from '../catalogue/profile.js';
import { USUAL_EXCESS, lastsOf, withPeak } from '../loads/draw.js';
import { Figures } from '../loads/figures.js';
import type { NetworkSketch } from '../loads/lowering.js';
import type { AccountPlan } from '../loads/account-plan.js';
import type { Member, Origin } from '../loads/branch-plan.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { GROUND } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import type { Path } from '../source/place.js';
import type { PinAccountPlan } from './pin-plan.js';
import type { Gathered } from './remarks.js';

interface Drawing {
  readonly id: string;
  /** Node that feeds the chip, and the one that the board's own draw comes from. */
  readonly rail: string;
  readonly from: string;
  readonly figures: Figures;
  readonly isBoard: boolean;
  readonly chipProfile: Profile;
  /** Parts of the board that are taken off: a power indicator. */
  readonly removed: readonly string[];
  /** The file states what it draws: of the board as it is, with what is taken off not counted. */
  readonly ownDraws: boolean;
  /** It sleeps in some mode. */
  readonly sleeps: boolean;
  readonly remarks: Gathered;
  readonly path: Path;
}

export interface OwnDraw {
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
  /** The chip's own current, as its supply and ground pins see it. */
  readonly own: PinAccountPlan['own'];
  /** The circuit that it is while it is awake, where it ever sleeps. */
  readonly awake?: CircuitPlan;
}

/** A draw and who states it. */
type Stated = Interval & { readonly origin: Origin };

export function ownDraw(drawing: Drawing): OwnDraw {
  const { id, rail, from, figures, isBoard, chipProfile, sleeps, remarks, path } = drawing;
  const chipOnly = new Figures(id, path, [{ data: chipProfile, profile: chipProfile }], remarks);
  const board = isBoard ? figures : figures.over(chipProfile);
  const whole = less(drawing, drawn(board, ['active', 'idle']));
  if (whole === undefined) return { networks: [], own: [], accounts: [unknownDraw(id, path)] };
  const chip = isBoard ? drawn(chipOnly, ['active', 'idle']) : whole;
  const resting = sleeps ? less(drawing, drawn(board, ['asleep'])) : undefined;
  const asleep = resting ?? whole;
  const chipAsleep = isBoard ? drawn(chipOnly, ['asleep']) : asleep;
  const awake: CircuitPlan | undefined = sleeps
    ? {
        ...{ id: `${id}.awake`, owner: id, path, type: 'controller', always: true },
        wiring: { by: 'nothing', inductive: false, clamp: 'not-needed' },
      }
    : undefined;
  const draws = figures.within('draws');
  const peak = draws.interval('peak', 'current')?.max;
  const lasts = peak === undefined ? undefined : lastsOf(draws, 'peak-time', 'a burst');
  const every = draws.interval('peak-every', 'time')?.min;
  const network = (
    name: string,
    node: string,
    amps: Interval,
    sleeping: Interval,
    { origin, top }: { readonly origin: Origin; readonly top?: number | undefined },
  ): NetworkSketch => {
    const branch = (member: Member) => [{ from: node, to: GROUND, members: [member], circuit: name }];
    const on = branch({ kind: 'current', part: name, origin, ...withPeak(plain(amps), top, lasts, every) });
    return {
      ...{ id: name, circuits: awake ? [awake.id] : [], side: 'load', inner: [], hooks: [], on },
      off: awake
        ? branch({ kind: 'current', part: name, origin: resting?.origin ?? origin, amps: plain(sleeping) })
        : on,
    };
  };
  const shown = {
    accounts: sleeps && resting === undefined ? [unknownSleep(id, path)] : [],
    ...(awake && { awake }),
  };
  const own = [{ circuit: `${id}.chip`, part: `${id}.chip` }];
  if (!isBoard)
    return {
      ...shown,
      networks: [network(`${id}.chip`, rail, whole, asleep, { origin: whole.origin, top: peak })],
      own,
    };
  // Where the chip's draw is known it is part of the board's; the rest never draws less than nothing.
  const share = chip && rail === from ? lesser(chip, whole) : undefined;
  const shareAsleep = share && (chipAsleep ? lesser(chipAsleep, asleep) : lesser(share, asleep));
  const top = peak === undefined ? undefined : Math.max(peak - (share?.max ?? 0), rest(whole, share).max);
  return {
    ...shown,
    networks: [
      ...(share ? [network(`${id}.chip`, rail, share, shareAsleep!, { origin: chip!.origin })] : []),
      network(`${id}.board`, from, rest(whole, share), rest(asleep, shareAsleep), { origin: whole.origin, top }),
    ],
    own: share ? own : [],
  };
}

/** The first of some draws that is stated, amperes: of a typical one up to half as much again. */
function drawn(figures: Figures, keys: readonly string[]): Stated | undefined {
  const draws = figures.within('draws');
  const figure = keys.map((key) => draws.figure(key, 'current')).find((f) => f !== undefined);
  return (
    figure && {
      ...closed(figure.quantity, { min: () => 0, max: (typ) => USUAL_EXCESS * typ }),
      origin: figure.origin,
    }
  );
}

/** The board's draw without what is taken off it. */
function less({ figures, removed, ownDraws, id }: Drawing, whole: Stated | undefined): Stated | undefined {
  if (whole === undefined || removed.length === 0) return whole;
  if (ownDraws) {
    figures.assume(`what it draws is stated in the file, as of a board without its ${removed.join(' and ')}`, id);
    return whole;
  }
  return removed.reduce((left, name) => {
    const part = figures.within('removable').within(name).interval('current', 'current');
    if (part === undefined) return left;
    const floor = (amps: number): number => Math.max(amps, 0);
    return {
      ...left,
      ...{ min: floor(left.min - part.max), typ: floor(left.typ - part.typ), max: floor(left.max - part.min) },
    };
  }, whole);
}

const plain = ({ min, typ, max }: Interval): Interval => ({ min, typ, max });

const lesser = (a: Interval, b: Interval): Interval => ({
  min: Math.min(a.min, b.min),
  typ: Math.min(a.typ, b.typ),
  max: Math.min(a.max, b.max),
});

const rest = (whole: Interval, share: Interval | undefined): Interval =>
  share ? { min: whole.min - share.min, typ: whole.typ - share.typ, max: whole.max - share.max } : whole;

const unknown = (
  id: string,
  path: Path,
  missing: NonNullable<AccountPlan['missing']>,
  circuits: readonly string[],
): AccountPlan => ({
  id,
  kind: 'input',
  title: `own current of ${id.slice(0, id.lastIndexOf('.'))}`,
  quantity: 'current',
  direction: 'at-most',
  circuits,
  path,
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing,
  steps: () => [],
});

const unknownDraw = (id: string, path: Path): AccountPlan =>
  unknown(
    `${id}.chip`,
    path,
    { figure: 'draws', asks: `what does ${id} draw itself (its \`draws: { active: … }\`)?` },
    [],
  );

const unknownSleep = (id: string, path: Path): AccountPlan =>
  unknown(
    `${id}.asleep`,
    path,
    { figure: 'draws.asleep', asks: `what does ${id} draw asleep (its \`draws: { asleep: … }\`)?` },
    [],
  );
