/**
 * Figures that are another figure with two neighbouring digits the other way round, as a tired hand writes them: 215.4 and 251.4. It only lists what
 * could have been meant; nothing here, and nobody who calls it, changes a figure. Common practice in checking books; no source.
 */

/** Every text that differs by one such swap, the point passed over: "215.4 g" gives "125.4 g", "251.4 g", "214.5 g". Each once. */
export function transpositions(text: string): readonly string[] {
  const found = new Set<string>();
  for (let i = 0; i < text.length; i += 1) {
    const a = text.charAt(i);
    if (!/\d/.test(a)) continue;
    const j = text.charAt(i + 1) === '.' ? i + 2 : i + 1;
    const b = text.charAt(j);
    if (!/\d/.test(b) || a === b) continue;
    found.add(`${text.slice(0, i)}${b}${text.slice(i + 1, j)}${a}${text.slice(j + 1)}`);
  }
  return [...found];
}
