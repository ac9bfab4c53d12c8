/**
 * The desktop against a stand-in for Electron: every item of the hardening list that this program has (it has no preload and no messages), one
 * sentence each. What only a real runtime can show is in desktop-real.test.ts, which runs where one is present.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { folderFrom, isOurs, mayLoad, withOrigin } from '../../main/desktop/policy.ts';

type Fake = typeof import('./electron-fake.ts');
type Guard = { openHandler: (details: { url: string }) => { action: string } };

const ours = 'retort-daybook://window';
const foreign = [
  'https://example.org/',
  'http://127.0.0.1:4711/',
  'file:///etc/hosts',
  'ws://example.org/',
  'retort-daybook://other/',
  'retort-daybooks://window/',
  'about:srcdoc',
  'javascript:0',
  'data:text/html,x',
  'blob:https://example.org/1',
  'chrome://version',
  'retort-daybook://window@example.org/',
];

let home: string;
let fake: Fake;
const argv = process.argv;
const listeners = process.listeners('uncaughtException');

/** Loads the desktop as the runtime would: the module itself starts it. */
async function load({ first = true, ready = true, words = ['electron', 'program'] } = {}) {
  vi.resetModules();
  fake = await import('./electron-fake.ts');
  fake.control.first = first;
  process.argv = words;
  await import('../../main/desktop.ts');
  if (!ready) return;
  fake.becomeReady();
  await vi.waitFor(() => expect(fake.windows).toHaveLength(1));
}

const session = () => fake.sessions.get('persist:daybook')!;
const page = () => fake.windows[0]!;
const contents = () => page().webContents;

/** What the window's own request handler answers. */
const ask = (path: string, init: RequestInit = {}) =>
  session().handled.get('retort-daybook')!(new Request(`${ours}${path}`, init));
const question = (headers: Record<string, string>) =>
  ask('/ask/state', { method: 'POST', body: '{}', headers: { 'content-type': 'application/json', ...headers } });

beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'desktop-'));
  vi.stubEnv('DAYBOOK_HOME', home);
  vi.spyOn(process.stderr, 'write').mockReturnValue(true);
});

afterEach(async () => {
  process.argv = argv;
  for (const listener of process.listeners('uncaughtException'))
    if (!listeners.includes(listener)) process.off('uncaughtException', listener);
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
  rmSync(home, { recursive: true, force: true });
});

describe('the page’s process', () => {
  it('is isolated and sandboxed, without Node, and every setting that could widen it is said out loud', async () => {
    await load();
    expect(page().options.webPreferences).toEqual({
      partition: 'persist:daybook',
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: true,
    });
  });

  it('has no developer tools in the packaged program', async () => {
    vi.resetModules();
    fake = await import('./electron-fake.ts');
    fake.control.packaged = true;
    process.argv = ['daybook'];
    await import('../../main/desktop.ts');
    fake.becomeReady();
    await vi.waitFor(() => expect(fake.windows).toHaveLength(1));
    expect(page().options.webPreferences.devTools).toBe(false);
  });

  it('is given no preload: there is nothing of the machine for a page to call', async () => {
    await load();
    expect(page().options.webPreferences).not.toHaveProperty('preload');
  });

  it('is sandboxed for every window before the program is ready', async () => {
    await load({ ready: false });
    expect(fake.control.order).toEqual(['lock', 'sandbox', 'schemes', 'wait']);
  });
});

