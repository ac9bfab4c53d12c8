/**
 * How wide words of a drawing are, and cutting them to a width. Drawings are laid out where no font can be asked; these are the advance widths of the
 * family's semi-bold (the widest it is written in), each rounded up to a twentieth of its height; a letter not listed counts as a whole height.
 */

/** Height of a drawing's letters, in its units. */
const height = 13;
const byWidth: readonly (readonly [hundredths: number, letters: string])[] = [
  [20, ' \u00a0\u202f'],
  [30, "',.:;Iijl|·’"],
  [35, '!()-/[\\]f{}°'],
  [40, 'rt²³'],
  [45, '*?sz'],
  [50, '"J_cvxy“”–'],
  [55, '#$+0123456789<=>EFLSTVXYZ^`aegko~±×−≤≥éèêëáàâäãåā'],
  [60, 'ABCKPRbdhnpquµüúùûūöóòôōñ'],
  [65, '&DG'],
  [70, 'HNOQUÖÜŌ'],
  [75, 'Mw'],
  [80, 'W—'],
  [85, '%m½'],
  [90, '@'],
];
const widths = new Map(byWidth.flatMap(([hundredths, letters]) => [...letters].map((one) => [one, (hundredths * height) / 100])));
const wideOf = (letter: string): number => widths.get(letter) ?? height;

/** Width a text takes at most, in units of the drawing; of letters that high, where they are not as high as usual. */
export const widthOf = (text: string, high = height): number =>
  ([...text].reduce((sum, letter) => sum + wideOf(letter), 0) * high) / height;

/** A text cut to a width, with three points where anything is gone; nothing where not even they have room. */
export function cutTo(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  const room = width - wideOf('…');
  if (room < 0) return '';
  let kept = '';
  let taken = 0;
  for (const letter of text) {
    taken += wideOf(letter);
    if (taken > room) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}
