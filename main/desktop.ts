/**
 * The desktop: hands the host's answers to the window's own scheme and keeps the window to it. The only file that imports Electron. It shows
 * nothing but our origin, reaches no network, exposes nothing to the page (no preload, no messages), and ends only after the host has closed.
 */
import 'zod/compile';
import { resolve } from 'node:path';
import { app, BrowserWindow, crashReporter, dialog, Menu, protocol, session, type WebContents } from 'electron';
import { desktopTexts as words } from '../app/words/desktop.ts';
import { problemText } from '../app/words/problems.ts';
import {
  folderFrom,
  isOurs,
  mayAsk,
  mayLoad,
  origin,
  partition,
  scheme,
  startPage,
  webPreferences,
  withOrigin,
} from './desktop/policy.ts';
import { createHost, type Host } from './host/host.ts';
import { hostOptions } from './installed.ts';

/** How long closing the journal may take before the program ends all the same, in milliseconds. */
const closeWithinMs = 5000;
/** The window is loaded anew after its process ended, but not more often than this within a minute. */
const mostReloads = 3;

const log = (what: string): void => void process.stderr.write(`${what}\n`);

/** Keeps a session to our origin: nothing is fetched from anywhere, nothing of the system is opened to the page. */
function guardSession(kept: Electron.Session): void {
  kept.webRequest.onBeforeRequest(({ url, resourceType }, answer) => answer({ cancel: !mayLoad(url, resourceType) }));
  kept.setPermissionCheckHandler((_, permission, from) => mayAsk(permission, from));
  kept.setPermissionRequestHandler((_, permission, answer, details) => answer(mayAsk(permission, details.requestingUrl)));
  kept.setDevicePermissionHandler(() => false);
  kept.setSpellCheckerEnabled(false);
}

