/** What each rule is about, for whoever meets its name in a list: what a finding means, and what to do about it. */
import { LIMIT_RULE_HELP } from './limit-rules.js';
import { WIRING_RULE_HELP } from './wiring-rules.js';

export interface RuleHelp {
  /** A few words without a full stop. */
  readonly title: string;
  /** One sentence: what it means when the rule finds something. */
  readonly means: string;
  /** One sentence: what to do then. */
  readonly todo: string;
}

/** Help by the name of the rule; a test holds it to the list of rules. */
export const RULE_HELP: { readonly [rule: string]: RuleHelp } = {
  ...WIRING_RULE_HELP,
  ...LIMIT_RULE_HELP,
  'waiver-expired': {
    title: 'A waiver has run out',
    means: 'The day until which the file sets a finding aside is past, so that the finding counts again.',
    todo: 'Cure what was set aside, or look at it anew and give the waiver another day and a reason that still holds.',
  },
  'waiver-unused': {
    title: 'A waiver sets nothing aside',
    means: 'No finding of that rule is about what the waiver names, or the waiver lacks the word that damage asks for.',
    todo: 'Take the waiver out, or correct its rule and what it is about.',
  },
};
