/**
 * How long it takes from starting the built command until the window shows the mercury account of a whole book: a real browser (Chromium) that has
 * never seen the daybook, and a program that has not read it yet. The browser itself runs already.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';

/** The one-time address that the served command prints. */
const addressOf = (server) =>
  new Promise((resolve, reject) => {
    let said = '';
    for (const stream of [server.stdout, server.stderr])
      stream.on('data', (part) => {
        said += part;
        const address = /http:\/\/127\.0\.0\.1:\d+\/enter\?key=\S+/.exec(said)?.[0];
        if (address) resolve(address);
      });
    server.once('exit', () => reject(new Error(`the program ended: ${said}`)));
  });

const ended = (server) => new Promise((resolve) => server.once('exit', resolve));

/** One opening, in milliseconds. */
async function once(browser, command, folder) {
  const home = mkdtempSync(join(tmpdir(), 'bench-window-'));
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const began = performance.now();
  const server = spawn(process.execPath, [command, 'serve', folder, '--port', '0'], {
    env: { ...process.env, DAYBOOK_HOME: home },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  try {
    await page.goto(`${await addressOf(server)}#/mercury/account/whole`);
    await page.locator('main h1').first().waitFor({ timeout: 300_000 });
    // shown, and drawn: a page that is still at work answers no frame
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
    return performance.now() - began;
  } finally {
    await context.close();
    server.kill();
    await ended(server);
    rmSync(home, { recursive: true, force: true });
  }
}

/**
 * Each folder so many times in turn, after one opening that warms the disk's cache: milliseconds by folder.
 * @param {string | null} chromium where the browser lies; null: none is at hand, and null is answered
 */
export async function windowsReady(chromium, command, folders, rounds) {
  if (chromium === null) return null;
  const { chromium: engine } = await import('playwright');
  const browser = await engine.launch({ executablePath: chromium, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
  try {
    const times = new Map(folders.map((folder) => [folder, []]));
    for (let round = 0; round <= rounds; round += 1)
      for (const folder of folders) {
        const ms = await once(browser, command, folder);
        if (round > 0) times.get(folder).push(ms);
      }
    return times;
  } finally {
    await browser.close();
  }
}
