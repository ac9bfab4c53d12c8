/** `npm run package` where there is no runtime: it says so and what to do, in two lines, soon, and with no stack trace. Nothing here reaches outside. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { distInSettings, electronDist, wayOut, zipName } from '../../main/build/electron-dist.mjs';
import { root } from '../../main/build/paths.mjs';
import { runtimePath } from '../../main/build/runtime.mjs';
import { temporaryFolder } from '../host/folder.ts';
import { buildOnce, run } from './built.ts';
import { standInRuntime } from './runtime-stand-in.ts';

const script = join(root, 'main/build/package.mjs');
const refused = 'http://127.0.0.1:9/';
const packaged = (env: Record<string, string>, args: string[] = []) =>
  run(process.execPath, [script, ...args], {
    env: { ELECTRON_OVERRIDE_DIST_PATH: '', electron_config_cache: join(temporaryFolder(), 'kept'), ...env },
  });

const none = runtimePath({}) === null && distInSettings() === null;
if (!none) console.log('SKIPPED: npm run package is not tried without a runtime (one is here).');

beforeAll(() => buildOnce(), 120_000);

describe('npm run package', () => {
  /** The two lines it ends with; what was built before is not ours to judge. */
  const end = ({ err }: { err: string }) => err.trimEnd().split('\n').slice(-2);

  it.runIf(none)('says that the runtime cannot be had, why and what to do, and ends with 1', async () => {
    const ran = await packaged({ ELECTRON_MIRROR: refused });
    expect([ran.code, ran.out]).toEqual([1, '']);
    expect(end(ran)[0]).toMatch(/^No installer was made: Electron's runtime cannot be had \(127\.0\.0\.1:9: .+\)\.$/);
    expect(end(ran)[1]).toBe(wayOut(process.platform, process.arch));
    expect(end(ran)[1]).toMatch(/electron-v\d.*electronDist in electron-builder\.yml.*ELECTRON_MIRROR/);
    expect(ran.err).not.toMatch(/^\s+at /m);
  });

  it('names a place that was given and holds no runtime, and asks no network instead', async () => {
    const place = join(temporaryFolder(), 'gone');
    const ran = await packaged({ ELECTRON_OVERRIDE_DIST_PATH: place, ELECTRON_MIRROR: refused });
    expect(ran.code).toBe(1);
    expect(ran.err).toContain(`ELECTRON_OVERRIDE_DIST_PATH names ${place}, and nothing is there`);
    expect(ran.err).not.toMatch(/^\s+at /m);
  });

  it('refuses a word it does not know with 2', async () => {
    for (const args of [['amiga'], ['linux', 'windows']]) {
      const ran = await packaged({}, args);
      expect([ran.code, ran.err.split('\n').length]).toEqual([2, 2]);
    }
  });
});

describe('the runtime of the installers', () => {
  const asked = { env: {}, named: null, own: () => null, fetched: () => Promise.reject(new Error('asked the network')) };

  it('is taken from where it is named: unpacked, as a zip, or a folder with that zip', async () => {
    const unpacked = await standInRuntime(temporaryFolder());
    const folder = temporaryFolder();
    const zip = join(folder, zipName('win32', 'x64'));
    writeFileSync(zip, '');
    expect(await electronDist({ ...asked, named: unpacked })).toEqual({ path: unpacked });
    expect(await electronDist({ ...asked, env: { ELECTRON_OVERRIDE_DIST_PATH: unpacked } })).toEqual({ path: unpacked });
    for (const named of [zip, folder])
      expect(await electronDist({ ...asked, named, platform: 'win32', arch: 'x64' })).toEqual({ path: named });
  });

  it('is not taken for another version or system', async () => {
    const old = await standInRuntime(temporaryFolder(), '1.2.3');
    const folder = temporaryFolder();
    writeFileSync(join(folder, zipName('win32', 'x64')), '');
    for (const named of [old, folder])
      expect(await electronDist({ ...asked, named, platform: 'linux', arch: 'x64' })).toMatchObject({
        why: expect.stringContaining('no runtime'),
      });
  });

  it('is the one that is here, by the folder it lies in; that of another system is not fetched', async () => {
    const here = await standInRuntime(temporaryFolder());
    mkdirSync(join(here, 'Electron.app/Contents/MacOS'), { recursive: true });
    for (const own of ['electron', 'Electron.app/Contents/MacOS/Electron'])
      expect(await electronDist({ ...asked, own: () => join(here, own) })).toEqual({ path: here });
    const other = process.platform === 'win32' ? 'linux' : 'win32';
    expect(await electronDist({ ...asked, platform: other })).toMatchObject({ why: expect.any(String) });
    expect(wayOut(other, 'x64')).not.toContain('ELECTRON_MIRROR');
  });

  it('is waited for three seconds where the network is silent, not minutes', async () => {
    const silent = createServer(() => {});
    await new Promise<void>((ready) => silent.listen(0, '127.0.0.1', ready));
    const began = performance.now();
    const env = {
      ...process.env,
      ELECTRON_OVERRIDE_DIST_PATH: '',
      ELECTRON_MIRROR: `http://127.0.0.1:${(silent.address() as AddressInfo).port}/`,
      electron_config_cache: join(temporaryFolder(), 'kept'),
    };
    const got = await electronDist({ env, named: null, own: () => null });
    silent.closeAllConnections();
    silent.close();
    if (none) expect(got).toEqual({ why: expect.stringContaining('did not answer in 3 s') });
    expect(performance.now() - began).toBeLessThan(20_000);
  });

  it('is named by a line of the settings, which has none as it comes', () => {
    expect(distInSettings()).toBe(null);
    expect(distInSettings('asar: true\nelectronDist: "/with space/electron" # here\n')).toBe('/with space/electron');
    expect(distInSettings('electronDist: ../electron\n')).toBe('../electron');
    expect(distInSettings('# electronDist: /commented/out\n')).toBe(null);
  });
});
