/** `npm start`: how the window is opened, and that no network, however silent, holds it for long. Nothing here reaches outside this machine. */
import { type ChildProcess, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { sandboxSwitches, waysToOpen } from '../../main/build/browser.mjs';
import { root } from '../../main/build/paths.mjs';
import { fetchRuntime, runtimePath } from '../../main/build/runtime.mjs';
import { startedIn } from '../../main/build/started-in.mjs';
import { buildOnce } from './built.ts';

let home: string;
let child: ChildProcess | null = null;
let started: Started | null = null;
let server: Server | null = null;

beforeAll(() => buildOnce(), 120_000);
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'start-'));
});
afterEach(async () => {
  await endAll();
  server?.closeAllConnections();
  server?.close();
  server = null;
  rmSync(home, { recursive: true, force: true });
});

/** Ends the launcher and all it started; a window that it served is gone with it. */
async function endAll(): Promise<void> {
  const [ending, said] = [child, started];
  child = null;
  started = null;
  if (!ending || !said) return;
  ending.kill('SIGTERM');
  await said.ended;
  const noted = join(home, 'asked');
  const addresses = said.out + (existsSync(noted) ? readFileSync(noted, 'utf8') : '');
  for (const [origin] of addresses.matchAll(/http:\/\/127\.0\.0\.1:\d+/g)) await expect(fetch(origin)).rejects.toThrow();
}

/** A place that stands in for the one the runtime comes from; answers its address as a mirror setting. */
async function place(listener: RequestListener): Promise<string> {
  server = createServer(listener);
  await new Promise<void>((ready) => server!.listen(0, '127.0.0.1', ready));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}

/** An environment without a runtime, without a display and with nothing kept from earlier downloads. */
const bare = (more: Record<string, string> = {}): Record<string, string> => {
  const { DISPLAY: _, WAYLAND_DISPLAY: __, ...env } = process.env as Record<string, string>;
  return {
    ...env,
    DAYBOOK_HOME: join(home, 'state'),
    ELECTRON_OVERRIDE_DIST_PATH: join(home, 'no-runtime'),
    electron_config_cache: join(home, 'kept'),
    ...more,
  };
};

/** A browser that opens nothing and notes down what it was asked to open. */
function browserThatNotes(): { path: string; asked: () => string } {
  const bin = join(home, 'bin');
  mkdirSync(bin);
  const note = join(home, 'asked');
  for (const name of ['chromium', 'xdg-open']) {
    writeFileSync(join(bin, name), `#!/bin/sh\necho ${name} "$@" >> "${note}"\n`);
    chmodSync(join(bin, name), 0o755);
  }
  return { path: bin, asked: () => (existsSync(note) ? readFileSync(note, 'utf8') : '') };
}

interface Started {
  out: string;
  err: string;
  ended: Promise<number | null>;
}