/** Keeps whatever shows a page to our origin: no other address, no further window, no page inside the page. */
function guardContents(contents: WebContents): void {
  const stay = (event: { preventDefault: () => void; url: string }) => {
    if (!isOurs(event.url)) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Opens a folder somebody chose outside the page, and shows it; what stands against it is told in a dialog. */
async function openFolder(host: Host, window: BrowserWindow | null, folder: string): Promise<void> {
  const opened = await host.openFolder(folder);
  if (!opened.ok) dialog.showErrorBox(words.cannotOpen, opened.problems.map(problemText).join('\n'));
  else window?.webContents.reload();
}

function menu(host: Host, window: BrowserWindow): Menu {
  const choose = async () => {
    const { filePaths } = await dialog.showOpenDialog(window, { properties: ['openDirectory'], buttonLabel: words.open });
    if (filePaths[0] !== undefined) await openFolder(host, window, filePaths[0]);
  };
  const pickPlace = async () => {
    const properties = ['openDirectory', 'createDirectory'] as const;
    const { filePaths } = await dialog.showOpenDialog(window, { properties: [...properties], buttonLabel: words.pickPlace });
    const picked = filePaths[0] === undefined ? null : await host.pickBackupPlace(filePaths[0]);
    if (picked && !picked.ok) dialog.showErrorBox(words.cannotBackUp, picked.problems.map(problemText).join('\n'));
  };
  const line = { type: 'separator' } as const;
  return Menu.buildFromTemplate([
    {
      label: words.book,
      submenu: [
        { label: words.openFolder, accelerator: 'CmdOrCtrl+O', click: () => void choose() },
        { label: words.backupPlace, click: () => void pickPlace() },
        line,
        { role: 'quit', label: words.quit },
      ],
    },
    {
      label: words.edit,
      submenu: [
        { role: 'undo' },
        { role: 'redo' },
        line,
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    {
      label: words.view,
      submenu: [{ role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, line, { role: 'togglefullscreen' }],
    },
  ]);
}

/** Tells a person when the page's process ended or hangs, and loads it again: a few times, not for ever. */
function watch(window: BrowserWindow): void {
  const ends: number[] = [];
  window.webContents.on('render-process-gone', async (_, { reason }) => {
    log(`the window's process ended: ${reason}`);
    if (reason === 'clean-exit') return;
    ends.push(Date.now());
    if (ends.filter((at) => at > Date.now() - 60_000).length > mostReloads)
      return dialog.showErrorBox(words.gone, words.goneAgain);
    const buttons = [words.reload, words.quit];
    const { response } = await dialog.showMessageBox({
      type: 'warning',
      message: words.gone,
      detail: words.goneDetail(reason),
      buttons,
    });
    if (response === 0) window.webContents.reload();
    else app.quit();
  });
  let asking = false;
  window.on('unresponsive', async () => {
    if (asking) return;
    asking = true;
    log('the window does not answer');
    const buttons = [words.wait, words.reload];
    const { response } = await dialog.showMessageBox({
      type: 'question',
      message: words.hangs,
      detail: words.hangsDetail,
      buttons,
    });
    asking = false;
    if (response === 1) window.webContents.forcefullyCrashRenderer();
  });
  window.on('responsive', () => log('the window answers again'));
}

function openWindow(host: Host): BrowserWindow {
  const window = new BrowserWindow({
    width: 1280,
    height: 900,
    minWidth: 640,
    minHeight: 480,
    show: false,
    webPreferences: { ...webPreferences, devTools: !app.isPackaged },
  });
  window.once('ready-to-show', () => window.show());
  watch(window);
  Menu.setApplicationMenu(menu(host, window));
  window.loadURL(startPage).catch((error: unknown) => log(`the window could not be loaded: ${error}`));
  return window;
}

/** Closes the host once, and answers when it has closed or has had its time. */
function closing(host: Host): () => Promise<void> {
  let closed: Promise<void> | null = null;
  return () => {
    closed ??= Promise.race([
      host.close().catch((error: unknown) => log(`closing failed: ${error}`)),
      new Promise<void>((late) => setTimeout(late, closeWithinMs).unref()),
    ]);
    return closed;
  };
}

async function show(host: Host): Promise<void> {
  // the default session shows nothing, and is closed as tightly as ours
  const ours = session.fromPartition(partition);
  guardSession(ours);
  guardSession(session.defaultSession);
  ours.protocol.handle(scheme, (request) => host.answer(withOrigin(request), origin));

  const folder = folderFrom(process.argv, app.isPackaged);
  if (folder !== null) await openFolder(host, null, resolve(folder));
  const window = openWindow(host);
  app.on('second-instance', (_, argv, from) => {
    if (window.isMinimized()) window.restore();
    window.focus();
    const other = folderFrom(argv, app.isPackaged);
    if (other !== null) void openFolder(host, window, resolve(from, other));
  });
}

function start(): void {
  const host = createHost(hostOptions({ documents: app.getPath('documents') }));
  const close = closing(host);

  app.enableSandbox();
  crashReporter.start({ uploadToServer: false });
  // before the program is ready, or the window has neither storage nor fetch
  protocol.registerSchemesAsPrivileged([
    { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
  app.on('web-contents-created', (_, contents) => guardContents(contents));
  app.on('child-process-gone', (_, { type, reason }) => log(`a helper process ended: ${type}, ${reason}`));
  app.on('window-all-closed', () => app.quit());

  let mayGo = false;
  app.on('before-quit', (event) => {
    if (mayGo) return;
    event.preventDefault();
    void close().then(() => {
      mayGo = true;
      app.quit();
    });
  });
  process.on('uncaughtException', (error) => {
    log(error.stack ?? String(error));
    void close().then(() => {
      dialog.showErrorBox(words.failed, words.failedDetail(error.message));
      app.exit(1);
    });
  });

  app.whenReady().then(
    () => show(host),
    (error: unknown) => log(String(error)),
  );
}

// whoever comes second does nothing more: two programs on one window's database would spoil it
if (app.requestSingleInstanceLock()) start();
else app.quit();
