/**
 * The built program on an empty home: no daybook, no drafts, no port remembered. For walks that begin where a person begins. The content policy of
 * the window stays in force. Nothing is left behind.
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright';
import { endsWithUs } from './ends-with-us.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** The built command; another build may be walked through by the folder it lies in. */
export const command = join(process.env.DAYBOOK_DIST ?? join(root, 'dist'), 'daybook.mjs');
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The browser of this machine, as `npm test` found it, or where Debian puts it. */
function browserPath(): string | undefined {
  if (process.env.CHROMIUM) return process.env.CHROMIUM;
  return existsSync('/usr/bin/chromium') ? '/usr/bin/chromium' : undefined;
}

/** The machine's clock, of program and browser alike. */
const zone = 'Pacific/Auckland';

let browser: Promise<Browser> | null = null;
const launched = (): Promise<Browser> => {
  const executablePath = browserPath();
  browser ??= chromium.launch({ ...(executablePath ? { executablePath } : {}), args: ['--no-sandbox'] });
  return browser;
};

/** Ends the browser; to be called once, after the last walk of a file. */
export async function closeBrowser(): Promise<void> {
  await (await browser)?.close();
  browser = null;
}

let built = process.env.DAYBOOK_DIST !== undefined;
/** Walks go through what the sources say now. A build that is up to date costs nothing. */
function build(): void {
  if (built) return;
  const done = spawnSync(process.execPath, [join(root, 'main/build/build.mjs')], { cwd: root, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`the program could not be built: ${done.stderr}`);
  built = true;
}

export interface EmptyHome {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Another page of the same browser: whoever opened the first is known already. */
  readonly another: () => Promise<Page>;
  /** The folder of the daybook made in this walk. */
  readonly daybook: () => string;
  /** Lines of all its journals. */
  readonly journalLines: () => number;
  /** Errors that pages met: uncaught ones, and those on their console. */
  readonly faults: readonly string[];
  readonly close: () => Promise<void>;
}

/**
 * Starts the program on an empty home and opens its window; no daybook is open yet, unless `made` puts one into the home and answers its folder.
 */
export async function openEmptyHome(
  viewport = { width: 1280, height: 800 },
  made?: (home: string) => string,
): Promise<EmptyHome> {
  build();
  const home = mkdtempSync(join(tmpdir(), 'daybook-walk-'));
  const { address, program } = await served(home, made ? [made(home)] : []);
  const context = await (await launched()).newContext({ viewport, acceptDownloads: true, timezoneId: zone, locale: 'en-GB' });
  const faults: string[] = [];
  const another = async () => {
    const page = await context.newPage();
    page.setDefaultTimeout(15_000);
    page.on('pageerror', (error) => faults.push(String(error)));
    page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
    return page;
  };
  const page = await another();
  await page.goto(address);
  const daybook = () => {
    const folder = readdirSync(home).find((name) => existsSync(join(home, name, 'daybook.json')));
    if (folder === undefined) throw new Error('no daybook was made');
    return join(home, folder);
  };
  return {
    page,
    context,
    another,
    faults,
    daybook,
    journalLines: () => {
      const desks = join(daybook(), 'desks');
      if (!existsSync(desks)) return 0;
      return readdirSync(desks).reduce((n, file) => n + readFileSync(join(desks, file), 'utf8').split('\n').length - 1, 0);
    },
    close: async () => {
      await context.close();
      const gone = new Promise((resolve) => program.once('exit', resolve));
      program.kill('SIGTERM');
      await gone;
      rmSync(home, { recursive: true, force: true });
    },
  };
}

/** The server on this home, and the one-time address it prints. */
function served(home: string, open: readonly string[]): Promise<{ address: string; program: ChildProcess }> {
  const program = endsWithUs(
    spawn(process.execPath, [command, 'window', ...open], {
      env: { ...process.env, HOME: home, DAYBOOK_HOME: join(home, 'state'), TZ: zone },
      stdio: ['ignore', 'pipe', 'pipe'],
    }),
  );
  return new Promise((resolve, reject) => {
    let said = '';
    let complaint = '';
    program.stderr?.on('data', (part) => {
      complaint += part;
    });
    program.stdout?.on('data', (part) => {
      said += part;
      const address = /http:\/\/127\.0\.0\.1:\d+\/\S+/.exec(said)?.[0];
      if (address !== undefined) resolve({ address, program });
    });
    program.once('exit', (code) => reject(new Error(`the program ended (${code}) before it was reached: ${complaint}`)));
  });
}

/** What axe finds wrong with the page as it stands, a line for each place. It is put in from outside, so that the window's own policy holds. */
export async function axe(page: Page): Promise<readonly string[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('Runtime.evaluate', { expression: axeSource });
  const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
    expression: `axe.run(document, { resultTypes: ['violations'] }).then((found) => JSON.stringify(found.violations.flatMap((v) => v.nodes.map((n) => v.id + ': ' + n.target.join(' ') + ' (' + v.help + ')'))))`,
    awaitPromise: true,
    returnByValue: true,
  });
  await session.detach();
  if (exceptionDetails) throw new Error(`axe did not run: ${exceptionDetails.text}`);
  return JSON.parse(String(result.value)) as string[];
}
