/**
 * `npm run package [-- linux|windows|mac] [folder]`: builds and makes the installers of this system, or of the one named, in .cache/installers;
 * `folder` makes the unpacked program only. Where Electron's runtime or a tool of the packager cannot be had it says so and what to do, and ends
 * with 1; no network holds it for long. Nothing is published.
 */
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { build, whyNot } from './build.mjs';
import { electronDist, wayOut } from './electron-dist.mjs';
import { cache, isAsked, root, say } from './paths.mjs';

const systems = { linux: 'linux', windows: 'win32', mac: 'darwin' };
const switches = { linux: '--linux', win32: '--win', darwin: '--mac' };

/** The places the packager fetches its own tools from; asked before it is, because it waits ten minutes at a time. */
const toolsPlace = (env) =>
  env.ELECTRON_BUILDER_BINARIES_MIRROR || 'https://github.com/electron-userland/electron-builder-binaries/';
const hasProxy = (env) => Boolean(env.HTTPS_PROXY || env.https_proxy || env.HTTP_PROXY || env.http_proxy);

/** True where something answers at `place` within `ms`. */
async function answers(place, ms) {
  try {
    await fetch(place, { method: 'HEAD', redirect: 'manual', signal: AbortSignal.timeout(ms) });
    return true;
  } catch {
    return false;
  }
}

const packager = () => {
  const file = createRequire(import.meta.url).resolve('electron-builder/package.json');
  return join(dirname(file), 'cli.js');
};

/** The packager's complaint without its stack trace. */
const reasonIn = (line) => line.replace(/^\s*⨯\s*/, '').replace(/\s*(failedTask|stackTrace)=.*$/, '');

/**
 * Makes them from what is built and the runtime in `dist`: null, or why not in one line. Given up when the packager says nothing for `silentMs`.
 * @param {{ platform: string, dist: string, out?: string, targets?: string[], env?: Record<string, string | undefined>, silentMs?: number,
 *   knockMs?: number, onLine?: (line: string) => void, signal?: AbortSignal }} wanted
 * @returns {Promise<string | null>}
 */
export async function makeInstallers({
  platform,
  dist,
  out = join(cache, 'installers'),
  targets = [],
  env = process.env,
  silentMs = 600_000,
  knockMs = 3000,
  onLine = say,
  signal,
}) {
  const closed = !hasProxy(env) && !(await answers(toolsPlace(env), knockMs));
  // what it has kept from before is enough; what it would fetch is refused at once by a port where nobody listens
  const proxy = closed ? { HTTPS_PROXY: 'http://127.0.0.1:9', HTTP_PROXY: 'http://127.0.0.1:9' } : {};
  const options = [
    '--config',
    'electron-builder.yml',
    `-c.electronDist=${dist}`,
    `-c.directories.output=${out}`,
    '--publish',
    'never',
  ];
  return new Promise((done) => {
    const group = process.platform !== 'win32';
    const child = spawn(process.execPath, [packager(), switches[platform], ...targets, ...options], {
      cwd: root,
      env: { ...env, ...proxy, ELECTRON_BUILDER_DISABLE_UPDATE_CHECK: 'true', CSC_IDENTITY_AUTO_DISCOVERY: 'false' },
      stdio: ['ignore', 'pipe', 'pipe'],
      // a group of its own: the tools it starts end with it
      detached: group,
    });
    let why = '';
    const end = (reason) => {
      why ||= reason;
      try {
        if (group) process.kill(-child.pid, 'SIGKILL');
        else child.kill('SIGKILL');
      } catch {
        // it has ended already
      }
    };
    const silent = () => end(`the packager said nothing for ${silentMs / 60_000} minutes`);
    let timer = setTimeout(silent, silentMs);
    signal?.addEventListener('abort', () => end('ended by hand'), { once: true });
    for (const stream of [child.stdout, child.stderr])
      createInterface({ input: stream }).on('line', (line) => {
        clearTimeout(timer);
        timer = setTimeout(silent, silentMs);
        if (line.includes('⨯')) why ||= reasonIn(line);
        // the rest of a complaint is its stack trace
        else if (line.includes('•')) onLine(line);
      });
    child.on('error', (error) => {
      why ||= error.message;
    });
    child.on('close', (code) => {
      clearTimeout(timer);
      if (code === 0 && why === '') return done(null);
      const tools = closed
        ? ` The place of the packager's tools does not answer (${new URL(toolsPlace(env)).host}): set ELECTRON_BUILDER_BINARIES_MIRROR, or ELECTRON_BUILDER_CACHE to a folder that holds them, or add the word “folder”, which needs none.`
        : '';
      done(`${why || `the packager ended with ${code}`}.${tools}`);
    });
  });
}

/** The command itself; answers its exit code. */
async function command(words) {
  const folder = words.includes('folder');
  const [system, ...more] = words.filter((word) => word !== 'folder');
  const platform = system === undefined ? process.platform : systems[system];
  if (platform === undefined || more.length > 0 || !(platform in switches)) {
    say('npm run package takes linux, windows or mac (this system, if left out), and "folder" for the unpacked program alone.');
    return 2;
  }
  try {
    await build();
  } catch (error) {
    say(`The program could not be built: ${whyNot(error)}`);
    return 1;
  }
  const got = await electronDist({ platform });
  if (got.path === undefined) {
    say(`No installer was made: Electron's runtime cannot be had (${got.why}).`);
    say(wayOut(platform, process.arch));
    return 1;
  }
  const ending = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => ending.abort());
  const out = join(cache, 'installers');
  const why = await makeInstallers({ platform, dist: got.path, out, targets: folder ? ['dir'] : [], signal: ending.signal });
  if (ending.signal.aborted) return 130;
  say(why === null ? `Made in ${out}` : `No installer was made: ${why}`);
  return why === null ? 0 : 1;
}

if (isAsked(import.meta.url)) process.exitCode = await command(process.argv.slice(2));
