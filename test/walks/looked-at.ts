/**
 * A page as people may meet it: both themes at three widths, the narrowest as on a screen at twice its size. Pictures go into the folder that
 * WALK_PICTURES names, where it names one; axe is asked in both themes always.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import type { WalkedWindow } from './window.ts';

const folder = process.env.WALK_PICTURES;
const themes = ['light', 'dark'] as const;
const sizes = [
  [1280, 800],
  [1920, 1080],
  [640, 400],
] as const;

/** Takes the page's pictures, where they are asked for. */
export async function pictured({ page, theme }: Pick<WalkedWindow, 'page' | 'theme'>, name: string): Promise<void> {
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  for (const [width, height] of sizes) {
    await page.setViewportSize({ width, height });
    for (const one of themes) {
      await theme(one);
      await page.screenshot({ path: join(folder, `${name}-${width}-${one}.png`), fullPage: true });
    }
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}

/** Axe finds nothing on the page in either theme; with a name, its pictures are taken too. */
export async function plainInBoth(walked: WalkedWindow, name = ''): Promise<void> {
  if (name !== '') await pictured(walked, name);
  for (const one of themes) {
    await walked.theme(one);
    expect(await walked.axe(), `${name} ${one}`).toEqual([]);
  }
}
