/** The mercury account as the statement of a closed period: version, both counts, end marks in full, adjustments, and a line to sign. */
import { describe, expect, it } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { figuresOf } from '../../app/core/book/closings.ts';
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

describe('the ordinary paper of the period after a closed one', () => {
  const day = (month: number) => `2026-0${month}-28T12:00+13:00`;
  const maker = BookMaker.site();
  const lines = (g: string) => [{ how: 'weighed' as const, place: `vessel:${maker.bottle}`, weight: stated(g, '1') }];
  const marked = () => maker.entries.map((e, i) => ({ ...e, n: i + 1, hash: (i + 1).toString(16).padStart(64, '0') }));
  maker.add(
    'was here',
    'receipt',
    { vessel: maker.bottle, weight: stated('10000', '1'), way: 'already-here' },
    { happened: day(3) },
  );
  const one = maker.add('count one', 'stock-take', { scope: 'whole', lines: lines('9990') }, { happened: day(4) });
  const closed = readBook(marked());
  const last = marked().at(-1)!;
  maker.add(
    'closing one',
    'closing',
    {
      closing: one,
      version: 1,
      ends: [{ desk: last.desk, entries: last.n, endMark: last.hash }],
      figures: figuresOf(accountOf(closed, periodsOf(closed)[0]!.period)),
      statement: 'a'.repeat(64),
      paper: 'b'.repeat(64),
    },
    { happened: day(4) },
  );
  const at = marked().length;
  maker.add(
    'put right',
    'correction',
    { corrects: one, body: { scope: 'whole', lines: lines('9985') }, why: 'misread' },
    { happened: day(5) },
  );
  maker.add('count two', 'stock-take', { scope: 'whole', lines: lines('9985') }, { happened: day(6) });
  const book = readBook(marked());
  const frame = {
    site: 'Upper Battery',
    desks: [{ desk: 'desk-one', entries: at, endMark: 'ab'.repeat(32) }],
    newest: day(6),
    version: '0.1.0',
    canPrint: () => true,
  };
  const textOf = (number: number) => {
    const made = mercuryAccount(book, periodsOf(book)[number]!.period, frame);
    return made.ok ? JSON.stringify(made.value.content) : '';
  };

  it('prints what it takes over as a line, and the figure on the closed basis: 10 closed, 15 known today, 0 since', () => {
    const text = textOf(1);
    expect(text).toContain('Adjustments from closed periods');
    expect(text).toContain('"−5.00"');
    expect(text).toMatch(/as closed before[^}]*\}[^}]*"5\.00"/);
    expect(textOf(0)).not.toContain('Adjustments from closed periods');
  });

  it('names both counts, answers both questions before the lines, and says what would cut the doubt', () => {
    const text = textOf(1);
    expect(text).toMatch(/after the count of 28 April 2026[^"]*count of 28 June 2026/);
    const order = [
      'Standing',
      'Reservations',
      'Is it a loss?',
      'Is it more than usual here?',
      'Opening stock',
      'Closing stock by place',
      'Adjustments from',
      'Ways it was lost',
      'What makes the doubt',
      'Where it went',
      'Movements of the period',
    ];
    const found = order.map((part) => text.indexOf(part));
    expect(found).toEqual(found.toSorted((a, b) => a - b));
    expect(Math.min(...found)).toBeGreaterThan(-1);
    expect(text).toMatch(/weigh what was only stated/i);
  });
});
