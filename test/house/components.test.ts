/** What the strict policy of the page would break, and what no rule would notice: raw markup, styles written into the markup, boxes that only a mouse scrolls. */
import { describe, expect, it } from 'vitest';
import { sources, textOf } from './sources.ts';
import { markupOf } from './texts.ts';

/** Faults of a component's markup, as words. */
function faults(text: string): string[] {
  return markupOf(text).flatMap(({ type, name, value }) => {
    if (type === 'HtmlTag') return ['raw markup'];
    // with an expression in it Svelte sets the style by program, which the policy allows; without, it is written into the markup
    const fixed = Array.isArray(value) && value.every((part) => (part as { type?: string }).type === 'Text');
    if (type === 'Attribute' && name === 'style' && fixed) return ['a fixed style'];
    if (type === 'Attribute' && name !== undefined && /^on[a-z]+$/.test(name) && fixed) return ['a program in an attribute'];
    return [];
  });
}

describe('components', () => {
  it('hold no raw markup, no fixed style and no program in an attribute', () => {
    const files = sources(['app'], ['.svelte']);
    expect(files.length).toBeGreaterThan(20);
    expect(files.flatMap((path) => faults(textOf(path)).map((fault) => `${path}: ${fault}`))).toEqual([]);
  });

  it('scroll sideways in the one part that the keyboard reaches, or in the row of rooms, which is links', () => {
    const scrolls = sources(['app'], ['.svelte', '.css']).filter((path) =>
      /overflow(?:-x|-inline)?:[^;]*\b(?:auto|scroll)\b/.test(textOf(path)),
    );
    expect(scrolls).toEqual(['app/Window.svelte', 'app/parts/Sideways.svelte']);
  });

  it.each([
    ['{@html text}', ['raw markup']],
    ['{#if a}<div><p>{@html text}</p></div>{/if}', ['raw markup']],
    ['<p style="color: red">x</p>', ['a fixed style']],
    ['{#each a as b}<p style="">{b}</p>{/each}', ['a fixed style']],
    ['<button onclick="go()">x</button>', ['a program in an attribute']],
    ['<p style:width="{w}px" style="height: {h}px">x</p><button onclick={go}>x</button>', []],
  ])('would be caught, and only those: %s', (text, found) => {
    expect(faults(text)).toEqual(found);
  });
});
