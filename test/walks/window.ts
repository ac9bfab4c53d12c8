/**
 * The built program in a real browser, for walks: a new daybook in a folder of its own, served on the loopback address by the built command, and
 * opened by its one-time address. Entries are kept through the same question the window asks.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright';
import type { Draft } from '../../app/core/entry.ts';
import { endsWithUs } from './ends-with-us.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** The built command; another build may be walked through by the folder it lies in. */
const command = join(process.env.DAYBOOK_DIST ?? join(root, 'dist'), 'daybook.mjs');
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface WalkedWindow {
  readonly page: Page;
  readonly context: BrowserContext;
  /** The daybook's folder. */
  readonly folder: string;
  /** Everything the page reported as an error. */
  readonly errors: string[];
  /** Keeps drafts in order through the host and answers when all are on the disk; the page is read anew. */
  readonly keep: (drafts: readonly Draft[]) => Promise<void>;
  /** Goes to an address of the window ("#/daybook") and waits for its heading. */
  readonly go: (hash: string) => Promise<void>;
  /** What axe finds wrong, in a line each; empty when it finds nothing. */
  readonly axe: () => Promise<readonly string[]>;
  /** Day ("light") or retort house ("dark"). */
  readonly theme: (theme: 'light' | 'dark') => Promise<void>;
  readonly close: () => Promise<void>;
}

function build(): void {
  if (process.env.DAYBOOK_DIST !== undefined) return;
  const done = spawnSync(process.execPath, [join(root, 'main/build/build.mjs')], { cwd: root, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`the program could not be built: ${done.stderr}`);
}

/** The one-time address that the served command prints. */
function addressOf(server: ReturnType<typeof spawn>): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    server.stdout?.on('data', (part: Buffer) => {
      said += part.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\/enter\?key=\S+/.exec(said)?.[0];
      if (address) resolve(address);
    });
    server.stderr?.on('data', (part: Buffer) => {
      said += part.toString();
    });
    server.once('exit', () => reject(new Error(`the program ended: ${said}`)));
  });
}

/** Opens a new daybook called `site` in a window of 1280 × 800. */
export const openWalk = (site: string): Promise<WalkedWindow> => opened((folder) => ['new', folder, '--site', site]);

/** The same with the sample site. */
export const openSample = (): Promise<WalkedWindow> => opened((folder) => ['sample', folder]);

async function opened(begin: (folder: string) => readonly string[]): Promise<WalkedWindow> {
  build();
  const place = mkdtempSync(join(tmpdir(), 'walk-'));
  const folder = join(place, 'book');
  const env = { ...process.env, DAYBOOK_HOME: join(place, 'home') };
  const made = spawnSync(process.execPath, [command, ...begin(folder)], { env, encoding: 'utf8' });
  if (made.status !== 0) throw new Error(`no daybook could be made: ${made.stderr}`);
  const server = endsWithUs(
    spawn(process.execPath, [command, 'serve', folder, '--port', '0'], { env, stdio: ['ignore', 'pipe', 'pipe'] }),
  );
  const address = await addressOf(server);
  const browser: Browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
  });
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  await page.goto(address);
  await page.locator('main h1').first().waitFor();

  return {
    page,
    context,
    folder,
    errors,
    async keep(drafts) {
      const refused = await page.evaluate(async (all) => {
        for (const draft of all) {
          const answer = await fetch('/ask/keep', {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify(draft),
          });
          const said = await answer.text();
          if (!said.startsWith('{"ok":true')) return `${draft.id}: ${said}`;
        }
        return null;
      }, drafts);
      if (refused !== null) throw new Error(refused);
      await page.reload();
      await page.locator('main h1').first().waitFor();
    },
    async go(hash) {
      await page.evaluate((to) => {
        location.hash = to;
      }, hash);
      await page.locator('main h1').first().waitFor();
    },
    async axe() {
      await page.evaluate(axeSource);
      return page.evaluate(async () => {
        const { axe } = window as unknown as {
          axe: { run: () => Promise<{ violations: { id: string; help: string; nodes: { html: string }[] }[] }> };
        };
        const { violations } = await axe.run();
        return violations.map((v) => `${v.id}: ${v.help}: ${v.nodes.map((n) => n.html.slice(0, 160)).join(' | ')}`);
      });
    },
    async theme(theme) {
      await page.emulateMedia({ colorScheme: theme });
    },
    async close() {
      await browser.close();
      const ended = new Promise((resolve) => server.once('exit', resolve));
      server.kill('SIGINT');
      await ended;
      rmSync(place, { recursive: true, force: true });
    },
  };
}
