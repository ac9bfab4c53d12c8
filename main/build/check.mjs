/** `npm run check`: form, lint and types of everything. Fails on the first finding of each, after having run them all. */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { isAsked, root, say } from './paths.mjs';

const require = createRequire(import.meta.url);

/** The script behind a package's command, so that no shell and no PATH is needed. */
function script(name, command) {
  const file = require.resolve(`${name}/package.json`);
  const { bin } = require(file);
  return join(dirname(file), typeof bin === 'string' ? bin : bin[command]);
}

const steps = [
  ['form and lint', () => [script('@biomejs/biome', 'biome'), 'check', '--error-on-warnings', '.']],
  ['types of the core', () => [script('typescript', 'tsc'), '-p', 'app/core']],
  ['types of main', () => [script('typescript', 'tsc'), '-p', 'main']],
  ['types of the tests', () => [script('typescript', 'tsc'), '-p', 'test']],
  [
    'types of the window',
    () => [script('svelte-check', 'svelte-check'), '--tsconfig', 'tsconfig.json', '--fail-on-warnings', '--output', 'human'],
  ],
];

/** Runs every check; true where all are clean. */
export function check() {
  let clean = true;
  for (const [name, command] of steps) {
    const began = performance.now();
    const { status } = spawnSync(process.execPath, command(), { cwd: root, stdio: ['ignore', 2, 2] });
    say(`${status === 0 ? 'clean' : 'NOT CLEAN'}: ${name} (${((performance.now() - began) / 1000).toFixed(1)} s)`);
    if (status !== 0) clean = false;
  }
  return clean;
}

if (isAsked(import.meta.url)) process.exitCode = check() ? 0 : 1;
