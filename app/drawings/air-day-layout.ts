/**
 * Where everything of a drawing of a day's air lies: readings as steps over the time they lasted, time without a reading as a gap of its own, moments,
 * and lines to hold them against. Knows no domain. What nobody read is never joined up, and a line far above everything is named, not drawn.
 */
import { scaleLinear } from 'd3-scale';

/** `below`: it may be anything from nothing up to the value. `over`: it is at least the value. */
export type DrawnMark = 'read' | 'below' | 'over';

/** A value over a time, in minutes from the beginning of the drawing. */
export interface DrawnStep {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly mark: DrawnMark;
  /** The highest seen meanwhile. */
  readonly most?: number | undefined;
}

export interface DrawnMoment {
  readonly at: number;
  readonly value: number;
  readonly mark: DrawnMark;
}

export interface AirDayDrawn {
  readonly minutes: number;
  readonly steps: readonly DrawnStep[];
  /** Time that no step covers. */
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
  readonly moments: readonly DrawnMoment[];
  readonly lines: readonly { readonly value: number; readonly name: string }[];
  /** Words under the time axis, in order. */
  readonly hours: readonly { readonly at: number; readonly text: string }[];
  /** What stands in a gap that has room for it. */
  readonly gapName: string;
  /** Over the scale. */
  readonly scaleName: string;
  /** Before the names of lines that lie above everything drawn. */
  readonly aboveName: string;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface LaidStep {
  readonly mark: DrawnMark;
  readonly left: number;
  readonly right: number;
  readonly y: number;
  /** From the value down to nothing; for what is over the range, up to the top as well. */
  readonly ground: string;
  /** The value's own stroke. */
  readonly stroke: string;
  /** A stem to the highest seen meanwhile; empty where none was. */
  readonly stem: string;
  /** The shape that tells what kind of value it is; empty for a plain one, or where its neighbour carries it. */
  readonly shape: string;
}

export interface AirDayLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly scaleName: string;
  readonly ticks: readonly { readonly y: number; readonly text: string }[];
  /** The last word stands left of its mark where it would run over the edge. */
  readonly hours: readonly { readonly x: number; readonly text: string | null; readonly anchor: 'middle' | 'end' }[];
  readonly steps: readonly LaidStep[];
  readonly gaps: readonly (Box & { readonly name: { readonly x: number; readonly y: number; readonly text: string } | null })[];
  readonly moments: readonly { readonly mark: DrawnMark; readonly x: number; readonly y: number; readonly shape: string }[];
  readonly lines: readonly { readonly y: number; readonly label: Box & { readonly text: string } }[];
  /** Lines above everything drawn, in one sentence; null where there are none. */
  readonly above: { readonly y: number; readonly text: string } | null;
  /** Room to point at: of every step, then of every moment. */
  readonly columns: readonly Box[];
}

const plot = 240;
const letter = 7.2;
const edge = 10;
const row = 18;
const foot = 30;
/** A line this many times above everything read would press it flat. */
const farAbove = 20;
const n = (value: number): string => String(Math.round(value * 100) / 100);

const triangle = (x: number, y: number, up: boolean): string => {
  const d = up ? -1 : 1;
  return `M${n(x - 6)},${n(y - 4 * d)}H${n(x + 6)}L${n(x)},${n(y + 6 * d)}Z`;
};
const diamond = (x: number, y: number): string =>
  `M${n(x)},${n(y - 7)}L${n(x + 7)},${n(y)}L${n(x)},${n(y + 7)}L${n(x - 7)},${n(y)}Z`;

const shapeOf = (mark: DrawnMark, x: number, y: number): string =>
  mark === 'read' ? '' : mark === 'below' ? triangle(x, y + 8, false) : triangle(x, y - 8, true);

/** The shape of a momentary value, by what kind of value it is. */
export const momentShape = (mark: DrawnMark, x: number, y: number): string =>
  mark === 'read' ? diamond(x, y) : shapeOf(mark, x, y);

