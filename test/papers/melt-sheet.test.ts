import { expect, test } from 'vitest';
import { meltSheet } from '../../app/papers/melt-sheet.ts';
import { BookMaker } from '../core/book-maker.ts';
import { frameOf } from './site-of-runs.ts';
import { between, bookOf, fromLater, said, stated, year } from './year.ts';

const sheet = (made: { book: BookMaker; ids: { melt: string } } = year()) =>
  said(meltSheet(bookOf(made.book), made.ids.melt, frameOf(made.book)));

/** A melt of one sponge weighed only at its firing, or not at all. */
function oneSponge(sponge: string | null, bar = '99'): { book: BookMaker; ids: { melt: string } } {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('may', ['250']);
  const charge = book.add('charge a', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot, weight: stated('250', '0.1') }],
  });
  book.add('firing a', 'firing', {
    heats: [{ charge, ...(sponge === null ? {} : { sponge: stated(sponge, '0.1') }) }],
    mercury: { weight: stated('149', '0.1'), vessel: book.bottle, state: 'dry' },
    water: stated('0', '0'),
  });
  const melt = book.add('melt a', 'melt', {
    sponges: [{ charge }],
    bars: [{ key: '1', label: 'Bar A', weight: stated(bar, '0.1') }],
  });
  return { book, ids: { melt } };
}

test('shrinkage is sponge and added metal less bars and samples; the net is less the prills', () => {
  const text = between(sheet(), 'The melt in figures', 'What the shrinkage may be');
  expect(text).toContain('Added: Old prills\n2.1\n');
  // 149.9 + 2.1 = 152.0; less 146.2 and 1.1 leaves 4.7; less 0.4 leaves 4.3
  expect(text).toContain('Went in\n152.0\n');
  expect(text).toContain('Shrinkage\n4.7\n');
  expect(text).toContain('less prills picked from the slag\n0.4\n');
  expect(text).toContain('Net loss of the melt\n4.3\n');
  // 4.7 and 4.3 of 152.0
  expect(text).toContain('Shrinkage\n3.09 %');
  expect(text).toContain('Net loss\n2.83 %');
  // U = 2·√(0.1² + 0.01² + 0.1² + 0.01²) = 0.284
  expect(text).toContain('Shrinkage\n4.7\n± 0.28');
  expect(text).toContain('9.3 g');
});

test('what the shrinkage may be stands as bounds that no weighing tells apart', () => {
  const text = between(sheet(), 'What the shrinkage may be', 'Cautions');
  expect(text).toMatch(/Mercury that the sponge still held, driven off in the pot\n0\s*\n4\.7\n/);
  expect(text).toMatch(/Dirt, ash and base metal burnt or gone into the slag\n0\s*\n4\.7\n/);
  expect(text).toContain('Metal in the slag, the prills among it\n0.4\n4.7');
  expect(text).toMatch(/The mercury account books [\d.]+ ± [\d.]+ g as driven off by this melt: an estimate/);
});

test('the sheet says that sponge holds mercury and that its figures are none of the air', () => {
  expect(sheet()).toContain('Sponge holds mercury, also when it looks clean and weighs right.');
  expect(sheet()).toContain('A figure on this sheet says nothing about the air.');
  expect(sheet()).not.toMatch(/\b(safe|safely|approved|compliant|authori[sz]ed)\b/i);
});

test('a sponge weighed only at its firing is taken from there and says so; its reading is shown', () => {
  const text = sheet(oneSponge('101'));
  expect(text).toMatch(/Sponge of charge of .*, Pot retort, weighed at its firing\n101\n/);
  expect(text).toContain('Shrinkage\n2\n');
  expect(between(text, 'Readings', 'Recorded by')).toContain('stated 101 g, u 0.1 g');
});

test('a sponge that was weighed nowhere leaves the shrinkage out and is the first reservation', () => {
  const text = sheet(oneSponge(null));
  expect(between(text, 'Reservations', 'The melt in figures')).toMatch(
    /^\n.*\n1\.\nThe sponge of “Charge of .*” was weighed neither/,
  );
  expect(text).not.toContain('\nShrinkage\n');
  expect(text).not.toContain('What the shrinkage may be');
});

test('more out than in is told as what it is, with no bounds', () => {
  const text = sheet(oneSponge('90', '99'));
  expect(text).toContain('Shrinkage\n−9\n');
  expect(text).toContain('Bars and samples weigh more than what went in.');
  expect(text).toContain('No bounds can be given: nothing shrank, by the readings.');
});

test('an unknown id, an id of another kind and a struck melt are refused; an entry not understood keeps it from being printed', () => {
  const { book, ids } = year();
  const problems = (id: string) => {
    const got = meltSheet(bookOf(book), id, frameOf(book));
    return got.ok ? [] : got.problems.map(({ code, data }) => [code, data?.wanted]);
  };
  expect(problems('no-such-melt')).toEqual([['paper-no-such', 'melt']]);
  expect(problems(ids.charge)).toEqual([['paper-no-such', 'melt']]);
  fromLater(book, { assayed: { melt: ids.melt } });
  expect(problems(ids.melt)).toEqual([['paper-not-understood', undefined]]);
  book.entries.pop();
  book.add('strike', 'strike', { strikes: ids.melt, why: 'Written twice.' });
  expect(problems(ids.melt)).toEqual([['paper-no-such', 'melt']]);
});
