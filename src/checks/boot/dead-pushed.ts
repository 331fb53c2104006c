/**
 * Protects a live pin from what is dead: through the clamp of an input, or a load, it feeds a rail that is held at 0 V by
 * nothing but what is in the way. Where no mode says that the supply is dead it is judged as what only comes about when
 * something else goes wrong.
 */
import { formatValue } from '../../quantity/print.js';
import type { PushedPin } from '../../ledger/pushed.js';
import type { Finding, Judged, WiringRule } from '../finding.js';
import type { JudgedAccount } from '../verdict.js';
import { judgeAccount, worstOf } from '../verdict.js';

type Pushed = PushedPin & { readonly judged: JudgedAccount };

/** What an assumed clamp makes of it is no more than worth knowing, unless the file says that it comes about. */
function verdictOf({ stated, assumed, judged: { by } }: Pushed): Finding['verdict'] {
  if (assumed) return stated ? 'strain' : 'note';
  if (stated) return 'breach';
  return by!.limit.grade === 'absolute' ? 'strain' : 'note';
}

/** Of what may be pushed into an input as much as is worth a strain, too: no maker allows it. */
const isTooMuch = (verdict: JudgedAccount['verdict'], { direction }: PushedPin['account']): boolean =>
  verdict === 'breach' || (verdict === 'strain' && direction === 'injected');

function find({ ways, ledger: { project } }: Judged): Finding[] {
  const beyond = ways.pushed
    .map((p): Pushed => ({ ...p, judged: judgeAccount(p.account, project.policy) }))
    .filter(({ judged, account }) => isTooMuch(judged.verdict, account));
  // Where single pins give too much, what they give together is no news.
  const single = new Set(beyond.flatMap((p) => (p.account.kind === 'pin' ? [p.dead.join()] : [])));
  // All that one chip or load takes in is one finding, as is all that is only worth knowing: the worst of it tells.
  const groups = new Map<string, Pushed[]>();
  for (const p of beyond) {
    if (p.account.kind !== 'pin' && single.has(p.dead.join())) continue;
    const taker = project.ends.find((e) => e.told === p.into[0])?.owner ?? p.into[0] ?? '';
    const kind = p.account.kind === 'pin' ? (p.assumed ? '' : taker) : 'together';
    const key = `${p.dead.join()}|${kind}`;
    groups.set(key, [...(groups.get(key) ?? []), p]);
  }
  return [...groups.values()].map((of) => finding(project, of));
}

function finding(project: Judged['ledger']['project'], of: readonly Pushed[]): Finding {
  const verdict = worstOf(of.map(verdictOf));
  const worst = of
    .filter((p) => verdictOf(p) === verdict)
    .reduce((a, b) => (b.judged.margin! < a.judged.margin! ? b : a));
  const { dead, account, judged } = worst;
  const by = judged.by!;
  const pins = of.flatMap((p) => project.pins.filter((pin) => pin.id === p.account.id).map((pin) => pin.label));
  const use = project.uses.find((u) => u.pin === account.id);
  return {
    rule: 'dead-pushed',
    family: 'boot',
    verdict: verdictOf(worst),
    about: account.id,
    path: use?.path ?? account.path,
    names: {
      dead: dead.join(', '),
      into: (account.kind === 'pin' ? [...new Set(of.flatMap((p) => p.into))] : worst.into).join(', '),
      pins: pins.join(', '),
      ...(pins.length === 0 && { sum: account.title.replace(/, source$/, '') }),
      amps: formatValue(by.draw, 'current'),
      limit: by.limit.stated,
      most: String(by.value),
      grade: by.limit.grade,
      ...(by.limit.range && { range: formatValue(by.limit.range.max, 'current') }),
      ...(account.direction === 'injected' && { input: 'yes' }),
      ...(worst.assumed && { assumed: 'yes' }),
    },
    related: of
      .filter((p) => p !== worst)
      .slice(0, 8)
      .map((p) => ({ path: p.account.path, name: p.account.id })),
    steps: account.steps(),
  };
}

export default { name: 'dead-pushed', family: 'boot', find } satisfies WiringRule;