function start(env: Record<string, string>, args: string[] = []): Started {
  child = spawn(process.execPath, [join(root, 'main/build/start.mjs'), ...args], {
    env,
    cwd: home,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const begun: Started = { out: '', err: '', ended: new Promise((done) => child!.once('close', (code) => done(code))) };
  child.stdout!.on('data', (data) => {
    begun.out += data;
  });
  child.stderr!.on('data', (data) => {
    begun.err += data;
  });
  started = begun;
  return begun;
}

/** Long enough for a build on a busy machine; what must be quick is timed on its own. */
const patience = { timeout: 60_000, interval: 100 };

describe('DAYBOOK_WINDOW', () => {
  it('address: prints the one-time address, and Ctrl-C ends it all', async () => {
    const started = start(bare({ DAYBOOK_WINDOW: 'address' }));
    await vi.waitFor(() => expect(started.out).toMatch(/http:\/\/127\.0\.0\.1:\d+\/enter\?key=/), patience);
    const origin = started.out.match(/http:\/\/127\.0\.0\.1:\d+/)![0];
    expect((await fetch(origin)).status).toBe(403);
    child!.kill('SIGINT');
    expect(await started.ended).toBe(130);
    await expect(fetch(origin)).rejects.toThrow();
  });

  it('auto without a display: makes no attempt at a window and prints the address', async () => {
    const asked: string[] = [];
    const mirror = await place((request, answer) => {
      asked.push(request.url ?? '');
      answer.end();
    });
    const browser = browserThatNotes();
    const started = start(bare({ DAYBOOK_WINDOW: 'auto', ELECTRON_MIRROR: mirror, PATH: browser.path }));
    await vi.waitFor(() => expect(started.out).toMatch(/enter\?key=/), patience);
    expect(asked).toEqual([]);
    expect(browser.asked()).toBe('');
    expect(started.err).toMatch(/^There is no display here .*no window can be opened/m);
  });

  it('auto with a display and a network that is closed: says why in one line and opens the browser', async () => {
    const browser = browserThatNotes();
    const started = start(bare({ DISPLAY: ':77', ELECTRON_MIRROR: 'http://127.0.0.1:9/', PATH: browser.path }));
    await vi.waitFor(
      () => expect(browser.asked()).toMatch(/^chromium --app=http:\/\/127\.0\.0\.1:\d+\/enter\?key=\S+/),
      patience,
    );
    const why = started.err.split('\n').filter((line) => line.includes('runtime'));
    expect(why).toHaveLength(1);
    expect(why[0]).toMatch(/could not be fetched \(127\.0\.0\.1:9.*opening the browser instead\. .*DAYBOOK_WINDOW=browser/);
    expect(browser.asked().includes('--no-sandbox')).toBe(process.getuid?.() === 0);
  });

  it('auto with a network that is silent: waits three seconds, not minutes', async () => {
    const mirror = await place(() => {});
    const browser = browserThatNotes();
    const started = start(bare({ DISPLAY: ':77', ELECTRON_MIRROR: mirror, PATH: browser.path }));
    await vi.waitFor(() => expect(started.err).toContain('did not answer in 3 s'), patience);
    await vi.waitFor(() => expect(browser.asked()).not.toBe(''), patience);
  });

  it('auto with a window that does not come up: says so in one line and opens the browser', async () => {
    const runtime = join(home, 'runtime');
    mkdirSync(runtime);
    const name = process.platform === 'win32' ? 'electron.exe' : 'electron';
    writeFileSync(join(runtime, name), '#!/bin/sh\nexit 3\n');
    chmodSync(join(runtime, name), 0o755);
    const browser = browserThatNotes();
    const started = start(bare({ DISPLAY: ':77', ELECTRON_OVERRIDE_DIST_PATH: runtime, PATH: browser.path }));
    await vi.waitFor(() => expect(browser.asked()).toMatch(/enter\?key=/), patience);
    expect(started.err).toMatch(/^The desktop window did not start \(exit code 3\): opening the browser instead\./m);
  });

  it('browser, because it was asked for: gives no reason', async () => {
    const browser = browserThatNotes();
    const started = start(bare({ DAYBOOK_WINDOW: 'browser', PATH: browser.path }));
    await vi.waitFor(() => expect(browser.asked()).toMatch(/enter\?key=/), patience);
    expect(started.err).not.toMatch(/instead|display|Electron/);
  });

  it('desktop: says why there is none, and opens nothing else', async () => {
    const browser = browserThatNotes();
    const started = start(
      bare({ DAYBOOK_WINDOW: 'desktop', DISPLAY: ':77', ELECTRON_MIRROR: 'http://127.0.0.1:9/', PATH: browser.path }),
    );
    expect(await started.ended).toBe(1);
    expect(started.err).toContain('could not be fetched');
    expect([started.out, browser.asked()]).toEqual(['', '']);
  });

  it('browser without any browser: prints the address', async () => {
    mkdirSync(join(home, 'bin'));
    const started = start(bare({ DAYBOOK_WINDOW: 'browser', PATH: join(home, 'bin') }));
    await vi.waitFor(() => expect(started.out).toMatch(/No browser could be opened.*enter\?key=/), patience);
  });

  it('anything else is refused by its name', async () => {
    const started = start(bare({ DAYBOOK_WINDOW: 'tab' }));
    expect(await started.ended).toBe(2);
    expect(started.err).toContain('"tab"');
  });

  it('a second word on the line is refused', async () => {
    const started = start(bare({ DAYBOOK_WINDOW: 'address' }), ['one', 'two']);
    expect(await started.ended).toBe(2);
  });

  it('a folder that is no daybook ends it with the reason', async () => {
    const started = start(bare({ DAYBOOK_WINDOW: 'address' }), ['nowhere']);
    expect(await started.ended).toBe(2);
    expect(started.err).toContain(join(home, 'nowhere'));
  });
});

describe('the runtime', () => {
  it('is looked for on disk alone: where there is none of our version there is no path', () => {
    expect(runtimePath({ ELECTRON_OVERRIDE_DIST_PATH: join(home, 'no-runtime') })).toBe(null);
  });

  it('is found in the folder that is named for it', () => {
    mkdirSync(join(home, 'unpacked'));
    const name = process.platform === 'win32' ? 'electron.exe' : 'electron';
    writeFileSync(join(home, 'unpacked', name), '');
    const found = runtimePath({ ELECTRON_OVERRIDE_DIST_PATH: join(home, 'unpacked') });
    expect(found === null || found.startsWith(join(home, 'unpacked'))).toBe(true);
  });

  it('is given up on after three seconds where the network is silent', async () => {
    const mirror = await place(() => {});
    const began = performance.now();
    const got = await fetchRuntime({ env: bare({ ELECTRON_MIRROR: mirror }) });
    expect(got).toMatchObject({ why: expect.stringContaining('did not answer in 3 s') });
    expect(performance.now() - began).toBeLessThan(20_000);
  });

  it('is given up on when the download goes silent, after having shown how far it came', async () => {
    const mirror = await place((request, answer) => {
      if (request.method === 'HEAD') return answer.end();
      answer.writeHead(200, { 'content-length': '1000000' });
      answer.write(Buffer.alloc(1000));
    });
    const reports: { stage: string; transferred?: number }[] = [];
    const began = performance.now();
    const got = await fetchRuntime({
      env: bare({ ELECTRON_MIRROR: mirror }),
      silentMs: 12_000,
      onReport: (report) => reports.push(report),
    });
    expect(got).toEqual({ why: 'nothing came for 12 s' });
    expect(performance.now() - began).toBeLessThan(60_000);
    expect(reports).toContainEqual({ stage: 'fetching', transferred: 1000, total: 1000000 });
  });

  it('is not taken when its bytes are not those the package vouches for', async () => {
    const mirror = await place((_, answer) => answer.end('not a runtime'));
    const got = await fetchRuntime({ env: bare({ ELECTRON_MIRROR: mirror }) });
    expect(got).toMatchObject({ why: expect.stringMatching(/checksum|hash/i) });
  });

  it('is not waited for once a person has ended it', async () => {
    const mirror = await place(() => {});
    const ending = new AbortController();
    setTimeout(() => ending.abort(), 300);
    expect(await fetchRuntime({ env: bare({ ELECTRON_MIRROR: mirror }), signal: ending.signal })).toEqual({
      why: 'ended by hand',
    });
  });
});

describe('a browser', () => {
  it('is opened by what each system has for it', () => {
    expect(waysToOpen('http://127.0.0.1:1/', 'darwin')).toEqual([['open', ['http://127.0.0.1:1/']]]);
    expect(waysToOpen('http://127.0.0.1:1/', 'win32')[0]![0]).toBe('cmd');
    expect(waysToOpen('http://127.0.0.1:1/', 'linux', { PATH: join(home, 'empty') })).toEqual([]);
  });

  it('keeps its own sandbox for everybody but root', () => {
    expect(sandboxSwitches()).toEqual(process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : []);
  });
});

describe('a folder on the line', () => {
  it('is looked for where the person stood, not where npm moved to', () => {
    const npm = { npm_package_json: join(root, 'package.json'), npm_lifecycle_event: 'start', INIT_CWD: home };
    expect(startedIn('start', npm)).toBe(home);
    expect(startedIn('daybook', npm)).toBe(process.cwd());
    expect(startedIn('start', { ...npm, npm_package_json: join(home, 'package.json') })).toBe(process.cwd());
    expect(startedIn('start', {})).toBe(process.cwd());
  });
});
