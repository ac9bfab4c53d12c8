/**
 * The day's exposure, person by person and place by place, from the readings of the air. Work and visitors never mix; a momentary reading covers no time;
 * time without a reading stays time without a reading. A shift is as it was written down, or runs from the first reading to the last, and says which.
 */

import {
  type DayExposure,
  dayExposure,
  type Range,
  shiftMean,
  type TimedReading,
  type Unsampled,
  worstEightHours,
} from '../exposure.ts';
import type { AirSample } from '../kinds/air-reading.ts';
import type { Body } from '../kinds/index.ts';
import { asRatio, compareRatio } from '../ratio.ts';
import { dayOf, minutesOf } from '../time.ts';
import { type AirFigure, airFigure, airMax } from './air-as-read.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';

/** What a day is of: somebody's breath, a place of work, a place of visitors. */
export interface AirSubject {
  readonly sample: AirSample;
  /** The person's id, or the name of the place. */
  readonly of: string;
}

export interface AirRow {
  readonly id: string;
  readonly reading: Reading<'air-reading'>;
  readonly body: Body<'air-reading'>;
  readonly figure: AirFigure;
}

export interface AirDay {
  /** Names it for links: subject and first moment. */
  readonly key: string;
  readonly subject: AirSubject;
  /** The day on the wall on which it began. */
  readonly day: string;
  /** Where the shift begins and ends. */
  readonly from: string;
  readonly to: string;
  readonly lengthMinutes: number;
  /** Whether the shift was written down; otherwise it runs from the first reading to the last. */
  readonly shiftRecorded: boolean;
  /** Readings that lasted, in order. */
  readonly rows: readonly AirRow[];
  /** Those of them whose hours another one counts already. */
  readonly uncounted: readonly AirRow[];
  /** Each counted one’s place in the shift. */
  readonly placed: readonly TimedReading[];
  /** Momentary readings: they show a moment and cover no time. */
  readonly spots: readonly AirRow[];
  readonly exposure: DayExposure;
  /** Of a shift over eight hours only. */
  readonly worst8h: Range | null;
  readonly shiftMean: Range | null;
}

/** A pause this long begins another day's work. The project's own bound. */
const pauseMinutes = 360;
const dayMinutes = 1440;

const minutes = (moment: string): number => minutesOf(moment) ?? 0;
/** Minutes from one moment on, to the millisecond, so that one moment written with two offsets is one. */
const after = (moment: string, from: string): number => Math.round((minutes(moment) - minutes(from)) * 60_000) / 60_000;

const subjectOf = ({ sample, person, place }: Body<'air-reading'>): AirSubject => ({
  sample,
  of: sample === 'personal' ? (person ?? '') : (place ?? ''),
});

const startOf = ({ shift, from }: Body<'air-reading'>): string => shift?.from ?? from;
const endOf = ({ shift, to, from }: Body<'air-reading'>): string => shift?.to ?? to ?? from;

const earlier = (a: string, b: string): string => (minutes(b) < minutes(a) ? b : a);
const later = (a: string, b: string): string => (minutes(b) > minutes(a) ? b : a);

/** Readings of one subject in working days: a new one begins after a long pause, and none is longer than a day. */
function apart(rows: readonly AirRow[]): AirRow[][] {
  const days: AirRow[][] = [];
  let [from, to] = ['', ''];
  for (const row of rows.toSorted(
    (a, b) => minutes(startOf(a.body)) - minutes(startOf(b.body)) || minutes(a.body.from) - minutes(b.body.from),
  )) {
    const [starts, ends] = [startOf(row.body), endOf(row.body)];
    const last = days.at(-1);
    if (last && after(starts, to) < pauseMinutes && after(later(to, ends), from) <= dayMinutes) {
      last.push(row);
      to = later(to, ends);
    } else {
      days.push([row]);
      [from, to] = [starts, ends];
    }
  }
  return days;
}

/** A momentary reading shows that its figure was reached; the highest a day certainly saw goes up with it, the upper end is left to the others. */
function withSpots(exposure: DayExposure, spots: readonly AirRow[]): DayExposure {
  const seen = spots.filter((s) => s.figure.mark !== '<').map((s) => asRatio(s.figure.mgM3));
  const highest = seen.reduce<(typeof seen)[number] | null>((a, b) => (a === null || compareRatio(b, a) > 0 ? b : a), null);
  if (highest === null) return exposure;
  const { ceiling } = exposure;
  if (ceiling === null) return { ...exposure, ceiling: { low: highest, high: null } };
  const low = compareRatio(highest, ceiling.low) > 0 ? highest : ceiling.low;
  const high = ceiling.high !== null && compareRatio(ceiling.high, low) < 0 ? low : ceiling.high;
  return { ...exposure, ceiling: { low, high } };
}

