import { expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import type { Entry } from '../../app/core/entry.ts';
import { BookMaker, idOf, scaled, stated } from './book-maker.ts';

const receipt = (book: { bottle: string }, g: string) => ({
  vessel: book.bottle,
  weight: stated(g, '1'),
  way: 'bought' as const,
});

test('a correction changes how an entry reads and leaves it as it was written', () => {
  const book = BookMaker.site();
  const id = book.add('bought', 'receipt', receipt(book, '500'));
  book.add('put right', 'correction', { corrects: id, body: receipt(book, '600'), why: 'misread the display' });
  const reading = readBook(book.entries).current.byId.get(id);
  expect(reading?.entry.body).toEqual(receipt(book, '500'));
  expect(reading?.body).toEqual(receipt(book, '600'));
  expect(reading?.corrections).toHaveLength(1);
  expect(reading?.contested).toBe(false);
});

test('a correction of a correction follows it; a strike of a correction brings the earlier reading back', () => {
  const book = BookMaker.site();
  const id = book.add('bought', 'receipt', receipt(book, '500'));
  const once = book.add('put right', 'correction', { corrects: id, body: receipt(book, '600'), why: 'misread' });
  const twice = book.add('put right again', 'correction', { corrects: once, body: receipt(book, '650'), why: 'misread again' });
  expect(readBook(book.entries).current.byId.get(id)?.body).toEqual(receipt(book, '650'));
  book.add('struck', 'strike', { strikes: twice, why: 'it was right before' });
  expect(readBook(book.entries).current.byId.get(id)?.body).toEqual(receipt(book, '600'));
});

test('two corrections of one reading are both kept and the entry is contested', () => {
  const book = BookMaker.site();
  const id = book.add('bought', 'receipt', receipt(book, '500'));
  book.add('put right', 'correction', { corrects: id, body: receipt(book, '600'), why: 'misread' });
  book.add('put right too', 'correction', { corrects: id, body: receipt(book, '610'), why: 'misread' }, { desk: 'desk-two' });
  const got = readBook(book.entries);
  expect(got.current.byId.get(id)?.corrections).toHaveLength(2);
  expect(got.flags.get(id)?.map((f) => f.code)).toContain('contested');
});

test('a struck entry counts nowhere and stays readable with who, when and why', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('struck', ['100']);
  const charge = book.add('charge struck', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot, weight: stated('100', '0.1') }],
  });
  book.add('strike it', 'strike', { strikes: charge, why: 'never fired' });
  const got = readBook(book.entries);
  expect(got.runs).toHaveLength(0);
  expect(got.lots.all.get(lot)?.fate).toBe('in-safe');
  expect(got.current.byId.get(charge)?.struck?.body.why).toBe('never fired');
});

test('an entry of a kind this program does not know is carried and named', () => {
  const book = BookMaker.site();
  const unknown = { ...(book.entries[0] as Entry), id: 'from-the-future', kind: 'dream', body: { of: 'gold' } };
  const got = readBook([...book.entries, unknown]);
  expect(got.current.notUnderstood).toEqual([unknown]);
});

test('a new calibration starts a new epoch: readings before it keep theirs', () => {
  const book = BookMaker.site();
  const before = book.lots('before', ['100'], book.bench)[0] ?? '';
  const epoch = book.add('calibrated', 'scale', {
    of: book.bench,
    label: 'bench scale',
    maximum: '60 kg',
    d: '0.01 g',
    certificate: { U: '0.02 g', at: '2000 g' },
  });
  const after = book.lots('after', ['100'], book.bench)[0] ?? '';
  const { all } = readBook(book.entries).lots;
  const source = (id: string) => [...(all.get(id)?.net.parts.keys() ?? [])].find((s) => s.startsWith('scale:'));
  expect(source(before)).toBe(`scale:${book.bench}`);
  expect(source(after)).toBe(`scale:${epoch}`);
});

test('work outside the standing is kept and marked; clearing covers handling but not buying', () => {
  const book = BookMaker.site();
  const bought = book.add('bought', 'receipt', receipt(book, '500'));
  const here = book.add('here', 'receipt', { ...receipt(book, '500'), way: 'already-here' });
  const got = readBook(book.entries);
  expect(got.flags.get(bought)?.map((f) => f.code)).toContain('outside-standing');
  expect(got.flags.get(here)?.map((f) => f.code) ?? []).not.toContain('outside-standing');
});

