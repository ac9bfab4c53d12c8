/**
 * Which characters a font file holds, read from its own character map. The paper machine draws an empty box for a missing one and says nothing,
 * so this is asked before anything is printed. Source: OpenType specification, table `cmap`, formats 4 and 12 (from memory).
 */

/** Code points the font has a glyph for. Throws where the file is no font with a Unicode map. */
export function charactersOf(font: Uint8Array): ReadonlySet<number> {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const tables = view.getUint16(4);
  for (let i = 0; i < tables; i++) {
    const at = 12 + i * 16;
    if (String.fromCharCode(...font.subarray(at, at + 4)) === 'cmap') return fromMap(view, view.getUint32(at + 8));
  }
  throw new Error('the font has no character map');
}

function fromMap(view: DataView, map: number): ReadonlySet<number> {
  const found = new Set<number>();
  for (let i = 0; i < view.getUint16(map + 2); i++) {
    const platform = view.getUint16(map + 4 + i * 8);
    const at = map + view.getUint32(map + 8 + i * 8);
    const format = view.getUint16(at);
    if (platform !== 0 && platform !== 3) continue;
    if (format === 4) segments(view, at, found);
    else if (format === 12) spans(view, at, found);
  }
  if (found.size === 0) throw new Error('the font has no Unicode map');
  return found;
}

/** Format 4: segments of the first 65,536 code points, with a shift or a list of glyphs each. */
function segments(view: DataView, at: number, found: Set<number>): void {
  const twice = view.getUint16(at + 6);
  const ends = at + 14;
  const starts = ends + twice + 2;
  for (let i = 0; i < twice; i += 2) {
    const end = view.getUint16(ends + i);
    const start = view.getUint16(starts + i);
    const shift = view.getUint16(starts + twice + i);
    const rangeAt = starts + 2 * twice + i;
    const range = view.getUint16(rangeAt);
    for (let code = start; code <= end && code < 0xffff; code++) {
      const listed = range === 0 ? code : view.getUint16(rangeAt + range + 2 * (code - start));
      const glyph = range !== 0 && listed === 0 ? 0 : (listed + shift) & 0xffff;
      if (glyph !== 0) found.add(code);
    }
  }
}

/** Format 12: spans of code points with glyphs one after another. */
function spans(view: DataView, at: number, found: Set<number>): void {
  for (let i = 0; i < view.getUint32(at + 12); i++) {
    const span = at + 16 + i * 12;
    const first = view.getUint32(span);
    const glyph = view.getUint32(span + 8);
    for (let code = first; code <= view.getUint32(span + 4); code++) if (glyph + code - first !== 0) found.add(code);
  }
}