/** Readings that lasted, in order. Two desks may each have kept one of the same hour: the one that came first counts, the other is flagged. */
function lastingOf(rows: readonly AirRow[]) {
  const lasting = rows.filter((r) => r.body.to !== undefined).toSorted((a, b) => minutes(a.body.from) - minutes(b.body.from));
  const counted: AirRow[] = [];
  const uncounted: AirRow[] = [];
  for (const row of lasting) {
    const before = counted.at(-1);
    const free = !before || minutes(row.body.from) >= minutes(before.body.to ?? before.body.from);
    (free ? counted : uncounted).push(row);
  }
  return { lasting, counted, uncounted };
}

function dayFrom(rows: readonly AirRow[], subject: AirSubject, unsampled: Unsampled | undefined): AirDay | null {
  const first = rows[0];
  if (!first) return null;
  const from = rows.map((r) => startOf(r.body)).reduce(earlier);
  const to = rows.map((r) => endOf(r.body)).reduce(later);
  const { lasting, counted, uncounted } = lastingOf(rows);
  const lengthMinutes = after(to, from);
  const placed = counted.map(
    ({ body, figure }): TimedReading => ({
      from: after(body.from, from),
      to: after(body.to ?? body.from, from),
      mgM3: figure.mgM3,
      mark: figure.mark,
      maxMgM3: airMax(body),
    }),
  );
  const spots = rows.filter((r) => r.body.to === undefined);
  const day = { lengthMinutes, readings: placed, unsampled };
  return {
    key: `${subject.sample}:${subject.of}@${from}`,
    subject,
    day: dayOf(from),
    from,
    to,
    lengthMinutes,
    shiftRecorded: rows.some((r) => r.body.shift !== undefined),
    rows: lasting,
    uncounted,
    placed,
    spots,
    exposure: withSpots(dayExposure(day), spots),
    worst8h: worstEightHours(day),
    shiftMean: shiftMean(day),
  };
}

/** What may be said of time without a reading, where somebody says it: mg/m³. */
export interface AirAsked {
  readonly unsampled?: Unsampled | undefined;
}

/** Readings of every person and place, apart by working day, the oldest first. */
function workingDays(current: Book['current']): { readonly subject: AirSubject; readonly rows: readonly AirRow[] }[] {
  const bySubject = new Map<string, { subject: AirSubject; rows: AirRow[] }>();
  for (const reading of current.of('air-reading')) {
    const subject = subjectOf(reading.body);
    const key = `${subject.sample}:${subject.of}`;
    const row = { id: reading.id, reading, body: reading.body, figure: airFigure(reading.body) };
    const known = bySubject.get(key);
    if (known) known.rows.push(row);
    else bySubject.set(key, { subject, rows: [row] });
  }
  const began = ([first]: readonly AirRow[]): number => (first ? minutes(startOf(first.body)) : 0);
  return [...bySubject.values()]
    .flatMap(({ subject, rows }) => apart(rows).map((day) => ({ subject, rows: day })))
    .sort((a, b) => began(a.rows) - began(b.rows));
}

/** Every working day of every person and place, the oldest first. */
export const airDays = ({ current }: Pick<Book, 'current'>, asked: AirAsked = {}): readonly AirDay[] =>
  workingDays(current).flatMap(({ subject, rows }) => dayFrom(rows, subject, asked.unsampled) ?? []);

/** Readings of hours that another one counts already; no exposure is worked out for them. */
export const uncountedReadings = (current: Book['current']): readonly AirRow[] =>
  workingDays(current).flatMap(({ rows }) => lastingOf(rows).uncounted);

/** The working days in which a reading names one of these charges. */
export const airDaysOfRun = (book: Pick<Book, 'current'>, charges: readonly string[], asked?: AirAsked): readonly AirDay[] =>
  airDays(book, asked).filter((d) =>
    [...d.rows, ...d.spots].some((r) => r.body.run !== undefined && charges.includes(r.body.run)),
  );
