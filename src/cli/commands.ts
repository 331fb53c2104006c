/** The commands as data: what they take, what they say about themselves, and where their work is done. */
import { PROFILE_KINDS } from '../catalogue/profile.js';
import { severities } from '../reports/severity.js';
import type { Arguments } from './arguments.js';
import { COMPARED } from './comparison-text.js';
import { KINDS } from './corners.js';
import { endingWords, FORMATS } from './formats.js';

export interface Option {
  /** What stands for the value in the help; an option without one is a switch. */
  readonly value?: string;
  readonly says: string;
  /** The only values it takes. */
  readonly oneOf?: readonly string[];
  /** It may be given more than once. */
  readonly repeats?: true;
}

export interface Command {
  readonly summary: string;
  readonly operands: { readonly named: readonly string[]; readonly least: number; readonly most: number };
  readonly options: { readonly [name: string]: Option };
  /** What the exit status goes by, where that needs saying. */
  readonly status?: string;
  readonly examples: readonly (readonly [line: string, says: string])[];
  /** Loads the work and does it; gives the exit status. */
  readonly run: (given: Arguments) => Promise<number>;
}

const format = (...formats: readonly string[]): Option => ({
  value: 'FORMAT',
  says: `${joinedByOr(formats)}; ${formats[0]} when not said`,
  oneOf: formats,
});

/** 'a or b', 'a, b or c'. */
const joinedByOr = (words: readonly string[]): string => `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

const conditions = {
  mode: { value: 'NAME', says: 'only this mode of the file' },
  variant: { value: 'NAME', says: 'this variant, in place of the file as it stands' },
  ambient: { value: 'RANGE', says: "in place of the project's; places keep theirs" },
} as const satisfies { readonly [name: string]: Option };

/** How reports are delivered, and what makes them fail. */
const delivery = {
  format: { value: 'FORMAT', says: 'what is printed; terminal when not said', oneOf: FORMATS },
  output: { value: 'FILE', says: 'also written, by its ending; again for another', repeats: true },
  'fail-at': {
    value: 'VERDICT',
    says: 'exit with 1 from this verdict on; breach when not said',
    oneOf: [...severities.filter((verdict) => verdict !== 'sound'), 'never'],
  },
} as const satisfies { readonly [name: string]: Option };

export const commands: { readonly [name: string]: Command } = {
  audit: {
    summary: 'hold every current against its limit, and say what to change',
    operands: { named: ['FILE…'], least: 1, most: Infinity },
    options: {
      ...delivery,
      ...conditions,
      corners: {
        value: 'KIND',
        says: 'likelier bounds beside the extremes, which are judged',
        oneOf: KINDS,
      },
      builds: { value: 'N', says: 'how many builds monte-carlo draws; 1000 when not said' },
      seed: { value: 'S', says: 'where its draws start; the same seed draws the same builds' },
      all: { says: 'every account, remedy and assumption; every report of many' },
      workers: { value: 'N', says: 'threads that share many files; one a core when not said' },
      'time-limit': { value: 'TIME', says: 'for one file of many; 5 min when not said' },
      part: { value: 'I/N', says: 'of many files this share, for one of N machines' },
      watch: { says: 'again at every change, until Ctrl-C' },
    },
    status: `FILE is a file; or a folder, or a quoted pattern, for every project there: what
