/** How the house is built: which part of src/ may know which, and what of the world outside. */

/** The parts of src/ from the ground up: each imports only from those above it in this list. */
export const order = [
  { part: 'quantity', why: 'numbers with units are what all others speak in, so they know of nothing else' },
  { part: 'circuit', why: 'electrical laws hold whatever file or board the numbers come from' },
  { part: 'source', why: 'a text is read and checked before anyone asks what is in the catalogue' },
  { part: 'catalogue', why: 'profiles are facts: they stand whatever a project does with them' },
  { part: 'loads', why: 'a type of load says what it is, not which project it stands in' },
  { part: 'project', why: 'names are bound once, before anything is summed' },
  { part: 'ledger', why: 'the books are kept without a thought of what will be found in them' },
  { part: 'checks', why: 'a judgement reads the books and cannot change them' },
  { part: 'wording', why: 'sentences are made from findings; were it the other way round, words would decide' },
  { part: 'remedies', why: 'a cure answers a finding and says so in words' },
  { part: 'studies', why: 'a study is many audits with their cures' },
  { part: 'lessons', why: 'an exercise is made of audits and studies' },
  { part: 'reports', why: 'a report shows whatever the others found, and nothing depends on how it looks' },
  { part: 'index', why: 'the library is the core under one name, so no part of the core may need it whole' },
  { part: 'cli', why: 'the shell: files, processes and the terminal are known here and nowhere else' },
] as const;

export type Part = (typeof order)[number]['part'];

/** The one part that may touch the world: everything else is pure and runs in a browser. */
export const shell: Part = 'cli';

/** Packages of others, where they may be imported, and why. What is not listed may be imported nowhere in src/. */
export const packages: readonly { readonly name: string; readonly parts: readonly Part[]; readonly why: string }[] = [
  { name: 'yaml', parts: ['source'], why: 'a document with places; whoever comes later works with plain data' },
  { name: 'chalk', parts: ['cli'], why: 'colour is for a terminal' },
  { name: 'cli-table3', parts: ['cli'], why: 'columns are laid out for a terminal' },
  { name: 'cli-progress', parts: ['cli'], why: 'who waits at a terminal sees how long' },
  { name: 'tinyglobby', parts: ['cli'], why: 'patterns are looked for among files' },
  { name: 'workerpool', parts: ['cli'], why: 'threads belong to the process' },
  { name: 'chokidar', parts: ['cli'], why: 'files change while the program waits' },
];

/** What the pure core may not reach for. Names that only a browser has are no names to the compiler. */
export const outside: readonly { readonly names: readonly string[]; readonly why: string }[] = [
  { names: ['process', 'Buffer', 'require', '__dirname', '__filename', 'import.meta'], why: 'a browser has none' },
  { names: ['console'], why: 'what is said is returned' },
  { names: ['fetch', 'crypto', 'WebSocket'], why: 'no world outside' },
  { names: ['globalThis'], why: 'all of the above by another name' },
  { names: ['Date.now', 'new Date()', 'performance'], why: 'the day is given by the caller, or two runs differ' },
  { names: ['Math.random'], why: 'draws come from a seed, or two runs differ' },
  { names: ['eval', 'Function'], why: 'no code runs from a project file' },
  {
    names: ['async', 'await', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask'],
    why: 'the core is synchronous',
  },
];
