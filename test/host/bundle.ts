/** Plain Node cannot run TypeScript here: a test that needs a process of its own builds the file it runs. */
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Builds one TypeScript file of test/host into a JavaScript file below `folder`, and answers its path. */
export async function bundle(file: string, folder: string): Promise<string> {
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: join(root, 'test', 'host', file),
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      rollupOptions: { output: { entryFileNames: `${file}.mjs` } },
    },
  });
  return join(folder, `${file}.mjs`);
}
