/** What a vessel holds by the book, and the question whether more is taken out than that. Figures invented. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { overStock, vesselStock } from '../../app/core/book/vessel-stock.ts';
import { BookMaker, scaled, stated } from './book-maker.ts';

const at = (day: number) => `2026-03-${String(day).padStart(2, '0')}T12:00+13:00`;

/** 500 g, known to 0.5 g, came into the bottle on the 10th; 120 g left it on the 12th. */
function bottled() {
  const book = BookMaker.site();
  const receipt = { vessel: book.bottle, weight: stated('500', '0.5'), way: 'already-here' as const };
  book.add('bottle in', 'receipt', receipt, { happened: at(10) });
  book.add('fed', 'issue', { vessel: book.bottle, to: 'plates', weight: scaled('120.00', book.bench) }, { happened: at(12) });
  return { ...book, read: readBook(book.entries), flask: 'flask-unheard-of', bottle: book.bottle, bench: book.bench };
}

test('a vessel holds what went in less what went out up to the moment asked for', () => {
  const { read, bottle } = bottled();
  const grams = (day: number) => vesselStock(read, bottle, at(day)).ug / 1e6;
  expect([9, 10, 11, 12].map(grams)).toEqual([0, 500, 500, 380]);
});

describe('more than the book says', () => {
  const over = (weight: ReturnType<typeof stated>, day = 13, vessel?: string) => {
    const { read, bottle } = bottled();
    return overStock(read, { vessel: vessel ?? bottle, weight, at: at(day) });
  };

  test('is asked with both figures', () => {
    expect(over(stated('400', '0.5'))).toEqual({ takenUg: 400_000_000, heldUg: 380_000_000 });
    expect(over(stated('1', '0.1'), 9)).toEqual({ takenUg: 1_000_000, heldUg: 0 });
  });

  test('is not asked while it is within what book and scale can be out: 2·√(0.5² + 0.5²) g = 1.4 g', () => {
    expect(over(stated('380', '0.5'))).toBeNull();
    expect(over(stated('381.3', '0.5'))).toBeNull();
    expect(over(stated('381.5', '0.5'))).not.toBeNull();
  });

  test('is not asked of a vessel that is not on the book', () => {
    expect(over(stated('400', '0.5'), 13, 'flask-unheard-of')).toBeNull();
  });
});
