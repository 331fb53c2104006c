/** Bundles the command and the library with esbuild, and writes the licences of what was bundled in. */
import { chmodSync, existsSync, readFileSync, readdirSync } from 'node:fs';
import { build } from 'esbuild';
import { inRoot, writeIfChanged } from './files.mjs';
import { yamlModule } from './in-memory.mjs';

const shared = {
  bundle: true,
  minify: true,
  target: 'node20',
  absWorkingDir: inRoot(),
  logLevel: 'warning',
  metafile: true,
  // What the package needs is in it: it has no dependencies, so nothing else can change under it.
  alias: yamlModule,
};

/**
 * The schema check of profiles is a third of all code, and asked for only where somebody has profiles of their own: the command
 * has it in a file beside it, so that a start does not read it.
 */
const asleep = {
  name: 'asleep',
  setup({ onLoad, onResolve }) {
    const beside = './profile-validators.cjs';
    onLoad({ filter: /source\/generated\/profile-validators\.js$/ }, () => ({
      contents: `export const known = () => require('${beside}').known();`,
    }));
    onResolve({ filter: /profile-validators\.cjs$/ }, () => ({ path: beside, external: true }));
  },
};

const profileCheck = {
  ...shared,
  platform: 'node',
  format: 'cjs',
  entryPoints: ['src/source/generated/profile-validators.js'],
  outfile: 'dist/profile-validators.cjs',
};

/**
 * One file: a start-up reads nothing else, and what a command imports dynamically stays asleep inside it. CommonJS, since
 * Node 20 starts that some milliseconds sooner than the same as a module, and no later than several small modules.
 */
const command = {
  ...shared,
  platform: 'node',
  format: 'cjs',
  entryPoints: ['src/cli/main.ts'],
  outfile: 'dist/ampledger.cjs',
  banner: { js: '#!/usr/bin/env node' },
  // As a module it asks where it lies, which a bundle cannot tell.
  alias: { ...yamlModule, fdir: inRoot('node_modules/fdir/dist/index.cjs') },
  plugins: [asleep],
};

/** The library knows nothing of Node: it runs in a browser too. */
const library = {
  ...shared,
  platform: 'neutral',
  format: 'esm',
  entryPoints: ['src/index.ts'],
  outfile: 'dist/index.js',
};

export async function bundle() {
  const says = [];
  for (const options of [command, profileCheck, library]) {
    const [entry] = options.entryPoints;
    if (!existsSync(inRoot(entry))) {
      says.push(`${entry} is not there yet, so ${options.outfile} is left out`);
      continue;
    }
    const { metafile } = await build(options);
    const { bytes } = metafile.outputs[options.outfile];
    says.push(`${options.outfile} ${Math.round(bytes / 1024)} kB`);
    if (options === command) {
      chmodSync(inRoot(options.outfile), 0o755);
      writeIfChanged('dist/third-party-licences.txt', licences(Object.keys(metafile.inputs)));
    }
  }
  return says.join(', ');
}

/** The licences of all packages that something was bundled from. */
function licences(inputs) {
  const packages = new Set(
    inputs.map((path) => /^node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1]).filter(Boolean),
  );
  return [...packages].sort().map(licenceOf).join('\n\n');
}

function licenceOf(name) {
  const folder = inRoot('node_modules', name);
  const { version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
  const text = file ? readFileSync(`${folder}/${file}`, 'utf8').trim() : 'No licence file.';
  return `${name} ${version} (${license})\n\n${text}`;
}
