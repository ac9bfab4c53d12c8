/**
 * The built program in Electron itself: what the stand-in cannot show. Runs where the runtime and a display are present (npm start fetches the
 * runtime), and says aloud where they are not.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ElectronApplication, _electron as electron, type Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sandboxSwitches } from '../../main/build/browser.mjs';
import { root } from '../../main/build/paths.mjs';
import { runtimePath } from '../../main/build/runtime.mjs';
import { origin, partition } from '../../main/desktop/policy.ts';
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
  const args = () => [...sandboxSwitches(), `--user-data-dir=${join(home, 'user')}`, root];
  const env = () => ({ ...(process.env as Record<string, string>), DAYBOOK_HOME: join(home, 'state') });

  beforeAll(async () => {
    buildOnce();
    home = mkdtempSync(join(tmpdir(), 'desktop-'));
    program = await electron.launch({
      executablePath: runtime!,
      args: args(),
      env: env(),
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

  it('the page is isolated: nothing of Node or of the program stands in it', async () => {
    const found = await page.evaluate(() =>
      ['require', 'process', 'module', 'Buffer', 'global', '__dirname', 'electron'].filter((name) => name in globalThis),
    );
    expect(found).toEqual([]);
  });

  it('the window lives at an origin of its own that counts as secure, and reads no file of the disk', async () => {
    const [at, secure, read] = await page.evaluate(async () => [
      location.origin,
      isSecureContext,
      await fetch('file:///etc/hostname').then(
        () => 'read',
        () => 'refused',
      ),
    ]);
    // the address parser of a page gives a standard scheme its origin
    expect([at, secure, read]).toEqual([origin, true, 'refused']);
  });

  it('every answer carries the policy, and the page runs no text as a script', async () => {
    const said = await page.evaluate(async () => {
      const policies = await Promise.all(
        ['/', '/no-such-file'].map(async (path) => (await fetch(path)).headers.get('content-security-policy') ?? ''),
      );
      const refused: string[] = [];
      document.addEventListener('securitypolicyviolation', (e) => refused.push(e.effectiveDirective));
      const image = document.createElement('img');
      image.src = 'https://example.invalid/x.png';
      document.body.append(image);
      await new Promise((resolve) => image.addEventListener('error', resolve, { once: true }));
      image.remove();
      let ran = true;
      try {
        ran = Boolean(new Function('return true')());
      } catch {
        ran = false;
      }
      return { policies, refused, ran };
    });
    for (const policy of said.policies) {
      expect(policy).toContain("default-src 'none'");
      expect(policy).not.toContain('unsafe');
    }
    expect(said.refused).toContain('img-src');
    expect(said.ran).toBe(false);
  });

  it('neither page nor session reaches a server that is there', async () => {
    let met = 0;
    const server = createServer((_, answer) => {
      met++;
      answer.end('here');
    });
    await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
    const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
    const outcome = (reached: Promise<unknown>) =>
      reached.then(
        () => 'reached',
        () => 'refused',
      );
    try {
      const fromPage = await outcome(page.evaluate((to) => fetch(to, { mode: 'no-cors' }).then(() => true), url));
      const fromSession = await outcome(
        program.evaluate(
          ({ session }, [name, to]) =>
            session
              .fromPartition(name)
              .fetch(to)
              .then(() => true),
          [partition, url] as const,
        ),
      );
      expect([fromPage, fromSession, met]).toEqual(['refused', 'refused', 0]);
      // the server is there: whoever is let through meets it
      await (await fetch(url)).text();
      expect(met).toBe(1);
    } finally {
      server.close();
    }
  });

  it('the page is given nothing of the system when it asks', async () => {
    const states = await page.evaluate(async () => {
      const names = ['geolocation', 'notifications', 'camera', 'microphone'] as const;
      const asked = await Promise.all(
        names.map((name) => navigator.permissions.query({ name: name as PermissionName }).then(({ state }) => state)),
      );
      return [...asked, await Notification.requestPermission()];
    });
    expect(states).toHaveLength(5);
    expect(states.filter((state) => state === 'granted')).toEqual([]);
  });

  it('the window is led nowhere else, and opens no other', async () => {
    const before = page.url();
    const opened = await page.evaluate(() => {
      const made = window.open('https://example.invalid/');
      location.href = 'https://example.invalid/';
      return made !== null;
    });
    await new Promise((later) => setTimeout(later, 500));
    const windows = await program.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows().map(({ webContents }) => webContents.getURL()),
    );
    expect([opened, page.url(), windows]).toEqual([false, before, [before]]);
  });

  it('a second start ends by itself, and leaves one window', async () => {
    const second = spawnSync(runtime!, args(), { env: env(), timeout: 60_000 });
    expect([second.error, second.status]).toEqual([undefined, 0]);
    expect(await program.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
  });

  it('no cookie is set', async () => {
    const cookies = await program.evaluate(({ session }, name) => session.fromPartition(name).cookies.get({}), partition);
    expect([cookies, await page.evaluate(() => document.cookie)]).toEqual([[], '']);
  });
});
