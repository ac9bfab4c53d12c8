/**
 * Builds dist/. It is made aside and its files are renamed in one by one, the page last, so that a command that is running or starting always
 * finds whole files, and two commands never race. What the build says goes to standard error.
 */
import { cpSync, existsSync, mkdirSync, readdirSync, renameSync, rmdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { stripVTControlCharacters } from 'node:util';
import { alone } from './lock.mjs';
import { cache, dist, isAsked, root, say } from './paths.mjs';
import { look, stamp, upToDate } from './stamp.mjs';

/** Every file below `folder`, as paths relative to it. */
function filesIn(folder, below = '') {
  if (!existsSync(join(folder, below))) return [];
  return readdirSync(join(folder, below), { withFileTypes: true }).flatMap((item) => {
    const path = below === '' ? item.name : `${below}/${item.name}`;
    return item.isDirectory() ? filesIn(folder, path) : [path];
  });
}

/** Moves a finished build into dist/: what others refer to first, what refers to them last; then what is no longer part of it goes. */
function moveIn(made) {
  const files = filesIn(made).sort((a, b) => Number(a.endsWith('index.html')) - Number(b.endsWith('index.html')));
  for (const file of files) {
    mkdirSync(dirname(join(dist, file)), { recursive: true });
    renameSync(join(made, file), join(dist, file));
  }
  for (const old of filesIn(dist)) {
    if (files.includes(old) || old.startsWith('built.json')) continue;
    rmSync(join(dist, old), { force: true });
    try {
      rmdirSync(dirname(join(dist, old)));
    } catch {
      // not empty
    }
  }
  return files;
}

/** Leavings of builds that were cut off. */
function sweep() {
  for (const name of readdirSync(cache))
    if (name.startsWith('build-')) rmSync(join(cache, name), { recursive: true, force: true });
}

async function make() {
  const began = performance.now();
  const now = look();
  const contents = now.contents();
  sweep();
  const made = join(cache, `build-${process.pid}`);
  // whatever the shell or a test runner says: what is built is the program people use
  const kind = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  // Vite is loaded only when something has to be built: an up-to-date command never waits for it
  const [{ build }, { windowConfig, nodeConfig, programs }] = await Promise.all([import('vite'), import('./configs.mjs')]);
  try {
    await build(windowConfig(made));
    for (const [name, entry] of Object.entries(programs)) await build(nodeConfig(made, name, entry));
    // papers are drawn with the fonts beside the programs
    cpSync(join(root, 'assets/fonts'), join(made, 'fonts'), { recursive: true });
    const files = moveIn(made);
    stamp(now.times, contents, files);
    say(`built dist/ in ${((performance.now() - began) / 1000).toFixed(1)} s`);
  } finally {
    if (kind === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = kind;
    rmSync(made, { recursive: true, force: true });
  }
}

/** Whatever a build prints goes to standard error: standard output belongs to the command that asked. */
async function aside(work) {
  const write = process.stdout.write;
  process.stdout.write = process.stderr.write.bind(process.stderr);
  try {
    return await work();
  } finally {
    process.stdout.write = write;
  }
}

/** Builds dist/ where it is missing or older than the sources; with `anyway`, in every case. */
export async function build({ anyway = false } = {}) {
  if (!anyway && upToDate()) return;
  await aside(() =>
    alone(
      async () => {
        if (anyway || !upToDate()) {
          say(`building ${dist.slice(root.length)} …`);
          await make();
        }
      },
      () => say('another command is building: waiting for it …'),
    ),
  );
}

/** What went wrong with a build, in one line for a person. */
export function whyNot(error) {
  const text = stripVTControlCharacters(error instanceof Error ? error.message : String(error));
  return text
    .split('\n')
    .filter((line) => line.trim() !== '')
    .slice(0, 2)
    .join(' ');
}

if (isAsked(import.meta.url)) {
  try {
    await build({ anyway: process.argv.includes('--force') });
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  }
}
