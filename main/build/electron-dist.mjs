/**
 * Electron's runtime for the installers: what the packager's setting `electronDist` can take. Looked for on disk first; only this system's own
 * runtime is ever fetched, under the watch of runtime.mjs, so that a silent network holds nobody.
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join, resolve } from 'node:path';
import { root } from './paths.mjs';
import { fetchRuntime, runtimePath } from './runtime.mjs';

/** The version this program is made for. */
export const { version } = createRequire(import.meta.url)('electron/package.json');

/** The name under which Electron gives out its runtime. `platform` and `arch` as Node names them. */
export const zipName = (platform, arch) => `electron-v${version}-${platform}-${arch}.zip`;

const isFile = (path) => statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;

/** True where `path` is the zip, holds it, or is an unpacked runtime of our version. */
function fits(path, platform, arch) {
  const zip = zipName(platform, arch);
  if (isFile(path)) return basename(path) === zip;
  if (isFile(join(path, zip))) return true;
  const unpacked = join(path, 'version');
  return isFile(unpacked) && readFileSync(unpacked, 'utf8').trim().replace(/^v/, '') === version;
}

/**
 * The line `electronDist` of electron-builder.yml, or null where it has none.
 * @param {string} [text]
 * @returns {string | null}
 */
export function distInSettings(text = readFileSync(join(root, 'electron-builder.yml'), 'utf8')) {
  const said = text.match(/^electronDist:[ \t]*(.*?)[ \t]*(?: #.*)?$/m)?.[1]?.replace(/^(['"])(.*)\1$/, '$2');
  return said ? said : null;
}

/**
 * Where the runtime for `platform` and `arch` lies: `{ path }`, or `{ why }` in a few words. A place that is named is the only one looked at: first
 * `electronDist` in electron-builder.yml, then ELECTRON_OVERRIDE_DIST_PATH. Without one, a runtime that is here already, else one that is fetched.
 * @param {{ platform?: string, arch?: string, env?: Record<string, string | undefined>, named?: string | null,
 *   own?: (env: Record<string, string | undefined>) => string | null, fetched?: typeof fetchRuntime }} [wanted]
 * @returns {Promise<{ path: string, why?: undefined } | { why: string, path?: undefined }>}
 */
export async function electronDist({
  platform = process.platform,
  arch = process.arch,
  env = process.env,
  named = distInSettings(),
  own = runtimePath,
  fetched = fetchRuntime,
} = {}) {
  const places = [
    ['electronDist in electron-builder.yml', named],
    ['ELECTRON_OVERRIDE_DIST_PATH', env.ELECTRON_OVERRIDE_DIST_PATH],
  ];
  for (const [setting, place] of places) {
    if (!place) continue;
    const path = resolve(root, place);
    if (!existsSync(path)) return { why: `${setting} names ${path}, and nothing is there` };
    if (fits(path, platform, arch)) return { path };
    return { why: `${setting} names ${path}, which is no runtime ${version} for ${platform} ${arch}` };
  }
  if (platform !== process.platform || arch !== process.arch) return { why: 'only the one for this system is fetched' };
  const here = own(env);
  const got = here === null ? await fetched({ env }) : { path: here };
  if (got.path === undefined) return { why: got.why };
  // on macOS the executable lies deep inside the program's folder
  let folder = dirname(got.path);
  while (!existsSync(join(folder, 'version')) && dirname(folder) !== folder) folder = dirname(folder);
  return { path: folder };
}

/** What a person can do who has no runtime for this system, in one line. A mirror is asked for this system's own alone. */
export const wayOut = (platform, arch) =>
  `Fetch ${zipName(platform, arch)} where there is a network and name it as electronDist in electron-builder.yml${
    platform === process.platform ? ', or set ELECTRON_MIRROR to a place that has it' : ''
  }.`;
