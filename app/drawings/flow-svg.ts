/**
 * A laid-out flow as one picture that stands by itself, readable in black and white: for papers and for copying. Knows no domain; every text in it
 * is written as text, never as markup.
 */
import { feetOf, letterSize } from './flow-labels.ts';
import type { FlowLayout, LaidPlace, LaidRun, Tone } from './flow-layout.ts';

const markup: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => markup[character] ?? '');

const n = (value: number): string => String(Math.round(value * 100) / 100);
const ink = '#1c1c1a';

/** Strokes of each pattern in a square of so many units. */
export const patterns: Readonly<Record<Exclude<Tone, 'plain'>, { readonly size: number; readonly path: string }>> = {
  loss: { size: 6, path: 'M-1,1L1,-1M0,6L6,0M5,7L7,5' },
  gain: { size: 7, path: 'M0,3.5H7M3.5,0V7' },
  round: { size: 5, path: 'M2,2.5H3.4' },
};

const pattern = (tone: Exclude<Tone, 'plain'>): string => {
  const { size, path } = patterns[tone];
  return `<pattern id="${tone}" width="${size}" height="${size}" patternUnits="userSpaceOnUse"><path d="${path}" fill="none" stroke="${ink}" stroke-width="1"/></pattern>`;
};

const run = ({ path, tone, thin }: LaidRun): string =>
  `<path d="${path}" fill="${tone === 'plain' ? '#d5d5d0' : '#ffffff'}" stroke="none"/>` +
  `<path d="${path}" fill="${tone === 'plain' ? 'none' : `url(#${tone})`}" stroke="${ink}" stroke-width="${thin ? 0.6 : 0.5}"${thin ? ' stroke-dasharray="4 2"' : ''}/>`;

const place = ({ x, y, width, height, leader }: LaidPlace): string =>
  `<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}" fill="${ink}"/>` +
  (leader === null ? '' : `<path d="${leader}" fill="none" stroke="${ink}" stroke-width="0.6"/>`);

const label = ({ label: box }: LaidPlace): string => {
  const feet = feetOf(box);
  return (
    `<rect x="${n(box.x)}" y="${n(box.y)}" width="${n(box.width)}" height="${n(box.height)}" fill="#ffffff" fill-opacity="0.75"/>` +
    [...box.name, box.figure]
      .map(
        (text, i) =>
          `<text x="${n(box.textX)}" y="${n(feet[i] ?? 0)}" text-anchor="${box.anchor}"${i < box.name.length ? ' font-weight="bold"' : ''}>${escaped(text)}</text>`,
      )
      .join('')
  );
};

/** The bar of the scale, with feet, and what it stands for. */
const bar = ({ x, y, height }: NonNullable<FlowLayout['scale']>, text: string): string =>
  `<path d="${barPath({ x, y, height })}" fill="none" stroke="${ink}" stroke-width="1.5"/>` +
  `<text x="${n(x + 18)}" y="${n(y + height / 2 + 5)}">${escaped(text)}</text>`;

/** The outline of the bar: an upright line with a foot at both ends. */
export const barPath = ({ x, y, height }: Pick<NonNullable<FlowLayout['scale']>, 'x' | 'y' | 'height'>): string =>
  `M${n(x)},${n(y)}h10m-5,0v${n(height)}m-5,0h10`;

/** The picture. `font` is the family's name where it will be drawn; `scale` says what a bar as high as the amount stands for. */
export function flowSvg(
  layout: FlowLayout,
  { title, font, scale }: { readonly title: string; readonly font: string; readonly scale: (amount: number) => string },
): string {
  const { width, height } = layout;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="${escaped(font)}" font-size="${letterSize}" fill="${ink}">`,
    `<title>${escaped(title)}</title>`,
    `<defs>${pattern('loss')}${pattern('gain')}${pattern('round')}</defs>`,
    ...layout.runs.map(run),
    ...layout.places.map(place),
    ...layout.places.map(label),
    ...(layout.scale ? [bar(layout.scale, scale(layout.scale.amount))] : []),
    '</svg>',
  ].join('\n');
}
