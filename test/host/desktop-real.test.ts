/**
 * The built program in Electron itself: what the stand-in cannot show. Runs where the runtime and a display are present (npm start fetches the
 * runtime), and says aloud where they are not.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ElectronApplication, _electron as electron, type Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sandboxSwitches } from '../../main/build/browser.mjs';
import { root } from '../../main/build/paths.mjs';
import { runtimePath } from '../../main/build/runtime.mjs';
import { buildOnce } from '../terminal/built.ts';

const runtime = runtimePath();
const display = process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
const here = runtime !== null && display;
if (!here)
  console.log(
    `SKIPPED: the desktop is not started for real (${runtime === null ? 'Electron’s runtime is not here' : 'there is no display'}).`,
  );

describe.runIf(here)('in Electron itself', () => {
  let home: string;
  let program: ElectronApplication;
  let page: Page;

  beforeAll(async () => {
    buildOnce();
    home = mkdtempSync(join(tmpdir(), 'desktop-'));
    program = await electron.launch({
      executablePath: runtime!,
      args: [...sandboxSwitches(), `--user-data-dir=${join(home, 'user')}`, root],
      env: { ...(process.env as Record<string, string>), DAYBOOK_HOME: join(home, 'state') },
    });
    page = await program.firstWindow();
    await page.waitForLoadState('load');
  });

  afterAll(async () => {
    await program?.close();
    rmSync(home, { recursive: true, force: true });
  });

  it('the window shows our page at our origin', () => {
    expect(page.url()).toBe('retort-daybook://window/');
  });

  it('a question of the page is answered', async () => {
    const answer = await page.evaluate(async () => {
      const asked = await fetch('/ask/state', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' });
      return [asked.status, await asked.json()] as const;
    });
    expect(answer).toMatchObject([200, { ok: true, value: { book: null } }]);
  });

  it('the page has storage, and nothing of Node', async () => {
    const has = await page.evaluate(() => [typeof indexedDB, 'require' in globalThis, 'process' in globalThis]);
    expect(has).toEqual(['object', false, false]);
  });

  it('the page reaches nothing outside', async () => {
    const reached = await page.evaluate(() =>
      fetch('http://127.0.0.1:9/').then(
        () => 'reached',
        () => 'refused',
      ),
    );
    expect(reached).toBe('refused');
  });
});
