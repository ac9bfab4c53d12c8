/**
 * A laid-out plan of plates as one picture that stands by itself and reads in black and white, with its legend in words below. Knows no domain; every text
 * in it is written as text, never as markup.
 */
import { escaped } from './flow-svg.ts';
import { type PlatesLayout, platePatterns } from './plates-layout.ts';
import { wrapped } from './timeline-svg.ts';

const n = (value: number): string => String(Math.round(value * 100) / 100);
const ink = '#1c1c1a';
const lineHeight = 19;
const text = (x: number, y: number, words: string, more = ''): string =>
  `<text x="${n(x)}" y="${n(y)}"${more}>${escaped(words)}</text>`;

/** The picture. `font` is the family's name where it will be drawn. */
export function platesSvg(
  layout: PlatesLayout,
  { title, font, legend }: { readonly title: string; readonly font: string; readonly legend: readonly string[] },
): string {
  const { width, height } = layout;
  const lines = legend.flatMap((words) => wrapped(words, Math.floor((width - 28) / 6.2)));
  const whole = height + lines.length * lineHeight + 8;
  const patterns = platePatterns.map(
    ({ size, path }, i) =>
      `<pattern id="level-${i + 1}" width="${size}" height="${size}" patternUnits="userSpaceOnUse"><path d="${path}" fill="none" stroke="${ink}" stroke-width="0.8"/></pattern>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${n(whole)}" width="${width}" height="${n(whole)}" font-family="${escaped(font)}" font-size="13" fill="${ink}">`,
    `<title>${escaped(title)}</title>`,
    `<defs>${patterns.join('')}</defs>`,
    ...layout.batteries.flatMap(({ name, arrows, plates, brackets }) => [
      text(name.x, name.y, name.text, ' font-weight="bold"'),
      ...arrows.map((path) => `<path d="${path}" fill="none" stroke="${ink}" stroke-width="1.2"/>`),
      ...plates.flatMap(({ x, y, width: w, height: h, level, sized, lines: words }) => [
        `<rect x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}" fill="${level === 0 ? '#ffffff' : `url(#level-${level})`}" stroke="${ink}" stroke-width="1.2"${sized ? '' : ' stroke-dasharray="5 3"'}/>`,
        ...words.map((one, i) => text(one.x, one.y, one.text, i === 0 ? ' font-weight="bold"' : '')),
      ]),
      ...brackets.flatMap((bracket) => [
        `<path d="${bracket.path}" fill="none" stroke="${ink}" stroke-width="1.2"/>`,
        text(bracket.x, bracket.y, bracket.text),
      ]),
    ]),
    ...lines.map((words, i) => text(14, height + (i + 1) * lineHeight, words)),
    '</svg>',
  ].join('\n');
}
