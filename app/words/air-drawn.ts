/**
 * A day's air as it is drawn, for window and paper alike: its readings as steps, time nobody read, moments, and the lines of limits that the site picked,
 * each told in words. Times are minutes since the day began; what stands under the axis is the clock on the wall, with its own change where it has one.
 */
import { airMax } from '../core/book/air-as-read.ts';
import type { AirDay, AirRow } from '../core/book/air-days.ts';
import { peopleOf, pickedLimits } from '../core/book/air-verdicts.ts';
import type { Book } from '../core/book/book.ts';
import { toNumber } from '../core/decimal.ts';
import { minutesOf } from '../core/time.ts';
import { shownText } from './air-figures.ts';
import { givenText, minutesText } from './air-planned.ts';
import { clockText } from './dates.ts';
import { airHeightNames, limitBasisNames, onOffNames } from './daybook-names-air.ts';

export const airDrawnWords = {
  chart: 'Mercury in the air over the day',
  scale: 'Mercury in the air, mg/m³',
  gap: 'not read',
  above: 'Above what is drawn:',
  hint: 'Point at a reading, or reach it with Tab and the arrow keys, to have it told here; Enter opens it.',
  legend: [
    'A filled step with a firm line: a reading over the time it lasted. A stem on it goes up to the highest figure seen meanwhile.',
    'A broken line over an open field, with an open triangle that points down: below what the meter can tell, so anything from nothing up to the line.',
    'A firm line over an open field, with a filled triangle that points up: over the meter’s range, so at least the line.',
    'A diamond: a momentary reading. It covers no time.',
    'Hatched: nobody read the air. It is not taken as clean.',
    'A long-dashed line with its name: a limit this site picked. It is meant over its own time, so one step above or below it is no verdict.',
  ],
} as const;

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const markOf = ({ figure }: AirRow): 'read' | 'below' | 'over' =>
  figure.mark === '<' ? 'below' : figure.mark === '>' ? 'over' : 'read';

/** A reading in one line: when, what was shown, where, what was going on. */
export function airRowText({ body }: AirRow): string {
  const when = body.to === undefined ? `${clockText(body.from)}, momentary` : `${clockText(body.from)} to ${clockText(body.to)}`;
  return [
    `${when}: ${shownText(body)}`,
    body.max === undefined ? undefined : `at most ${shownText({ shows: body.max, unit: body.unit })}`,
    body.place,
    body.height === undefined ? undefined : small(airHeightNames[body.height]),
    body.activity,
    body.fans === undefined ? undefined : `fans: ${small(onOffNames[body.fans])}`,
    body.hood === undefined ? undefined : `hood: ${small(onOffNames[body.hood])}`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** Time that no counted reading covers, minutes since the day began. */
function gapsOf({ placed, lengthMinutes }: AirDay): { from: number; to: number }[] {
  const gaps: { from: number; to: number }[] = [];
  let at = 0;
  for (const { from, to } of [...placed, { from: lengthMinutes, to: lengthMinutes }]) {
    if (from > at) gaps.push({ from: at, to: from });
    at = Math.max(at, to);
  }
  return gaps;
}

const pad = (value: number): string => String(value).padStart(2, '0');

/** Minutes by which a moment's clock runs ahead of UTC. */
const offsetOf = (moment: string): number => {
  const [sign, hours, minutes] = [moment.at(-6), moment.slice(-5, -3), moment.slice(-2)];
  return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
};

/** The clock on the wall so many minutes into the day; from a reading on that was written with another offset, by that one. */
function wallOf(day: AirDay): (minutes: number) => string {
  const began = minutesOf(day.from) ?? 0;
  const offsets = day.rows.map(({ body }) => ({ at: (minutesOf(body.from) ?? 0) - began, offset: offsetOf(body.from) }));
  return (at) => {
    const offset = offsets.findLast((o) => o.at <= at)?.offset ?? offsetOf(day.from);
    const wall = ((Math.floor(began + at + offset + 1e-6) % 1440) + 1440) % 1440;
    return `${pad(Math.floor(wall / 60))}:${pad(wall % 60)}`;
  };
}

/** The whole hours of the day, as the clock showed them. */
function hoursOf(day: AirDay): { at: number; text: string }[] {
  const wall = wallOf(day);
  const past = ((((minutesOf(day.from) ?? 0) + offsetOf(day.from)) % 60) + 60) % 60;
  const first = (60 - past) % 60;
  const count = Math.floor((day.lengthMinutes - first) / 60) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => first + 60 * i).map((at) => ({ at, text: wall(at) }));
}

/** The day as the drawing wants it, and each reading in words with the entry it leads to: of every step, then of every moment. */
export function drawnAirDay(book: Pick<Book, 'registers'>, day: AirDay) {
  const counted = day.rows.filter((row) => !day.uncounted.includes(row));
  const began = minutesOf(day.from) ?? 0;
  return {
    drawn: {
      minutes: day.lengthMinutes,
      steps: counted.map((row, i) => {
        const most = airMax(row.body);
        return {
          from: day.placed[i]?.from ?? 0,
          to: day.placed[i]?.to ?? 0,
          value: toNumber(row.figure.mgM3),
          mark: markOf(row),
          most: most && toNumber(most),
        };
      }),
      gaps: gapsOf(day),
      moments: day.spots.map((row) => ({
        at: (minutesOf(row.body.from) ?? 0) - began,
        value: toNumber(row.figure.mgM3),
        mark: markOf(row),
      })),
      lines: pickedLimits(book, day.day, peopleOf(day)).map(({ body }) => ({
        value: Number(body.mgM3),
        name: `${body.label}: ${givenText(Number(body.mgM3))}, ${small(limitBasisNames[body.basis])}`,
      })),
      hours: hoursOf(day),
      gapName: airDrawnWords.gap,
      scaleName: airDrawnWords.scale,
      aboveName: airDrawnWords.above,
    },
    told: [...counted, ...day.spots].map((row) => ({ id: row.id, text: airRowText(row) })),
  };
}

/** Time nobody read: from when to when on the wall, and how long. */
export function airGaps(day: AirDay): readonly { readonly from: string; readonly to: string; readonly long: string }[] {
  const wall = wallOf(day);
  return gapsOf(day).map(({ from, to }) => ({ from: wall(from), to: wall(to), long: minutesText(to - from) }));
}
