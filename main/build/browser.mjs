/** Opens an address in a browser of this machine: in a window of its own where Chromium is at hand, else in whatever the person uses. */
import { spawn } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * The first of these commands that the PATH holds, as a full path, or null.
 * @param {string[]} names
 * @param {Record<string, string | undefined>} [env]
 * @returns {string | null}
 */
export function onPath(names, env = process.env) {
  for (const name of names)
    for (const folder of (env.PATH ?? '').split(delimiter)) {
      if (folder === '') continue;
      try {
        accessSync(join(folder, name), constants.X_OK);
        return join(folder, name);
      } catch {
        // not here
      }
    }
  return null;
}

/** True for the one account under which Chromium refuses its own sandbox. */
const isRoot = () => process.platform === 'linux' && process.getuid?.() === 0;

/** What `--no-sandbox` is needed for, and for nothing else. */
export const sandboxSwitches = () => (isRoot() ? ['--no-sandbox'] : []);

/**
 * What to try, in order.
 * @param {string} address
 * @param {string} [platform]
 * @param {Record<string, string | undefined>} [env]
 * @returns {[command: string, args: string[]][]}
 */
export function waysToOpen(address, platform = process.platform, env = process.env) {
  if (platform === 'darwin') return [['open', [address]]];
  if (platform === 'win32') return [['cmd', ['/d', '/s', '/c', 'start', '""', `"${address}"`]]];
  const chromium = onPath(['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'], env);
  const opener = onPath(['xdg-open'], env);
  return [
    ...(chromium === null ? [] : [[chromium, [`--app=${address}`, ...sandboxSwitches()]]]),
    ...(opener === null ? [] : [[opener, [address]]]),
  ];
}

/** Starts one command and answers whether it took: still running after a while, or ended without complaint. */
function starts(command, args, settleMs) {
  return new Promise((done) => {
    const quoted = process.platform === 'win32';
    const child = spawn(command, args, { stdio: 'ignore', detached: !quoted, windowsVerbatimArguments: quoted });
    const timer = setTimeout(() => done(true), settleMs);
    const over = (took) => {
      clearTimeout(timer);
      done(took);
    };
    child.on('error', () => over(false));
    child.on('exit', (code) => over(code === 0));
    child.unref();
  });
}

/** Opens the address; false where nothing on this machine would. */
export async function openBrowser(address, { settleMs = 2500 } = {}) {
  for (const [command, args] of waysToOpen(address)) if (await starts(command, args, settleMs)) return true;
  return false;
}
