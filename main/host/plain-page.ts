/**
 * The page for people who came to the wrong place: what happened and what to do next, in both themes, without a file of ours and without a program.
 * Its one style is let through by its hash (Content Security Policy Level 3, W3C); everything else stays as shut as ever.
 */
import { createHash } from 'node:crypto';
import { type PageName, pages, toDo } from '../../app/words/host-pages.ts';
import { barePolicy, headersFor } from './headers.ts';

// inks and grounds are those of look/tokens.css: 4.5 : 1 at least in either theme
const style = `
:root{color-scheme:light dark;background:light-dark(#f4f5ea,#191d1d);color:light-dark(#1b2433,#ecebdd)}
html{padding:0 1rem}
body{max-width:38rem;margin:12vh auto;padding:0 1.25rem 0 1.5rem;border-left:4px double light-dark(#7d93a8,#5a7186);font:1.125rem/1.6 "Source Sans 3",system-ui,sans-serif}
.of{margin:0;color:light-dark(#4a5566,#b5bbb2)}
h1{font-size:1.6rem;line-height:1.3;margin:0 0 1rem}
h2{font-size:1.125rem;margin:1.5rem 0 0}
p,li{margin:.4rem 0;text-wrap:pretty}
ol{margin:0;padding-left:1.4rem}
`;

/** What such a page may load: its own style and nothing else. */
export const plainPolicy = barePolicy.replace(
  "default-src 'none';",
  `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style).digest('base64')}';`,
);

const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);

/** The page as HTML. */
export function plainHtml(name: PageName): string {
  const { title, says, next } = pages[name];
  const paragraphs = says.map((line) => `<p>${escaped(line)}</p>`).join('');
  const steps =
    next.length === 1 ? `<p>${escaped(next[0])}</p>` : `<ol>${next.map((step) => `<li>${escaped(step)}</li>`).join('')}</ol>`;
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escaped(title)}</title><style>${style}</style></head><body><main><p class="of">${escaped(toDo.of)}</p><h1>${escaped(title)}</h1>${paragraphs}<h2>${escaped(toDo.heading)}</h2>${steps}</main></body></html>`;
}

/** The page as an answer. */
export const plainPage = (name: PageName, status: number, more: Record<string, string> = {}): Response =>
  new Response(plainHtml(name), { status, headers: { ...headersFor('text/html; charset=utf-8', plainPolicy), ...more } });
