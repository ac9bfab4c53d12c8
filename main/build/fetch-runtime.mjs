/**
 * Fetches Electron's runtime, as a process of its own that the launcher can end: a copy kept from before, else a short knock at the place it
 * comes from, else the download; then Electron's own installer unpacks it. Reports on standard output, one JSON line each.
 * It must never be waited for without a watch: a silent network would hold the installer for minutes.
 */
import { createRequire } from 'node:module';
import { downloadArtifact } from '@electron/get';

const require = createRequire(import.meta.url);
const { version } = require('electron/package.json');
const tell = (report) => process.stdout.write(`${JSON.stringify(report)}\n`);
const fail = (why) => {
  tell({ stage: 'failed', why });
  process.exit(1);
};

const [knockMs = '3000', tempDirectory] = process.argv.slice(2);

/** The place the runtime comes from, by the same settings that Electron's own downloader obeys. */
const place =
  process.env.npm_config_electron_mirror ||
  process.env.NPM_CONFIG_ELECTRON_MIRROR ||
  process.env.npm_package_config_electron_mirror ||
  process.env.ELECTRON_MIRROR ||
  'https://github.com/electron/electron/releases/download/';

const wanted = {
  version,
  artifactName: 'electron',
  cacheRoot: process.env.electron_config_cache,
  checksums: require('electron/checksums.json'),
  platform: process.env.ELECTRON_INSTALL_PLATFORM || process.platform,
  arch: process.env.ELECTRON_INSTALL_ARCH || process.arch,
  tempDirectory,
};

/** True where an earlier download is still kept and whole. */
async function kept() {
  const refuse = { download: () => Promise.reject(new Error('not kept')) };
  try {
    await downloadArtifact({ ...wanted, downloader: refuse });
    return true;
  } catch {
    return false;
  }
}

/** The innermost reason of a failed request: `fetch` hides it. */
const reason = (error) => error?.cause?.code ?? error?.cause?.message ?? error?.message ?? String(error);

if (!(await kept())) {
  try {
    await fetch(place, { method: 'HEAD', redirect: 'manual', signal: AbortSignal.timeout(Number(knockMs)) });
  } catch (error) {
    const { host } = new URL(place);
    fail(error?.name === 'TimeoutError' ? `${host} did not answer in ${Number(knockMs) / 1000} s` : `${host}: ${reason(error)}`);
  }
  try {
    const getProgressCallback = async ({ transferred, total }) => tell({ stage: 'fetching', transferred, total });
    await downloadArtifact({ ...wanted, downloadOptions: { quiet: true, getProgressCallback } });
  } catch (error) {
    fail(reason(error));
  }
}
tell({ stage: 'unpacking' });
// finds the copy just kept, checks it against Electron's own checksums, unpacks it and notes where it lies
require('electron/install.js');