test('an authority past its expiry no longer covers what is done', () => {
  const book = new BookMaker();
  book.add('standing', 'standing', {
    held: [{ what: 'stock' }],
    done: [
      {
        what: 'authority',
        authority: { name: 'Board of the invented county', number: '7', expiry: '2026-03-10', covers: 'concentrate' },
      },
    ],
  });
  const bottle = book.add('bottle', 'vessel', { label: 'Bottle', use: 'bottle' });
  const before = book.add(
    'before',
    'receipt',
    { vessel: bottle, weight: stated('1', '1'), way: 'bought' },
    { happened: '2026-03-10T10:00+13:00' },
  );
  const after = book.add(
    'after',
    'receipt',
    { vessel: bottle, weight: stated('2', '1'), way: 'bought' },
    { happened: '2026-03-11T10:00+13:00' },
  );
  const { flags } = readBook(book.entries);
  expect(flags.get(before) ?? []).toEqual([]);
  expect(flags.get(after)?.map((f) => f.code)).toEqual(['outside-standing']);
});

test('a clock that was set back does not let an older correction win', () => {
  const book = BookMaker.site();
  const id = book.add('bought', 'receipt', receipt(book, '500'));
  const once = book.add('put right', 'correction', { corrects: id, body: receipt(book, '600'), why: 'misread' });
  book.add(
    'put right again',
    'correction',
    { corrects: once, body: receipt(book, '650'), why: 'misread again' },
    { desk: 'desk-two' },
  );
  const last = book.entries.at(-1) as Entry;
  const early = { ...last, written: '2020-01-01T00:00:00+00:00' };
  const got = readBook([...book.entries.slice(0, -1), early]);
  expect(got.current.byId.get(id)?.body).toEqual(receipt(book, '650'));
  expect(got.current.byId.get(id)?.contested).toBe(false);
});

test('a correction of the time moves an entry to where it happened: its period, its scale as it stood then, and its place in the order', () => {
  const book = BookMaker.site();
  const on = (day: string) => ({ happened: `2026-${day}T09:00+13:00` });
  const later = book.add(
    'calibrated',
    'scale',
    { of: book.bench, label: 'bench scale', maximum: '60 kg', d: '0.01 g', certificate: { U: '0.02 g', at: '2000 g' } },
    on('04-15'),
  );
  const body = { ...receipt(book, '500'), way: 'already-here' as const, weight: scaled('500', book.bench) };
  const moved = book.add('moved', 'receipt', body, on('04-20'));
  const stayed = book.add('stayed', 'receipt', { ...body, weight: scaled('70', book.bench) }, on('04-10'));
  const april = { from: '2026-04-01', to: '2026-04-30' };
  const before = readBook(book.entries);
  expect(accountOf(before, april).closing.ug).toBe(570_000_000);
  const scaleOf = (read: typeof before) => [...(read.movements.all.find((m) => m.entry === moved)?.mercury.parts.keys() ?? [])];
  expect(scaleOf(before)).toContain(`scale:${later}`);
  book.add(
    'put right',
    'correction',
    { corrects: moved, body, happened: '2026-05-02T09:00+13:00', why: 'the wrong month' },
    on('05-03'),
  );
  const after = readBook(book.entries);
  expect(after.current.byId.get(moved)?.happened).toBe('2026-05-02T09:00+13:00');
  // as first written it stays beside it
  expect(after.current.byId.get(moved)?.entry.happened).toBe('2026-04-20T09:00+13:00');
  expect(accountOf(after, april).closing.ug).toBe(70_000_000);
  expect(accountOf(after, { from: '2026-05-01', to: '2026-05-31' }).closing.ug).toBe(570_000_000);
  expect(after.current.of('receipt').map((r) => r.id)).toEqual([stayed, moved]);
  book.add(
    'put right again',
    'correction',
    { corrects: idOf('put right'), body, happened: '2026-04-02T09:00+13:00', why: 'earlier still' },
    on('05-04'),
  );
  const again = readBook(book.entries);
  expect(again.current.of('receipt').map((r) => r.id)).toEqual([moved, stayed]);
  // read on the scale before it was calibrated anew
  expect(scaleOf(again)).toContain(`scale:${book.bench}`);
});
