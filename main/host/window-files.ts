/**
 * The built window: every file of its folder, read once at the start. Only what is on this list is ever served, so no path from outside reaches
 * the disk, and a build that is renamed in later does not mix with the one in use.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

export interface WindowFile {
  readonly bytes: Uint8Array;
  readonly type: string;
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.ttf': 'font/ttf',
  '.otf': 'font/otf',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
};

/** The files by the path they are asked for ("/assets/start.js"); the start page also as "/". Empty where the window is not built. */
export function windowFiles(folder: string | null): ReadonlyMap<string, WindowFile> {
  const files = new Map<string, WindowFile>();
  if (folder === null || !existsSync(folder)) return files;
  for (const found of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const type = types[extname(found.name).toLowerCase()];
    if (!found.isFile() || type === undefined) continue;
    const path = join(found.parentPath, found.name);
    files.set(`/${relative(folder, path).split(sep).join('/')}`, { bytes: readFileSync(path), type });
  }
  const start = files.get('/index.html');
  if (start) files.set('/', start);
  return files;
}
