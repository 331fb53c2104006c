/**
 * A question about a few circuits solves only their networks anew and takes the others along their tangents. Here each is held
 * against the whole solution of the same corner, in which every network is solved.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { likenessOf } from '../../src/ledger/likeness.js';
import { loadQuestions } from '../../src/ledger/load-questions.js';
import { modesOf } from '../../src/ledger/moments.js';
import { pinQuestions } from '../../src/ledger/pin-questions.js';
import type { Question } from '../../src/ledger/question.js';
import { Solution } from '../../src/ledger/solution.js';
import type { Candidate, Solver } from '../../src/ledger/solver.js';
import { solver } from '../../src/ledger/solver.js';
import type { Data } from '../properties/projects.js';
import { projectOf, projects } from '../properties/projects.js';
import { sized } from '../sizes.js';

/** Most that tangents may leave out of an account, as a share of it. The largest seen in 4000 projects is 3e-7. */
const LEFT_OUT = 1e-5;
/** Amperes, volts, watts or kelvins below which nothing is compared. */
const TRACE = 1e-6;

function questionsOf(data: Data): {
  readonly bench: Solver;
  readonly asked: readonly (readonly [Question, Candidate])[];
} {
  const project = projectOf(data);
  const bench = solver(project);
  const modes = modesOf(project);
  const likeness = likenessOf(bench.circuitry, modes);
  const questions = [...pinQuestions(bench, likeness), ...loadQuestions(bench, likeness)];
  const asked = questions.flatMap((q) => modes.flatMap((mode) => q.candidates(mode).map((c) => [q, c] as const)));
  return { bench, asked };
}

/** Share of an account that the tangents leave out; undefined when it has no draw. */
function leftOut(bench: Solver, question: Question, candidate: Candidate): number | undefined {
  const { moment, corner, focus } = candidate;
  const standing = bench.solve(candidate);
  const told = question.read(standing);
  if (told === undefined) return undefined;
  const whole = question.read(new Solution(bench.circuitry, moment, corner, focus, standing.volts))!;
  return Math.abs(told - whole) / Math.max(Math.abs(whole), TRACE);
}

describe('what a question about a few circuits comes to is what the whole solution comes to', () => {
  test.each(['usb', 'soft usb', 'barrel', 'low barrel', 'rp2040', 'esp32'])(
    'on the %s board, in every corner of every account of pins and loads, with modes and without',
    (board) => {
      let compared = 0;
      const generated = projects({ boards: [board], most: 8 }).chain((data) =>
        fc.constantFrom(data, { ...data, modes: { working: { active: Object.keys(data['loads'] as object) } } }),
      );
      fc.assert(
        fc.property(generated, (data) => {
          const { bench, asked } = questionsOf(data);
          for (const [question, candidate] of asked) {
            const share = leftOut(bench, question, candidate);
            if (share === undefined) continue;
            compared++;
            expect(share, question.title).toBeLessThan(LEFT_OUT);
          }
        }),
        { numRuns: sized(15, 60) },
      );
      expect(compared).toBeGreaterThan(sized(1000, 4000));
    },
  );

  test('when the circuits in question move a rail so far that an LED next to its threshold bends', () => {
    const { bench, asked } = questionsOf({
      ampledger: 1,
      title: 'Bent',
      supplies: { port: { voltage: '3.6 to 4.4 V', current: '3 A', resistance: '0.5 to 1 Ω' } },
      controllers: { main: { board: 'atmega328p-5v-board', powered: { usb: 'port' } } },
      loads: {
        lamps: { part: 'led-blue-5mm', series: '22 Ω', supply: 'main.5v', count: 8 },
        coil: {
          part: 'relay-coil-5v-70r',
          supply: 'main.5v',
          driver: { part: 'npn-2n2222a', pin: 'D4', 'base-resistor': '1 kΩ' },
        },
      },
    });
    const shares = asked.map(([question, candidate]) => leftOut(bench, question, candidate) ?? 0);
    expect(Math.max(...shares)).toBeLessThan(LEFT_OUT);
  });
});
