/** Bundles the command and the library with esbuild, and writes the licences of what was bundled in. */
import { chmodSync, existsSync, readFileSync, readdirSync } from 'node:fs';
import { build } from 'esbuild';
import { inRoot, writeIfChanged } from './files.mjs';
import { yamlModule } from './in-memory.mjs';

const shared = {
  bundle: true,
  minify: true,
  format: 'esm',
  target: 'node20',
  absWorkingDir: inRoot(),
  logLevel: 'warning',
  metafile: true,
};

/** One file: a start-up reads nothing else, and what a command imports dynamically stays asleep inside it. */
const command = {
  ...shared,
  platform: 'node',
  entryPoints: ['src/cli/main.ts'],
  outfile: 'dist/ampledger.js',
  // Some packages inside are CommonJS and ask for Node's own modules by `require`.
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire } from 'node:module';\nconst require = createRequire(import.meta.url);",
  },
  alias: yamlModule,
};

/** The library leaves its dependencies outside, and knows nothing of Node: it runs in a browser too. */
const library = {
  ...shared,
  platform: 'neutral',
  entryPoints: ['src/index.ts'],
  outfile: 'dist/index.js',
  external: ['yaml'],
};

export async function bundle() {
  const says = [];
  for (const options of [command, library]) {
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
  const packages = new Set(inputs.map((path) => /^node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1]).filter(Boolean));
  return [...packages].sort().map(licenceOf).join('\n\n');
}

function licenceOf(name) {
  const folder = inRoot('node_modules', name);
  const { version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
  const text = file ? readFileSync(`${folder}/${file}`, 'utf8').trim() : 'No licence file.';
  return `${name} ${version} (${license})\n\n${text}`;
}
