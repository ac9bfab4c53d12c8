/**
 * What Vite builds: the window, and three files for Node. The window holds no inline script or style, so the strict content policy needs no
 * exception; each Node file is whole in itself, so that replacing it is one rename.
 */
import { join } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { root } from './paths.mjs';

const common = { configFile: false, envDir: false, publicDir: false, logLevel: 'warn', cacheDir: join(root, '.cache/vite') };

/** Packages that stay outside the built files: pdfmake finds its own parts on disk, electron is the runtime itself. */
const outside = ['pdfmake', 'electron'];

/** The page. `out` is the folder it is made in. */
export const windowConfig = (out) => ({
  ...common,
  root: join(root, 'app'),
  base: '/',
  plugins: [svelte({ configFile: false, compilerOptions: { runes: true } })],
  build: {
    outDir: join(out, 'window'),
    emptyOutDir: true,
    target: ['chrome120', 'firefox121', 'safari17.2'],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 4000,
  },
});

/** A program for Node 20 (and for Electron's main process): `entry` below main/ becomes `name`.mjs. */
export const nodeConfig = (out, name, entry) => ({
  ...common,
  root,
  ssr: { noExternal: true, external: outside },
  build: {
    ssr: true,
    outDir: out,
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    reportCompressedSize: false,
    rolldownOptions: {
      input: { [name]: join(root, entry) },
      output: { format: 'es', entryFileNames: '[name].mjs', codeSplitting: false },
    },
  },
});

/** The built Node files and where each begins. */
export const programs = {
  daybook: 'main/terminal.ts',
  'print-worker': 'main/host/print-worker.ts',
  'backup-worker': 'main/host/backup/worker.ts',
  desktop: 'main/desktop.ts',
};
