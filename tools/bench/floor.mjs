/** Prints the milliseconds that reading and schema check of all files take, one after the other: floor.mjs MODULE FOLDER */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [, , module, folder] = process.argv;
const from = performance.now();
const { run } = await import(pathToFileURL(module).href);
for (const name of readdirSync(folder)) run(readFileSync(join(folder, name), 'utf8'));
console.log(performance.now() - from);
