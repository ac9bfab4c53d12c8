/**
 * Laid-out histories as one picture that stands by itself, readable in black and white, with its legend in words below. Knows no domain; every text in it is
 * written as text, never as markup.
 */
import { escaped } from './flow-svg.ts';
import { diamond, type HistoryLayout, type LaidHistory, type LaidValue, markSize } from './history-layout.ts';
import { bandPath } from './trend-svg.ts';

const n = (value: number): string => String(Math.round(value * 100) / 100);
const ink = '#1c1c1a';
const lineHeight = 19;

const text = (x: number, y: number, words: string, more = ''): string =>
  `<text x="${n(x)}" y="${n(y)}"${more}>${escaped(words)}</text>`;

function mark(at: LaidValue): string {
  if (at.mark === 'outside') return `<path d="${diamond(at)}" fill="#ffffff" stroke="${ink}" stroke-width="2"/>`;
  const fill = at.mark === 'early' ? '#ffffff' : ink;
  return `<circle cx="${n(at.x)}" cy="${n(at.y)}" r="${markSize}" fill="${fill}" stroke="${ink}" stroke-width="1.4"/>`;
}

const panel = (laid: LaidHistory, { left, right }: HistoryLayout): string[] => [
  text(left, laid.top - 9, laid.name, ' font-weight="bold"'),
  ...laid.ticks.flatMap(({ y, text: words }) => [
    `<path d="M${n(left)},${n(y)}H${n(right)}" stroke="#dddad0" stroke-width="0.6"/>`,
    text(left - 6, y + 4, words, ' text-anchor="end"'),
  ]),
  ...(laid.band === '' ? [] : [`<path d="${laid.band}" fill="#e4e4df"/>`]),
  ...(laid.middle === ''
    ? []
    : [`<path d="${laid.middle}" fill="none" stroke="${ink}" stroke-width="1.2" stroke-dasharray="7 4"/>`]),
  ...laid.points.flatMap((at) => [`<path d="${bandPath(at)}" fill="none" stroke="${ink}" stroke-width="1"/>`, mark(at)]),
];

/** The picture. `font` is the family's name where it will be drawn. */
export function historySvg(
  layout: HistoryLayout,
  { title, font, legend }: { readonly title: string; readonly font: string; readonly legend: readonly string[] },
): string {
  const { width, height, left } = layout;
  const whole = height + legend.length * lineHeight + 8;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${whole}" width="${width}" height="${whole}" font-family="${escaped(font)}" font-size="13" fill="${ink}">`,
    `<title>${escaped(title)}</title>`,
    ...layout.panels.flatMap((laid) => panel(laid, layout)),
    ...layout.times.map(({ x, name }) => text(x, height - 8, name, ' text-anchor="middle"')),
    ...legend.map((words, i) => text(left, height + (i + 1) * lineHeight, words)),
    '</svg>',
  ].join('\n');
}
