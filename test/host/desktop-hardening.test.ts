/**
 * The hardening list of the desktop, item by item and by its number (engineering.md, 3.1), against the stand-in for Electron. Items on installers
 * (13, 21 to 23) are held in test/house/installers.test.ts, backups (20) lie with the record; what a runtime alone can show is in
 * desktop-real.test.ts.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';

type Fake = typeof import('./electron-fake.ts');

const ours = 'retort-daybook://window';
const root = fileURLToPath(new URL('../..', import.meta.url));
/** All the desktop's own sources, without their comments. */
const sources = ['main/desktop.ts', ...readdirSync(join(root, 'main/desktop')).map((name) => `main/desktop/${name}`)]
  .map((name) => readFileSync(join(root, name), 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, ''))
  .join('\n');

let home: string;
let fake: Fake;
const argv = process.argv;
const before = process.listeners('uncaughtException');

async function load({ first = true, packaged = false, ready = true } = {}): Promise<void> {
  vi.resetModules();
  fake = await import('./electron-fake.ts');
  fake.control.first = first;
  fake.control.packaged = packaged;
  process.argv = packaged ? ['daybook'] : ['electron', 'program'];
  await import('../../main/desktop.ts');
  if (!ready) return;
  fake.becomeReady();
  await vi.waitFor(() => expect(fake.windows).toHaveLength(1));
}
const settings = () => fake.windows[0]!.options.webPreferences;
const contents = () => fake.windows[0]!.webContents;
const sessions = () => [fake.sessions.get('persist:daybook')!, fake.session.defaultSession];
const stopped = (event: string, url = 'https://example.org/') => {
  const preventDefault = vi.fn();
  contents().emit(event, { preventDefault, url });
  return preventDefault.mock.calls.length > 0;
};

beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'hardening-'));
  vi.stubEnv('DAYBOOK_HOME', home);
  vi.spyOn(process.stderr, 'write').mockReturnValue(true);
});
afterEach(() => {
  process.argv = argv;
  for (const listener of process.listeners('uncaughtException'))
    if (!before.includes(listener)) process.off('uncaughtException', listener);
  vi.useRealTimers();
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
  rmSync(home, { recursive: true, force: true });
});

test('1: the page is isolated and has no Node, not in workers and not in frames', async () => {
  await load();
  expect(settings()).toMatchObject({
    contextIsolation: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
  });
});

test('2: the sandbox is on for all before the program is ready, and there is no preload to need anything else', async () => {
  await load({ ready: false });
  expect(fake.control.order.indexOf('sandbox')).toBeLessThan(fake.control.order.indexOf('wait'));
  fake.becomeReady();
  await vi.waitFor(() => expect(fake.windows).toHaveLength(1));
  expect(settings().sandbox).toBe(true);
  expect(settings()).not.toHaveProperty('preload');
  expect(sources).not.toMatch(/preload/i);
});

