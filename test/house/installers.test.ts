/** The settings of the installers, by the packager's own reader: a misspelt key or fuse is refused here and not on the day of a release. */
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from '../../main/build/paths.mjs';
import { textOf } from './sources.ts';

const require = createRequire(import.meta.url);
type Settings = Record<string, unknown> & { electronFuses: Record<string, boolean> };
const { validateConfiguration } = require('app-builder-lib/out/util/config/config') as {
  validateConfiguration: (settings: unknown, log: { isEnabled: boolean; add: () => void }) => Promise<void>;
};
const { load } = require('js-yaml') as { load: (text: string) => Settings };

const settings = () => load(textOf('electron-builder.yml'));
const judged = (given: unknown) => validateConfiguration(given, { isEnabled: false, add: () => {} });

describe('the installers', () => {
  it('have settings that the packager accepts', async () => {
    await expect(judged(settings())).resolves.toBeUndefined();
  });

  it('would be refused with a misspelt key or fuse', async () => {
    await expect(judged({ ...settings(), asarr: true })).rejects.toThrow('asarr');
    await expect(judged({ ...settings(), electronFuses: { ...settings().electronFuses, runAsNod: false } })).rejects.toThrow(
      'electronFuses',
    );
  });

  it('set all eight fuses, each said out loud', () => {
    expect(settings().electronFuses).toEqual({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      grantFileProtocolExtraPrivileges: false,
      loadBrowserProcessSpecificV8Snapshot: false,
      enableCookieEncryption: false,
    });
  });

  it('are made for Debian, any Linux, Windows and macOS, in one archive, and publish nothing', () => {
    const { linux, win, mac, asar, publish } = settings() as unknown as Record<'linux' | 'win' | 'mac', { target: string[] }> & {
      asar: boolean;
      publish: null;
    };
    expect([linux.target, win.target, mac.target, asar, publish]).toEqual([['deb', 'AppImage'], ['nsis'], ['dmg'], true, null]);
  });

  it('find the files they name', () => {
    const { win, mac } = settings() as unknown as Record<'win' | 'mac', { icon: string }>;
    for (const path of [win.icon, mac.icon, 'assets/icons/512x512.png', 'assets/icons/16x16.png'])
      expect([path, existsSync(join(root, path))]).toEqual([path, true]);
    expect(JSON.parse(textOf('package.json')).main).toBe('dist/desktop.mjs');
  });
});
