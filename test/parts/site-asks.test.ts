import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { askRows, asksPlan, fieldOfRow, newRow } from '../../app/screens/site/asks-plan.ts';
import { shippedChecks } from '../../app/words/asked-checks.ts';
import { BookMaker } from '../core/book-maker.ts';

const at = '2026-03-14T10:00+13:00';
const shipped = shippedChecks.scaling;
const [first, second] = shipped as readonly [(typeof shipped)[number], (typeof shipped)[number]];

function listed() {
  const book = BookMaker.site();
  book.add(
    'list',
    'check-list',
    {
      work: 'scaling',
      added: [{ check: 'scaling-own-1', asks: 'Gate shut' }],
      worded: [{ check: first.check, asks: 'Plate cold to the hand' }],
      leftOut: [{ check: second.check, why: 'asked at the door' }],
    },
    { happened: '2026-03-05T09:00+13:00' },
  );
  return readBook(book.entries).current;
}

test('the sheet begins with the list as it stands, and keeping it unchanged makes the same list', () => {
  const current = listed();
  const plan = asksPlan(
    () => current,
    'scaling',
    () => at,
  );
  expect(plan.body(plan.start())).toMatchObject({
    work: 'scaling',
    added: [{ check: 'scaling-own-1', asks: 'Gate shut' }],
    worded: [{ check: first.check, asks: 'Plate cold to the hand' }],
    leftOut: [{ check: second.check, why: 'asked at the door' }],
  });
});

test('without a list of the site it begins with the shipped questions, and keeps none of them as changed', () => {
  const { current } = readBook([]);
  const plan = asksPlan(
    () => current,
    'scaling',
    () => at,
  );
  expect(plan.start().rows.map((r) => r.asks)).toEqual(shipped.map((q) => q.asks));
  expect(plan.body(plan.start())).toEqual({
    work: 'scaling',
    added: undefined,
    worded: undefined,
    leftOut: undefined,
    reviewed: undefined,
    note: undefined,
  });
});

test('a new question never takes a name that was used before, though it was dropped or only answered since', () => {
  const book = BookMaker.site();
  book.add('one', 'check-list', { work: 'scaling', added: [{ check: 'scaling-own-1', asks: 'Gate shut' }] });
  book.add('two', 'check-list', { work: 'scaling' });
  const { current } = readBook(book.entries);
  const rows = askRows(shipped, null);
  const next = newRow(current, 'scaling', rows);
  expect(next.check).toBe('scaling-own-2');
  expect(newRow(current, 'scaling', [...rows, next]).check).toBe('scaling-own-3');
});

test('a problem stands at its own row, wherever the row stands among those of its sort', () => {
  const rows = askRows(shipped, null);
  const [a, b] = rows as [(typeof rows)[number], (typeof rows)[number]];
  a.out = 'out';
  b.out = 'out';
  expect(fieldOfRow(rows, b)).toBe('body.leftOut[1]');
  const added = { check: 'scaling-own-1', shipped: '', asks: '', out: '', why: '' };
  expect(fieldOfRow([...rows, added], added)).toBe('body.added[0]');
});
