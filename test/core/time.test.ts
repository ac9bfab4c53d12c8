/** Days and moments against the calendar of the engine and the pattern they are defined by: read digit by digit, they must mean the same. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareMoments, dayNumber, minutesOf } from '../../app/core/time.ts';

const dayPattern = /^(\d{4})-(\d{2})-(\d{2})$/;
const momentPattern = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})(?::(\d{2})(?:\.\d{1,3})?)?([+-])(\d{2}):(\d{2})$/;

function slowDay(text: string): number | null {
  const m = dayPattern.exec(text);
  if (!m || Number(m[1]) < 1000) return null;
  const ms = Date.UTC(Number(m[1]), Number(m[2]) - 1, Number(m[3]));
  return new Date(ms).toISOString().slice(0, 10) === text ? ms / 86_400_000 : null;
}

function slowMinutes(text: string): number | null {
  const m = momentPattern.exec(text);
  const day = slowDay(m?.[1] ?? '');
  if (!m || day === null) return null;
  const [hour, minute, second, away, awayMinutes] = [m[2], m[3], m[4] ?? 0, m[6], m[7]].map(Number) as [
    number,
    number,
    number,
    number,
    number,
  ];
  if (hour > 23 || minute > 59 || second > 59 || away > 14 || awayMinutes > 59) return null;
  const offset = away * 60 + awayMinutes;
  return day * 1440 + hour * 60 + minute + second / 60 - (m[5] === '-' ? -offset : offset);
}

const two = (most: number) => fc.integer({ min: 0, max: most }).map((n) => String(n).padStart(2, '0'));
const day = fc
  .tuple(fc.integer({ min: 900, max: 9999 }), two(13), two(32))
  .map(([y, m, d]) => `${String(y).padStart(4, '0')}-${m}-${d}`);
const seconds = fc.oneof(
  fc.constant(''),
  two(60).map((s) => `:${s}`),
  fc.tuple(two(60), fc.stringMatching(/^[0-9]{0,4}$/)).map(([s, f]) => `:${s}.${f}`),
);
const moment = fc
  .tuple(day, two(24), two(60), seconds, fc.constantFrom('+', '-', 'Z', ''), two(15), two(60))
  .map(([d, h, m, s, sign, oh, om]) => `${d}T${h}:${m}${s}${sign}${oh}:${om}`);
/** A moment with one character changed, put in or taken out. */
const spoiled = fc
  .tuple(moment, fc.nat(28), fc.constantFrom('', ' ', '0', ':', '-', 'T', 'x', '٣', '\n'), fc.nat(1))
  .map(([text, at, put, cut]) => text.slice(0, at) + put + text.slice(at + cut));

test('a day is the day of the calendar, and nothing else is one', () => {
  fc.assert(
    fc.property(fc.oneof(day, spoiled), (text) => {
      expect(dayNumber(text)).toBe(slowDay(text));
    }),
    { numRuns: 3000 },
  );
  for (const text of ['1000-01-01', '1900-02-29', '2000-02-29', '2024-02-29', '2026-02-29', '1970-01-01', '9999-12-31', ''])
    expect(dayNumber(text)).toBe(slowDay(text));
});

test('a moment is minutes since 1970 on the clock of the world, and nothing else is one', () => {
  fc.assert(
    fc.property(fc.oneof(moment, spoiled), (text) => {
      expect(minutesOf(text)).toBe(slowMinutes(text));
    }),
    { numRuns: 5000 },
  );
  expect(compareMoments('2026-03-14T09:20+13:00', '2026-03-13T20:20+00:00')).toBe(0);
});
