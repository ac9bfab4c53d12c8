/** Draws the icon files from the mark (`node main/build/icons.mjs`, with CHROMIUM or /usr/bin/chromium): run after the mark has changed. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright';
import { sandboxSwitches } from './browser.mjs';
import { root } from './paths.mjs';

/** Edge lengths in pixels: what the packagers of the three systems take. */
const sizes = [16, 32, 48, 64, 128, 256, 512, 1024];
const folder = join(root, 'assets/icons');
const mark = readFileSync(join(folder, 'mark.svg'), 'utf8');
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: sandboxSwitches() });
try {
  for (const size of sizes) {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    await page.setContent(`<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${mark}`);
    writeFileSync(join(folder, `${size}x${size}.png`), await page.screenshot({ omitBackground: true }));
    await page.close();
  }
} finally {
  await browser.close();
}
