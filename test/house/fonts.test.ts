/** The bundled fonts hold every character our texts use: a missing one is left out of window and paper in silence. */
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from '../../main/build/paths.mjs';
import { sources, textOf } from './sources.ts';
import { shownTexts } from './texts.ts';

/** As much of the font reader as is needed here; it has no types of its own. */
interface Font {
  readonly familyName: string;
  readonly hasGlyphForCodePoint: (point: number) => boolean;
}
const fontkit = createRequire(import.meta.url)('fontkit') as { openSync: (path: string) => Font };

const fonts = sources(['assets/fonts'], ['.ttf']).map((path) => [path, fontkit.openSync(join(root, path))] as const);

/** Characters a font lacks, each once; line ends and joiners have no picture. */
const lacks = (font: Font, text: string): string[] =>
  [...new Set(text)].filter((c) => !/[\n\r\t\u00ad\u200b\u2060\ufeff]/.test(c) && !font.hasGlyphForCodePoint(c.codePointAt(0)!));

describe('the fonts', () => {
  it('are there with their licence: regular, semibold, italic', () => {
    expect(fonts.map(([path]) => path)).toEqual(
      ['Italic', 'Regular', 'SemiBold'].map((style) => `assets/fonts/SourceSans3-${style}.ttf`),
    );
    expect(textOf('assets/fonts/OFL.txt')).toContain('SIL OPEN FONT LICENSE');
  });

  it('hold every character of every text we show', () => {
    const missing: Record<string, string[]> = {};
    const texts = shownTexts();
    expect(texts.length).toBeGreaterThan(1000);
    for (const { path, text } of texts)
      for (const [name, font] of fonts) {
        const some = lacks(font, text);
        if (some.length > 0) missing[`${path} in ${name}`] = some;
      }
    expect(missing).toEqual({});
  });

  it('would be caught lacking one, and hold those the trade needs', () => {
    for (const [, font] of fonts) {
      expect(lacks(font, 'µ ° ± − × · ½ ¼ ¾ ≤ ≥ √ Δ £ § “ ” ‘ ’ – — … ²³')).toEqual([]);
      expect(lacks(font, '⚠日')).toEqual(['⚠', '日']);
    }
  });
});
