/**
 * A firing along the clock as it is drawn, for window and paper alike. Minutes are counted from the beginning of the drawing; the hours under it are those
 * of the clock on the wall when it began. What there is to draw, in words, is firing-things.ts.
 */
import { airMax } from '../core/book/air-as-read.ts';
import type { AirRow } from '../core/book/air-days.ts';
import { pickedLimits } from '../core/book/air-verdicts.ts';
import type { Book } from '../core/book/book.ts';
import { hotC } from '../core/book/charges.ts';
import type { FireTimes } from '../core/book/fire-times.ts';
import { toNumber } from '../core/decimal.ts';
import { dayFrom, dayOf, minutesOf } from '../core/time.ts';
import { givenText } from './air-planned.ts';
import { dayText } from './dates.ts';
import { limitBasisNames } from './daybook-names-air.ts';
import { firingDrawn as words } from './firing-drawn.ts';
import { type FiringThing, type FiringThings, firingThings, laneNames } from './firing-things.ts';
import { marked } from './notation.ts';
import { degreesText, degreesValue, degreeUnit, temperatureText } from './temperatures.ts';

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const two = (value: number): string => String(value).padStart(2, '0');

/** Minutes by which a moment's clock runs ahead of UTC. */
const offsetOf = (moment: string): number => {
  const [sign, hours, minutes] = [moment.at(-6), moment.slice(-5, -3), moment.slice(-2)];
  return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
};

/** Whole hours of the drawing, so many apart that about a dozen stand under it; at midnight the new day. */
function hoursOf(from: string, minutes: number): { at: number; text: string }[] {
  const wall = (minutesOf(from) ?? 0) + offsetOf(from);
  const every = ([60, 120, 180, 360, 720].find((step) => minutes / step <= 13) ?? 1440) as number;
  const first = Math.ceil(wall / every) * every;
  const count = Math.max(0, Math.floor((wall + minutes - first) / every) + 1);
  return Array.from({ length: count }, (_, i) => first + i * every).map((at) => {
    const ofDay = ((at % 1440) + 1440) % 1440;
    return {
      at: at - wall,
      text: ofDay === 0 ? dayText(dayFrom(Math.floor(at / 1440))) : `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`,
    };
  });
}

const markOf = ({ figure }: AirRow): 'read' | 'below' | 'over' =>
  figure.mark === '<' ? 'below' : figure.mark === '>' ? 'over' : 'read';

/** The air of this time to its own scale, with the limits the site picked for people at work. */
function airPanel(book: Pick<Book, 'registers'>, air: readonly AirRow[], minutesAt: (moment: string) => number, day: string) {
  const sign = ({ figure }: AirRow): string => (figure.mark === undefined ? '' : `${figure.mark}\u00a0`);
  const figureText = (row: AirRow): string => `${sign(row)}${givenText(toNumber(row.figure.mgM3)).replace(/\u00a0.*$/, '')}`;
  const valued = air.map((row) => ({ row, value: toNumber(row.figure.mgM3), mark: markOf(row), text: figureText(row) }));
  return {
    id: 'air',
    name: words.airPanel,
    steps: valued.flatMap(({ row, ...one }) => {
      const { to, from } = row.body;
      const most = airMax(row.body);
      return to === undefined
        ? []
        : [{ id: `air ${row.id}`, from: minutesAt(from), to: minutesAt(to), most: most && toNumber(most), ...one }];
    }),
    moments: valued.flatMap(({ row, ...one }) =>
      row.body.to === undefined ? [{ id: `air ${row.id}`, at: minutesAt(row.body.from), ...one }] : [],
    ),
    lines: pickedLimits(book, day, 'work').map(({ body }) => ({
      value: Number(body.mgM3),
      name: `${body.label}: ${givenText(Number(body.mgM3))}, ${small(limitBasisNames[body.basis])}`,
    })),
  };
}

/** Temperatures read along the fire and at the opening, with what was aimed at. */
function temperaturePanel({ firing }: FireTimes, minutesAt: (moment: string) => number) {
  const { noted = [], aimedC, opening, opened } = firing.reading.body;
  const read = noted.flatMap((one, i) =>
    one.temperatureC === undefined ? [] : [{ id: `noted ${i} temperature`, moment: one.at, c: one.temperatureC }],
  );
  if (read.length === 0) return null;
  const measured = opening && 'measuredC' in opening && opened !== undefined ? opening.measuredC : undefined;
  const all = measured === undefined ? read : [...read, { id: 'opening temperature', moment: opened ?? '', c: measured }];
  const line = (c: number, name: string) => ({ value: degreesValue(c), name });
  return {
    id: 'temperature',
    name: words.temperaturePanel(degreeUnit()),
    steps: [],
    moments: all.map(({ id, moment, c }) => ({
      id,
      at: minutesAt(moment),
      value: degreesValue(c),
      mark: 'read' as const,
      text: degreesText(c),
    })),
    lines: [
      ...(aimedC ? [line(aimedC.from, words.aimedFrom(aimedC.from)), line(aimedC.to, words.aimedTo(aimedC.to))] : []),
      ...(measured === undefined ? [] : [line(hotC, words.hotLine(temperatureText(hotC)))]),
    ],
  };
}

/** The firing as the drawing wants it; null where no time of it was written. */
function drawnOf(book: Book, times: FireTimes, { things, missing }: FiringThings) {
  if (!times.span) return null;
  const { from, to } = times.span;
  const minutesAt = (moment: string): number => Math.round(((minutesOf(moment) ?? 0) - (minutesOf(from) ?? 0)) * 1000) / 1000;
  const inLane = (lane: FiringThing['lane']) => things.filter((thing) => thing.lane === lane);
  const temperature = temperaturePanel(times, minutesAt);
  const air = times.air.length === 0 ? null : airPanel(book, times.air, minutesAt, dayOf(from));
  const panels = [...(temperature ? [temperature] : []), ...(air ? [air] : [])];
  return {
    minutes: minutesAt(to),
    lanes: laneNames
      .filter((lane) => !panels.some((panel) => panel.id === lane))
      .map((lane) => ({
        id: lane,
        name: words.lanes[lane],
        spans: inLane(lane).flatMap(({ id, text, drawn }) =>
          drawn.is === 'span'
            ? [{ id, text, look: drawn.look, from: minutesAt(drawn.from), to: minutesAt(drawn.to) }]
            : drawn.is === 'stood'
              ? [{ id, text, look: 'open' as const, from: minutesAt(drawn.to) - drawn.minutes, to: minutesAt(drawn.to) }]
              : [],
        ),
        marks: inLane(lane).flatMap(({ id, text, drawn }) =>
          drawn.is === 'mark' ? [{ id, text, look: drawn.look, at: drawn.at === null ? null : minutesAt(drawn.at) }] : [],
        ),
        note: missing[lane] ?? '',
      })),
    panels,
    hours: hoursOf(from, minutesAt(to)),
    tickText: marked,
  };
}

/** The drawing, and everything in it in words: `told` by the id it is drawn under, `rows` as a table in the order of the clock. */
export function drawnFiring(book: Book, times: FireTimes) {
  const found = firingThings(book, times);
  return {
    drawn: drawnOf(book, times, found),
    told: found.things.map(({ id, when, until, what, said, entry }) => ({
      id,
      entry,
      text: words.told(until === '' ? when : words.fromTo(when, until), what, said),
    })),
    rows: found.rows,
    rules: found.rules,
  };
}
