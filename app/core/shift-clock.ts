/**
 * Times of a shift as written on a sheet, "07:00" or "04:00+13:00", laid on one line of minutes. Wall-clock text alone cannot tell a night on
 * which the clocks change; with offsets on every time it can. Source of the rules: safety.md 7, item 16.
 */
import { bad, good, type Problem, problem, type Result } from './result.ts';

/** A time of day as written. */
export interface ClockTime {
  /** Minutes after midnight on the wall. */
  readonly wall: number;
  /** Minutes east of Greenwich; absent when the time carries none. */
  readonly offset?: number | undefined;
}

export interface ClockSpan {
  readonly from: ClockTime;
  readonly to: ClockTime;
}

/** Minutes from the beginning of the shift. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export const dayMinutes = 1440;
const form = /^([01]\d|2[0-3]):([0-5]\d)(?:(Z)|([+-])(0\d|1[0-4]):([0-5]\d))?$/;

/** Reads "07:00", "04:00+13:00" or "23:30Z"; problem `clock-time`. */
export function clockTime(text: unknown, field: string): Result<ClockTime> {
  if (text === undefined) return bad(problem('missing', field));
  const m = typeof text === 'string' ? form.exec(text) : null;
  if (!m) return bad(problem('clock-time', field));
  const wall = Number(m[1]) * 60 + Number(m[2]);
  if (m[3]) return good({ wall, offset: 0 });
  if (m[4] === undefined) return good({ wall });
  const size = Number(m[5]) * 60 + Number(m[6]);
  return good({ wall, offset: m[4] === '-' ? -size : size });
}

const wrapped = (minutes: number): number => ((minutes % dayMinutes) + dayMinutes) % dayMinutes;
/** The minute of the world's day. */
const instant = (time: ClockTime): number => time.wall - (time.offset ?? 0);

/** Minutes from one time to the next occurrence of another: 0 when they are the same moment. */
export const minutesBetween = (from: ClockTime, to: ClockTime): number => wrapped(instant(to) - instant(from));

/** Every time has an offset, or none has. */
export function offsetsAgree(times: readonly (readonly [field: string, time: ClockTime])[]): readonly Problem[] {
  const first = times[0];
  if (!first) return [];
  const wanted = first[1].offset !== undefined;
  return times.filter(([, time]) => (time.offset !== undefined) !== wanted).map(([field]) => problem('offset-on-all', field));
}

/** From the start of one reading round the clock: how long everything takes, when `base` is where it begins. */
const spanFrom = (base: ClockTime, spans: readonly ClockSpan[]): number =>
  Math.max(...spans.map((s) => minutesBetween(base, s.from) + minutesBetween(s.from, s.to)));

/**
 * Where readings without a shift begin. Written in the order of the clock, they begin with the first. Otherwise they passed midnight or were
 * written out of order, and begin where they take least time.
 */
function beginning(spans: readonly ClockSpan[]): ClockTime | undefined {
  const first = spans[0];
  if (!first) return undefined;
  const ascending = spans.every((s, i) => i === 0 || (spans[i - 1]?.from.wall ?? 0) <= s.from.wall);
  if (ascending) return first.from;
  return spans.map((s) => s.from).toSorted((a, b) => spanFrom(a, spans) - spanFrom(b, spans))[0];
}

/** The shift's length and each reading's place in it, in the order given. */
export interface LaidOut {
  readonly lengthMinutes: number;
  readonly readings: readonly Stretch[];
}

/** Lays readings on the shift, or on themselves. Problems: outside-shift, overlap, over-a-day. */
export function laidOut(spans: readonly ClockSpan[], shift: ClockSpan | undefined): Result<LaidOut> {
  const base = shift?.from ?? beginning(spans);
  if (!base) return good({ lengthMinutes: 0, readings: [] });
  const readings = spans.map((s): Stretch => {
    const from = minutesBetween(base, s.from);
    return { from, to: from + minutesBetween(s.from, s.to) };
  });
  const lengthMinutes = shift ? minutesBetween(shift.from, shift.to) : Math.max(...readings.map((r) => r.to));
  const problems: Problem[] = [];
  readings.forEach((reading, i) => {
    const field = `readings[${i}]`;
    if (shift && reading.to > lengthMinutes) problems.push(problem('outside-shift', field));
    else if (!shift && reading.to > dayMinutes) problems.push(problem('over-a-day', field));
    else if (readings.some((other, j) => j < i && other.from < reading.to && reading.from < other.to))
      problems.push(problem('overlap', field));
  });
  return problems.length > 0 ? bad(...problems) : good({ lengthMinutes, readings });
}
