/**
 * A day's exposure from timed readings: dose, eight-hour figure, highest quarter of an hour, always as a lowest and a highest value that the readings
 * allow. Time without a reading is never taken as clean, "below detection" never as nothing, "over range" never as the range. A verdict says
 * below, at or above the figure entered, or "cannot tell". Method: 29 CFR 1910.1000(d)(1); safety.md 3.1, items 1 to 3, and 4.
 */
import { type Decimal, zero } from './decimal.ts';
import { asRatio, compareRatio, minusRatio, over, plusRatio, type Ratio, timesRatio } from './ratio.ts';
import type { Stretch } from './shift-clock.ts';

/** One reading in its place in the shift, mg/m³. */
export interface TimedReading extends Stretch {
  readonly mgM3: Decimal;
  /** `<` below what the meter can tell, `>` above its range. */
  readonly mark?: '<' | '>' | undefined;
  /** Highest momentary value seen while it lasted. */
  readonly maxMgM3?: Decimal | undefined;
}

/** What is said of time without a reading. */
export interface Unsampled {
  readonly low: Decimal;
  readonly high: Decimal;
}

/** A lowest and a highest value; high is null when nothing bounds it. */
export interface Range {
  readonly low: Ratio;
  readonly high: Ratio | null;
}

export const exposureFindings = ['unsampled-time', 'below-detection', 'over-range', 'shift-over-8h'] as const;
export type ExposureFinding = (typeof exposureFindings)[number];

export interface Day {
  readonly lengthMinutes: number;
  readonly readings: readonly TimedReading[];
  readonly unsampled?: Unsampled | undefined;
}

export interface DayExposure {
  readonly knownDose: Ratio;
  readonly sampledMinutes: number;
  readonly unsampledMinutes: number;
  /** Null when there are no readings. */
  readonly twa8h: Range | null;
  readonly meanSampled: Range | null;
  readonly highest15min: Range | null;
  readonly ceiling: Range | null;
  readonly findings: readonly ExposureFinding[];
}

/** Minutes as a ratio, to the millisecond: a meter's own log counts seconds. */
const whole = (minutes: number): Ratio => ({ n: BigInt(Math.round(minutes * 60_000)), d: 60_000n });
const none = whole(0);
const quarter = 15;
const eightHours = 480;

const lasts = (r: Stretch): number => r.to - r.from;
/** Longer than a quarter of an hour: its mean says nothing about its peaks. */
const hidesPeaks = (r: TimedReading): boolean => lasts(r) > quarter && r.maxMgM3 === undefined;

const lowOf = (r: TimedReading): Ratio => (r.mark === '<' ? none : asRatio(r.mgM3));
const highOf = (r: TimedReading): Ratio | null => (r.mark === '>' ? null : asRatio(r.mgM3));

/** value · minutes, summed; null as soon as one is. */
function dose(parts: readonly (readonly [value: Ratio | null, minutes: number])[]): Ratio | null {
  let total = none;
  for (const [value, minutes] of parts) {
    if (minutes === 0) continue;
    if (value === null) return null;
    total = plusRatio(total, timesRatio(value, whole(minutes)));
  }
  return total;
}

const perMinutes = (value: Ratio | null, minutes: number): Ratio | null => value && over(value, whole(minutes));

function averaged(parts: readonly (readonly [low: Ratio, high: Ratio | null, minutes: number])[], minutes: number): Range | null {
  const low = perMinutes(dose(parts.map(([l, , m]) => [l, m])), minutes);
  return low && { low, high: perMinutes(dose(parts.map(([, h, m]) => [h, m])), minutes) };
}

/** The shift as stretches without a gap: readings and the time between them, each with what it may have been. */
interface Piece extends Stretch {
  readonly low: Ratio;
  readonly high: Ratio | null;
}

function pieces(day: Day, high: (r: TimedReading) => Ratio | null): Piece[] {
  const gapLow = day.unsampled ? asRatio(day.unsampled.low) : none;
  const gapHigh = day.unsampled ? asRatio(day.unsampled.high) : null;
  const all: Piece[] = [];
  let at = 0;
  const gapTo = (to: number) => {
    if (to > at) all.push({ from: at, to, low: gapLow, high: gapHigh });
  };
  for (const r of day.readings.toSorted((a, b) => a.from - b.from)) {
    gapTo(r.from);
    all.push({ from: r.from, to: r.to, low: lowOf(r), high: high(r) });
    at = r.to;
  }
  gapTo(day.lengthMinutes);
  return all;
}

const largest = (values: readonly Ratio[]): Ratio => values.reduce((a, b) => (compareRatio(b, a) > 0 ? b : a), none);

/** The largest of all, null as soon as one has no upper end. */
const largestHigh = (values: readonly (Ratio | null)[]): Ratio | null =>
  values.some((v) => v === null) ? null : largest(values.filter((v) => v !== null));

/** Value · minutes from the beginning to any minute, of stretches without a gap, looked up by halving. */
function runningDose(all: readonly Piece[], worth: (p: Piece) => Ratio): (minute: number) => Ratio {
  const before: Ratio[] = [none];
  for (const [i, p] of all.entries()) before.push(plusRatio(before[i] ?? none, timesRatio(worth(p), whole(lasts(p)))));
  return (minute) => {
    let [low, high] = [0, all.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((all[middle]?.from ?? 0) <= minute) low = middle;
      else high = middle - 1;
    }
    const piece = all[low];
    return piece
      ? plusRatio(before[low] ?? none, timesRatio(worth(piece), whole(Math.min(minute, piece.to) - piece.from)))
      : none;
  };
}

