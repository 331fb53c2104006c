/** Lists of names in short: those that count up are told by the first and the last of them. */
import { joined } from './words.js';

/** So many in a row are shorter by their ends than one by one. */
const least = 3;

/** 'vents.12' → 'vents.' and '12'. Longer numbers are no channel's. */
const counted = /^(.*?)(\d{1,6})$/su;

interface Run {
  readonly stem: string;
  readonly names: readonly string[];
}

/**
 * The names in their order, as a sentence lists them: 'vents.1 to 4 and horn', 'D4 to D7'. When all are channels of one
 * load, its name is said once: 'vents.1, 3 and 5'.
 *
 * @param most so many parts are told when there are more
 */
export function nameList(names: readonly string[], most = Infinity): string {
  const found = runs(names);
  const [first = ''] = names;
  const stem = found[0]?.stem ?? '';
  const isOneLoad = stem.endsWith('.') && found.every((run) => run.stem === stem);
  const short = (name: string): string => (isOneLoad && name !== first ? name.slice(stem.length) : name);
  const parts = found.flatMap((run) => (run.names.length < least ? run.names.map(short) : [ends(run, short)]));
  return joined(parts.length > most ? [...parts.slice(0, most), 'others'] : parts);
}

/** Channels share the name of their load; pins are known by the whole of theirs: 'vents.1 to 4', 'D4 to D7'. */
function ends({ stem, names }: Run, short: (name: string) => string): string {
  const last = names.at(-1) ?? '';
  return `${short(names[0] ?? '')} to ${stem.endsWith('.') ? last.slice(stem.length) : last}`;
}

function runs(names: readonly string[]): readonly Run[] {
  const found: { stem: string; next: string; names: string[] }[] = [];
  for (const name of names) {
    const [, stem = name, number] = counted.exec(name) ?? [];
    const open = found.at(-1);
    const next = number === undefined ? '' : String(Number(number) + 1);
    if (open && number !== undefined && open.stem === stem && open.next === number) {
      open.names.push(name);
      open.next = next;
    } else found.push({ stem, next, names: [name] });
  }
  return found;
}
