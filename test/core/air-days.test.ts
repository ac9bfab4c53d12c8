/** The day's exposure out of readings as kept: ranges, gaps, momentary readings, long shifts, limits that the site picked, and what is refused or asked about. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { besideRaw } from '../../app/core/book/air-beside.ts';
import { airDays, airDaysOfRun } from '../../app/core/book/air-days.ts';
import { verdictsOf } from '../../app/core/book/air-verdicts.ts';
import { readBook } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import type { Range } from '../../app/core/exposure.ts';
import { type Body, draftFrom } from '../../app/core/kinds/index.ts';
import { toDouble } from '../../app/core/ratio.ts';
import { problemText } from '../../app/words/problems.ts';
import { BookMaker } from './book-maker.ts';

type Air = Body<'air-reading'>;
const at = (clock: string, day = '2026-03-10', offset = '+13:00') => `${day}T${clock}${offset}`;
const area = (from: string, to: string, shows: string, more: Partial<Air> = {}): Air => ({
  sample: 'area',
  place: 'bench',
  from: at(from),
  to: at(to),
  unit: 'mg/m3',
  shows,
  ...more,
});
const bookWith = (readings: readonly Air[]) => {
  const book = BookMaker.site();
  for (const [i, body] of readings.entries()) book.add(`reading ${i}`, 'air-reading', body, { happened: body.from });
  return book;
};
const onlyDay = (readings: readonly Air[]) => {
  const days = airDays(readBook(bookWith(readings).entries));
  expect(days).toHaveLength(1);
  return days[0] as (typeof days)[number];
};
const ends = (range: Range | null) => range && [toDouble(range.low), range.high && toDouble(range.high)];
const limit = (more: Partial<Body<'limit'>> = {}): Body<'limit'> => ({
  label: 'ours',
  body: 'a body',
  form: 'elemental-vapour',
  mgM3: '0.025',
  basis: '8h',
  people: 'work',
  source: 'a paper',
  checked: { by: 'the keeper', on: '2026-03-01' },
  picked: 'yes',
  ...more,
});

describe('the exposure of a day', () => {
  test('twelve hours are told four ways, each under its name (safety.md W4)', () => {
    const book = bookWith([
      area('06:00', '10:00', '0.030'),
      area('10:00', '15:00', '0.015'),
      area('15:00', '18:00', '20', { unit: 'ug/m3' }),
    ]);
    book.add('limit', 'limit', limit());
    const read = readBook(book.entries);
    const day = airDays(read)[0] as ReturnType<typeof airDays>[number];
    expect(ends(day.shiftMean)).toEqual([0.02125, 0.02125]);
    expect(ends(day.exposure.twa8h)).toEqual([0.031875, 0.031875]);
    expect(ends(day.worst8h)).toEqual([0.024375, 0.024375]);
    expect(verdictsOf(read, day).map((v) => [v.how, Number(toDouble(v.limitMgM3).toFixed(6)), v.verdict])).toEqual([
      ['8h', 0.025, 'above'],
      ['worst-8h', 0.025, 'below'],
      ['brief-scala', 0.0125, 'above'],
      ['eight-over-h', 0.016667, 'above'],
    ]);
  });

  test('a recorded shift shows the time nobody read, and without one it runs from first to last', () => {
    const shift = { from: at('07:00'), to: at('15:00') };
    const day = onlyDay([area('07:00', '09:00', '0.010', { shift }), area('09:00', '11:00', '<0.003', { shift })]);
    expect([day.shiftRecorded, day.exposure.sampledMinutes, day.exposure.unsampledMinutes]).toEqual([true, 240, 240]);
    expect(day.exposure.findings).toEqual(['unsampled-time', 'below-detection']);
    expect(ends(day.exposure.twa8h)).toEqual([0.0025, null]);
    expect(onlyDay([area('07:00', '09:00', '0.010')]).shiftRecorded).toBe(false);
  });

  test('a momentary reading covers no time, raises what was certainly reached, and never lowers anything', () => {
    const day = onlyDay([
      area('07:00', '07:10', '0.010'),
      { sample: 'area', place: 'bench', from: at('07:05'), unit: 'mg/m3', shows: '0.2' },
    ]);
    expect(day.spots).toHaveLength(1);
    expect(day.exposure.sampledMinutes).toBe(10);
    expect(ends(day.exposure.ceiling)).toEqual([0.2, 0.2]);
    const alone = onlyDay([{ sample: 'area', place: 'bench', from: at('07:05'), unit: 'mg/m3', shows: '0.2' }]);
    expect([alone.exposure.twa8h, ends(alone.exposure.ceiling)]).toEqual([null, [0.2, null]]);
  });

  test('a shift over midnight is one day; a night on which the clocks go back is an hour longer', () => {
    const night = (offsetAfter: string): Air[] => [
      area('20:00', '23:00', '0.010', { from: '2026-04-04T20:00+13:00', to: '2026-04-04T23:00+13:00' }),
      area('23:00', '04:00', '0.020', { from: '2026-04-04T23:00+13:00', to: `2026-04-05T04:00${offsetAfter}` }),
    ];
    expect(onlyDay(night('+13:00')).lengthMinutes).toBe(480);
    expect(onlyDay(night('+12:00')).lengthMinutes).toBe(540);
    expect(onlyDay(night('+12:00')).day).toBe('2026-04-04');
  });

  test('people, places of work and places of visitors are days of their own', () => {
    const site = BookMaker.site();
    const book = bookWith([
      area('07:00', '08:00', '0.010'),
      area('07:00', '08:00', '0.010', { sample: 'visitor-area' }),
      { ...area('07:00', '08:00', '0.010'), sample: 'personal', person: site.keeper },
    ]);
    expect(airDays(readBook(book.entries)).map((d) => d.subject.sample)).toEqual(['area', 'visitor-area', 'personal']);
  });

  test('a finer split of a reading changes nothing, and rolling is never under any fixed quarter of an hour', () => {
    const mgs = fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(mgs, fc.integer({ min: 1, max: 4 }), (values, cut) => {
        const minute = (n: number) => `${String(7 + Math.floor(n / 60)).padStart(2, '0')}:${String(n % 60).padStart(2, '0')}`;
        const text = (v: number) => (v / 1000).toFixed(3);
        const whole = onlyDay(values.map((v, i) => area(minute(5 * i), minute(5 * i + 5), text(v))));
        const split = onlyDay(
          values.flatMap((v, i) => [
            area(minute(5 * i), minute(5 * i + cut), text(v)),
            area(minute(5 * i + cut), minute(5 * i + 5), text(v)),
          ]),
        );
        for (const part of ['twa8h', 'meanSampled', 'highest15min', 'ceiling'] as const)
          expect(ends(split.exposure[part])).toEqual(ends(whole.exposure[part]));
        const rolling = ends(whole.exposure.highest15min)?.[0] ?? 0;
        for (let i = 0; i + 3 <= values.length; i += 3) {
          const [a = 0, b = 0, c = 0] = values.slice(i, i + 3);
          expect(rolling).toBeGreaterThanOrEqual((a + b + c) / 3000 - 1e-12);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('of two readings of one hour, as two desks may keep them, one counts, both are shown and one is flagged', () => {
    const book = readBook(bookWith([area('07:00', '09:00', '0.010'), area('08:00', '10:00', '0.030')]).entries);
    const day = airDays(book)[0] as ReturnType<typeof airDays>[number];
    expect([day.rows.length, day.uncounted.length, day.exposure.sampledMinutes]).toEqual([2, 1, 120]);
    expect([...book.flags.values()].flat().filter((f) => f.code === 'air-counted-once')).toHaveLength(1);
  });

  test('a run has the days whose readings name its charge', () => {
    const book = bookWith([
      area('07:00', '09:00', '0.010', { run: 'the-charge' }),
      area('07:00', '09:00', '0.010', { place: 'yard' }),
    ]);
    expect(airDaysOfRun(readBook(book.entries), ['the-charge']).map((d) => d.subject.of)).toEqual(['bench']);
    expect(airDaysOfRun(readBook(book.entries), ['another'])).toEqual([]);
  });

  test('a meter out of date flags its readings and deletes none', () => {
    const book = bookWith([]);
    const meter = book.add('meter', 'meter', { label: 'Meter', calibrated: { on: '2025-01-01', due: '2026-01-01' } });
    book.add('read', 'air-reading', area('07:00', '09:00', '0.010', { meter }));
    const read = readBook(book.entries);
    expect([...read.flags.values()].flat().map((f) => f.code)).toContain('meter-out-of-date');
    expect(airDays(read)[0]?.exposure.sampledMinutes).toBe(120);
  });

  test('seconds of a meter’s log are counted as they are', () => {
    const day = onlyDay([area('07:00:00', '07:00:10', '0.010'), area('07:00:10', '07:00:20', '0.030')]);
    expect(ends(day.exposure.meanSampled)).toEqual([0.02, 0.02]);
    expect(day.exposure.findings).toEqual([]);
  });
});

describe('limits', () => {
  const verdicts = (readings: readonly Air[], limits: readonly Body<'limit'>[]) => {
    const book = bookWith(readings);
    for (const [i, body] of limits.entries()) book.add(`limit ${i}`, 'limit', { ...body, label: `limit ${i}` });
    const read = readBook(book.entries);
    return airDays(read).flatMap((d) => verdictsOf(read, d).map((v) => `${d.subject.sample} ${v.how} ${v.verdict}`));
  };
  const eight = [area('07:00', '15:00', '0.020')];

  test('none picked: no verdict; picked but out of its dates: no verdict', () => {
    expect(verdicts(eight, [])).toEqual([]);
    expect(verdicts(eight, [limit({ picked: 'no' }), limit({ to: '2026-03-09' }), limit({ from: '2026-03-11' })])).toEqual([]);
    expect(verdicts(eight, [limit(), limit({ mgM3: '0.020' }), limit({ mgM3: '0.0199' })])).toEqual([
      'area 8h below',
      'area 8h at',
      'area 8h above',
    ]);
  });

  test('visitors are held against figures for the public only, people at work against figures for work only', () => {
    const both = [limit(), limit({ people: 'public', basis: 'continuous', mgM3: '0.001' })];
    expect(verdicts(eight, both)).toEqual(['area 8h below']);
    expect(verdicts([area('07:00', '15:00', '0.020', { sample: 'visitor-area' })], both)).toEqual([
      'visitor-area mean-sampled above',
    ]);
    const spot: Air = { sample: 'visitor-area', place: 'gallery', from: at('09:00'), unit: 'ug/m3', shows: '0.2' };
    expect(verdicts([spot], both)).toEqual(['visitor-area moments-only cannot tell']);
  });
});

describe('beside the raw figure', () => {
  const raw = area('07:00', '08:00', '0.0200');
  test('it is brought to 25 °C and 101.325 kPa (safety.md W6), never twice, and not without a temperature', () => {
    const beside = besideRaw({ ...raw, temperatureC: 35, pressureKpa: 80 });
    expect(beside.mgM3).toBe(0.02);
    expect(beside.normalisedMgM3).toBeCloseTo(0.02618, 5);
    expect(besideRaw({ ...raw, temperatureC: 35, pressureKpa: 80, normalised: 'yes' }).normalisedMgM3).toEqual({
      why: 'by-the-meter',
    });
    expect(besideRaw(raw).ofSaturation).toEqual({ why: 'temperature-not-recorded' });
  });
});

describe('what is refused or asked about', () => {
  const problems = (kind: string, body: object, before: readonly Air[] = [], meter = false) => {
    const book = bookWith(before);
    if (meter) book.add('meter', 'meter', { label: 'Meter' });
    const got = draftFrom({ id: 'the-new-entry', happened: at('09:00'), by: null, kind, body });
    const found = got.ok ? checkDraft(readBook(book.entries), got.value, at('12:00', '2026-03-20')) : got.problems;
    for (const p of found) expect(problemText(p), p.code).not.toContain(p.code);
    return found.map((p) => `${p.code} ${p.field}`);
  };

  test('times that run backwards, over a day, outside the shift or twice over one hour are refused by name', () => {
    expect(problems('air-reading', area('09:00', '08:00', '0.01'))).toEqual(['air-reversed body.to']);
    expect(problems('air-reading', area('09:00', '09:00', '0.01'))).toEqual(['no-time body.to']);
    expect(problems('air-reading', { ...area('09:00', '', '0.01'), to: at('09:30', '2026-03-11') })).toEqual([
      'over-a-day body.to',
    ]);
    expect(problems('air-reading', area('09:00', '10:00', '0.01', { shift: { from: at('09:30'), to: at('15:00') } }))).toEqual([
      'outside-shift body.shift',
    ]);
    const long = { from: at('07:00'), to: at('07:30', '2026-03-11') };
    expect(problems('air-reading', area('09:00', '10:00', '0.01', { shift: long }))).toEqual(['over-a-day body.shift.to']);
    expect(problems('air-reading', area('09:00', '10:00', '0.01'), [area('09:30', '11:00', '0.02')])).toEqual([
      'air-overlap body.from',
    ]);
    expect(problems('air-reading', area('09:00', '10:00', '0.01'), [area('10:00', '11:00', '0.02')])).toEqual([]);
  });

  test('68 °C is asked about and kept once answered; a blank temperature is not filled in', () => {
    expect(problems('air-reading', area('09:00', '10:00', '0.01', { temperatureC: 68 }))).toEqual([
      'air-temperature-asked body.temperatureC',
    ]);
    expect(problems('air-reading', area('09:00', '10:00', '0.01', { temperatureC: 68, sure: ['temperature'] }))).toEqual([]);
    expect(problems('air-reading', area('09:00', '10:00', '0.01'))).toEqual([]);
  });

  test('more than air holds is asked about; at or above 10 mg/m³ it is kept and told as an emergency', () => {
    expect(problems('air-reading', area('09:00', '10:00', '25', { temperatureC: 20 }))).toEqual(['air-figure-asked body.shows']);
    expect(problems('air-reading', area('09:00', '10:00', '25000', { unit: 'ug/m3', temperatureC: 20 }))).toEqual([
      'air-figure-asked body.shows',
    ]);
    const book = readBook(bookWith([area('09:00', '10:00', '10', { temperatureC: 20 }), area('10:00', '11:00', '9.99')]).entries);
    const codes = [...book.flags.values()].flat().map((f) => f.code);
    expect(codes.filter((c) => c === 'air-idlh')).toHaveLength(1);
  });

  test('a figure with anything but digits, a point and its sign is refused, and so is a limit without a source or a checker', () => {
    expect(problems('air-reading', area('09:00', '10:00', '-0.01'))).toEqual(['air-figure body.shows']);
    expect(problems('limit', limit({ source: undefined }))).toEqual(['limit-without-source body.source']);
    expect(problems('limit', limit({ checked: undefined }))).toEqual(['limit-unchecked body.checked']);
    expect(problems('limit', limit({ mgM3: '0.000' }))).toEqual(['limit-zero body.mgM3']);
  });
});