/**
 * Highest mean over any stretch of that many minutes within the shift (the whole of a shorter shift). The mean over a moving window is highest where
 * an edge of the window meets an edge of a reading, so only those windows are looked at.
 */
function rolling(all: readonly Piece[], lengthMinutes: number, wanted: number): Range {
  const window = Math.min(wanted, lengthMinutes);
  const starts = new Set(
    all.flatMap((p) => [p.from, p.to, p.from - window, p.to - window]).filter((s) => s >= 0 && s + window <= lengthMinutes),
  );
  const highestOf = (worth: (p: Piece) => Ratio): Ratio => {
    const upTo = runningDose(all, worth);
    return largest([...starts].flatMap((start) => perMinutes(minusRatio(upTo(start + window), upTo(start)), window) ?? []));
  };
  return {
    low: highestOf((p) => p.low),
    high: all.some((p) => p.high === null) ? null : highestOf((p) => p.high ?? none),
  };
}

/** Upper end of a reading for a quarter of an hour: the mean of a short one, the peak of a long one. */
const quarterHigh = (r: TimedReading): Ratio | null => {
  if (r.mark === '>' || hidesPeaks(r)) return null;
  return lasts(r) > quarter && r.maxMgM3 ? asRatio(r.maxMgM3) : asRatio(r.mgM3);
};

/** Upper end of a reading at any moment. */
const momentHigh = (r: TimedReading): Ratio | null => (r.mark === '>' || hidesPeaks(r) ? null : asRatio(r.maxMgM3 ?? r.mgM3));

/** What was certainly reached at some moment of a reading. */
const momentLow = (r: TimedReading): Ratio => largest([lowOf(r), asRatio(r.maxMgM3 ?? zero)]);

function momentary(day: Day, gaps: readonly Piece[]): Range {
  return {
    low: largest([...day.readings.map(momentLow), ...gaps.map((g) => g.low)]),
    high: largestHigh([...day.readings.map(momentHigh), ...gaps.map((g) => g.high)]),
  };
}

/** Everything one day's readings allow to be said. Readings lie within the day and do not overlap; the caller sees to it. */
export function dayExposure(day: Day): DayExposure {
  const { readings, lengthMinutes } = day;
  const sampledMinutes = readings.reduce((total, r) => total + lasts(r), 0);
  const unsampledMinutes = lengthMinutes - sampledMinutes;
  const known = readings.filter((r) => r.mark === undefined).map((r) => [asRatio(r.mgM3), lasts(r)] as const);
  const any = readings.length > 0;
  const means = pieces(day, highOf);
  const covered = (r: Stretch): boolean => readings.some((reading) => reading.from === r.from && reading.to === r.to);
  const findings: ExposureFinding[] = [];
  if (unsampledMinutes > 0) findings.push('unsampled-time');
  if (readings.some((r) => r.mark === '<')) findings.push('below-detection');
  if (readings.some((r) => r.mark === '>')) findings.push('over-range');
  if (lengthMinutes > 480) findings.push('shift-over-8h');
  return {
    knownDose: timesRatio(dose(known) ?? none, { n: 1n, d: 60n }),
    sampledMinutes,
    unsampledMinutes,
    twa8h: any
      ? averaged(
          means.map((p) => [p.low, p.high, lasts(p)]),
          480,
        )
      : null,
    meanSampled: averaged(
      readings.map((r) => [lowOf(r), highOf(r), lasts(r)]),
      sampledMinutes,
    ),
    highest15min: any ? rolling(pieces(day, quarterHigh), lengthMinutes, quarter) : null,
    ceiling: any
      ? momentary(
          day,
          means.filter((p) => !covered(p)),
        )
      : null,
    findings,
  };
}

/** The largest sum of value · minutes over so many minutes of the shift, wherever in it they lie. */
function worstDose(all: readonly Piece[], worth: (p: Piece) => Ratio, minutes: number): Ratio {
  let [total, left] = [none, minutes];
  for (const p of all.toSorted((a, b) => compareRatio(worth(b), worth(a)))) {
    const taken = Math.min(left, lasts(p));
    total = plusRatio(total, timesRatio(worth(p), whole(taken)));
    left -= taken;
    if (left <= 0) break;
  }
  return total;
}

/**
 * The mean over the worst eight hours of a longer shift, in a row or not, as OSHA's letters on extended shifts allow; null for a shift of eight hours or
 * less and where there are no readings. Source: safety.md 3.1, item 2, and W4.
 */
export function worstEightHours(day: Day): Range | null {
  if (day.lengthMinutes <= eightHours || day.readings.length === 0) return null;
  const all = pieces(day, highOf);
  const low = perMinutes(
    worstDose(all, (p) => p.low, eightHours),
    eightHours,
  );
  const high = all.some((p) => p.high === null)
    ? null
    : perMinutes(
        worstDose(all, (p) => p.high ?? none, eightHours),
        eightHours,
      );
  return low && { low, high };
}

/** The mean over the whole shift, time without a reading included as it is in the eight-hour figure; null where there are no readings. */
export const shiftMean = (day: Day): Range | null =>
  day.readings.length > 0
    ? averaged(
        pieces(day, highOf).map((p) => [p.low, p.high, lasts(p)]),
        day.lengthMinutes,
      )
    : null;
