/**
 * `npm start [-- DIR]`: builds when it must and opens the window. DAYBOOK_WINDOW says how: `desktop` (Electron), `browser`, `address` (only
 * print it), or `auto`: Electron where it can be had without a long wait, else the browser, else the address. Ctrl-C ends it at any point.
 */
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { openBrowser, sandboxSwitches } from './browser.mjs';
import { build, whyNot } from './build.mjs';
import { daybookCommand, root, say } from './paths.mjs';
import { fetchRuntime, runtimePath } from './runtime.mjs';
import { startedIn } from './started-in.mjs';

const ways = ['auto', 'desktop', 'browser', 'address'];
const way = process.env.DAYBOOK_WINDOW || 'auto';
const [folder, ...more] = process.argv.slice(2);
const quit = (text, code) => {
  say(text);
  process.exit(code);
};
if (!ways.includes(way)) quit(`DAYBOOK_WINDOW is "${way}": it can be ${ways.join(', ')}.`, 2);
if (more.length > 0 || folder?.startsWith('-')) quit('npm start takes one daybook folder, or nothing: npm start [-- DIR]', 2);
const folders = folder === undefined ? [] : [resolve(startedIn('start'), folder)];

/** Everything started here ends with us. */
const ending = new AbortController();
const children = new Set();
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
  process.on(signal, () => {
    ending.abort();
    for (const child of children) child.kill('SIGTERM');
    // what was asked to stop has a moment to close its journal; then the launcher goes in any case
    setTimeout(() => process.exit(130), children.size > 0 ? 5000 : 0).unref();
    if (children.size === 0) process.exit(130);
  });

/** Starts a program and answers when it has ended: its exit code, or the signal that ended it. */
function run(command, args, { stdio, onChild = () => {} }) {
  return new Promise((done) => {
    const child = spawn(command, args, { cwd: root, stdio });
    children.add(child);
    onChild(child);
    const over = (end) => {
      children.delete(child);
      done(end);
    };
    child.on('error', (error) => over({ code: null, why: error.message }));
    child.on('close', (code, signal) => over({ code, why: signal ?? `exit code ${code}` }));
  });
}

/** Shows how far a download is: over one line on a terminal, else a line per tenth. */
function progress() {
  let shown = -1;
  return ({ stage, transferred, total }) => {
    if (stage === 'unpacking') say(`${process.stderr.isTTY && shown >= 0 ? '\n' : ''}unpacking the runtime …`);
    if (stage !== 'fetching') return;
    const mb = (bytes) => (bytes / 1e6).toFixed(0);
    const text = `fetching the desktop runtime: ${mb(transferred)} MB${total ? ` of ${mb(total)} MB` : ''}`;
    const step = total ? Math.floor((10 * transferred) / total) : Math.floor(transferred / 10e6);
    if (process.stderr.isTTY) process.stderr.write(`\r${text}`);
    else if (step > shown) say(text);
    shown = Math.max(shown, step);
  };
}

/** Opens the desktop window and answers null when it was closed, or why there was none. */
async function desktop() {
  let path = runtimePath();
  if (path === null) {
    const got = await fetchRuntime({ onReport: progress(), signal: ending.signal });
    if (ending.signal.aborted) process.exit(130);
    if (got.path === undefined)
      return `The desktop window needs Electron's runtime, which is not here and could not be fetched (${got.why})`;
    path = got.path;
  }
  const began = Date.now();
  const { code, why } = await run(path, [...sandboxSwitches(), root, ...folders], { stdio: 'inherit' });
  if (ending.signal.aborted) process.exit(130);
  // a window that was never there is told from one that was closed by its short life and its bad end
  if (code !== 0 && Date.now() - began < 8000) return `The desktop window did not start (${why})`;
  if (code !== 0) say(`The desktop window ended (${why}). What was kept is on the disk; npm start opens it again.`);
  process.exit(code ?? 1);
}

/** Serves the window on the loopback address until it is ended. */
async function serve(inBrowser) {
  const onChild = (child) => {
    createInterface({ input: child.stdout }).on('line', async (line) => {
      if (!line.startsWith('http://')) return;
      if (inBrowser && (await openBrowser(line))) say('The window is open in the browser. Ctrl-C here ends it.');
      else
        process.stdout.write(
          `${inBrowser ? 'No browser could be opened. ' : ''}Open this address once: ${line}\nCtrl-C ends it.\n`,
        );
    });
  };
  const { code } = await run(process.execPath, [daybookCommand, 'window', ...folders], {
    stdio: ['ignore', 'pipe', 'inherit'],
    onChild,
  });
  process.exit(ending.signal.aborted ? 130 : (code ?? 1));
}

const hasDisplay = process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);

try {
  await build();
} catch (error) {
  quit(`The program could not be built: ${whyNot(error)}`, 1);
}
if (way === 'desktop') quit(`${await desktop()}.`, 1);
if (way === 'auto' && hasDisplay)
  say(`${await desktop()}: opening the browser instead. It is the same window; DAYBOOK_WINDOW=browser goes there at once.`);
else if (way === 'auto')
  say(
    'There is no display here (neither DISPLAY nor WAYLAND_DISPLAY is set), so no window can be opened: only the address is printed.',
  );
await serve(way === 'browser' || (way === 'auto' && hasDisplay));
