import { describe, expect, test } from 'vitest';
import { momentEntry, momentText } from '../../app/parts/moment.ts';

const clock = { now: () => '2026-03-14T09:20+13:00', offsetAt: (day: string) => (day < '2026-04-05' ? '+13:00' : '+12:00') };

describe('a moment from its fields', () => {
  test('carries the offset the machine has on that day, not today’s', () => {
    expect(momentText({ day: '2026-03-14', time: '09:20', timing: 'exact' }, clock)).toBe('2026-03-14T09:20+13:00');
    expect(momentText({ day: '2026-06-01', time: '09:20', timing: 'about' }, clock)).toBe('2026-06-01T09:20+12:00');
  });
  test('is nothing while day or time is missing', () => {
    expect(momentText({ day: '', time: '09:20', timing: 'exact' }, clock)).toBe('');
    expect(momentText({ day: '2026-03-14', time: '', timing: 'exact' }, clock)).toBe('');
  });
  test('of a day only stands at noon', () => {
    expect(momentText({ day: '2026-03-14', time: '', timing: 'day' }, clock)).toBe('2026-03-14T12:00+13:00');
  });
  test('comes apart and together again', () => {
    expect(momentText(momentEntry('2026-03-14T21:05+13:00'), clock)).toBe('2026-03-14T21:05+13:00');
  });
});
