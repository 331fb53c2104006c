/** `ampledger audit FILE…` */
import { isInPart } from '../reports/part.js';
import type { FailAt } from '../reports/severity.js';
import type { Arguments } from './arguments.js';
import { auditAll, FEW, type Means } from './audit-all.js';
import { type Conditions, readConditions } from './conditions.js';
import { type CornerOptions, readCorners } from './corners.js';
import { openDelivery } from './deliver.js';
import { findProjects, type Found } from './find-projects.js';
import type { Format } from './formats.js';
import { readMeans, readPart } from './means.js';
import { type Output, readOutputs } from './outputs.js';
import { partHead } from './part-head.js';
import { openProgress } from './progress.js';
import { refuse } from './refuse.js';
import type { Wishes } from './render.js';
import type { Told } from './tell.js';

/** An audit as the command line asks for it. */
export interface Asked {
  readonly format: Format;
  readonly all: boolean;
  readonly failAt: FailAt;
  readonly conditions: Conditions & CornerOptions;
  readonly means: Means;
  readonly share: { readonly part: number; readonly of: number };
  readonly outputs: readonly Output[];
}

/** Audits every file named, whatever becomes of the others; the exit status is the worst of them. */
export async function audit(given: Arguments): Promise<number> {
  const { operands, options, repeated } = given;
  const [conditions, corners, means, share] = [
    readConditions(given),
    readCorners(given),
    readMeans(given),
    readPart(given),
  ];
  for (const each of [conditions, corners, means, share]) if ('problem' in each) return refuse([each.problem]);
  const found = await findProjects(operands);
  if ('problem' in found) return refuse([found.problem]);
  const wanted = readOutputs(repeated?.['output'] ?? [], found.files);
  if ('problem' in wanted) return refuse([wanted.problem]);
  const asked: Asked = {
    format: (options['format'] ?? 'terminal') as Format,
    all: options['all'] === true,
    failAt: (options['fail-at'] ?? 'breach') as FailAt,
    conditions: { ...(conditions as Conditions), ...(corners as CornerOptions) },
    means: means as Means,
    share: share as Asked['share'],
    outputs: wanted.outputs,
  };
  if (options['watch'] === true) return (await import('./watch.js')).watchProjects(operands, found, asked);
  return auditFound(found, asked);
}

/** Audits what was found, or a part of it, prints it and writes it into files. @param hear of each file as well */
export async function auditFound(found: Found, asked: Asked, hear?: (told: Told) => void): Promise<number> {
  const run = partHead(found, asked);
  const tasks = found.files.map((file, whole) => ({ file, whole })).filter(({ whole }) => isInPart(whole, asked.share));
  const wishes: Wishes = { all: asked.all, failAt: asked.failAt, run };
  const progress = await openProgress(tasks.length < FEW ? 0 : tasks.length);
  const delivery = await openDelivery(asked.format, asked.outputs, wishes, progress.aside);
  try {
    const { conditions, means } = asked;
    const take = (told: Told): Promise<void> => {
      hear?.(told);
      return delivery.take(told);
    };
    await auditAll(tasks, { conditions, wishes: delivery.wishes }, means, take, progress.step);
  } finally {
    progress.stop();
  }
  const problems = await delivery.done();
  return problems.length > 0 ? refuse(problems) : delivery.status();
}
