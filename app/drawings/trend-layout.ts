/**
 * Where everything of a drawing of values in a row lies: panels one above the other over the same columns, each with its own scale, its nothing line,
 * its points with bands, its bars or its line, its threshold. Knows no domain. Every panel's scale holds nothing and everything drawn in it.
 */
import { scaleLinear, scalePoint } from 'd3-scale';

export interface TrendValue {
  readonly value: number;
  /** Half the width of its band; 0 where none is known. */
  readonly half: number;
}

export interface TrendPanel {
  readonly id: string;
  readonly name: string;
  /** `points`: each with its band. `line`: joined, with the band as one area. `bars`: from nothing upwards, without bands. */
  readonly form: 'points' | 'line' | 'bars';
  /** One for each column. */
  readonly values: readonly TrendValue[];
  readonly threshold?: { readonly value: number; readonly name: string };
  /** Column marked with a shape and a word, from 0. */
  readonly mark?: { readonly column: number; readonly name: string };
}

export interface LaidPoint {
  readonly x: number;
  readonly y: number;
  readonly top: number;
  readonly bottom: number;
  /** Above the panel's threshold. */
  readonly over: boolean;
}

export interface LaidPanel {
  readonly id: string;
  readonly name: string;
  readonly form: TrendPanel['form'];
  readonly top: number;
  readonly bottom: number;
  readonly nothingY: number;
  readonly ticks: readonly { readonly y: number; readonly text: string }[];
  readonly points: readonly LaidPoint[];
  /** Outline of the band of a line, and the line itself; null for other forms. */
  readonly band: string | null;
  readonly line: string | null;
  readonly threshold: { readonly y: number; readonly name: string } | null;
  /** A diamond, and where its word stands. */
  readonly mark: {
    readonly path: string;
    readonly name: string;
    readonly x: number;
    readonly y: number;
    readonly anchor: 'start' | 'end';
  } | null;
}

export interface TrendLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly panels: readonly LaidPanel[];
  /** Columns: the middle, the room to point at, and the words under them (null where they would run into one another). */
  readonly columns: readonly { readonly x: number; readonly from: number; readonly to: number; readonly name: string | null }[];
  readonly barWidth: number;
}

const panelHeight = 128;
const head = 24;
const gap = 14;
const foot = 26;
const letter = 7.4;
const edge = 10;
const n = (value: number): string => String(Math.round(value * 100) / 100);

/** A tick with a true minus and narrow spaces between thousands. */
const tickText = (text: string): string => text.replace(/^[-\u2212]/, '−').replace(/,/g, '\u202f');

const spanOf = ({ values, threshold }: TrendPanel): [number, number] => {
  const ends = [0, threshold?.value ?? 0, ...values.flatMap(({ value, half }) => [value - half, value + half])];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  return low === high ? [0, 1] : [low, high];
};

/**
 * Lays panels out over a width; `columns` are the words under them. Without columns nothing is laid out. `written`: a tick's plain figure ("0.05") as it
 * is written here.
 */
export function layTrend(
  panels: readonly TrendPanel[],
  columns: readonly string[],
  width: number,
  written: (plain: string) => string = (plain) => plain,
): TrendLayout {
  const scales = panels.map((panel) => scaleLinear().domain(spanOf(panel)).nice(4));
  const ticks = scales.map((scale) => {
    const format = scale.tickFormat(4, ',f');
    return scale.ticks(4).map((value) => ({ value, text: written(tickText(format(value))) }));
  });
  const left = Math.max(40, ...ticks.flat().map(({ text }) => text.length * letter)) + edge;
  const right = width - edge;
  if (columns.length === 0) return { width, height: 0, left, right, panels: [], columns: [], barWidth: 0 };
  const across = scalePoint<number>()
    .domain(columns.map((_, i) => i))
    .range([left, right])
    .padding(0.6);
  const step = columns.length > 1 ? across.step() : right - left;
  const x = (i: number): number => across(i) ?? left;
  const laid = panels.map((panel, p): LaidPanel => {
    const top = p * (panelHeight + head + gap) + head;
    const bottom = top + panelHeight;
    const scale = (scales[p] ?? scaleLinear()).copy().range([bottom, top]);
    const points = panel.values.map(
      ({ value, half }, i): LaidPoint => ({
        x: x(i),
        y: scale(value),
        top: scale(value + half),
        bottom: scale(value - half),
        over: panel.threshold !== undefined && value > panel.threshold.value,
      }),
    );
    const joined = (list: readonly (readonly [number, number])[]): string =>
      list.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${n(px)},${n(py)}`).join('');
    const isLine = panel.form === 'line';
    const marked = panel.mark ? points[panel.mark.column] : undefined;
    const outline = [
      ...points.map((at) => [at.x, at.top] as const),
      ...points.toReversed().map((at) => [at.x, at.bottom] as const),
    ];
    const ownTicks = ticks[p] ?? [];
    return {
      id: panel.id,
      name: panel.name,
      form: panel.form,
      top,
      bottom,
      nothingY: scale(0),
      ticks: ownTicks.map(({ value, text }) => ({ y: scale(value), text })),
      points,
      band: isLine ? `${joined(outline)}Z` : null,
      line: isLine ? joined(points.map((at) => [at.x, at.y] as const)) : null,
      threshold: panel.threshold ? { y: scale(panel.threshold.value), name: panel.threshold.name } : null,
      mark: panel.mark && marked ? markAt(marked, panel.mark.name, (left + right) / 2) : null,
    };
  });
  const height = laid.length * (panelHeight + head + gap) - gap + foot;
  const longest = Math.max(...columns.map((text) => text.length)) * letter + 8;
  const every = Math.max(1, Math.ceil(longest / step));
  return {
    width,
    height,
    left,
    right,
    panels: laid,
    columns: columns.map((name, i) => ({
      x: x(i),
      from: Math.max(left, x(i) - step / 2),
      to: Math.min(right, x(i) + step / 2),
      // the last one is the one that is asked about: it always has its words
      name: (columns.length - 1 - i) % every === 0 ? name : null,
    })),
    barWidth: Math.min(36, step * 0.5),
  };
}

/** A diamond on the point and its word beside it, towards the middle of the drawing. */
function markAt({ x, y }: LaidPoint, name: string, middle: number): LaidPanel['mark'] {
  const size = 8;
  const anchor = x > middle ? 'end' : 'start';
  return {
    path: `M${n(x)},${n(y - size)}L${n(x + size)},${n(y)}L${n(x)},${n(y + size)}L${n(x - size)},${n(y)}Z`,
    name,
    x: anchor === 'end' ? x - size - 4 : x + size + 4,
    y: y - 4,
    anchor,
  };
}
