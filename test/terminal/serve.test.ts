/** `serve`: the window from the built command, on the loopback address, for whoever holds the one-time address. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { daybookCommand } from '../../main/build/paths.mjs';
import { buildOnce, daybook, problemsIn } from './built.ts';

let home: string;
let child: ChildProcess | null = null;

beforeAll(() => buildOnce(), 120_000);
beforeEach(async () => {
  home = mkdtempSync(join(tmpdir(), 'serve-'));
  await daybook(['new', join(home, 'book'), '--site', 'Upper Battery']);
});
afterEach(() => {
  child?.kill('SIGKILL');
  child = null;
  rmSync(home, { recursive: true, force: true });
});

const env = () => ({ ...process.env, DAYBOOK_HOME: join(home, 'state') });

/** Starts the command and answers the first line it prints. */
function serve(...args: string[]): Promise<string> {
  child = spawn(process.execPath, [daybookCommand, ...args], { env: env(), stdio: ['ignore', 'pipe', 'pipe'] });
  return new Promise((resolve, reject) => {
    createInterface({ input: child!.stdout! }).once('line', resolve);
    child!.once('close', (code) => reject(new Error(`ended with ${code}`)));
  });
}

/** Lets a browser in: follows the one-time address by hand and answers its cookie. */
async function enter(address: string): Promise<string> {
  const entered = await fetch(address, { redirect: 'manual' });
  expect(entered.status).toBe(303);
  return entered.headers.get('set-cookie')!.split(';')[0]!;
}

describe('serve', () => {
  it('prints the one-time address alone, lets its holder in once, and shows the window and the daybook', async () => {
    const address = await serve('serve', join(home, 'book'));
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/enter\?key=[\w-]{40,}$/);
    const cookie = await enter(address);
    expect((await fetch(address, { redirect: 'manual' })).status).toBe(403);
    const { origin } = new URL(address);
    const page = await fetch(origin, { headers: { cookie } });
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
    const asked = await fetch(`${origin}/ask/state`, {
      method: 'POST',
      body: '{}',
      headers: { cookie, origin, 'content-type': 'application/json' },
    });
    expect(await asked.json()).toMatchObject({ ok: true, value: { book: { name: 'Upper Battery', writable: true } } });
  });

  it('turns away whoever has no session', async () => {
    const { origin } = new URL(await serve('serve', join(home, 'book')));
    expect((await fetch(origin)).status).toBe(403);
  });

  it('listens on the loopback address and on no other of this machine', async () => {
    const { port } = new URL(await serve('serve', join(home, 'book')));
    const others = Object.values(networkInterfaces()).flatMap((list) =>
      (list ?? []).filter((one) => !one.internal && one.family === 'IPv4'),
    );
    for (const { address } of others)
      expect([
        address,
        await fetch(`http://${address}:${port}/`).then(
          () => 'answered',
          () => 'refused',
        ),
      ]).toEqual([address, 'refused']);
    expect(
      await fetch(`http://[::1]:${port}/`).then(
        () => 'answered',
        () => 'refused',
      ),
    ).toBe('refused');
  });

  it.each(['SIGINT', 'SIGTERM'] as const)('ends with 0 on %s and gives the lock back', async (signal) => {
    await serve('serve', join(home, 'book'));
    const ended = new Promise((resolve) => child!.once('close', resolve));
    child!.kill(signal);
    expect(await ended).toBe(0);
    // a second one may write: the lock is free
    const address = await serve('serve', join(home, 'book'));
    const cookie = await enter(address);
    const { origin } = new URL(address);
    const headers = { cookie, origin, 'content-type': 'application/json' };
    const state = await (await fetch(`${origin}/ask/state`, { method: 'POST', body: '{}', headers })).json();
    expect(state).toMatchObject({ value: { book: { writable: true } } });
  });

  it('refuses a folder that is no daybook, and a port that is none or is taken', async () => {
    const refused = async (...args: string[]) => {
      const { code, out, err } = await daybook(['serve', ...args], { env: { DAYBOOK_HOME: join(home, 'state') } });
      return [code, out, problemsIn(err).map((p) => p.field)];
    };
    expect(await refused(join(home, 'nowhere'))).toEqual([2, '', ['DIR']]);
    for (const port of ['eighty', '-1', '65536', '80.5', '1e3'])
      expect(await refused(join(home, 'book'), `--port=${port}`)).toEqual([2, '', ['--port']]);
    const { port } = new URL(await serve('serve', join(home, 'book')));
    expect(await refused(join(home, 'book'), '--port', port)).toEqual([2, '', ['--port']]);
  });
});

describe('window', () => {
  it('serves without a daybook: the page chooses one', async () => {
    const address = await serve('window');
    const cookie = await enter(address);
    const { origin } = new URL(address);
    const headers = { cookie, origin, 'content-type': 'application/json' };
    const state = await (await fetch(`${origin}/ask/state`, { method: 'POST', body: '{}', headers })).json();
    expect(state).toMatchObject({ ok: true, value: { book: null } });
  });
});
