/** Who is turned away at the loopback address sees a page that is drawn, in either theme, and says what to do; who is in already is let through. */
import { expect, test } from 'vitest';
import { pages } from '../../app/words/host-pages.ts';
import { axe, closeBrowser, openEmptyHome } from './empty-home.ts';

test('a used address is told in plain words, clean to axe in both themes, and leads its own browser back to the window', async () => {
  const home = await openEmptyHome();
  try {
    const { page, context } = home;
    const origin = new URL(page.url()).origin;
    const stranger = await context.browser()?.newContext({ viewport: { width: 1280, height: 800 } });
    const away = await stranger?.newPage();
    if (!stranger || !away) throw new Error('there is no browser');
    const refused: string[] = [];
    away.on('console', (message) => /policy/i.test(message.text()) && refused.push(message.text()));
    for (const [name, path] of [
      ['key-used', '/enter?key=used'],
      ['no-key', '/'],
    ] as const) {
      // as it is served no program runs in it, and so axe does not either: that one rule is taken off, the style's stays
      await away.unrouteAll();
      await away.goto(`${origin}${path}`);
      const served = await away.screenshot();
      await away.route('**/*', async (route) => {
        const response = await route.fetch();
        const policy = response.headers()['content-security-policy'] ?? '';
        expect(policy).toMatch(/style-src 'sha256-.*; sandbox$/);
        await route.fulfill({
          response,
          headers: { ...response.headers(), 'content-security-policy': policy.replace('; sandbox', '') },
        });
      });
      await away.goto(`${origin}${path}`);
      expect((await away.screenshot()).equals(served)).toBe(true);
      expect(await away.locator('h1').textContent()).toBe(pages[name].title);
      expect(await away.getByRole('listitem').allTextContents()).toEqual([...pages[name].next]);
      const grounds: string[] = [];
      for (const colorScheme of ['light', 'dark'] as const) {
        await away.emulateMedia({ colorScheme });
        grounds.push(await away.locator('html').evaluate((element) => getComputedStyle(element).backgroundColor));
        expect(await axe(away), `${name} ${colorScheme}`).toEqual([]);
        for (const [width, height] of [
          [1280, 800],
          [640, 400],
        ] as const) {
          await away.setViewportSize({ width, height });
          if (process.env.WALK_PICTURES)
            await away.screenshot({ path: `${process.env.WALK_PICTURES}/away-${name}-${width}-${colorScheme}.png` });
          expect(await away.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
        }
      }
      expect(grounds).toEqual(['rgb(244, 245, 234)', 'rgb(25, 29, 29)']);
    }
    expect(refused).toEqual([]);
    await stranger.close();

    await page.goto(`${origin}/enter?key=used`);
    await page.locator('main h1').first().waitFor();
    expect(new URL(page.url()).pathname).toBe('/');
  } finally {
    await home.close();
    await closeBrowser();
  }
}, 120_000);
