import { expect, test } from 'vitest';
import { endMarkText } from '../../app/papers/end-mark.ts';
import { retortTag } from '../../app/papers/retort-tag.ts';
import { awkward, frameOf, textOf, w8 } from './site-of-runs.ts';
import { bookOf, fromLater, said, year } from './year.ts';

test('the tag says above all else that it holds mercury, then retort, day, weight and lots', () => {
  const { book, charge } = w8();
  const text = said(retortTag(bookOf(book), charge, frameOf(book)));
  expect(text.split('\n')[0]).toBe('HOLDS MERCURY');
  expect(text).toContain('Retort\nPot retort\n');
  expect(text).toContain('Charged\n14 March 2026, 08:40\n');
  // practice.md W8: 212.4 + 198.7 + 205.1 + 187.9 + 151.5
  expect(text).toContain('Weight\n955.6 g, ± ');
  for (const lot of ['march A\n212.4 g', 'march E\n151.5 g']) expect(text).toContain(lot);
  expect(text).toContain('The place’s rules and its licensed people come first.');
});

test('standing, what it is filed under and the end mark are on it', () => {
  const { book, charge } = w8();
  const made = retortTag(bookOf(book), charge, frameOf(book));
  expect(said(made)).toContain('Held: mercury may be in plates, floors or traps. Done: clearing legacy mercury.');
  expect(said(made)).toContain(`Filed under charge ${charge}`);
  if (!made.ok) throw new Error('made');
  const foot = textOf((made.value.footer as () => never)());
  expect(foot).toContain(endMarkText('0123456789abcdef'.repeat(4)));
  expect(foot).toContain('It is no approval and no permit.');
});

test('it is a quarter of a sheet: four of them fill A4', () => {
  const { book, charge } = w8();
  const made = retortTag(bookOf(book), charge, frameOf(book));
  expect(made.ok && made.value.pageSize).toEqual({ width: 297.64, height: 419.53 });
});

test('a charge that was not fired says so; one fired says when it was opened', () => {
  const { book, ids } = year();
  expect(said(retortTag(bookOf(book), ids.charge, frameOf(book)))).toContain('State\nfired, opened 2 March 2026');
  book.entries.splice(
    book.entries.findIndex(({ id }) => id === ids.firing),
    1,
  );
  expect(said(retortTag(bookOf(book), ids.charge, frameOf(book)))).toContain('State\nno firing on the record');
});

test('a lot that was not found, and every other reservation, is on the tag before its weights', () => {
  const { book, charge } = awkward();
  const text = said(retortTag(bookOf(book), charge, frameOf(book)));
  expect(text).toContain('NOT FOUND');
  expect(text).toMatch(/“June D” was not found at charging/);
  expect(text.indexOf('was not found at charging')).toBeLessThan(text.indexOf('\nWeight\n'));
});

test('an unknown id and an id of another kind are refused; an entry not understood keeps it from being printed', () => {
  const { book, ids } = year();
  const codes = (id: string) => {
    const got = retortTag(bookOf(book), id, frameOf(book));
    return got.ok ? [] : got.problems.map(({ code, data }) => [code, data?.wanted]);
  };
  expect(codes('no-such-charge')).toEqual([['paper-no-such', 'charge']]);
  expect(codes(ids.firing)).toEqual([['paper-no-such', 'charge']]);
  fromLater(book, { taken: ids.charge });
  expect(codes(ids.charge)).toEqual([['paper-not-understood', undefined]]);
});
