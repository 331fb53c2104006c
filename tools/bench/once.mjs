/** Prints the milliseconds that one module takes to load and run once on a file: once.mjs MODULE FILE. */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const [, , module, file] = process.argv;
const text = readFileSync(file, 'utf8');
const from = performance.now();
const { run } = await import(pathToFileURL(module).href);
run(text);
console.log(performance.now() - from);
