/** Widths of words in drawings, held against the advance widths in the family's own files as another reader of fonts gives them. */
import { createRequire } from 'node:module';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutTo, widthOf } from '../../app/drawings/letters.ts';
import { root } from '../../main/build/paths.mjs';

interface Font {
  readonly unitsPerEm: number;
  glyphForCodePoint(point: number): { readonly advanceWidth: number };
  hasGlyphForCodePoint(point: number): boolean;
}
const fontkit = createRequire(import.meta.url)('fontkit') as { openSync: (path: string) => Font };
const fonts = ['Regular', 'SemiBold'].map((style) => fontkit.openSync(join(root, `assets/fonts/SourceSans3-${style}.ttf`)));
const height = 13;

test('no letter of a western script is wider than it is taken to be, and a line is not taken for half as wide again', () => {
  for (const font of fonts) {
    const advance = (text: string): number =>
      [...text].reduce(
        (sum, letter) => sum + (font.glyphForCodePoint(letter.codePointAt(0) ?? 0).advanceWidth / font.unitsPerEm) * height,
        0,
      );
    for (let point = 0x20; point < 0x250; point++)
      if (point !== 0x7f && font.hasGlyphForCodePoint(point)) {
        const letter = String.fromCodePoint(point);
        expect(widthOf(letter), `U+${point.toString(16)} ${letter}`).toBeGreaterThanOrEqual(advance(letter) - 1e-9);
      }
    const line = 'Air where people breathe, mg/m³: 0.021 ± 0.004, read at 08:40 – 09:10 by the Keeper';
    expect(widthOf(line) / advance(line)).toBeLessThan(1.2);
  }
});

test('a text is cut to a width and says that it was', () => {
  expect(cutTo('Keeper', 100)).toBe('Keeper');
  expect(cutTo('Keeper of the battery', 70)).toMatch(/^Keeper.*…$/);
  expect(cutTo('Keeper', 5)).toBe('');
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), fc.integer({ min: 0, max: 400 }), (text, width) => {
      const short = cutTo(text, width);
      expect(widthOf(short)).toBeLessThanOrEqual(width);
      if (!short.endsWith('…') && short !== '') expect(short).toBe(text);
    }),
  );
});