describe('the scheme', () => {
  it('is registered before the program is ready, standard, secure and open to fetch, and to nothing that weakens a policy', async () => {
    await load({ ready: false });
    expect(fake.control.schemes).toEqual([
      { scheme: 'retort-daybook', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
    ]);
  });

  it('has an origin that never changes, since the window’s database lives under it', async () => {
    await load();
    expect(page().loaded).toEqual(['retort-daybook://window/']);
    expect([...fake.sessions.keys()]).toEqual(['persist:daybook']);
  });

  it('is answered by the host, which knows the questions of the contract', async () => {
    await load();
    const answer = await question({ origin: ours });
    expect(answer.status).toBe(200);
    expect(await answer.json()).toMatchObject({ ok: true, value: { book: null } });
  });

  it('sends the strict policy with every answer and never opens it to other origins', async () => {
    await load();
    const answer = await ask('/nothing-here');
    expect(answer.status).toBe(404);
    expect(answer.headers.get('content-security-policy')).toMatch(/default-src 'none'/);
    expect(answer.headers.has('access-control-allow-origin')).toBe(false);
  });
});

describe('a question', () => {
  it.each(['https://example.org', 'null', 'retort-daybook://other', 'retort-daybook://window.', 'http://127.0.0.1'])(
    'from the origin %s is refused',
    async (origin) => {
      await load();
      const answer = await question({ origin });
      expect(answer.status).toBe(403);
      expect(await answer.json()).toMatchObject({ ok: false });
    },
  );

  it('with no origin and a body that a form could send is refused', async () => {
    await load();
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x'])
      expect((await question({ 'content-type': type })).status).toBe(403);
  });

  it('with no origin that says it comes from another site is refused', async () => {
    await load();
    expect((await question({ 'sec-fetch-site': 'cross-site' })).status).toBe(403);
  });

  it('with no origin, as Chromium sends it on a scheme of one’s own, is answered in the session that loads nothing but our page', async () => {
    await load();
    expect((await question({})).status).toBe(200);
  });

  it('keeps its body when the missing origin is put in', async () => {
    const filled = withOrigin(
      new Request(`${ours}/ask/keep`, { method: 'POST', body: '{"a":"µ"}', headers: { 'content-type': 'application/json' } }),
    );
    expect(filled.headers.get('origin')).toBe(ours);
    expect(await filled.text()).toBe('{"a":"µ"}');
  });
});

describe('the network', () => {
  it('is closed: every request that is not of our origin is cancelled, in our session and in the default one', async () => {
    await load();
    for (const kept of [session(), fake.session.defaultSession]) {
      const asked = (url: string, resourceType = 'xhr') => {
        let cancelled: unknown;
        kept.handlers.request!(
          ...([{ url, resourceType }, (answer: { cancel: boolean }) => (cancelled = answer.cancel)] as never[]),
        );
        return cancelled;
      };
      for (const url of foreign) expect([url, asked(url)]).toEqual([url, true]);
      expect(asked(`${ours}/assets/index.js`)).toBe(false);
      expect(asked(`blob:${ours}/6e1f`)).toBe(false);
    }
  });

  it('is not used to fetch spelling lists', async () => {
    await load();
    expect(session().spellchecker).toBe(false);
  });

  it('lets a picture be written into an address, but never a page', () => {
    expect(mayLoad('data:image/png;base64,AA==', 'image')).toBe(true);
    for (const type of ['mainFrame', 'subFrame', 'script', 'xhr']) expect(mayLoad('data:text/html,x', type)).toBe(false);
  });

  it('is not told of crashes', async () => {
    await load({ ready: false });
    expect(fake.control.crashReports).toEqual([{ uploadToServer: false }]);
  });
});

describe('a permission', () => {
  const check = (permission: string, from: string) => session().handlers.check!(...([null, permission, from] as never[]));
  const request = (permission: string, requestingUrl: string) => {
    let granted: unknown;
    session().handlers.ask!(...([null, permission, (yes: boolean) => (granted = yes), { requestingUrl }] as never[]));
    return granted;
  };

  it('is denied, whether it is checked or asked for, but for keeping its storage and copying text', async () => {
    await load();
    const denied = [
      'media',
      'geolocation',
      'notifications',
      'midi',
      'pointerLock',
      'fullscreen',
      'openExternal',
      'clipboard-read',
      'display-capture',
      'usb',
      'serial',
      'hid',
      'fileSystem',
      'window-management',
      'unknown',
    ];
    for (const permission of denied)
      expect([permission, check(permission, ours), request(permission, `${ours}/`)]).toEqual([permission, false, false]);
    for (const permission of ['persistent-storage', 'clipboard-sanitized-write'])
      expect([permission, check(permission, ours), request(permission, `${ours}/`)]).toEqual([permission, true, true]);
  });

  it('is denied to any origin but ours', async () => {
    await load();
    for (const from of foreign)
      expect([from, check('persistent-storage', from), request('persistent-storage', from)]).toEqual([from, false, false]);
  });

  it('is denied to devices', async () => {
    await load();
    expect(session().handlers.device!()).toBe(false);
  });
});

describe('the window', () => {
  it('cannot be led to another address: by a link, in a frame, or by a redirect', async () => {
    await load();
    for (const event of ['will-navigate', 'will-frame-navigate', 'will-redirect'])
      for (const url of [...foreign, `${ours}/`]) {
        const preventDefault = vi.fn();
        contents().emit(event, { preventDefault, url });
        expect([event, url, preventDefault.mock.calls.length]).toEqual([event, url, url === `${ours}/` ? 0 : 1]);
      }
  });

  it('opens no further window, not even of our own page', async () => {
    await load();
    for (const url of [...foreign, `${ours}/`])
      expect((contents() as unknown as Guard).openHandler({ url })).toEqual({ action: 'deny' });
  });

  it('holds no page inside the page', async () => {
    await load();
    const preventDefault = vi.fn();
    contents().emit('will-attach-webview', { preventDefault });
    expect(preventDefault).toHaveBeenCalledOnce();
  });

  it('is shown only when its page is drawn', async () => {
    await load();
    expect(page().shown).toBe(0);
    page().emit('ready-to-show');
    expect(page().shown).toBe(1);
  });

  it('offers to load the page again when its process has ended, and stops after three times in a minute', async () => {
    await load();
    for (let n = 1; n <= 3; n++) {
      contents().emit('render-process-gone', {}, { reason: 'oom' });
      await vi.waitFor(() => expect(contents().reloads).toBe(n));
    }
    contents().emit('render-process-gone', {}, { reason: 'oom' });
    await vi.waitFor(() => expect(fake.control.errorBoxes).toHaveLength(1));
    expect(contents().reloads).toBe(3);
    expect(fake.control.messageBoxes).toHaveLength(3);
  });

  it('asks whether to wait when it hangs, once at a time', async () => {
    await load();
    fake.control.answers.push(1);
    page().emit('unresponsive');
    page().emit('unresponsive');
    await vi.waitFor(() => expect(contents().crashes).toBe(1));
    expect(fake.control.messageBoxes).toHaveLength(1);
  });
});

describe('the program', () => {
  it('does nothing more when another is running: no window, no storage, no journal', async () => {
    await load({ first: false, ready: false });
    fake.becomeReady();
    await new Promise((later) => setTimeout(later, 20));
    expect(fake.control.order).toEqual(['lock', 'quit']);
    expect(fake.windows).toEqual([]);
  });

  it('shows the window that is there when it is started a second time', async () => {
    await load();
    fake.app.emit('second-instance', {}, ['electron', 'program'], home);
    expect(page().focused).toBe(1);
  });

  it('quits only after the host has closed', async () => {
    await load();
    const preventDefault = vi.fn();
    fake.app.emit('before-quit', { preventDefault });
    expect(preventDefault).toHaveBeenCalledOnce();
    expect(fake.app.quits).toBe(0);
    await vi.waitFor(() => expect(fake.app.quits).toBe(1));
    // the host is closed: it keeps nothing any more
    expect(await (await question({ origin: ours })).json()).toMatchObject({ ok: false });
    fake.app.emit('before-quit', { preventDefault });
    expect(preventDefault).toHaveBeenCalledOnce();
  });

  it('tells why a folder from the command line cannot be opened, and shows the window all the same', async () => {
    await load({ words: ['electron', 'program', join(home, 'nothing')] });
    expect(fake.control.errorBoxes).toHaveLength(1);
    expect(page().loaded).toHaveLength(1);
  });

  it('opens the folder chosen in its dialog and loads the page again', async () => {
    await load();
    const { makeDaybook } = await import('../../main/host/daybook-folder.ts');
    const folder = join(home, 'book');
    expect(makeDaybook(folder, 'Upper Battery').ok).toBe(true);
    fake.control.chosen = [folder];
    fake.control.menus[0]![0]!.submenu![0]!.click!();
    await vi.waitFor(() => expect(contents().reloads).toBe(1));
    expect(await (await question({})).json()).toMatchObject({ ok: true, value: { book: { name: 'Upper Battery' } } });
    await fake.app.emit('before-quit', { preventDefault: () => {} });
    await vi.waitFor(() => expect(fake.app.quits).toBe(1));
  });

  it('closes the journal, says so and ends when it fails unforeseen', async () => {
    await load();
    const own = process.listeners('uncaughtException').find((listener) => !listeners.includes(listener))!;
    own(new Error('unforeseen'), 'uncaughtException');
    await vi.waitFor(() => expect(fake.control.exits).toEqual([1]));
    expect(fake.control.errorBoxes[0]![1]).toContain('unforeseen');
  });
});

describe('the folder on the command line', () => {
  it('stands behind the program’s own folder, or first when packaged; switches are no folders', () => {
    expect(folderFrom(['electron', '--no-sandbox', '.', 'book'], false)).toBe('book');
    expect(folderFrom(['electron', '.'], false)).toBe(null);
    expect(folderFrom(['daybook', 'book'], true)).toBe('book');
  });
});

describe('our origin', () => {
  it('is told from every look-alike', () => {
    for (const url of [
      ...foreign,
      '',
      'retort-daybook:window',
      'retort-daybook:///window',
      `https://example.org/${ours}`,
      'retort-daybook://window.example.org/',
    ])
      expect([url, isOurs(url)]).toEqual([url, false]);
    expect(isOurs(`${ours}/any/path?q#h`)).toBe(true);
  });
});
