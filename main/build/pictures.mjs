/**
 * Takes the README's pictures from the sample site (`node main/build/pictures.mjs`, with CHROMIUM or /usr/bin/chromium): the run page of the run
 * that leaked, and the room Mercury, each as it opens. Run after a screen has changed, look at the pictures, and commit them.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright';
import { sandboxSwitches } from './browser.mjs';
import { daybookCommand, root } from './paths.mjs';

const pictures = [
  { file: 'run-page.png', address: '#/retort/charge-0003', scheme: 'light' },
  { file: 'mercury.png', address: '#/mercury', scheme: 'light' },
];
const size = { width: 1280, height: 800 };

const scratch = mkdtempSync(join(tmpdir(), 'daybook-pictures-'));
const env = { ...process.env, DAYBOOK_HOME: join(scratch, 'home') };
const site = join(scratch, 'site');
const folder = join(root, 'assets/pictures');
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
  const context = await browser.newContext({ viewport: size, reducedMotion: 'reduce' });
  const page = await context.newPage();
  await page.goto(address);
  for (const { file, address: hash, scheme } of pictures) {
    await page.emulateMedia({ colorScheme: scheme });
    await page.goto(new URL(`/${hash}`, address).href);
    await page.locator('h1').first().waitFor();
    await page.screenshot({ path: join(folder, file) });
  }
} finally {
  await browser?.close();
  server?.kill('SIGTERM');
  rmSync(scratch, { recursive: true, force: true });
}
