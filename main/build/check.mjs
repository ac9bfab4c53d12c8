/** `npm run check`: form, lint and types of everything, two at a time. Runs them all, shows what each found, and fails where any found something. */
import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { cache, isAsked, root, say } from './paths.mjs';

const require = createRequire(import.meta.url);

/** The script behind a package's command, so that no shell and no PATH is needed. */
function script(name, command) {
  const file = require.resolve(`${name}/package.json`);
  const { bin } = require(file);
  return join(dirname(file), typeof bin === 'string' ? bin : bin[command]);
}

/** The compiler on one project, remembering what it has checked before. */
const types = (project) => [
  script('typescript', 'tsc'),
  '-p',
  project,
  '--incremental',
  '--tsBuildInfoFile',
  join(cache, `types-${project.replaceAll('/', '-')}.json`),
];

/** The longest first, so that nothing long is left for the end. */
const steps = [
  [
    'types of the window',
    () => [script('svelte-check', 'svelte-check'), '--tsconfig', 'tsconfig.json', '--fail-on-warnings', '--output', 'human'],
  ],
  ['types of the tests', () => types('test')],
  ['types of main', () => types('main')],
  ['types of the core', () => types('app/core')],
  ['form and lint', () => [script('@biomejs/biome', 'biome'), 'check', '--error-on-warnings', '.']],
];

/** Runs one check and shows all it said at once; true where it found nothing. */
function run([name, command]) {
  const began = performance.now();
  return new Promise((done) => {
    const said = [];
    const child = spawn(process.execPath, command(), { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
    child.stdout.on('data', (data) => said.push(data));
    child.stderr.on('data', (data) => said.push(data));
    child.on('error', (error) => said.push(Buffer.from(String(error))));
    child.on('close', (code) => {
      if (code !== 0) say(Buffer.concat(said).toString('utf8').trimEnd());
      say(`${code === 0 ? 'clean' : 'NOT CLEAN'}: ${name} (${((performance.now() - began) / 1000).toFixed(1)} s)`);
      done(code === 0);
    });
  });
}

/** Runs every check; true where all are clean. */
export async function check() {
  mkdirSync(cache, { recursive: true });
  const waiting = [...steps];
  let clean = true;
  const worker = async () => {
    for (let step = waiting.shift(); step !== undefined; step = waiting.shift()) clean = (await run(step)) && clean;
  };
  await Promise.all([worker(), worker()]);
  return clean;
}

if (isAsked(import.meta.url)) process.exitCode = (await check()) ? 0 : 1;
