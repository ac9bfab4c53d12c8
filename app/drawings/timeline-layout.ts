/**
 * Where everything of a drawing along the clock lies: lanes of spans and marks with their words, panels of values to a scale of their own, and the hours
 * under them. Knows no domain. No word lies on another of its lane; what lies before or after the drawing stands at its edge and says so by its shape.
 */
import { scaleLinear } from 'd3-scale';
import { type DrawnMoment, type DrawnStep, momentShape } from './air-day-layout.ts';
import { cutTo, widthOf } from './letters.ts';

/** How a span is filled, beside its colour. `open`: an outline alone. */
export type SpanLook = 'filled' | 'hatched' | 'crossed' | 'dotted' | 'open';
/** The shape of a mark. */
export type MarkLook = 'dot' | 'ring' | 'cross' | 'diamond' | 'triangle';

interface TimelineThing {
  readonly id: string;
  /** What stands beside it. */
  readonly text: string;
}
/** Minutes from the beginning of the drawing; they may lie outside it. */
export interface TimelineSpan extends TimelineThing {
  readonly from: number;
  readonly to: number;
  readonly look: SpanLook;
}
/** `at` null: it has no time of its own. */
export interface TimelineMark extends TimelineThing {
  readonly at: number | null;
  readonly look: MarkLook;
}

export interface TimelineLane {
  readonly id: string;
  readonly name: string;
  readonly spans: readonly TimelineSpan[];
  readonly marks: readonly TimelineMark[];
  /** A line of its own in the lane: what is missing in it. Empty: none. */
  readonly note: string;
}

type Named<T> = T & TimelineThing;
export interface TimelinePanel {
  readonly id: string;
  readonly name: string;
  readonly steps: readonly Named<DrawnStep>[];
  readonly moments: readonly Named<DrawnMoment>[];
  readonly lines: readonly { readonly value: number; readonly name: string }[];
}

export interface TimelineDrawn {
  readonly minutes: number;
  readonly lanes: readonly TimelineLane[];
  readonly panels: readonly TimelinePanel[];
  /** Words under the time axis, in order. */
  readonly hours: readonly { readonly at: number; readonly text: string }[];
  /** A tick's plain figure ("0.05") as it is written here. */
  readonly tickText: (plain: string) => string;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export interface LaidText {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Width it is reckoned to take. */
  readonly width: number;
}
/** `early`, `late`: it lies before or after the drawing. `untimed`: it has no time of its own. */
export type LaidLook = MarkLook | 'early' | 'late' | 'untimed';
export interface LaidLane {
  readonly id: string;
  readonly name: LaidText;
  readonly top: number;
  readonly bottom: number;
  readonly spans: readonly (Box & { readonly id: string; readonly look: SpanLook; readonly label: LaidText })[];
  readonly marks: readonly {
    readonly id: string;
    readonly look: LaidLook;
    readonly shape: string;
    readonly label: LaidText;
  }[];
  readonly note: LaidText | null;
}
export interface LaidTimePanel {
  readonly id: string;
  readonly name: LaidText;
  readonly top: number;
  readonly bottom: number;
  readonly ticks: readonly { readonly y: number; readonly text: string }[];
  readonly steps: readonly { readonly mark: DrawnStep['mark']; readonly path: string }[];
  readonly moments: readonly { readonly mark: DrawnMoment['mark']; readonly shape: string }[];
  /** Figures beside the values, where there is room. */
  readonly labels: readonly LaidText[];
  readonly lines: readonly { readonly y: number; readonly label: LaidText }[];
  /** Lines far above everything read, which would press it flat: named, not drawn. */
  readonly above: string;
}
export interface TimelineLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly lanes: readonly LaidLane[];
  readonly panels: readonly LaidTimePanel[];
  readonly hours: readonly { readonly x: number; readonly text: string | null; readonly anchor: 'middle' | 'end' }[];
  /** Room to point at, in the order of lanes and panels. */
  readonly aims: readonly (Box & { readonly id: string })[];
}

