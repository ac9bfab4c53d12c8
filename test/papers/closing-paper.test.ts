/** The mercury account as the statement of a closed period: version, both counts, end marks in full, adjustments, and a line to sign. */
import { describe, expect, it } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import { mercuryAccount } from '../../app/papers/mercury-account.ts';
import { BookMaker, stated } from '../core/book-maker.ts';

describe('the paper of a closing', () => {
  const maker = BookMaker.site();
  maker.add('was here', 'receipt', { vessel: maker.bottle, weight: stated('10000'), way: 'already-here' });
  const count = maker.add('count one', 'stock-take', {
    scope: 'whole',
    lines: [{ how: 'weighed', place: `vessel:${maker.bottle}`, weight: stated('9900') }],
  });
  const book = readBook(maker.entries);
  const { period } = periodsOf(book)[0]!;
  const frame = {
    site: 'Upper Battery',
    desks: [{ desk: 'desk-one', entries: 7, endMark: 'ab'.repeat(32) }],
    newest: '2026-03-14T09:30+13:00',
    version: '0.1.0',
    canPrint: () => true,
  };
  const closing = {
    id: 'closing-one',
    version: 1,
    closing: count,
    by: maker.keeper,
    happened: '2026-03-14T09:30+13:00',
    note: 'end of March',
    carried: [{ of: 'elsewhere', ug: 73_300_000 }],
  };
  const textOf = (made: ReturnType<typeof mercuryAccount>) => (made.ok ? JSON.stringify(made.value.content) : '');
  const text = textOf(mercuryAccount(book, period, frame, closing));

  it('says which closing and version it is, between which counts, and why', () => {
    for (const said of ['Closing closing-one, version 1', 'with the first entry of the book', 'end of March', 'Signature'])
      expect(text).toContain(said);
  });
  it('prints every end mark it rests on in full', () => {
    expect(text).toContain('Rests on desk desk-one, up to entry 7');
    expect(text).toContain(Array(16).fill('abab').join(' '));
  });
  it('tells what it takes over, and the figure without it', () => {
    expect(accountOf(book, period).unaccounted.ug).toBe(100_000_000);
    expect(text).toContain('+73.30');
    expect(text).toContain('26.70');
  });
  it('is a plain account without a closing, and calls nothing approved', () => {
    const plain = textOf(mercuryAccount(book, period, frame));
    expect(plain).not.toContain('Statement of a closed period');
    expect(text).not.toMatch(/approved|compliant|authori[sz]ed/i);
  });
});
