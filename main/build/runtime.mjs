/**
 * Where Electron's runtime lies, and how it is got. The package itself brings none, and asking the package for its path would start a
 * download that nobody watches: so its notes on disk are read instead, and the package is never loaded.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { cache, root } from './paths.mjs';

const home = join(root, 'node_modules/electron');

const read = (file) => {
  try {
    return readFileSync(join(home, file), 'utf8').trim();
  } catch {
    return null;
  }
};

/**
 * The runtime's executable, or null where there is none of the version this program is made for.
 * @param {Record<string, string | undefined>} [env]
 * @returns {string | null}
 */
export function runtimePath(env = process.env) {
  const name = read('path.txt');
  const elsewhere = env.ELECTRON_OVERRIDE_DIST_PATH;
  if (elsewhere) {
    const path = join(elsewhere, name ?? (process.platform === 'win32' ? 'electron.exe' : 'electron'));
    return existsSync(path) ? path : null;
  }
  const has = read('dist/version')?.replace(/^v/, '');
  const wanted = JSON.parse(read('package.json') ?? '{}').version;
  if (name === null || has === undefined || has !== wanted) return null;
  const path = join(home, 'dist', name);
  return existsSync(path) ? path : null;
}

/**
 * Gets the runtime: `{ path }`, or `{ why }` in a few words. `onReport` hears of each stage. Gives up when nothing was heard for `silentMs`
 * (unpacking, which reports nothing, may take `unpackMs`); `signal` ends it.
 * @param {{ env?: Record<string, string | undefined>, knockMs?: number, silentMs?: number, unpackMs?: number, signal?: AbortSignal,
 *   onReport?: (report: { stage: string, transferred?: number, total?: number | null, why?: string }) => void }} [settings]
 * @returns {Promise<{ path: string, why?: undefined } | { why: string, path?: undefined }>}
 */
export function fetchRuntime({
  env = process.env,
  knockMs = 3000,
  silentMs = 20_000,
  unpackMs = 180_000,
  onReport = () => {},
  signal,
} = {}) {
  return new Promise((done) => {
    const aside = join(cache, `runtime-${process.pid}`);
    mkdirSync(aside, { recursive: true });
    const child = spawn(
      process.execPath,
      [fileURLToPath(new URL('./fetch-runtime.mjs', import.meta.url)), String(knockMs), aside],
      {
        env: { ...env, NODE_NO_WARNINGS: '1' },
        stdio: ['ignore', 'pipe', 'pipe'],
      },
    );
    let why = '';
    let timer;
    const giveUp = (reason) => {
      why ||= reason;
      child.kill('SIGKILL');
    };
    const watch = (ms, reason) => {
      clearTimeout(timer);
      timer = setTimeout(() => giveUp(reason), ms);
    };
    const ended = () => {
      giveUp('ended by hand');
      // the launcher may be gone before the child's end is heard
      rmSync(aside, { recursive: true, force: true });
    };
    signal?.addEventListener('abort', ended, { once: true });
    watch(silentMs, `nothing came for ${silentMs / 1000} s`);
    createInterface({ input: child.stdout }).on('line', (line) => {
      let report;
      try {
        report = JSON.parse(line);
      } catch {
        return;
      }
      if (report.stage === 'failed') why = report.why;
      else if (report.stage === 'unpacking') watch(unpackMs, `unpacking took longer than ${unpackMs / 1000} s`);
      else watch(silentMs, `nothing came for ${silentMs / 1000} s`);
      onReport(report);
    });
    let complaint = '';
    child.stderr.on('data', (data) => {
      complaint = `${complaint}${data}`.slice(-4000);
    });
    child.on('error', (error) => {
      why ||= error.message;
    });
    child.on('close', () => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', ended);
      rmSync(aside, { recursive: true, force: true });
      const path = runtimePath(env);
      done(path === null ? { why: why || complaint.trim().split('\n')[0] || 'its installer left nothing' } : { path });
    });
  });
}