const edge = 10;
const row = 24;
const gap = 10;
const panelHeight = 120;
const panelHead = 24;
const foot = 28;
/** How far the name of a line is moved along it to look for room. */
const sliding = 40;
/** A line this many times above everything read would press it flat. */
const farAbove = 20;
const n = (value: number): string => String(Math.round(value * 100) / 100);
const size = 6;
/** The outline of a mark about its middle. */
export function markShape(look: LaidLook, x: number, y: number): string {
  const at = (dx: number, dy: number) => `${n(x + dx)},${n(y + dy)}`;
  switch (look) {
    case 'dot':
    case 'ring':
      return `M${at(-size, 0)}a${size},${size} 0 1 0 ${2 * size},0a${size},${size} 0 1 0 ${-2 * size},0Z`;
    case 'cross':
      return `M${at(-size, -size)}L${at(size, size)}M${at(-size, size)}L${at(size, -size)}`;
    case 'diamond':
      return `M${at(0, -size - 2)}L${at(size + 2, 0)}L${at(0, size + 2)}L${at(-size - 2, 0)}Z`;
    case 'triangle':
      return `M${at(0, -size - 1)}L${at(size + 1, size)}L${at(-size - 1, size)}Z`;
    case 'early':
      return `M${at(size, -size)}L${at(-size, 0)}L${at(size, size)}Z`;
    case 'late':
      return `M${at(-size, -size)}L${at(size, 0)}L${at(-size, size)}Z`;
    case 'untimed':
      return `M${at(-size, -size)}H${n(x + size)}V${n(y + size)}H${n(x - size)}Z`;
  }
}

interface Place {
  /** From the left end of it all to the right end, the words counted. */
  readonly start: number;
  readonly end: number;
  readonly textX: number;
  readonly anchor: 'start' | 'end';
  readonly text: string;
}

/** Where the words of something between two ends stand: in it, right of it, left of it, or cut where they have most room. */
function beside(text: string, from: number, to: number, inside: boolean, left: number, right: number): Place {
  const width = widthOf(text);
  if (inside && width + 12 <= to - from) return { start: from, end: to, textX: from + 6, anchor: 'start', text };
  if (to + 6 + width <= right) return { start: from, end: to + 6 + width, textX: to + 6, anchor: 'start', text };
  if (from - 6 - width >= left) return { start: from - 6 - width, end: to, textX: from - 6, anchor: 'end', text };
  if (right - to >= from - left) {
    const short = cutTo(text, right - to - 6);
    return { start: from, end: right, textX: to + 6, anchor: 'start', text: short };
  }
  return { start: left, end: to, textX: from - 6, anchor: 'end', text: cutTo(text, from - left - 6) };
}

/** The first row in which a stretch is free; rows are added as they are needed. */
function rowFor(rows: [number, number][][], start: number, end: number): number {
  const free = rows.findIndex((taken) => taken.every(([a, b]) => end + 8 <= a || b + 8 <= start));
  const at = free >= 0 ? free : rows.length;
  const own = rows[at] ?? [];
  own.push([start, end]);
  rows[at] = own;
  return at;
}

type Across = (minutes: number) => number;
interface Field {
  readonly left: number;
  readonly right: number;
  readonly minutes: number;
  readonly across: Across;
}

