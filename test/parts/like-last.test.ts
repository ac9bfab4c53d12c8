import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { bodyFrom } from '../../app/core/kinds/index.ts';
import { bodyOf } from '../../app/screens/daybook/typed.ts';
import { issueLike, lastIssue } from '../../app/screens/daybook/write/like-last.ts';
import { fieldsOf } from '../../app/words/daybook-fields.ts';
import { BookMaker, scaled } from '../core/book-maker.ts';

const at = '2026-03-20T09:00+13:00';
const on = (day: string) => ({ happened: `2026-03-${day}T08:00+13:00` });

function begun() {
  const book = BookMaker.site();
  const read = () => readBook(book.entries);
  return { book, read };
}

describe('an issue begun like the last one', () => {
  test('takes the vessel, where it went and the scale of the last by its day, and never the weight, doses or remark', () => {
    const { book, read } = begun();
    const issued = { vessel: book.bottle, to: 'plates', condition: 'dull', note: 'cold' } as const;
    book.add('later', 'issue', { ...issued, weight: scaled('210.0', book.bench) }, on('19'));
    book.add('earlier', 'issue', { vessel: book.pot, to: 'mortar', weight: scaled('100.0', book.bench) }, on('18'));
    const last = lastIssue(read());
    expect(last?.body.to).toBe('plates');
    if (!last) return;
    const typed = issueLike(read(), last, at);
    const body = bodyOf(fieldsOf.issue, typed, '+13:00');
    expect(body).toEqual({ vessel: book.bottle, to: 'plates' });
    expect(typed.weight).toMatchObject({ how: 'scale', scale: book.bench, gross: { amount: '', unit: 'g' } });
    // what is missing is the weight alone
    const got = bodyFrom('issue', body);
    expect(got.ok ? [] : got.problems.map((p) => [p.code, p.field])).toEqual([['missing', 'body.weight']]);
  });

  test('leaves a vessel out that is out of use by then', () => {
    const { book, read } = begun();
    book.add('issue', 'issue', { vessel: book.bottle, to: 'plates', weight: scaled('210.0', book.bench) }, on('18'));
    book.add('gone', 'vessel', { of: book.bottle, label: 'bottle', use: 'bottle', out: '2026-03-19' }, on('19'));
    const last = lastIssue(read());
    expect(last && bodyOf(fieldsOf.issue, issueLike(read(), last, at), '+13:00')).toEqual({ to: 'plates' });
  });

  test('of a measured volume keeps the unit alone; without an issue there is none to be like', () => {
    const { book, read } = begun();
    expect(lastIssue(read())).toBeNull();
    book.add(
      'issue',
      'issue',
      { vessel: book.bottle, to: 'pan', weight: { how: 'volume', volume: '15.5 ml', temperatureC: 18 } },
      on('18'),
    );
    const last = lastIssue(read());
    expect(last && issueLike(read(), last, at).weight).toMatchObject({
      how: 'volume',
      volume: '',
      volumeUnit: 'ml',
      temperature: '',
    });
  });
});
