/** One configuration, a project for each kind of test. Walks drive the built program in a real browser and run one at a time. */

import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));
const electronFake = fileURLToPath(new URL('./host/electron-fake.ts', import.meta.url));

/** A project of tests below test/<folder>, all in Node. */
const node = (name, folders, more = {}) => ({
  extends: true,
  test: {
    name,
    environment: 'node',
    include: folders.map((folder) => `test/${folder}/**/*.test.ts`),
    ...more,
  },
});

export default defineConfig({
  root,
  plugins: [svelte({ configFile: false, compilerOptions: { runes: true } })],
  // electron's package starts a download when it is required: tests see a small stand-in
  resolve: { alias: { electron: electronFake } },
  test: {
    testTimeout: 20_000,
    maxWorkers: 2,
    projects: [
      node('core', ['core', 'outside']),
      node('record', ['daybook', 'host', 'papers', 'parts', 'terminal'], { testTimeout: 120_000 }),
      node('house', ['house'], { testTimeout: 240_000 }),
      node('walks', ['walks'], { testTimeout: 240_000, hookTimeout: 240_000, fileParallelism: false }),
    ],
  },
});
