/**
 * Where everything of a drawing of histories lies: one panel for each source, one above the other, over the same time and to the same scale; each value with
 * its own band, and behind it the middle and the spread of the values before it. Knows no domain. The scale holds everything drawn and need not begin at nothing.
 */
import { scaleLinear } from 'd3-scale';

export interface HistoryValue {
  /** When, on any even scale. */
  readonly at: number;
  readonly value: number;
  /** Half the width of its own band; 0 where none is known. */
  readonly half: number;
  /** What the values before it make usual; null while there are too few. */
  readonly usual: { readonly median: number; readonly half: number } | null;
  readonly outside: boolean;
}

export interface HistoryPanel {
  readonly id: string;
  readonly name: string;
  /** In order of time, at least one. */
  readonly values: readonly HistoryValue[];
}

/** `early`: nothing to hold it against yet. Each has a shape of its own. */
export type HistoryMark = 'early' | 'usual' | 'outside';

export interface LaidValue {
  readonly x: number;
  readonly y: number;
  readonly top: number;
  readonly bottom: number;
  readonly mark: HistoryMark;
}

export interface LaidHistory {
  readonly id: string;
  readonly name: string;
  readonly top: number;
  readonly bottom: number;
  readonly ticks: readonly { readonly y: number; readonly text: string }[];
  readonly points: readonly LaidValue[];
  /** What was usual at each value, as one area of steps, and its middle; empty where there is none. */
  readonly band: string;
  readonly middle: string;
}

export interface HistoryLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly panels: readonly LaidHistory[];
  readonly times: readonly { readonly x: number; readonly name: string }[];
}

const panelHeight = 112;
const head = 26;
const gap = 16;
const foot = 28;
const letter = 7.4;
const edge = 12;
/** How far what is usual reaches beyond the last value. */
const beyond = 14;
const n = (value: number): string => String(Math.round(value * 100) / 100);

/** The outline of a mark: a ring, a filled dot (both circles of this size) or a diamond. */
export const markSize = 4.5;
export const diamond = ({ x, y }: Pick<LaidValue, 'x' | 'y'>, size = 7): string =>
  `M${n(x)},${n(y - size)}L${n(x + size)},${n(y)}L${n(x)},${n(y + size)}L${n(x - size)},${n(y)}Z`;

const markOf = ({ usual, outside }: HistoryValue): HistoryMark => (usual === null ? 'early' : outside ? 'outside' : 'usual');

/** Lays panels out over a width. `times`: words under the drawing and when they are. Without panels nothing is laid out. `written`: a tick's figure as it is written here. */
export function layHistory(
  panels: readonly HistoryPanel[],
  times: readonly { readonly at: number; readonly name: string }[],
  width: number,
  written: (plain: string) => string = (plain) => plain,
): HistoryLayout {
  const all = panels.flatMap((panel) => panel.values);
  if (all.length === 0) return { width, height: 0, left: 0, right: width, panels: [], times: [] };
  const ends = all.flatMap(({ value, half, usual }) => [
    value - half,
    value + half,
    ...(usual ? [usual.median - usual.half, usual.median + usual.half] : []),
  ]);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const scale = scaleLinear()
    .domain(low === high ? [low - 1, high + 1] : [low, high])
    .nice(4);
  const format = scale.tickFormat(4);
  const ticks = scale.ticks(4).map((value) => ({ value, text: written(format(value).replace(/^[-\u2212]/, '−')) }));
  const left = Math.max(40, ...ticks.map(({ text }) => text.length * letter)) + edge;
  const right = width - edge;
  const moments = all.map((value) => value.at);
  const [from, to] = [Math.min(...moments), Math.max(...moments)];
  const across = scaleLinear()
    .domain(from === to ? [from - 1, to + 1] : [from, to])
    .range([left + edge, right - beyond]);
  const laid = panels.map(({ id, name, values }, p): LaidHistory => {
    const top = p * (panelHeight + head + gap) + head;
    const bottom = top + panelHeight;
    const up = scale.copy().range([bottom, top]);
    const x = (i: number): number => across(values[i]?.at ?? from);
    const steps = values.flatMap(({ usual }, i) => {
      if (!usual) return [];
      const start = i === 0 ? x(0) : (x(i - 1) + x(i)) / 2;
      const end = i === values.length - 1 ? x(i) + beyond : (x(i) + x(i + 1)) / 2;
      return { start, end, median: up(usual.median), high: up(usual.median + usual.half), low: up(usual.median - usual.half) };
    });
    return {
      id,
      name,
      top,
      bottom,
      ticks: ticks.map(({ value, text }) => ({ y: up(value), text })),
      points: values.map((value) => ({
        x: across(value.at),
        y: up(value.value),
        top: up(value.value + value.half),
        bottom: up(value.value - value.half),
        mark: markOf(value),
      })),
      band: steps.map((s) => `M${n(s.start)},${n(s.high)}H${n(s.end)}V${n(s.low)}H${n(s.start)}Z`).join(''),
      middle: steps.map((s, i) => `${i === 0 ? 'M' : 'L'}${n(s.start)},${n(s.median)}H${n(s.end)}`).join(''),
    };
  });
  return {
    width,
    height: laid.length * (panelHeight + head + gap) - gap + foot,
    left,
    right,
    panels: laid,
    times: shownTimes(
      times
        .filter(({ at }) => at >= from && at <= to)
        // words at the ends are moved in, so that none is cut off
        .map(({ at, name }) => {
          const half = (name.length * letter) / 2;
          return { x: Math.max(half, Math.min(width - half, across(at))), name };
        }),
    ),
  };
}

/** So many of the words that none runs into the next. */
function shownTimes(times: readonly { readonly x: number; readonly name: string }[]) {
  const shown: { x: number; name: string }[] = [];
  for (const time of times) {
    const before = shown.at(-1);
    if (!before || time.x - before.x >= ((time.name.length + before.name.length) / 2) * letter + 10) shown.push(time);
  }
  return shown;
}
