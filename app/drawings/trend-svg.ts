/**
 * Laid-out values in a row as one picture that stands by itself, readable in black and white: for papers and for copying. Knows no domain; every
 * text in it is written as text, never as markup.
 */
import { escaped, patterns } from './flow-svg.ts';
import type { LaidPanel, LaidPoint, TrendLayout } from './trend-layout.ts';

const n = (value: number): string => String(Math.round(value * 100) / 100);
const ink = '#1c1c1a';
const soft = '#8a877e';

/** A point with the ends of its band: an upright stroke with two caps. */
export const bandPath = ({ x, top, bottom }: Pick<LaidPoint, 'x' | 'top' | 'bottom'>): string =>
  top === bottom ? '' : `M${n(x)},${n(top)}V${n(bottom)}M${n(x - 5)},${n(top)}H${n(x + 5)}M${n(x - 5)},${n(bottom)}H${n(x + 5)}`;

/** A bar from nothing to its value. */
export const barPath = ({ x, y }: Pick<LaidPoint, 'x' | 'y'>, nothingY: number, width: number): string =>
  `M${n(x - width / 2)},${n(nothingY)}V${n(y)}H${n(x + width / 2)}V${n(nothingY)}Z`;

const text = (x: number, y: number, words: string, more = ''): string =>
  `<text x="${n(x)}" y="${n(y)}"${more}>${escaped(words)}</text>`;

function panel(laid: LaidPanel, { left, right, barWidth }: TrendLayout): string[] {
  const { form, points, nothingY } = laid;
  return [
    text(left, laid.top - 8, laid.name, ' font-weight="bold"'),
    ...laid.ticks.flatMap(({ y, text: words }) => [
      `<path d="M${n(left)},${n(y)}H${n(right)}" stroke="#dddad0" stroke-width="0.6"/>`,
      text(left - 6, y + 4, words, ' text-anchor="end"'),
    ]),
    ...(laid.band === null ? [] : [`<path d="${laid.band}" fill="#e4e4df" stroke="${soft}" stroke-width="0.6"/>`]),
    `<path d="M${n(left)},${n(nothingY)}H${n(right)}" stroke="${ink}" stroke-width="1"/>`,
    ...(laid.line === null ? [] : [`<path d="${laid.line}" fill="none" stroke="${ink}" stroke-width="1.6"/>`]),
    ...points.map((at) =>
      form === 'bars'
        ? `<path d="${barPath(at, nothingY, barWidth)}" fill="${at.over ? 'url(#over)' : '#d5d5d0'}" stroke="${ink}" stroke-width="0.8"/>`
        : `${form === 'points' ? `<path d="${bandPath(at)}" fill="none" stroke="${ink}" stroke-width="1"/>` : ''}<circle cx="${n(at.x)}" cy="${n(at.y)}" r="3.6" fill="${ink}"/>`,
    ),
    ...(laid.threshold
      ? [
          `<path d="M${n(left)},${n(laid.threshold.y)}H${n(right)}" fill="none" stroke="${ink}" stroke-width="1.4" stroke-dasharray="7 4"/>`,
          text(left + 4, laid.threshold.y - 4, laid.threshold.name),
        ]
      : []),
    ...(laid.mark
      ? [
          `<path d="${laid.mark.path}" fill="#ffffff" stroke="${ink}" stroke-width="2"/>`,
          text(laid.mark.x, laid.mark.y, laid.mark.name, ` text-anchor="${laid.mark.anchor}" font-weight="bold"`),
        ]
      : []),
  ];
}

/** The picture. `font` is the family's name where it will be drawn. */
export function trendSvg(layout: TrendLayout, { title, font }: { readonly title: string; readonly font: string }): string {
  const { width, height } = layout;
  const { size, path } = patterns.loss;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="${escaped(font)}" font-size="13" fill="${ink}">`,
    `<title>${escaped(title)}</title>`,
    `<defs><pattern id="over" width="${size}" height="${size}" patternUnits="userSpaceOnUse"><path d="${path}" fill="none" stroke="${ink}" stroke-width="1"/></pattern></defs>`,
    ...layout.panels.flatMap((laid) => panel(laid, layout)),
    ...layout.columns.flatMap(({ x, name }) => (name === null ? [] : [text(x, height - 8, name, ' text-anchor="middle"')])),
    '</svg>',
  ].join('\n');
}
