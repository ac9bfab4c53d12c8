/** The check of types finds what it is there to find: a planted error in a component is reported, and a clean component is not. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { cache, root } from '../../main/build/paths.mjs';

const svelteCheck = join(createRequire(import.meta.url).resolve('svelte-check/package.json'), '../bin/svelte-check');
let folder = '';

afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Checks these files in a folder of their own, under the project's own settings. */
function check(files: Readonly<Record<string, string>>) {
  mkdirSync(cache, { recursive: true });
  folder = mkdtempSync(join(cache, 'planted-'));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  writeFileSync(
    join(folder, 'tsconfig.json'),
    JSON.stringify({ extends: join(root, 'tsconfig.json'), include: ['*.ts', '*.svelte'] }),
  );
  const { status, stdout } = spawnSync(
    process.execPath,
    [
      svelteCheck,
      '--workspace',
      folder,
      '--tsconfig',
      join(folder, 'tsconfig.json'),
      '--fail-on-warnings',
      '--output',
      'machine',
    ],
    { cwd: root, encoding: 'utf8' },
  );
  return { status, stdout };
}

const clean =
  '<script lang="ts">\n  const { weightG }: { weightG: number } = $props();\n</script>\n\n<p>{weightG.toFixed(2)}</p>\n';

describe('svelte-check', () => {
  it('finds nothing in a clean component', () => {
    const { status, stdout } = check({ 'Clean.svelte': clean });
    expect(stdout).toContain('COMPLETED');
    expect([status, stdout.includes(' ERROR "')]).toEqual([0, false]);
  });

  it('finds a type error planted in the script, in the markup, in a property handed over, and in a plain file', () => {
    const { status, stdout } = check({
      'Clean.svelte': clean,
      'InScript.svelte': '<script lang="ts">\n  const grams: number = "2.50";\n</script>\n\n<p>{grams}</p>\n',
      'InMarkup.svelte': '<script lang="ts">\n  const grams = 2.5;\n</script>\n\n<p>{grams.toUpperCase()}</p>\n',
      'HandedOver.svelte': '<script lang="ts">\n  import Clean from "./Clean.svelte";\n</script>\n\n<Clean weightG="2.50" />\n',
      'plain.ts': 'export const grams: number = "2.50";\n',
    });
    expect(status).not.toBe(0);
    for (const file of ['InScript.svelte', 'InMarkup.svelte', 'HandedOver.svelte', 'plain.ts'])
      expect(stdout).toMatch(new RegExp(`ERROR "${file}"`));
    expect(stdout).not.toContain('ERROR "Clean.svelte"');
  });

  it('fails on a warning', () => {
    const { status, stdout } = check({
      'Warned.svelte': '<script lang="ts">\n  const go = () => {};\n</script>\n\n<div onclick={go}>x</div>\n',
    });
    expect(stdout).toContain('WARNING');
    expect(status).not.toBe(0);
  });
});
