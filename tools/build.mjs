/**
 * Builds everything: schemas, validators, catalogue, command, library, declarations.
 *
 *   node tools/build.mjs                    all of it
 *   node tools/build.mjs --generated-only   only what the sources import: for tests and type checks
 *   node tools/build.mjs --no-types         all but the declarations
 */
import { bundle } from './build/bundles.mjs';
import { compileProfiles } from './build/profiles.mjs';
import { assembleSchemas } from './build/schemas.mjs';
import { declarations } from './build/types.mjs';
import { compileValidators } from './build/validators.mjs';

const flags = process.argv.slice(2);
const unknown = flags.filter((flag) => flag !== '--generated-only' && flag !== '--no-types');
if (unknown.length > 0) {
  console.error(`tools/build.mjs does not know ${unknown.join(', ')}. It knows --generated-only and --no-types.`);
  process.exit(2);
}

async function step(name, run) {
  const start = performance.now();
  try {
    const says = await run();
    console.log(`${name.padEnd(12)}${String(Math.round(performance.now() - start)).padStart(6)} ms  ${says}`);
  } catch (error) {
    console.error(`${name} failed\n${error.report ?? error.stack}`);
    process.exit(1);
  }
}

await step('schemas', assembleSchemas);
await step('validators', compileValidators);
await step('profiles', compileProfiles);
if (!flags.includes('--generated-only'))
  await Promise.all([step('bundles', bundle), flags.includes('--no-types') || step('types', declarations)]);
