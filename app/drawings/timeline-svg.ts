/**
 * A laid-out timeline as one picture that stands by itself and reads in black and white, with its legend in words below: for papers and for copying. Knows
 * no domain; every text in it is written as text, never as markup.
 */
import { escaped, patterns } from './flow-svg.ts';
import type { LaidLane, LaidText, LaidTimePanel, SpanLook, TimelineLayout } from './timeline-layout.ts';

const n = (value: number): string => String(Math.round(value * 100) / 100);
const ink = '#1c1c1a';
const soft = '#8a877e';
const feint = '#dddad0';
const lineHeight = 19;

/** The pattern each filling of a span is drawn with; an outline alone and a whole one have none. */
export const spanPatterns = { hatched: patterns.loss, crossed: patterns.gain, dotted: patterns.round } as const;
const patternOf = (look: SpanLook): keyof typeof spanPatterns | null => (look === 'open' || look === 'filled' ? null : look);

const write = ({ x, y, text, anchor }: LaidText, more = ''): string =>
  `<text x="${n(x)}" y="${n(y)}" text-anchor="${anchor}"${more}>${escaped(text)}</text>`;

/** Cleared ground under words that lie on a filling. */
const cleared = ({ x, y, width, anchor }: LaidText): string =>
  `<rect x="${n((anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x) - 2)}" y="${n(y - 12)}" width="${n(width + 4)}" height="15" fill="#ffffff" fill-opacity="0.85"/>`;

const lane = ({ name, top, bottom, spans, marks, note }: LaidLane, { left, right }: TimelineLayout): string[] => [
  `<path d="M${n(left)},${n(top)}V${n(bottom)}" stroke="${ink}" stroke-width="0.8"/>`,
  `<path d="M10,${n(bottom + 5)}H${n(right)}" stroke="${feint}" stroke-width="0.6"/>`,
  write(name, ' font-weight="bold"'),
  ...spans.flatMap(({ x, y, width, height, look, label }) => {
    const pattern = patternOf(look);
    const box = `x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}"`;
    return [
      `<rect ${box} fill="${look === 'filled' ? '#d5d5d0' : '#ffffff'}" stroke="${ink}" stroke-width="0.8"${look === 'open' ? ' stroke-dasharray="4 3"' : ''}/>`,
      ...(pattern === null ? [] : [`<rect ${box} fill="url(#${pattern})"/>`]),
      cleared(label),
      write(label),
    ];
  }),
  ...marks.flatMap(({ look, shape, label }) => {
    const whole = look === 'dot' || look === 'diamond' || look === 'triangle' || look === 'early' || look === 'late';
    return [
      `<path d="${shape}" fill="${look === 'cross' ? 'none' : whole ? ink : '#ffffff'}" stroke="${ink}" stroke-width="${look === 'cross' ? 2.4 : 1.4}"/>`,
      write(label),
    ];
  }),
  ...(note ? [write(note, ' font-style="italic"')] : []),
];

const panel = (laid: LaidTimePanel, { left, right }: TimelineLayout, above: string): string[] => [
  write(
    laid.above === '' ? laid.name : { ...laid.name, text: `${laid.name.text}. ${above} ${laid.above}` },
    ' font-weight="bold"',
  ),
  ...laid.ticks.flatMap((tick) => [
    `<path d="M${n(left)},${n(tick.y)}H${n(right)}" stroke="${feint}" stroke-width="0.6"/>`,
    `<text x="${n(left - 6)}" y="${n(tick.y + 4)}" text-anchor="end">${escaped(tick.text)}</text>`,
  ]),
  ...laid.lines.map(
    ({ y }) =>
      `<path d="M${n(left)},${n(y)}H${n(right)}" fill="none" stroke="${ink}" stroke-width="1.4" stroke-dasharray="7 4"/>`,
  ),
  ...laid.steps.map(
    ({ mark, path }) =>
      `<path d="${path}" fill="none" stroke="${ink}" stroke-width="2.2"${mark === 'below' ? ' stroke-dasharray="3 3"' : ''}/>`,
  ),
  ...laid.moments.map(
    ({ mark, shape }) => `<path d="${shape}" fill="${mark === 'below' ? '#ffffff' : ink}" stroke="${ink}" stroke-width="1.2"/>`,
  ),
  ...[...laid.labels, ...laid.lines.map(({ label }) => label)].flatMap((label) => [cleared(label), write(label)]),
  `<path d="M${n(left)},${n(laid.top)}V${n(laid.bottom)}H${n(right)}" fill="none" stroke="${ink}" stroke-width="0.8"/>`,
];

/** Words in lines no longer than so many letters. */
export function wrapped(text: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** The picture. `font` is the family's name where it will be drawn; `above` stands before names of lines that lie above everything drawn. */
export function timelineSvg(
  layout: TimelineLayout,
  {
    title,
    font,
    legend,
    above,
  }: { readonly title: string; readonly font: string; readonly legend: readonly string[]; readonly above: string },
): string {
  const { width, height, left, right, bottom } = layout;
  const lines = legend.flatMap((text) => wrapped(text, Math.floor((width - 20) / 6.2)));
  const whole = height + lines.length * lineHeight + (lines.length > 0 ? 8 : 0);
  const pattern = (look: keyof typeof spanPatterns): string => {
    const { size, path } = spanPatterns[look];
    return `<pattern id="${look}" width="${size}" height="${size}" patternUnits="userSpaceOnUse"><path d="${path}" fill="none" stroke="${ink}" stroke-width="0.9"/></pattern>`;
  };
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${n(whole)}" width="${width}" height="${n(whole)}" font-family="${escaped(font)}" font-size="13" fill="${ink}">`,
    `<title>${escaped(title)}</title>`,
    `<defs>${pattern('hatched')}${pattern('crossed')}${pattern('dotted')}</defs>`,
    ...layout.hours.map((hour) => `<path d="M${n(hour.x)},4V${n(bottom)}" stroke="${feint}" stroke-width="0.6"/>`),
    ...layout.lanes.flatMap((laid) => lane(laid, layout)),
    ...layout.panels.flatMap((laid) => panel(laid, layout, above)),
    `<path d="M${n(left)},${n(bottom)}H${n(right)}" stroke="${ink}" stroke-width="1"/>`,
    ...layout.hours.flatMap((hour) => [
      `<path d="M${n(hour.x)},${n(bottom)}V${n(bottom + 5)}" stroke="${soft}" stroke-width="1"/>`,
      ...(hour.text === null
        ? []
        : [`<text x="${n(hour.x)}" y="${n(bottom + 20)}" text-anchor="${hour.anchor}">${escaped(hour.text)}</text>`]),
    ]),
    ...lines.map((words, i) => `<text x="10" y="${n(height + (i + 1) * lineHeight)}">${escaped(words)}</text>`),
    '</svg>',
  ].join('\n');
}
