/**
 * A day's air, laid out, as one picture that stands by itself and reads in black and white: for papers and for copying. Knows no domain; every text
 * in it is written as text, never as markup.
 */
import type { AirDayLayout, LaidStep } from './air-day-layout.ts';
import { escaped, patterns } from './flow-svg.ts';

const n = (value: number): string => String(Math.round(value * 100) / 100);
const ink = '#1c1c1a';
const soft = '#8a877e';

const text = (x: number, y: number, words: string, more = ''): string =>
  `<text x="${n(x)}" y="${n(y)}"${more}>${escaped(words)}</text>`;

const dashes: Readonly<Record<LaidStep['mark'], string>> = { read: '', below: ' stroke-dasharray="3 3"', over: '' };

const step = ({ mark, ground, stroke, stem, shape }: LaidStep): string[] => [
  `<path d="${ground}" fill="${mark === 'read' ? '#d5d5d0' : '#ffffff'}" stroke="${mark === 'read' ? 'none' : soft}" stroke-width="0.6" stroke-dasharray="2 3"/>`,
  `<path d="${stroke}" fill="none" stroke="${ink}" stroke-width="2"${dashes[mark]}/>`,
  ...(stem === '' ? [] : [`<path d="${stem}" fill="none" stroke="${ink}" stroke-width="1"/>`]),
  ...(shape === ''
    ? []
    : [`<path d="${shape}" fill="${mark === 'over' ? ink : '#ffffff'}" stroke="${ink}" stroke-width="1.2"/>`]),
];

/** The picture. `font` is the family's name where it will be drawn. */
export function airDaySvg(layout: AirDayLayout, { title, font }: { readonly title: string; readonly font: string }): string {
  const { width, height, left, right, top, bottom } = layout;
  const { size, path } = patterns.loss;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="${escaped(font)}" font-size="13" fill="${ink}">`,
    `<title>${escaped(title)}</title>`,
    `<defs><pattern id="nobody-read" width="${size}" height="${size}" patternUnits="userSpaceOnUse"><path d="${path}" fill="none" stroke="${soft}" stroke-width="0.7"/></pattern></defs>`,
    text(left, 14, layout.scaleName, ' font-weight="bold"'),
    ...(layout.above ? [text(left, layout.above.y + 6, layout.above.text)] : []),
    ...layout.gaps.flatMap((gap) => [
      `<rect x="${n(gap.x)}" y="${n(gap.y)}" width="${n(gap.width)}" height="${n(gap.height)}" fill="url(#nobody-read)"/>`,
      ...(gap.name
        ? [
            `<rect x="${n(gap.name.x - gap.name.text.length * 3.7)}" y="${n(gap.name.y - 14)}" width="${n(gap.name.text.length * 7.4)}" height="20" fill="#ffffff"/>`,
            text(gap.name.x, gap.name.y, gap.name.text, ' text-anchor="middle" font-style="italic"'),
          ]
        : []),
    ]),
    ...layout.ticks.flatMap((tick) => [
      `<path d="M${n(left)},${n(tick.y)}H${n(right)}" stroke="#dddad0" stroke-width="0.6"/>`,
      text(left - 6, tick.y + 4, tick.text, ' text-anchor="end"'),
    ]),
    // a line's name is cleared of the hatching, and never of what was read
    ...layout.lines.map(({ label }) => {
      const wide = Math.min(label.width, label.text.length * 6.2 + 8);
      return `<rect x="${n(label.x + label.width - wide)}" y="${n(label.y)}" width="${n(wide)}" height="${n(label.height)}" fill="#ffffff" fill-opacity="0.8"/>`;
    }),
    ...layout.steps.flatMap(step),
    `<path d="M${n(left)},${n(bottom)}H${n(right)}" stroke="${ink}" stroke-width="1"/>`,
    ...layout.hours.flatMap((hour) => [
      `<path d="M${n(hour.x)},${n(bottom)}V${n(bottom + 5)}" stroke="${ink}" stroke-width="1"/>`,
      ...(hour.text === null ? [] : [text(hour.x, bottom + 20, hour.text, ` text-anchor="${hour.anchor}"`)]),
    ]),
    ...layout.lines.flatMap(({ y, label }) => [
      `<path d="M${n(left)},${n(y)}H${n(right)}" fill="none" stroke="${ink}" stroke-width="1.4" stroke-dasharray="7 4"/>`,
      text(label.x + label.width - 4, label.y + 13, label.text, ' text-anchor="end"'),
    ]),
    ...layout.moments.map(
      ({ mark, shape }) => `<path d="${shape}" fill="${mark === 'below' ? '#ffffff' : ink}" stroke="${ink}" stroke-width="1.2"/>`,
    ),
    `<path d="M${n(left)},${n(top)}V${n(bottom)}" stroke="${ink}" stroke-width="1"/>`,
    '</svg>',
  ].join('\n');
}
