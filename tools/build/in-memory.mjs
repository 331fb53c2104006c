/** Loads TypeScript of src/ into the build itself, without a file on the way. */
import { build } from 'esbuild';
import { inRoot } from './files.mjs';

/** The YAML library's module for browsers: nothing of Node in it, and what is not used falls away. */
export const yamlModule = { yaml: inRoot('node_modules/yaml/browser/index.js') };

/** The exports of a piece of TypeScript that imports from `src/source/` and the like. @param platform `node` for what prints */
export async function evaluate(contents, platform = 'neutral') {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: inRoot(), loader: 'ts' },
    bundle: true,
    format: 'esm',
    platform,
    target: 'node20',
    alias: yamlModule,
    write: false,
    logLevel: 'warning',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}
