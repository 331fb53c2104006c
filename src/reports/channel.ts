/**
 * The channels of one load are alike more often than not: eight relays of a board say the same thing eight times. What
 * tells them apart is a name; with it taken out, what is said of them can be compared.
 */
import type { ReportAccount } from './report.js';

/** One of a load's channels: 'vents.2' of 'vents'. */
export interface Channel {
  readonly load: string;
  readonly name: string;
}

/** The channel that a circuit's name names, if it does. */
export function channelOf(name: string): Channel | undefined {
  const [, load] = /^(.+)\.\d{1,6}$/u.exec(name) ?? [];
  return load === undefined ? undefined : { load, name };
}

/**
 * The channel whose account it is, by the name it has in the account's title: 'vents.2' for 'vents.2.coil', and for the
 * pin that switches 'vents.2' the pin's own name, 'D5'.
 */
export function channelOfAccount({ id, kind, entries }: ReportAccount): Channel | undefined {
  if (kind !== 'pin') return channelOf(id.replace(/\.[a-z-]+$/, ''));
  const loads = new Set(entries.map(({ circuit }) => channelOf(circuit)?.load));
  const [load] = loads;
  return load === undefined || loads.size > 1 ? undefined : { load, name: id.slice(id.indexOf('.') + 1) };
}

/** `text` with `name` replaced wherever it stands by itself: 'vents.1' is not part of 'vents.12'. */
export function renamed(text: string, name: string, to: string): string {
  if (name === '') return text;
  let result = '';
  let rest = 0;
  for (let at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + name.length)) {
    const end = at + name.length;
    // Two units hold any letter.
    if (goesOn.test(text.slice(end, end + 2)) || wentOn.test(text.slice(Math.max(0, at - 2), at))) continue;
    result += text.slice(rest, at) + to;
    rest = end;
  }
  return result + text.slice(rest);
}

const goesOn = /^[\p{L}\p{N}_-]/u;
const wentOn = /[\p{L}\p{N}_.-]$/u;

/** Items of one likeness together, in the order of the first of each; an item without a likeness is by itself. */
export function fold<T>(items: readonly T[], likeness: (item: T) => string | undefined): readonly (readonly T[])[] {
  const folds: T[][] = [];
  const known = new Map<string, T[]>();
  for (const item of items) {
    const like = likeness(item);
    const open = like === undefined ? undefined : known.get(like);
    if (open) open.push(item);
    else {
      const opened = [item];
      folds.push(opened);
      if (like !== undefined) known.set(like, opened);
    }
  }
  return folds;
}
