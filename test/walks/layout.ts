/**
 * What can be measured of a page as it is drawn, in a browser of any version: whether anything is wider than the window, whether lines of text lie on one
 * another or controls on controls, whether leaves begin on one line, and whether figures of a column stand on their decimal point. It compares no pictures.
 */
import type { Page } from 'playwright';

/** What is wrong with the page as it stands, a line for each; empty where nothing is. Lengths are CSS pixels. */
export const laidOutWrong = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const wrong: string[] = [];
    const slack = 1;
    const main = document.querySelector('main');
    if (!main) return ['there is no main'];
    const said = (text: string | null) => `“${(text ?? '').trim().replace(/\s+/g, ' ').slice(0, 40)}”`;
    const wide = document.documentElement.scrollWidth - window.innerWidth;
    if (wide > slack) wrong.push(`the page is ${wide} px wider than the window`);

    const shown = (element: Element) => {
      const { visibility, position, clip, opacity } = getComputedStyle(element);
      return visibility === 'visible' && opacity !== '0' && !(position === 'absolute' && clip !== 'auto');
    };
    const drawn = (element: Element | null): boolean => {
      for (let at = element; at && at !== document.body; at = at.parentElement) if (!shown(at)) return false;
      return element?.checkVisibility() ?? false;
    };
    // what a box that scrolls by itself does not show lies on nothing
    const seen = (element: Element, box: DOMRect): DOMRect | null => {
      let { left, top, right, bottom } = box;
      for (let at: Element | null = element; at && at !== document.body; at = at.parentElement) {
        const { overflowX, overflowY, clipPath } = getComputedStyle(at);
        // for readers only
        if (clipPath !== 'none') return null;
        if (overflowX === 'visible' && overflowY === 'visible') continue;
        const around = at.getBoundingClientRect();
        if (overflowX !== 'visible') [left, right] = [Math.max(left, around.left), Math.min(right, around.right)];
        if (overflowY !== 'visible') [top, bottom] = [Math.max(top, around.top), Math.min(bottom, around.bottom)];
      }
      return right - left > slack && bottom - top > slack ? new DOMRect(left, top, right - left, bottom - top) : null;
    };

    interface Box {
      readonly of: Node;
      readonly text: string;
      readonly rect: DOMRect;
    }
    const across = (boxes: readonly Box[], what: string, high: number) => {
      const sorted = [...boxes].sort((a, b) => a.rect.top - b.rect.top);
      for (const [i, a] of sorted.entries())
        for (const b of sorted.slice(i + 1)) {
          if (b.rect.top >= a.rect.bottom) break;
          if (a.of === b.of || a.of.contains(b.of) || b.of.contains(a.of)) continue;
          const x = Math.min(a.rect.right, b.rect.right) - Math.max(a.rect.left, b.rect.left);
          const y = Math.min(a.rect.bottom, b.rect.bottom) - b.rect.top;
          if (x > 2 && y > high * Math.min(a.rect.height, b.rect.height))
            wrong.push(`${what} ${said(a.text)} lies on ${said(b.text)}`);
        }
    };
    const lines: Box[] = [];
    const walker = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (!node.textContent?.trim() || !parent || parent.closest('option, svg, script, style') || !drawn(parent)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects()) {
        const rect = seen(parent, box);
        if (rect) lines.push({ of: node, text: node.textContent, rect });
      }
    }
    // boxes of neighbouring lines share their leading: text lies on text only where much of their height does
    across(lines, 'the text', 0.5);
    if (lines.length === 0) wrong.push('no text is drawn');
    const controls = [...main.querySelectorAll('button, select, textarea, input:not([type="hidden"])')].flatMap((of): Box[] => {
      const rect = drawn(of) && of.parentElement ? seen(of.parentElement, of.getBoundingClientRect()) : null;
      return rect ? [{ of, text: of.getAttribute('aria-label') ?? of.textContent ?? of.tagName, rect }] : [];
    });
    across(controls, 'the control', 0.05);

    const left = (element: Element) => element.getBoundingClientRect().left;
    const leaves = [...main.querySelectorAll('section')].filter((one) => !one.parentElement?.closest('section') && drawn(one));
    for (const leaf of leaves)
      if (Math.abs(left(leaf) - left(leaves[0] as Element)) > slack)
        wrong.push(`the leaf ${said(leaf.querySelector('h1, h2')?.textContent ?? '')} begins on another line than the first`);

    for (const table of main.querySelectorAll('table')) {
      const points = new Map<number, { at: number; text: string }>();
      for (const cell of table.querySelectorAll<HTMLTableCellElement>('tbody td.decimal, tfoot td.decimal')) {
        const inside =
          cell.querySelector('a')?.firstChild ??
          [...cell.childNodes].find((n) => n.nodeType === Node.TEXT_NODE && n.textContent?.trim());
        const text = inside?.textContent ?? '';
        const whole = /^\s*[+−-]?[\d\s\u00a0\u2007\u202f]*\d/.exec(text);
        if (!inside || !whole || !drawn(cell)) continue;
        const range = document.createRange();
        range.setStart(inside, 0);
        range.setEnd(inside, whole[0].length);
        const at = range.getBoundingClientRect().right;
        const first = points.get(cell.cellIndex);
        if (!first) points.set(cell.cellIndex, { at, text });
        else if (Math.abs(first.at - at) > slack)
          wrong.push(`the figures ${said(first.text)} and ${said(text)} are not on one decimal point`);
      }
    }
    return [...new Set(wrong)].slice(0, 20);
  });
