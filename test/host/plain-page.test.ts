/** The page for whoever came to the wrong place: what happened, what to do, and no door left open for the sake of its looks. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { type PageName, pages } from '../../app/words/host-pages.ts';
import { barePolicy } from '../../main/host/headers.ts';
import { plainHtml, plainPolicy } from '../../main/host/plain-page.ts';

describe('a plain page', () => {
  it.each(Object.keys(pages) as PageName[])(
    'the page “%s” has its one style let through by its hash, and nothing else',
    (name) => {
      const [html, policy] = [plainHtml(name), plainPolicy];
      const style = /<style>([\s\S]*)<\/style>/.exec(html)?.[1] ?? '';
      expect(policy).toContain(`style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'`);
      expect(policy.replace(/ style-src '[^']*';/, '')).toBe(barePolicy);
      expect(html.match(/style|script|src=|href=|url\(/g)).toEqual(['style', 'style']);
      expect(html).toContain(`<h1>${pages[name].title}</h1>`);
      for (const step of pages[name].next) expect(html).toContain(step);
    },
  );
});
