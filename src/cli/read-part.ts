/** A part of a run, as another machine wrote it: read a line at a time, and held to its schema, since it may be anything. */
import { closeSync, openSync, readSync } from 'node:fs';
import { filesInPart, type PartHead, type PartLine } from '../reports/part.js';
import { type Check, known } from '../reports/generated/part-validator.js';
import { reason, unfit } from './input.js';

export interface Part {
  readonly file: string;
  readonly head: PartHead;
  /** One after the other: the files of the part, or what is wrong with the next of them. */
  readonly lines: () => Iterator<PartLine | Problem>;
}

interface Problem {
  readonly problem: string;
}

/** Bytes of a line. A report of a large project has some 0.3 MB. */
const LONGEST = 1 << 26;
const CHUNK = 1 << 16;

const NO_JSON = 'this is no JSON';
const WRITES_ONE = 'audit --part I/N --format part writes one';
const IS_REPORT =
  'this is a finished report: its figures are rounded, and nothing in it says where in the list of files it stands; ' +
  'audit --part I/N --format part writes what can be put together';

export function openPart(file: string): Part | Problem {
  const { head: isHead } = known();
  const first = valuesOf(file).next().value;
  if (first === undefined) return { problem: `${file}: this is empty; the least of a part is its first line.` };
  if ('problem' in first) {
    if (first.problem !== NO_JSON) return { problem: `${file}: ${first.problem}.` };
    return { problem: `${file}: ${isReport(file) ? IS_REPORT : `${NO_JSON}; ${WRITES_ONE}`}.` };
  }
  const wrong = faultOf(first.value, isHead);
  if (wrong !== undefined) return { problem: `${file}: this is no part; ${WRITES_ONE}. Line 1 ${wrong}.` };
  const head = first.value as PartHead;
  if (head.part > head.of) return { problem: `${file}: this says that it is part ${head.part} of ${head.of}.` };
  return { file, head, lines: () => linesOf(file, head) };
}

/** Whether it begins as our reports do: JSON over many lines, or markup. */
function isReport(file: string): boolean {
  const chunk = chunkOf(file, 0);
  return (
    'bytes' in chunk && /^(?:[[{]\s*\n|<\?xml)/.test(new TextDecoder('latin1').decode(chunk.bytes.subarray(0, 64)))
  );
}

function* linesOf(file: string, head: PartHead): Generator<PartLine | Problem> {
  const { line: isLine } = known();
  const count = filesInPart(head);
  let number = 1;
  for (const read of rest(valuesOf(file))) {
    number += 1;
    const place = `${file}, line ${number}`;
    if ('problem' in read) return yield { problem: `${place}: ${read.problem}.` };
    if (number > count + 1)
      return yield { problem: `${place}: this is more than the ${count} files that it is a part of.` };
    const wrong = faultOf(read.value, isLine);
    if (wrong !== undefined) return yield { problem: `${place}: this is no report of a file: it ${wrong}.` };
    const line = read.value as PartLine;
    const at = (number - 2) * head.of + head.part - 1;
    if (line.at !== at)
      return yield { problem: `${place}: this is file ${line.at} of the list, where ${at} comes next.` };
    yield line;
  }
  if (number <= count) yield { problem: `${file}: this breaks off after ${number - 1} of its ${count} files.` };
}

function* rest<T>(all: Iterator<T, void>): Generator<T> {
  all.next();
  for (let next = all.next(); next.done !== true; next = all.next()) yield next.value;
}

/** What a schema finds wrong with a value, or nothing. */
function faultOf(value: unknown, check: Check): string | undefined {
  if (check(value)) return undefined;
  const [first] = check.errors ?? [];
  return `does not follow part.schema.json${first?.instancePath ? ` at ${first.instancePath.slice(0, 200)}` : ''}`;
}

type Read = { readonly value: unknown } | Problem;

/** The lines of a file as values. The file is open only while a piece of it is read: there may be thousands of parts. */
function* valuesOf(file: string): Generator<Read, void> {
  let kept: Uint8Array[] = [];
  let size = 0;
  for (let from = 0; ;) {
    const chunk = chunkOf(file, from);
    if ('problem' in chunk) return yield chunk;
    from += chunk.bytes.length;
    let start = 0;
    for (let end = chunk.bytes.indexOf(10); end >= 0; end = chunk.bytes.indexOf(10, start)) {
      yield parsed([...kept, chunk.bytes.subarray(start, end)]);
      [kept, size, start] = [[], 0, end + 1];
    }
    kept.push(chunk.bytes.subarray(start));
    size += chunk.bytes.length - start;
    if (size > LONGEST) return yield { problem: `a line has more than ${LONGEST >> 20} MB, and no more is read` };
    if (chunk.bytes.length > 0) continue;
    if (size > 0) yield { problem: 'it breaks off in the middle of a line' };
    return;
  }
}

function parsed(bytes: readonly Uint8Array[]): Read {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  try {
    const text = bytes.map((each) => decoder.decode(each, { stream: true })).join('') + decoder.decode();
    return { value: JSON.parse(text) as unknown };
  } catch {
    return { problem: NO_JSON };
  }
}

function chunkOf(file: string, from: number): { readonly bytes: Uint8Array } | Problem {
  let handle: number | undefined;
  try {
    const why = unfit(file);
    if (why !== undefined) return { problem: why };
    handle = openSync(file, 'r');
    const buffer = new Uint8Array(CHUNK);
    return { bytes: buffer.subarray(0, readSync(handle, buffer, 0, CHUNK, from)) };
  } catch (error) {
    return { problem: reason(error as NodeJS.ErrnoException) };
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}
