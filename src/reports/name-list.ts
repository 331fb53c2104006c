/** Lists of names in short: those that count up are told by the first and the last of them. */
import { joined } from './words.js';

/** So many in a row are shorter by their ends than one by one. */
const least = 3;

/** 'vents.12' → 'vents.' and 12. No channel has a number so long that it could not be counted up. */
const counted = /^(.*?)(\d{1,6})$/u;

interface Run {
  readonly stem: string;
  readonly from: number;
  readonly names: readonly string[];
}

/** The names in their order, as a sentence lists them: 'vents.1 to 4 and horn', 'D4 to D7', 'vents.1 and vents.3'. */
export const nameList = (names: readonly string[], most = Infinity): string => {
  const parts = runs(names).flatMap(({ names: inside }) => (inside.length < least ? inside : [ends(inside)]));
  const shown = parts.length > most + 1 ? parts.slice(0, most) : parts;
  return joined(shown.length < parts.length ? [...shown, 'others'] : shown);
};

/** Channels of a load share its name, which is said once; pins are known by the whole of theirs. */
function ends(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return `${names[0]} to ${last.slice(last.lastIndexOf('.') + 1)}`;
}

function runs(names: readonly string[]): readonly Run[] {
  const found: Run[] = [];
  for (const name of names) {
    const [, stem = name, number = 'NaN'] = counted.exec(name) ?? [];
    const open = found.at(-1);
    // '07' after '6' is another way of counting.
    if (open && open.stem === stem && String(open.from + open.names.length) === number) {
      found[found.length - 1] = { ...open, names: [...open.names, name] };
    } else found.push({ stem, from: Number(number), names: [name] });
  }
  return found;
}
