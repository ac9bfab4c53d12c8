/** A book that grows entry by entry against one that is read anew: whatever is added, and in whatever order, the two are the same. */
import { describe, expect, test } from 'vitest';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { inOrder } from '../../app/core/book/current.ts';
import { GrowingBook } from '../../app/core/book/growing-book.ts';
import type { Entry } from '../../app/core/entry.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { journalOf } from '../../main/host/sample/write.ts';

const entries = journalOf(eighteenMonths())
  .trimEnd()
  .split('\n')
  .map((line) => JSON.parse(line) as Entry);

/** Everything a book says, as plain values; the order of lists is kept. */
const told = (book: Book) =>
  JSON.stringify(
    [book.current.byId, book.registers, book.lots, book.charges, book.runs, book.condensers, book.movements, book.flags],
    (_, value) => (value instanceof Map ? [...value] : typeof value === 'bigint' ? String(value) : value),
  );

const sorted = (list: readonly Entry[]): Entry[] => list.toSorted(inOrder);

/** Grows a book by the entries one after another; after every `every`th both books must say the same. */
function grown(first: readonly Entry[], added: readonly Entry[], every: number, ask: (book: Book) => unknown): void {
  let all = sorted(first);
  const growing = new GrowingBook(all);
  ask(growing.book);
  for (const [i, entry] of added.entries()) {
    all = sorted([...all, entry]);
    growing.add(entry, all);
    if (i % every === 0 || i === added.length - 1) expect(told(growing.book)).toBe(told(readBook(all)));
    else ask(growing.book);
  }
}

describe('a growing book is the book read anew', () => {
  const half = Math.floor(entries.length / 2);

  test('when entries come in the order they happened, and everything is asked each time', () => {
    grown(entries.slice(0, half), entries.slice(half), 23, (book) => [book.lots, book.charges, book.registers]);
  });

  test('when only the readings were asked in between', () => {
    grown(entries.slice(0, 40), entries.slice(40), 29, (book) => book.current.byId);
  });

  test('when entries come late, before others that are there', () => {
    const late = entries.filter((_, i) => i % 3 === 0);
    grown(
      entries.filter((_, i) => i % 3 !== 0),
      late,
      17,
      (book) => [book.lots, book.charges],
    );
  });

  test('when the site sets the mercury left in sponge, early or late, and corrects it', () => {
    const figures = (id: string, middle: number, at: string): Entry => ({
      ...(entries.find((e) => e.kind === 'note') as Entry),
      id,
      kind: 'site-figures',
      body: { residualShare: { middle, u: 0.001, why: 'assays' } },
      happened: at,
    });
    const middle = entries[half]?.happened ?? '';
    const early = figures('figures-early', 0.02, entries[20]?.happened ?? '');
    const corrected: Entry = {
      ...early,
      id: 'figures-corrected',
      kind: 'correction',
      body: { corrects: 'figures-early', body: { residualShare: { middle: 0.01, u: 0.002, why: 'assays' } }, why: 'misread' },
    };
    const told = (list: readonly Entry[]) => readBook(sorted([...entries, ...list])).movements.runMercuries;
    expect([...told([early])]).not.toEqual([...told([])]);
    grown(entries, [figures('figures-late', 0.03, middle), early, corrected], 1, (book) => [book.charges, book.movements]);
  });

  test('when corrections and strikes come, of what is there and of what comes only later', () => {
    const of = (kind: string) => entries.find((e) => e.kind === kind) as Entry;
    const like = (id: string, kind: string, body: Record<string, unknown>): Entry => ({
      ...of('note'),
      id,
      kind,
      body,
      happened: '2030-01-01T10:00+10:00',
    });
    const cleanUp = of('clean-up');
    const missing = entries.at(-1) as Entry;
    grown(
      entries.slice(0, -1),
      [
        like('late-correction', 'correction', {
          corrects: cleanUp.id,
          body: cleanUp.body,
          happened: '2029-01-01T10:00+10:00',
          why: 'wrong year',
        }),
        like('late-strike', 'strike', { strikes: of('issue').id, why: 'twice' }),
        like('early-strike', 'strike', { strikes: missing.id, why: 'never happened' }),
        missing,
        like('last-note', 'note', { text: 'after all' }),
      ],
      1,
      (book) => book.lots,
    );
  });
});
