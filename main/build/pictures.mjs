/**
 * Takes the README's pictures from the sample site (`node main/build/pictures.mjs`, with CHROMIUM or /usr/bin/chromium): every key screen by day and
 * by lamp, as it opens, as WebP to stay small. Run after a screen has changed, look at the pictures, and commit them. Another folder may be named.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright';
import { sandboxSwitches } from './browser.mjs';
import { keyScreens } from './key-screens.mjs';
import { daybookCommand, root } from './paths.mjs';

const size = { width: 1280, height: 800 };

const scratch = mkdtempSync(join(tmpdir(), 'daybook-pictures-'));
const env = { ...process.env, DAYBOOK_HOME: join(scratch, 'home') };
const site = join(scratch, 'site');
const folder = process.argv[2] ?? join(root, 'assets/pictures');
const quality = 55;
let server;
let browser;
try {
  const made = spawnSync(process.execPath, [daybookCommand, 'sample', site], { env, stdio: ['ignore', 'ignore', 'inherit'] });
  if (made.status !== 0) throw new Error('the sample site could not be written: build first (npm run build)');
  server = spawn(process.execPath, [daybookCommand, 'serve', site], { env, stdio: ['ignore', 'pipe', 'inherit'] });
  const address = await new Promise((resolve, reject) => {
    let said = '';
    server.stdout.on('data', (part) => {
      said += part;
      const found = /http:\/\/\S+/.exec(said);
      if (found) resolve(found[0]);
    });
    server.once('exit', () => reject(new Error(`the server ended: ${said}`)));
  });
  mkdirSync(folder, { recursive: true });
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: sandboxSwitches() });
  const context = await browser.newContext({ viewport: size, reducedMotion: 'reduce', locale: 'en-GB' });
  const page = await context.newPage();
  await page.goto(address);
  const session = await context.newCDPSession(page);
  for (const { name, address: hash } of keyScreens) {
    await page.goto(new URL(`/${hash}`, address).href);
    await page.locator('main h1').first().waitFor();
    for (const scheme of ['light', 'dark']) {
      await page.emulateMedia({ colorScheme: scheme });
      await page.evaluate(() => document.fonts.ready.then(() => true));
      const { data } = await session.send('Page.captureScreenshot', { format: 'webp', quality });
      writeFileSync(join(folder, `${name}-${scheme}.webp`), Buffer.from(data, 'base64'));
    }
  }
} finally {
  await browser?.close();
  server?.kill('SIGTERM');
  rmSync(scratch, { recursive: true, force: true });
}
