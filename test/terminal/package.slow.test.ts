/** What the packager makes of the settings, with a stand-in for Electron's runtime: what is in the archive, how the fuses stand, and no stack trace. */
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { makeInstallers } from '../../main/build/package.mjs';
import { temporaryFolder } from '../host/folder.ts';
import { buildOnce } from './built.ts';
import { standInRuntime } from './runtime-stand-in.ts';

const require = createRequire(import.meta.url);
const builder = createRequire(require.resolve('app-builder-lib/package.json'));
const { listPackage, extractFile } = builder('@electron/asar') as {
  listPackage: (path: string, options: object) => string[];
  extractFile: (path: string, file: string) => Buffer;
};
const { getCurrentFuseWire } = builder('@electron/fuses') as {
  getCurrentFuseWire: (path: string) => Promise<Record<string, number | string>>;
};

/** The packager talks less where it sees a test runner: here it is heard as a person hears it. */
const { VITEST: _, ...environment } = process.env;

let runtime: string;
beforeAll(async () => {
  buildOnce();
  runtime = await standInRuntime(temporaryFolder());
}, 120_000);

describe.runIf(process.platform === 'linux')('the packager', () => {
  it('puts what runs into one archive and nothing of the sources, flips every fuse, and makes a .deb without a network', async () => {
    const out = temporaryFolder();
    // stands in for the program that makes a .deb: notes what it was asked for
    const bin = join(temporaryFolder(), 'bin');
    mkdirSync(bin);
    writeFileSync(join(bin, 'fpm'), `#!/bin/sh\nprintf '%s\\n' "$@" > ${join(out, 'asked')}\n`);
    chmodSync(join(bin, 'fpm'), 0o755);
    const lines: string[] = [];
    const why = await makeInstallers({
      platform: 'linux',
      dist: runtime,
      out,
      targets: ['deb'],
      env: { ...environment, PATH: `${bin}:${process.env.PATH}`, USE_SYSTEM_FPM: 'true', HTTPS_PROXY: 'http://127.0.0.1:9' },
      onLine: (line) => lines.push(line),
    });
    expect(why).toBe(null);

    const archive = join(out, 'linux-unpacked/resources/app.asar');
    const files = listPackage(archive, {});
    for (const file of ['/package.json', '/LICENSE', '/dist/desktop.mjs', '/dist/print-worker.mjs', '/dist/window/index.html'])
      expect(files).toContain(file);
    expect(files.filter((file) => /^\/node_modules\/pdfmake\/package\.json$/.test(file))).toHaveLength(1);
    expect(files.filter((file) => /^\/dist\/fonts\/./.test(file)).length).toBeGreaterThan(3);
    const tops = new Set(files.map((file) => file.split('/')[1]));
    expect([...tops].sort()).toEqual(['LICENSE', 'dist', 'node_modules', 'package.json']);
    expect(files.filter((file) => /\/node_modules\/(electron|vite|svelte|vitest|playwright)\//.test(file))).toEqual([]);
    expect(JSON.parse(extractFile(archive, 'package.json').toString())).toMatchObject({ main: 'dist/desktop.mjs' });

    // by the order of the wire: run as Node, cookies, NODE_OPTIONS, inspect, integrity, only the archive, own snapshot, file privileges
    const wire = await getCurrentFuseWire(join(out, 'linux-unpacked/retort-daybook'));
    const [off, on] = [48, 49];
    expect(Array.from({ length: 8 }, (_, i) => wire[i])).toEqual([off, off, off, off, on, on, off, off]);

    // no update channel: nothing that an updater would read
    expect(readdirSync(join(out, 'linux-unpacked/resources'))).not.toContain('app-update.yml');
    expect(readdirSync(out).filter((name) => /^latest/.test(name))).toEqual([]);
    const asked = readFileSync(join(out, 'asked'), 'utf8').split('\n');
    expect(asked).toContain('retort-daybook');
    expect(asked[asked.indexOf('-t') + 1]).toBe('deb');
  }, 180_000);

  it('that cannot have its own tools ends with what to do, and no stack trace', async () => {
    const out = temporaryFolder();
    const lines: string[] = [];
    const why = await makeInstallers({
      platform: 'linux',
      dist: join(out, 'no-runtime'),
      out,
      targets: ['dir'],
      env: { ...environment, ELECTRON_BUILDER_BINARIES_MIRROR: 'http://127.0.0.1:9/' },
      onLine: (line) => lines.push(line),
    });
    expect(why).toMatch(/no-runtime.*ELECTRON_BUILDER_CACHE.*“folder”/);
    expect(`${why}\n${lines.join('\n')}`).not.toMatch(/stackTrace|^\s+at |\.ts:\d+/m);
    expect(existsSync(join(out, 'linux-unpacked/resources/app.asar'))).toBe(false);
  }, 120_000);

  it('that says nothing is given up on', async () => {
    const out = temporaryFolder();
    const why = await makeInstallers({
      platform: 'linux',
      dist: runtime,
      out,
      targets: ['dir'],
      env: environment,
      silentMs: 50,
      onLine: () => {},
    });
    expect(why).toContain('said nothing');
  }, 60_000);
});