function layLane(
  lane: TimelineLane,
  top: number,
  { left, right, minutes, across }: Field,
): LaidLane & { aims: (Box & { id: string })[] } {
  const rows: [number, number][][] = [];
  const aims = new Map<string, Box & { id: string }>();
  const middle = (at: number): number => top + row * at + row / 2;
  const label = (place: Place, at: number): LaidText => ({
    x: place.textX,
    y: middle(at) + 4.5,
    text: place.text,
    anchor: place.anchor,
    width: widthOf(place.text),
  });
  const spans = lane.spans.map(({ id, from, to, look, text }) => {
    const inside = (at: number): number => across(Math.min(minutes, Math.max(0, at)));
    const [x, end] = [inside(from), inside(to)];
    const width = Math.max(2, end - x);
    const place = beside(text, x, x + width, true, left, right);
    const at = rowFor(rows, place.start, place.end);
    aims.set(id, { id, x: place.start - 2, y: middle(at) - row / 2 + 1, width: place.end - place.start + 4, height: row - 2 });
    return { id, look, x, y: middle(at) - 8, width, height: 16, label: label(place, at) };
  });
  const marks = lane.marks.map(({ id, at, look, text }) => {
    const seen: LaidLook = at === null ? 'untimed' : at < 0 ? 'early' : at > minutes ? 'late' : look;
    const x =
      at === null ? left + size : Math.min(right - size, Math.max(left + size, across(Math.min(minutes, Math.max(0, at)))));
    const place = beside(text, x - size, x + size, false, left, right);
    const line = rowFor(rows, place.start, place.end);
    aims.set(id, { id, x: place.start - 3, y: middle(line) - row / 2 + 1, width: place.end - place.start + 6, height: row - 2 });
    return { id, look: seen, shape: markShape(seen, x, middle(line)), label: label(place, line) };
  });
  const noted = lane.note === '' ? null : rows.length;
  const height = Math.max(1, rows.length + (noted === null ? 0 : 1)) * row;
  const note = cutTo(lane.note, right - left - 4);
  return {
    id: lane.id,
    name: { x: left - 14, y: middle(0) + 4.5, text: lane.name, anchor: 'end', width: widthOf(lane.name) },
    top,
    bottom: top + height,
    spans,
    marks,
    note: noted === null ? null : { x: left + 4, y: middle(noted) + 4.5, text: note, anchor: 'start', width: widthOf(note) },
    aims: [...lane.spans, ...lane.marks].flatMap(({ id }) => aims.get(id) ?? []),
  };
}

