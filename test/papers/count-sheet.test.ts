import { expect, test } from 'vitest';
import { countListOf } from '../../app/core/book/count-list.ts';
import { withCheck } from '../../app/core/form-serial.ts';
import { countSheet } from '../../app/papers/count-sheet.ts';
import { placeText } from '../../app/words/places.ts';
import { orderFrom } from '../../main/host/papers.ts';
import { frameOf } from './site-of-runs.ts';
import { between, bookOf, fromLater, said, year } from './year.ts';

const always = { from: null, to: null };
const sheet = (made = year(), period: { from: string | null; to: string | null } = always) =>
  said(countSheet(bookOf(made.book), period, frameOf(made.book)));

test('it lists every place that the page asks about, in the same order', () => {
  const made = year();
  const book = bookOf(made.book);
  const text = between(sheet(made), 'How to count', 'Found, and on no line above');
  const names = countListOf(book, '2026-06-30T12:00+12:00').map(({ place }) => placeText(book, place));
  expect(names.length).toBeGreaterThan(5);
  let from = 0;
  for (const name of names) {
    const at = text.indexOf(name, from);
    expect(at, name).toBeGreaterThan(-1);
    from = at + name.length;
  }
});

test('it is blind: no seal number and no figure of the book stands on it', () => {
  const made = year();
  const text = sheet(made);
  expect(text).not.toContain('S 900');
  const body = between(text, 'How to count', 'Signatures');
  expect(body).not.toMatch(/\d[\d.]* ?(g|kg|mg)\b/);
  const { book } = countListOf(bookOf(made.book), '2026-06-30T12:00+12:00')[0] ?? {};
  expect(book?.ug).toBeGreaterThan(0);
});

test('each group has the boxes it needs: seals read and broken, gross and tare, method, not found', () => {
  const text = sheet();
  const heads = (from: string, to: string) => between(text, from, to);
  const sealed = heads('Sealed flasks', 'Working vessels');
  for (const head of ['Seal, as read', 'Broken', 'Gross', 'Tare', 'Not found']) expect(sealed).toContain(head);
  const circuit = heads('In circuit', 'Found, and on no line above');
  for (const head of ['Mercury, estimated', 'Method, ± %']) expect(circuit).toContain(head);
  expect(circuit).not.toContain('Gross');
});

test('standing on top, a serial that tells it from another sheet, and lines to sign', () => {
  const made = year();
  const text = sheet(made);
  expect(text.indexOf('How to count')).toBeGreaterThan(text.indexOf('Standing'));
  expect(text).toContain(
    `Sheet ${withCheck(
      frameOf(made.book)
        .desks.map((d) => `${d.entries}-${d.endMark.slice(0, 8)}`)
        .join(' · '),
    )}`,
  );
  for (const role of ['Counted by', 'Seen by', 'Typed into the daybook by']) expect(text).toContain(role);
});

test('it takes the day it is for and no first day, and is not drawn up over what it cannot read', () => {
  expect(orderFrom('count-sheet', undefined, { to: '2026-06-30' }).ok).toBe(true);
  const refused = orderFrom('count-sheet', undefined, { from: '2026-01-01' });
  expect(refused.ok ? [] : refused.problems.map((p) => [p.code, p.field])).toEqual([['paper-takes-no-period', 'from']]);
  const made = year();
  fromLater(made.book, {});
  const got = countSheet(bookOf(made.book), always, frameOf(made.book));
  expect(got.ok ? [] : got.problems.map((p) => p.code)).toEqual(['paper-not-understood']);
});
