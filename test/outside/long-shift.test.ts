/**
 * The twelve-hour day told four ways, the factors for long shifts, and a hot retort opened, against printed figures (data/long-shift.json). Expected
 * values are text and are met to the last figure printed.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { airDays } from '../../app/core/book/air-days.ts';
import { type AirHow, verdictsOf } from '../../app/core/book/air-verdicts.ts';
import { readBook } from '../../app/core/book/book.ts';
import { longShiftFactor } from '../../app/core/long-shift.ts';
import { opened } from '../../app/core/opening.ts';
import { toDouble } from '../../app/core/ratio.ts';
import { BookMaker } from '../core/book-maker.ts';
import { marks, printed, type Source } from './cases.ts';

type Four = Readonly<Record<'8h' | 'worst-8h' | 'brief-scala' | 'eight-over-h', string>>;
const data = JSON.parse(readFileSync(new URL('./data/long-shift.json', import.meta.url), 'utf8')) as {
  source: Source;
  published: Source;
  briefScala: Readonly<Record<string, string>>;
  shift: { readings: [string, string, string][]; limit: string; limits: Four; figures: Four; percent: Four; verdicts: Four };
  openings: {
    source: Source;
    headspaceL: number;
    roomM3: number;
    changesPerHour: number;
    rows: { openC: number; mg: string; room: string; times: string; to25: [string, string]; to1: [string, string] }[];
  };
  gasAt100C: { source: Source; mgM3: string; timesIdlh: string };
};

/** To the last figure printed. */
function meets(value: number, text: string, what: string): void {
  const { value: figure, half } = printed(text);
  expect(Math.abs(value - figure), `${what}: ${value} against ${text}`).toBeLessThanOrEqual(half);
}

test('every figure says who printed it, where, and how it came here', () => {
  for (const source of [data.source, data.published, data.openings.source, data.gasAt100C.source]) {
    for (const field of ['author', 'title', 'edition', 'page'] as const) expect(source[field]).toMatch(/\S/);
    expect(marks).toContain(source.mark);
    if (source.mark.startsWith('read')) expect(source.where).toMatch(/\S/);
  }
});

test.each(Object.entries(data.briefScala))('Brief and Scala take the limit of a day of %s hours times %s', (hours, factor) => {
  meets(toDouble(longShiftFactor('brief-scala', Number(hours) * 60)), factor, hours);
});

describe('twelve hours told four ways (W4)', () => {
  const at = (clock: string) => `2026-03-10T${clock}+13:00`;
  const book = BookMaker.site();
  for (const [i, [from, to, shows]] of data.shift.readings.entries())
    book.add(
      `reading ${i}`,
      'air-reading',
      { sample: 'area', place: 'bench', from: at(from), to: at(to), unit: 'mg/m3', shows },
      { happened: at(from) },
    );
  book.add('limit', 'limit', {
    label: 'as entered',
    body: 'a body',
    form: 'elemental-vapour',
    mgM3: data.shift.limit,
    basis: '8h',
    people: 'work',
    source: 'a paper',
    checked: { by: 'the keeper', on: '2026-03-01' },
    picked: 'yes',
  });
  const read = readBook(book.entries);
  const [day] = airDays(read);
  const verdicts = day ? verdictsOf(read, day) : [];

  test.each(Object.keys(data.shift.limits) as (keyof Four & AirHow)[])('%s', (how) => {
    const found = verdicts.find((v) => v.how === how);
    if (!found?.range) throw new Error(`no figure for ${how}`);
    const figure = toDouble(found.range.low);
    meets(figure, data.shift.figures[how], 'figure');
    expect(found.range.high && toDouble(found.range.high)).toBe(figure);
    meets(toDouble(found.limitMgM3), data.shift.limits[how], 'limit');
    meets((100 * figure) / toDouble(found.limitMgM3), data.shift.percent[how], 'percent');
    expect(found.verdict).toBe(data.shift.verdicts[how]);
  });
});

describe('a retort of 3 litres opened hot in a room of 60 m³ (W12)', () => {
  const { headspaceL, roomM3, changesPerHour, rows } = data.openings;
  const open = (temperatureC: number, mixing: number, targetMgM3: number) => {
    const got = opened({
      headspaceL,
      temperatureC,
      pressureKpa: 101.325,
      roomM3,
      roomC: 20,
      changesPerHour,
      mixing,
      sourceMgH: 0,
      backgroundMgM3: 0,
      targetMgM3,
    });
    if (!got) throw new Error('a room has a volume');
    return got;
  };

  test.each(rows)('at $openC °C', ({ openC, mg, room, times, to25, to1 }) => {
    const got = open(openC, 1, 0.025);
    meets(got.releasedMg, mg, 'released');
    meets(got.roomMgM3, room, 'room');
    meets(got.roomMgM3 / 0.025, times, 'times 0.025');
    for (const [i, mixing] of [1, 3].entries()) {
      meets(Number(open(openC, mixing, 0.025).minutes), to25[i] ?? '', `to 0.025, mixing ${mixing}`);
      meets(Number(open(openC, mixing, 0.001).minutes), to1[i] ?? '', `to 0.001, mixing ${mixing}`);
    }
  });

  test('whoever opens it at 100 °C meets 2406 mg/m³, 241 times what is immediately dangerous', () => {
    const { gas, timesIdlh } = open(100, 1, 0.025);
    meets(gas.mgM3, data.gasAt100C.mgM3, 'gas');
    meets(timesIdlh, data.gasAt100C.timesIdlh, 'times');
  });
});
