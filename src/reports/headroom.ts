/** Headroom for people: the answer in one sentence, then the limits in the order in which they are met. */
import type { Headroom, Stop } from '../studies/headroom.js';
import { fewWords } from '../wording/few-words.js';
import { says } from '../wording/sentences.js';
import type { Head } from './json.js';
import { nameList } from './name-list.js';
import { modeWords } from './words.js';
import { type Block, heading, item, list, mark, paragraph, table, type Tree } from './tree.js';

export function headroomTree(found: Headroom, project: string, file: string): Tree {
  const { stops, interlocked, broken } = found;
  const rows = stops.map((stop) => [
    mark('strong', `${stop.fits}`),
    mark(stop.finding.verdict, stop.finding.verdict),
    fewWords(stop.finding),
    stop.finding.account?.mode === 'free' ? '' : (stop.finding.account?.mode ?? ''),
  ]);
  const modes = stops.some((s) => s.finding.account !== undefined && s.finding.account.mode !== 'free');
  return [
    [heading(mark('strong', project), mark('quiet', file))],
    [paragraph(answer(found))],
    ...(stops.length === 0
      ? []
      : [
          [
            table(
              [
                { title: 'fit', align: 'right' },
                { title: 'one more', align: 'left' },
                { title: 'and what breaks', align: 'left' },
                ...(modes ? [{ title: 'mode', align: 'left', spare: true } as const] : []),
              ],
              rows.map((r) => (modes ? r : r.slice(0, 3))),
            ),
          ],
        ]),
    ...stops.map(liftsOf).filter((blocks) => blocks.length > 0),
    ...(broken.length > 0
      ? [
          [
            paragraph(
              mark(
                'quiet',
                `Not counted, since it is broken without any more: ${fewWords(broken[0]!)}${broken.length > 1 ? `, and ${broken.length - 1} more` : ''}.`,
              ),
            ),
          ],
        ]
      : []),
    ...(interlocked
      ? [[paragraph(mark('quiet', 'Interlocks hold the one that is there; the further ones are counted without.'))]]
      : []),
  ];
}

/** The answer in one sentence, or two. */
function answer(found: Headroom): string {
  const { load, fits, withMargin, thin, placed, stops, ended } = found;
  const [stop] = stops;
  const on = placed.length > 0 ? ` (on ${nameList(placed)})` : '';
  const many =
    fits === 0 ? `No more like ${load} fits` : `${fits} more like ${load} ${fits === 1 ? 'fits' : 'fit'}${on}`;
  const mode = stop?.finding.account ? modeWords(stop.finding.account.mode) : '';
  const because = stop
    ? `: with ${fits === 0 ? 'one' : 'one more'}, ${lower(says(stop.finding)).replace(/(\. A typical build does)?\.$/, '')}${mode === '' ? '' : ` (${mode})`}.`
    : ended === 'no-pin'
      ? ', and then no pin is free any more; no limit is met before.'
      : ended === 'no-channel'
        ? ', and then no channel of the array is free any more; no limit is met before.'
        : ', as many as were tried; no limit is met.';
  const margin =
    thin === undefined
      ? ''
      : ` ${withMargin === 0 ? 'None' : withMargin} of them ${withMargin === 1 ? 'leaves' : 'leave'} all the margin that is wanted: ${fewWords(thin)}.`;
  return many + because + margin;
}

/** A sentence inside another one: its first word is no name in capitals. */
const lower = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

function liftsOf({ finding, lifts, fits }: Stop): Block[] {
  if (lifts.length === 0) return [];
  return [
    paragraph([mark('strong', `Beyond ${fits}`), `  ${fewWords(finding)}. To lift it:`]),
    list(lifts.map((title) => item('·', `${title}.`))),
  ];
}

/** The same for programs. */
export const headroomJson = (found: Headroom, head: Head): unknown => ({
  ...head,
  more: found.load,
  fits: found.fits,
  withMargin: found.withMargin,
  placed: found.placed,
  ended: found.ended,
  stops: found.stops.map(({ fits, finding: f, lifts }) => ({
    fits,
    rule: f.rule,
    about: f.about,
    verdict: f.verdict,
    ...(f.account && { account: f.account.id, mode: f.account.mode }),
    ...(f.by && { draw: f.by.draw, limit: f.by.value }),
    says: says(f),
    lifts,
  })),
});