test('3 and 4: the window lives at a scheme and host of its own, registered before ready, with no file: anywhere', async () => {
  await load({ ready: false });
  const { order, schemes } = fake.control;
  expect(order.indexOf('schemes')).toBeLessThan(order.indexOf('wait'));
  expect(schemes).toEqual([
    { scheme: 'retort-daybook', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
  fake.becomeReady();
  await vi.waitFor(() => expect(fake.windows[0]?.loaded).toEqual([`${ours}/`]));
  expect([...sessions()[0]!.handled.keys()]).toEqual(['retort-daybook']);
  expect(sources).not.toMatch(/file:|loadFile|bypassCSP|corsEnabled/);
});

test('5: every answer carries the policy, refusals and failures too, without an unsafe word', async () => {
  await load();
  const handle = sessions()[0]!.handled.get('retort-daybook')!;
  const asked: [string, RequestInit?][] = [
    ['/'],
    ['/nowhere'],
    ['/ask/state', { method: 'POST', body: '{}', headers: { origin: ours, 'content-type': 'application/json' } }],
    ['/ask/state', { method: 'POST', body: '{', headers: { origin: ours, 'content-type': 'application/json' } }],
    ['/ask/state', { method: 'POST', body: '{}', headers: { origin: 'https://example.org' } }],
    ['/ask/state', { method: 'OPTIONS' }],
    ['/ask/none', { method: 'POST', body: '{}', headers: { origin: ours, 'content-type': 'application/json' } }],
  ];
  for (const [path, init] of asked) {
    const { headers } = await handle(new Request(`${ours}${path}`, init));
    expect(headers.get('content-security-policy')).toMatch(/^default-src 'none'/);
    expect(headers.get('content-security-policy')).not.toMatch(/unsafe|\*|https?:/);
    expect([...headers.keys()].filter((name) => name.startsWith('access-control'))).toEqual([]);
  }
});

test('6: nothing is fetched over any network, spelling lists neither, and the packaged program has no developer tools', async () => {
  await load({ packaged: true });
  for (const kept of sessions()) {
    expect(kept.spellchecker).toBe(false);
    for (const url of [
      'https://example.org/',
      'http://127.0.0.1/',
      'ws://example.org/',
      'ftp://example.org/',
      'file:///etc/hosts',
    ]) {
      let cancelled: unknown;
      kept.handlers.request!(...([{ url, resourceType: 'xhr' }, (a: { cancel: boolean }) => (cancelled = a.cancel)] as never[]));
      expect([url, cancelled]).toEqual([url, true]);
    }
  }
  expect(settings()).toMatchObject({ spellcheck: false, devTools: false });
});

test('7 and 8: there are no messages between page and program: no listener, no bridge', () => {
  expect(sources).not.toMatch(/ipcMain|ipcRenderer|contextBridge|MessageChannelMain|executeJavaScript|\.postMessage/);
});

test('9: permissions are judged when checked, when asked for and for devices; only storage and copying are given, and only to us', async () => {
  await load();
  for (const kept of sessions()) {
    const check = (name: string, from: string) => kept.handlers.check!(...([null, name, from] as never[]));
    expect(kept.handlers.device!()).toBe(false);
    expect(kept.handlers.ask).toBeTypeOf('function');
    for (const name of ['persistent-storage', 'clipboard-sanitized-write'])
      expect([check(name, ours), check(name, 'https://example.org')]).toEqual([true, false]);
    for (const name of ['media', 'geolocation', 'clipboard-read', 'openExternal', 'fileSystem', 'usb'])
      expect([name, check(name, ours)]).toEqual([name, false]);
  }
});

test('10: the window is led nowhere else: by a link, in a frame, by a redirect', async () => {
  await load();
  for (const event of ['will-navigate', 'will-frame-navigate', 'will-redirect'])
    expect([event, stopped(event), stopped(event, `${ours}/`)]).toEqual([event, true, false]);
});

test('11: no further window is opened and no page is put inside the page', async () => {
  await load();
  const { openHandler } = contents() as unknown as { openHandler: (details: { url: string }) => { action: string } };
  expect(openHandler({ url: `${ours}/` })).toEqual({ action: 'deny' });
  expect(stopped('will-attach-webview')).toBe(true);
});

test('12: nothing outside is ever opened: the program does not have the shell', () => {
  expect(sources).not.toMatch(/\bshell\b|openExternal|openPath|child_process/);
});

test('14: no secret is kept, so none is called protected', () => {
  expect(sources).not.toMatch(/safeStorage/);
});

test('15: the lock is asked for first, and whoever does not get it does nothing more', async () => {
  await load({ first: false, ready: false });
  fake.becomeReady();
  await new Promise((later) => setTimeout(later, 20));
  expect([fake.control.order, fake.windows, fake.sessions.size, readdirSync(home)]).toEqual([['lock', 'quit'], [], 0, []]);
});

test('16: a page whose process ends is offered again three times in a minute, not a fourth, and anew a minute later', async () => {
  await load();
  const end = () => contents().emit('render-process-gone', {}, { reason: 'crashed' });
  const clock = vi.spyOn(Date, 'now').mockReturnValue(1_000_000);
  for (let n = 1; n <= 3; n++) {
    end();
    await vi.waitFor(() => expect(contents().reloads).toBe(n));
  }
  end();
  await vi.waitFor(() => expect(fake.control.errorBoxes).toHaveLength(1));
  expect(contents().reloads).toBe(3);
  clock.mockReturnValue(1_000_000 + 61_000);
  end();
  await vi.waitFor(() => expect(contents().reloads).toBe(4));
  expect(fake.app.listenerCount('child-process-gone')).toBe(1);
});

test('17: a window that hangs is asked about, and one that answers again is told', async () => {
  await load();
  expect([fake.windows[0]!.listenerCount('unresponsive'), fake.windows[0]!.listenerCount('responsive')]).toEqual([1, 1]);
});

test('18: after an unforeseen failure the journal is closed, it is said, and the program ends; dumps stay here', async () => {
  await load();
  expect(fake.control.crashReports).toEqual([{ uploadToServer: false }]);
  const own = process.listeners('uncaughtException').find((listener) => !before.includes(listener))!;
  own(new Error('unforeseen'), 'uncaughtException');
  await vi.waitFor(() => expect(fake.control.exits).toEqual([1]));
  expect(fake.control.errorBoxes).toHaveLength(1);
  const handle = sessions()[0]!.handled.get('retort-daybook')!;
  const headers = { origin: ours, 'content-type': 'application/json' };
  const after = await handle(new Request(`${ours}/ask/state`, { method: 'POST', body: '{}', headers }));
  expect(await after.json()).toMatchObject({ ok: false, problems: [{ code: 'host-closed' }] });
});

test('19: quitting waits for the journal, but not for ever', async () => {
  vi.doMock('../../main/host/host.ts', () => ({
    createHost: () => ({
      answer: async () => new Response(),
      openFolder: async () => ({ ok: true }),
      close: () => new Promise(() => {}),
    }),
  }));
  await load();
  vi.doUnmock('../../main/host/host.ts');
  vi.useFakeTimers();
  const preventDefault = vi.fn();
  fake.app.emit('before-quit', { preventDefault });
  expect(preventDefault).toHaveBeenCalledOnce();
  await vi.advanceTimersByTimeAsync(4900);
  expect(fake.app.quits).toBe(0);
  await vi.advanceTimersByTimeAsync(200);
  expect(fake.app.quits).toBe(1);
  fake.app.emit('before-quit', { preventDefault });
  expect(preventDefault).toHaveBeenCalledOnce();
});

test('24: web security is on, nothing experimental is, no page may hold another, and no answer sets a cookie', async () => {
  await load();
  expect(settings()).toMatchObject({
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    navigateOnDragDrop: false,
  });
  expect(sources).not.toMatch(/allowpopups|enableBlinkFeatures|no-sandbox|appendSwitch|set-cookie|ignore-certificate/i);
  const answer = await sessions()[0]!.handled.get('retort-daybook')!(new Request(`${ours}/`));
  expect(answer.headers.has('set-cookie')).toBe(false);
});