function layPanel(
  panel: TimelinePanel,
  from: number,
  tickText: TimelineDrawn['tickText'],
  { left, right, across, minutes }: Field,
): LaidTimePanel & { aims: (Box & { id: string })[] } {
  const values = [...panel.steps.flatMap((s) => [s.value, s.most ?? 0]), ...panel.moments.map((m) => m.value)];
  const highest = Math.max(0, ...values);
  const lines = panel.lines.filter((line) => highest === 0 || line.value <= highest * farAbove);
  const beyond = panel.lines.filter((line) => !lines.includes(line));
  const most = Math.max(highest, ...lines.map((line) => line.value));
  const least = Math.min(0, ...values);
  const top = from + panelHead;
  const bottom = top + panelHeight;
  const scale = scaleLinear()
    .domain([least, most === 0 && least === 0 ? 1 : most * 1.3])
    .nice(3);
  const format = scale.tickFormat(3, 'f');
  const y = scale.copy().range([bottom, top]);
  const x = (at: number): number => across(Math.min(minutes, Math.max(0, at)));
  const labels: LaidText[] = [];
  const marked: [number, number][] = [];
  const tell = (text: string, middle: number, above: number) => {
    const width = widthOf(text);
    const at = Math.min(right - width / 2, Math.max(left + width / 2, middle));
    const line = Math.max(top + 11, above);
    const free = labels.every((l) => Math.abs(l.x - at) >= (l.width + width) / 2 + 6 || Math.abs(l.y - line) >= 15);
    if (free) labels.push({ x: at, y: line, text, anchor: 'middle', width });
  };
  const steps = panel.steps.map((s) => {
    const [a, b, at] = [x(s.from), x(s.to), y(s.value)];
    const stem = s.most === undefined ? '' : `M${n((a + b) / 2)},${n(at)}V${n(y(s.most))}`;
    tell(s.text, (a + b) / 2, (s.most === undefined ? at : y(s.most)) - 7);
    return { mark: s.mark, path: `M${n(a)},${n(at)}H${n(b)}${stem}` };
  });
  const moments = panel.moments.map((m) => {
    const at = x(m.at);
    marked.push([at, y(m.value)]);
    tell(m.text, at, y(m.value) - 12);
    return { mark: m.mark, shape: momentShape(m.mark, at, y(m.value)) };
  });
  // names of lines find room after the values have theirs: above the line or below it, from the right to the left
  const named: LaidText[] = [];
  const laidLines = lines.map(({ value, name }) => {
    const text = cutTo(name, right - left - 8);
    const width = widthOf(text);
    const at = y(value);
    const ends = Array.from({ length: 1 + Math.floor((right - left - 8 - width) / sliding) }, (_, i) => right - 4 - i * sliding);
    const tries = ends.flatMap((end) => [at - 4, at + 14].map((line) => ({ end, line })));
    const free = ({ end, line }: { end: number; line: number }) =>
      line >= top + 8 &&
      line <= bottom - 1 &&
      [...labels, ...named].every((l) => {
        const close = l.anchor === 'end' ? l.x : l.x + l.width / 2;
        return end + 4 <= close - l.width || close + 4 <= end - width || Math.abs(l.y - line) >= 13;
      }) &&
      marked.every(([x, my]) => x < end - width - 10 || x > end + 10 || my < line - 22 || my > line + 8);
    const place = tries.find(free) ?? { end: right - 4, line: at - 4 };
    const label: LaidText = { x: place.end, y: place.line, text, anchor: 'end', width };
    named.push(label);
    return { y: at, label };
  });
  return {
    id: panel.id,
    name: { x: left, y: from + 16, text: panel.name, anchor: 'start', width: widthOf(panel.name) },
    top,
    bottom,
    ticks: scale.ticks(3).map((value) => ({ y: y(value), text: tickText(format(value)) })),
    steps,
    moments,
    labels,
    lines: laidLines,
    above: beyond.map((line) => line.name).join('; '),
    aims: [
      ...panel.steps.map((s) => {
        const [a, b] = [x(s.from), x(s.to)];
        const width = Math.max(10, b - a - 2);
        return { id: s.id, x: (a + b - width) / 2, y: top - 2, width, height: panelHeight + 4 };
      }),
      ...panel.moments.map((m) => ({ id: m.id, x: x(m.at) - 10, y: y(m.value) - 12, width: 20, height: 24 })),
    ],
  };
}

/** Lays a timeline out over a width. */
export function layTimeline(drawn: TimelineDrawn, width: number): TimelineLayout {
  const names = drawn.lanes.map((lane) => widthOf(lane.name));
  const left = Math.max(90, ...names) + 14 + edge;
  const right = width - edge;
  // a moment alone gets half an hour of room
  const spare = Math.max(0, 30 - drawn.minutes) / 2;
  const across = scaleLinear()
    .domain([-spare, drawn.minutes + spare])
    .range([left + 4, right - 4]);
  const field = { left, right, minutes: drawn.minutes, across };
  let at = 4;
  const lanes = drawn.lanes.map((lane) => {
    const laid = layLane(lane, at, field);
    at = laid.bottom + gap;
    return laid;
  });
  const panels = drawn.panels.map((panel) => {
    const laid = layPanel(panel, at, drawn.tickText, field);
    at = laid.bottom + gap;
    return laid;
  });
  const bottom = at - gap / 2;
  let last = Number.NEGATIVE_INFINITY;
  return {
    width,
    height: bottom + foot,
    left,
    right,
    bottom,
    lanes: lanes.map(({ aims: _, ...lane }) => lane),
    panels: panels.map(({ aims: _, ...panel }) => panel),
    hours: drawn.hours.map(({ at: minutes, text }) => {
      const x = across(minutes);
      const fits = x - last >= widthOf(text) + 14;
      if (fits) last = x;
      return { x, text: fits ? text : null, anchor: x + widthOf(text) / 2 > width ? 'end' : 'middle' } as const;
    }),
    aims: [...lanes, ...panels].flatMap(({ aims }) => aims),
  };
}