/** Lays the day out over a width. Every value and every line that is drawn lies inside. `written`: a tick's figure as it is written here. */
export function layAirDay(
  drawn: AirDayDrawn,
  width: number,
  written: (plain: string) => string = (plain) => plain,
): AirDayLayout {
  const values = [...drawn.steps.flatMap((s) => [s.value, s.most ?? 0]), ...drawn.moments.map((m) => m.value)];
  const highest = Math.max(0, ...values);
  const lines = drawn.lines.filter((line) => highest === 0 || line.value <= highest * farAbove);
  const beyond = drawn.lines.filter((line) => !lines.includes(line)).toSorted((a, b) => a.value - b.value);
  const most = Math.max(highest, ...lines.map((line) => line.value));
  const scale = scaleLinear()
    // a little room above, for what is over the range
    .domain([0, most === 0 ? 1 : most * 1.08])
    .nice(4);
  const format = scale.tickFormat(4, ',f');
  const texts = scale.ticks(4).map((value) => ({ value, text: written(format(value).replace(/,/g, '\u202f')) }));
  const left = Math.max(40, ...texts.map(({ text }) => text.length * letter)) + edge;
  const right = width - edge;
  const top = row + 8 + (beyond.length > 0 ? row : 0);
  const bottom = top + plot;
  const y = scale.copy().range([bottom, top]);
  const spare = Math.max(0, 30 - drawn.minutes) / 2;
  const across = scaleLinear()
    .domain([-spare, drawn.minutes + spare])
    .range([left, right]);

  let lastShape = Number.NEGATIVE_INFINITY;
  let lastMark: DrawnMark = 'read';
  const steps = drawn.steps.map(({ from, to, value, mark, most: seen }): LaidStep => {
    const [a, b] = [across(from), across(to)];
    const middle = (a + b) / 2;
    const [at, high] = [y(value), mark === 'over' ? top : y(value)];
    const shaped = mark !== 'read' && (mark !== lastMark || middle - lastShape >= 16);
    if (shaped) lastShape = middle;
    lastMark = mark;
    return {
      mark,
      left: a,
      right: b,
      y: at,
      ground: `M${n(a)},${n(bottom)}V${n(high)}H${n(b)}V${n(bottom)}Z`,
      stroke: `M${n(a)},${n(at)}H${n(b)}`,
      stem: seen === undefined ? '' : `M${n(middle)},${n(at)}V${n(y(seen))}M${n(middle - 5)},${n(y(seen))}H${n(middle + 5)}`,
      shape: shaped ? shapeOf(mark, middle, at) : '',
    };
  });
  const moments = drawn.moments.map(({ at, value, mark }) => {
    const [x, high] = [across(at), y(value)];
    return { mark, x, y: high, shape: momentShape(mark, x, high) };
  });
  const gapWide = drawn.gapName.length * letter + 8;
  let lastHour = Number.NEGATIVE_INFINITY;

  return {
    width,
    height: bottom + foot,
    left,
    right,
    top,
    bottom,
    scaleName: drawn.scaleName,
    ticks: texts.map(({ value, text }) => ({ y: y(value), text })),
    hours: drawn.hours.map(({ at, text }) => {
      const x = across(at);
      const fits = x - lastHour >= text.length * letter + 12;
      if (fits) lastHour = x;
      return { x, text: fits ? text : null, anchor: x + (text.length * letter) / 2 > width ? 'end' : 'middle' } as const;
    }),
    steps,
    gaps: drawn.gaps.map(({ from, to }) => {
      const [x, end] = [across(from), across(to)];
      const named = end - x >= gapWide;
      const name = named ? { x: (x + end) / 2, y: (top + bottom) / 2, text: drawn.gapName } : null;
      return { x, y: top, width: end - x, height: plot, name };
    }),
    moments,
    lines: labelled(lines, y, left, right, top),
    above: beyond.length === 0 ? null : { y: row + 8, text: `${drawn.aboveName} ${beyond.map((l) => l.name).join('; ')}` },
    columns: [
      ...steps.map((s) => column(s.left, s.right, top, bottom)),
      ...moments.map((m) => ({ x: m.x - 9, y: m.y - 11, width: 18, height: 22 })),
    ],
  };
}

const column = (from: number, to: number, top: number, bottom: number): Box => {
  const wide = Math.max(3, to - from - 2);
  return { x: (from + to - wide) / 2, y: top - 2, width: wide, height: bottom - top + 4 };
};

/** Lines with their names: from the right inwards, and above one another where two lie close. */
function labelled(
  lines: AirDayDrawn['lines'],
  y: (value: number) => number,
  left: number,
  right: number,
  top: number,
): AirDayLayout['lines'] {
  const placed: Box[] = [];
  return lines
    .toSorted((a, b) => a.value - b.value)
    .map(({ value, name }) => {
      const at = y(value);
      const width = Math.min(right - left, name.length * letter + 8);
      const tries = [right - width, left + 2, (left + right - width) / 2].flatMap((x) =>
        [at - row - 1, at + 2].map((above) => ({ x, y: Math.max(top, above), width, height: row - 1 })),
      );
      const free = (box: Box) =>
        placed.every(
          (p) => box.x + box.width <= p.x || p.x + p.width <= box.x || box.y + box.height <= p.y || p.y + p.height <= box.y,
        );
      const box = tries.find(free) ?? { x: right - width, y: Math.max(top, at - row * 2), width, height: row - 1 };
      placed.push(box);
      return { y: at, label: { ...box, text: name } };
    });
}