begins with \`ampledger:\`. After a ! it is left out. Many are told a line each.

FILE of --output ends in ${endingWords(FORMATS)}.

The exit status goes by the file as it stands; variants are shown beside it.
With --variant it goes by that one.`,
    examples: [
      ['ampledger audit shed.yaml', 'a report to read'],
      ["ampledger audit shed.yaml --ambient '0 to 60 °C'", 'in a hotter summer'],
      ['ampledger audit shed.yaml --corners rss', 'with the root of the sum of squares of what each tolerance does'],
      [
        'ampledger audit shed.yaml --corners monte-carlo --builds 5000 --seed 7',
        'with what 99.73 % of builds lie between, each figure anywhere in its range',
      ],
      ['ampledger audit --format json *.yaml', 'an array for another program'],
      ['ampledger audit *.yaml --output gate.sarif', 'the report, and one for a hosting site'],
      ['ampledger audit shed.yaml --variant external', 'one variant of the file in full, and its exit status'],
      ['cat shed.yaml | ampledger audit -', 'from standard input'],
      ["ampledger audit 'projects/**/*.yaml' '!projects/old/**'", 'every project below a folder, but for some'],
      ['ampledger audit projects --part 3/8 --format part > 3.part', 'one share of eight, for merge'],
      ['ampledger audit shed.yaml --watch', 'while you write it'],
    ],
    run: async (given) => (await import('./audit.js')).audit(given),
  },
  merge: {
    summary: 'put the parts of an audit of many files together',
    operands: { named: ['PART…'], least: 1, most: Infinity },
    options: {
      ...delivery,
      all: { says: 'every report, with every account, remedy and assumption' },
    },
    status: `PART is what audit --part I/N wrote in the format \`part\`: all N of them, in
any order. What comes out, the exit status too, is what one machine gives.`,
    examples: [
      ['ampledger merge *.part', 'as an audit of all the files'],
      ['ampledger merge *.part --output gate.sarif --output gate.xml', 'and written into files'],
    ],
    run: async (given) => (await import('./merge.js')).merge(given),
  },
  working: {
    summary: 'the sums behind an account, a circuit or a finding',
    operands: { named: ['FILE', 'NAME'], least: 2, most: 2 },
    options: { format: format('terminal', 'json'), ...conditions },
    examples: [
      ['ampledger working shed.yaml main.D9', 'an account, by the name the audit gives it'],
      ['ampledger working shed.yaml coil-on-pin', 'a finding, by its rule'],
    ],
    run: async (given) => (await import('./working.js')).working(given),
  },
  rule: {
    summary: 'what a rule means and rests on, with an example and its sums',
    operands: { named: ['[NAME]'], least: 0, most: 1 },
    options: { format: format('terminal', 'json') },
    examples: [
      ['ampledger rule', 'the names of all, by family'],
      ['ampledger rule coil-pull-in', 'one of them, by the name that a finding gives it'],
    ],
    run: async (given) => (await import('./rule.js')).rule(given),
  },
  options: {
    summary: 'every way to feed a relay board, each audited',
    operands: { named: ['FILE', '[BOARD]'], least: 1, most: 2 },
    options: { format: format('terminal', 'json'), ...conditions, all: { says: 'every option in the table' } },
    examples: [
      ['ampledger options shed.yaml', 'of every relay board of the file'],
      ['ampledger options shed.yaml vents', 'of one board'],
    ],
    run: async (given) => (await import('./options.js')).options(given),
  },
  advise: {
    summary: 'the fewest changes that make a project sound, each proved',
    operands: { named: ['FILE'], least: 1, most: 1 },
    options: {
      format: format('terminal', 'json'),
      'into-file': { says: 'write the changes into the file; the rest stays as it is' },
      keep: { says: 'with --into-file: the former text stays, as FILE.before' },
      ...conditions,
      all: { says: 'every account that gets better' },
    },
    examples: [
      ['ampledger advise shed.yaml', 'what to change, and the books before and after'],
      ['ampledger advise shed.yaml --into-file', 'the same, written into the file'],
    ],
    run: async (given) => (await import('./advise.js')).advise(given),
  },
  headroom: {
    summary: 'how many more of a load fit, and what stops the next one',
    operands: { named: ['FILE'], least: 1, most: 1 },
    options: {
      more: { value: 'LOAD', says: 'the load or circuit that more is wanted of' },
      format: format('terminal', 'json'),
      ...conditions,
    },
    examples: [
      ['ampledger headroom shed.yaml --more vents.1', 'is there room for a fifth relay?'],
      ['ampledger headroom shed.yaml --more lamp', 'how many more lamps'],
    ],
    run: async (given) => (await import('./headroom.js')).headroom(given),
  },
  compare: {
    summary: 'what a change makes better and worse',
    operands: { named: ['OLD NEW | --from REV [--to REV] [FILE…]'], least: 0, most: Infinity },
    options: {
      from: { value: 'REV', says: 'a git revision: each project file then, or those named' },
      to: { value: 'REV', says: 'another revision; the working tree when not said' },
      format: format(...COMPARED),
      output: { ...delivery.output, says: 'also written: ends in .txt, .json, .md or .sarif' },
      'fail-at': {
        value: 'VERDICT',
        says: 'exit with 1 if the change brings one; breach when not said',
        oneOf: [...severities.filter((verdict) => verdict !== 'sound'), 'never'],
      },
      ...conditions,
      all: { says: 'every account, and what is as before' },
    },
    status:
      'The exit status is 1 when a finding of the failing verdict is new, or one\nthat was there is worse than before. What was there already does not count.',
    examples: [
      ['ampledger compare shed-old.yaml shed.yaml', 'two files'],
      ['ampledger compare --from main', 'every project of the repository, since main'],
      ['ampledger compare --from v1.0 --to v1.1 shed.yaml', 'one file at two revisions'],
      ['ampledger compare --from origin/main --output comment.md', 'and as a comment on a pull request'],
    ],
    run: async (given) => (await import('./compare.js')).compare(given),
  },
  catalogue: {
    summary: 'what is in the catalogue, or one thing of it with all its sources',
    operands: { named: ['[ID | prove FILE…]'], least: 0, most: Infinity },
    options: {
      format: format('terminal', 'json'),
      kind: { value: 'KIND', says: 'only things of this kind', oneOf: PROFILE_KINDS },
      type: { value: 'TYPE', says: 'only this type: coil, led, npn, schottky' },
      voltage: { value: 'VOLTS', says: 'rated for it, working at it or made to bear it' },
      channels: { value: 'N', says: 'with so many channels' },
      find: { value: 'WORDS', says: 'all of these words in its name, figures, documents' },
    },
    examples: [
      ['ampledger catalogue', 'all of it, by kind and type'],
      ['ampledger catalogue npn-2n2222a', 'one profile, figure by figure, with its sources'],
      ['ampledger catalogue --type coil --voltage 12V', 'coils for 12 V'],
      ["ampledger catalogue --find 'humidity sensor'", 'by words'],
      ['ampledger catalogue prove our-relay.yaml', 'a profile of your own, held to the same rigour'],
      ['ampledger catalogue prove our-boards', 'all in a folder'],
    ],
    run: async (given) => (await import('./catalogue.js')).catalogue(given),
  },
};
