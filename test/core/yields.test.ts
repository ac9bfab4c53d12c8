import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { cleanUpYields } from '../../app/core/book/yields.ts';
import { BookMaker, stated } from './book-maker.ts';

function melted(book: ReturnType<typeof BookMaker.site>, name: string, lots: [string, string][], sponge: string, bar: string) {
  const charge = book.add(`charge ${name}`, 'charge', {
    retort: book.pot,
    rows: lots.map(([lot, g], i) => ({ take: 'whole' as const, key: String(i + 1), lot, weight: stated(g, '0.1') })),
  });
  book.add(`firing ${name}`, 'firing', {
    heats: [{ charge, sponge: stated(sponge, '0.1') }],
    mercury: { weight: stated('1', '0.1'), vessel: book.bottle },
  });
  book.add(`melt ${name}`, 'melt', {
    sponges: [{ charge }],
    bars: [{ key: '1', label: `Bar ${name}`, weight: stated(bar, '0.1') }],
  });
}

const cleanUp = (book: ReturnType<typeof BookMaker.site>, name: string, g: string, ore?: string) =>
  book.add(name, 'clean-up', {
    type: 'routine',
    ...(ore === undefined ? {} : { ore: { mass: ore } }),
    lots: [{ key: '1', label: name, weight: stated(g, '0.1') }],
  });

test('a clean-up with its own melt has a gross yield per tonne; one where nothing was crushed has none, in words', () => {
  const book = BookMaker.site();
  const crushed = cleanUp(book, 'crushed', '300', '41 t');
  const cleared = cleanUp(book, 'cleared', '200');
  melted(book, 'one', [[`${crushed}/1`, '300']], '100', '96.4');
  melted(book, 'two', [[`${cleared}/1`, '200']], '80', '78');
  const [one, two] = cleanUpYields(readBook(book.entries));
  expect(one?.gPerTonne).toBeCloseTo(96.4 / 41, 9);
  expect(two).toMatchObject({ barUg: 78_000_000, gPerTonne: null, why: 'nothing-crushed' });
});

test('a clean-up of which part still lies in the safe shows no yield of the crushing yet (practice W4)', () => {
  const book = BookMaker.site();
  const id = book.add('partial', 'clean-up', {
    type: 'mid',
    ore: { mass: '283 long-ton' },
    lots: [
      { key: '1', label: 'plates', weight: stated('100', '0.1') },
      { key: '2', label: 'boxes', weight: stated('200', '0.1') },
    ],
  });
  melted(book, 'plates', [[`${id}/1`, '100']], '36', '35');
  expect(cleanUpYields(readBook(book.entries))[0]).toMatchObject({ barUg: 35_000_000, gPerTonne: null, why: 'partly-melted' });
});

test('a general clean-up that is all there is of its campaign has a yield of its own, and one of scale alone beside months has none', () => {
  const alone = BookMaker.site();
  const body = (type: 'general' | 'routine', source: 'mortar' | 'scale') => ({
    type,
    ore: { mass: '20 t' },
    lots: [{ key: '1', label: source, source, weight: stated('100', '0.1') }],
  });
  melted(alone, 'one', [[`${alone.add('general', 'clean-up', body('general', 'mortar'))}/1`, '100']], '36', '35');
  expect(cleanUpYields(readBook(alone.entries))[0]).toMatchObject({ gPerTonne: 1.75, why: null });
  const book = BookMaker.site();
  cleanUp(book, 'month', '300', '41 t');
  const scale = book.add('scale', 'clean-up', body('routine', 'scale'));
  melted(book, 'one', [[`${scale}/1`, '100']], '36', '35');
  expect(cleanUpYields(readBook(book.entries)).map((y) => y.why)).toEqual(['not-melted', 'of-the-campaign']);
});

test('a bar of two clean-ups is shared by the weights that went in, and the shares make the bar', () => {
  const book = BookMaker.site();
  const a = cleanUp(book, 'first', '300', '10 t');
  const b = cleanUp(book, 'second', '100', '10 t');
  melted(
    book,
    'both',
    [
      [`${a}/1`, '300'],
      [`${b}/1`, '100'],
    ],
    '150',
    '148',
  );
  const [first, second] = cleanUpYields(readBook(book.entries));
  expect([first?.shared, second?.shared]).toEqual([true, true]);
  expect((first?.barUg ?? 0) + (second?.barUg ?? 0)).toBe(148_000_000);
  expect(first?.barUg).toBe(111_000_000);
});
