/** Everything that is asked of a project: an account each. */
import { likenessOf } from './likeness.js';
import { loadQuestions } from './load-questions.js';
import type { ModeSearch } from './moments.js';
import { pinQuestions } from './pin-questions.js';
import type { Question } from './question.js';
import type { Solver } from './solver.js';
import { treeQuestions } from './tree-questions.js';

/** @param modes those in which it is asked: circuits are alike that are so in all of them */
export function questionsOf(bench: Solver, modes: readonly ModeSearch[]): readonly Question[] {
  const likeness = likenessOf(bench.circuitry, modes);
  return [...pinQuestions(bench, likeness), ...loadQuestions(bench, likeness), ...treeQuestions(bench)];
}
