import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { lotStory } from '../../app/core/book/lot-story.ts';
import { BookMaker, stated } from './book-maker.ts';

test('a lot charged whole tells both weights, the drift, its run and the entries that tell of it', () => {
  const book = BookMaker.site();
  const [lot = '', other = ''] = book.lots('story', ['212.4', '100']);
  const charge = book.add('charge story', 'charge', {
    retort: book.pot,
    rows: [
      { take: 'whole', key: '1', lot, weight: stated('209.9', '0.1') },
      { take: 'not-found', key: '2', lot: other },
    ],
  });
  const read = readBook(book.entries);
  const story = lotStory(read, lot);
  expect(story?.weighings.map(({ when, entry, drift }) => [when, entry, drift?.ug ?? null])).toEqual([
    ['made', lot.split('/')[0], null],
    ['charged', charge, -2_500_000],
  ]);
  expect(story?.charge).toBe(charge);
  expect(story?.entries).toEqual([lot.split('/')[0], charge]);
  expect(story?.origins).toEqual([{ maker: lot.split('/')[0], ug: 212_400_000 }]);
  expect(lotStory(read, other)).toMatchObject({ lot: { fate: 'not-found' }, charge: null });
  expect(lotStory(read, other)?.weighings).toHaveLength(1);
});

test('a split lot leads to its parts and each part back to it', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('split', ['400']);
  const charge = book.add('charge split', 'charge', {
    retort: book.pot,
    rows: [{ take: 'part', key: '1', lot, weight: stated('150', '0.1') }],
  });
  const read = readBook(book.entries);
  expect(lotStory(read, lot)?.parts.map(({ id }) => id)).toEqual([`${charge}/1a`, `${charge}/1b`]);
  const rest = lotStory(read, `${charge}/1b`);
  expect(rest?.parent?.id).toBe(lot);
  expect(rest?.origins).toEqual([{ maker: lot.split('/')[0], ug: 250_000_000 }]);
});

test('squeezed lots lead to what came out, which leads back to each clean-up by weight', () => {
  const book = BookMaker.site();
  const [a = ''] = book.lots('first', ['300']);
  const [b = ''] = book.lots('second', ['100']);
  const squeeze = book.add('squeeze', 'squeeze', {
    lots: [a, b],
    made: [{ key: '1', label: 'Ball', weight: stated('200', '0.1') }],
  });
  const read = readBook(book.entries);
  expect(lotStory(read, a)?.outputs.map(({ label }) => label)).toEqual(['Ball']);
  const ball = lotStory(read, `${squeeze}/1`);
  expect(ball?.inputs.map(({ id }) => id)).toEqual([a, b]);
  expect(ball?.origins).toEqual([
    { maker: a.split('/')[0], ug: 150_000_000 },
    { maker: b.split('/')[0], ug: 50_000_000 },
  ]);
});

test('the correction of a lot’s weight stands among its entries, and no lot has a strange id', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('wrong', ['212.4']);
  const cleanUp = lot.split('/')[0] ?? '';
  const body = book.entries.find(({ id }) => id === cleanUp)?.body as never;
  const correction = book.add('correction', 'correction', { corrects: cleanUp, why: 'misread', body });
  const read = readBook(book.entries);
  expect(lotStory(read, lot)?.entries).toEqual([cleanUp, correction]);
  expect(lotStory(read, 'nothing/1')).toBeNull();
});
