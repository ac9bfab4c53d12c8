/**
 * A folder that the packager takes for an unpacked Electron: names, version and the fuse wire in its executable, and no program. Source of the wire
 * (sentinel, version 1, count, then '0' off, '1' on, 'r' removed): Electron documentation, tutorial "Electron Fuses" (from memory).
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { version } from '../../main/build/electron-dist.mjs';

const require = createRequire(import.meta.url);
const builder = createRequire(require.resolve('app-builder-lib/package.json'));
const { createPackage } = builder('@electron/asar') as { createPackage: (from: string, to: string) => Promise<void> };

/** Makes one in `dir`, every fuse set the other way than the installers want it. */
export async function standInRuntime(dir: string, of = version as string): Promise<string> {
  for (const inner of ['resources', 'locales', 'inside']) mkdirSync(join(dir, inner), { recursive: true });
  const wire = Buffer.concat([Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'), Buffer.from([1, 8]), Buffer.from('11110011')]);
  writeFileSync(join(dir, 'electron'), Buffer.concat([Buffer.from('#!/bin/sh\n'), wire, Buffer.alloc(64)]), { mode: 0o755 });
  for (const name of ['chrome-sandbox', 'LICENSE', 'LICENSES.chromium.html', 'locales/en-US.pak', 'inside/main.js'])
    writeFileSync(join(dir, name), '');
  await createPackage(join(dir, 'inside'), join(dir, 'resources', 'default_app.asar'));
  writeFileSync(join(dir, 'version'), of);
  return dir;
}
