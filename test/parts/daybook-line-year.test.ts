/** Entries of the working year are read out in one sentence each; places of the account have words that claim nothing nobody weighed. */
import { describe, expect, test } from 'vitest';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { lossPaths, lossPlace } from '../../app/core/book/places.ts';
import { kinds } from '../../app/core/kinds/index.ts';
import { entryLine } from '../../app/words/daybook-line.ts';
import { entryName } from '../../app/words/daybook-naming.ts';
import { placesToCount, placeText } from '../../app/words/places.ts';
import { BookMaker, scaled } from '../core/book-maker.ts';
import { samples } from './daybook-samples.ts';

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, ' ');

/** A book in which the samples' names stand for something. */
function year() {
  const book = BookMaker.site();
  book.add('keeper 1', 'person', { name: 'Second keeper', roles: ['keeper'] });
  book.add('battery one', 'battery', { label: 'Battery one', stamps: 5 });
  book.add('plate one', 'plate', { label: 'Plate one', battery: 'battery-one' });
  book.add('parcel one', 'parcel', { label: 'Parcel one' });
  book.add('flask two', 'vessel', { label: 'Flask two', use: 'flask' });
  book.add('drum one', 'vessel', { label: 'Drum one', use: 'drum' });
  const [lot = ''] = book.lots('march', ['955.6'], book.bench);
  const charge = book.add('charge 1', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot, weight: scaled('955.4', book.bench) }],
  });
  const fired = book.add('fired it', 'firing', {
    heats: [{ charge, sponge: scaled('370.0', book.bench) }],
    mercury: { weight: scaled('580.0', book.bench), vessel: book.bottle },
  });
  return { book, lot, charge, fired };
}

/** Sentences of all samples of a kind. */
function linesOf(kind: keyof typeof samples): string[] {
  const { book } = year();
  const ids = samples[kind].map((body, i) =>
    book.add(`said ${kind} ${i}`, kind, body as never, {
      happened: `2026-03-1${i}T09:00+13:00`,
    }),
  );
  const read = readBook(book.entries);
  return ids.map((id) => plain(entryLine(read, read.current.byId.get(id) as never)));
}

describe('a sentence for every kind of the year', () => {
  test.each([
    ['crushing', ['Battery one crushed concentrate, 3.2 t, of Parcel one; mercury fed onto the plates; 6.5 h']],
    [
      'issue',
      [
        '62.40 g of mercury from Working bottle to plates, Battery one, Plate one',
        '42.8 ml at 19.5 °C of mercury from Working bottle into Flask two',
      ],
    ],
    ['return', ['12.2 g of mercury from traps of Battery one back into Working bottle; drained']],
    [
      'plate-work',
      [
        'Plate one stripped; 10 g of mercury put on from Working bottle; 2 lots (S 1, S 2), 256.50 g; thought to have held 120 g (area); thought to hold 0 g now (area)',
      ],
    ],
    ['unmake', ['Charge of 1 March 2026, Pot retort taken apart before it was fired: the lid was cracked']],
    [
      'melt',
      [
        'Melted: sponge of 2 charges, 2.4 g of added metal and old slag; 1 bar (Bar 7), 361.9 g; 1 sample, 1.2 g; prills 0.9 g; slag 41 g',
      ],
    ],
    ['waste', ['sweepings, 2.3 kg, into Drum one from Working bottle; must go by 1 December 2026']],
    ['spill', ['Spill at the bench: 55 g ran out of Working bottle; 40.0 g gathered up into Flask two']],
    ['found', ['1200 g of residue found (under the floor), on no book before; into Drum one']],
    [
      'open-day',
      [
        '42 visitors (9 of them children): yard and mill; covered or shut: plates; led by Second keeper and something that is not in the book here',
      ],
    ],
    ['check-due', ['Fit test of a respirator of one person: shown to the safety officer', 'Fire extinguisher: done']],
    [
      'stock-take',
      [
        'Stock-take of 4 places: 1 under seal, 1 weighed and 1 estimated; could not be counted: traps (in circuit)',
        'Stock-take of the whole, 3 places: 1 weighed and 1 there and not touched; not found: traps (in circuit)',
      ],
    ],
  ] as const)('%s', (kind, wanted) => {
    expect(linesOf(kind).map((t) => t.replace('1 200 g', '1200 g'))).toEqual(wanted);
  });

  test('what was handed over is named by its vessel, lot, sponge or plate, and the other side’s weight stands beside ours', () => {
    const [waste, amalgam, sponge, bar, plate] = linesOf('transfer');
    expect(waste).toBe(
      'Waste or sweepings from Drum one handed over to a licensed carrier (disposal); 12.0 kg; 12.1 kg as they weighed it on 9 March 2026; counts as handed over, with a known content; document N 4',
    );
    expect(amalgam).toBe('Amalgam (something that is not in the book here) taken over from a neighbour; not weighed here');
    expect(sponge).toBe(
      'Sponge (Charge of 1 March 2026, Pot retort) handed over to a refiner; not weighed here; counts as a loss',
    );
    expect(bar).toBe('Bar (something that is not in the book here) handed over to a buyer; not weighed here');
    expect(plate).toBe('Plate (Plate one) handed over to a museum; not weighed here');
  });

  test('no sample of any kind is read out with a hole in it', () => {
    for (const kind of Object.keys(kinds) as (keyof typeof samples)[])
      for (const line of linesOf(kind)) expect(line).not.toMatch(/undefined|null|NaN|\[object| {2}|; ;|: *$/);
  });

  test('an entry is named by the thing it is about', () => {
    const { book } = year();
    const id = book.add('crushed', 'crushing', { battery: 'battery-one', feed: 'water-only', mercuryFed: 'none' });
    const read = readBook(book.entries);
    expect(entryName(read, id)).toBe('Crushing of 1 March 2026, Battery one');
    expect(entryName(read, 'plate-one')).toBe('Plate of 1 March 2026, Plate one');
    expect(plain(entryLine(read, read.current.byId.get(id) as never))).toBe('Battery one run with water only; no mercury fed');
  });
});

describe('a place of the account in words', () => {
  const said = (book: Book, place: string) => plain(placeText(book, place));

  test('is called what it is called on the site', () => {
    const { book, lot, charge } = year();
    const read = readBook(book.entries);
    expect(said(read, 'outside')).toBe('outside this book');
    expect(said(read, 'found')).toBe('found, on no book before');
    expect(said(read, `vessel:${book.bottle}`)).toBe('Working bottle');
    expect(said(read, 'circuit:plates')).toBe('plates (in circuit)');
    expect(said(read, `lot:${lot}`)).toBe('march A');
    expect(said(read, `charge:${charge}`)).toBe('charge in Pot retort of 1 March 2026');
    expect(said(read, `sponge:${charge}`)).toBe('sponge of the charge in Pot retort of 1 March 2026');
    expect(said(read, `condenser:${book.pot}`)).toBe('condenser and pipe of Pot retort');
    expect(said(read, 'residue:march-0/skimmings')).toContain('skimmings of the cleaning of');
    expect(said(read, 'vessel:nowhere')).toBe('something that is not in the book here');
    expect(said(read, 'shelf by the door')).toBe('shelf by the door');
    expect(said(read, 'circuit:constructor')).toBe('circuit:constructor');
  });

  test('every place that mercury moved between in this book has words', () => {
    const read = readBook(year().book.entries);
    const places = new Set(read.movements.all.flatMap((m) => [m.from, m.to]));
    expect(places.size).toBeGreaterThan(5);
    for (const place of places) expect(said(read, place)).not.toMatch(/^[a-z]+:|not in the book/);
  });

  test('no way of losing it says what nobody saw: nothing is called evaporated or vapour', () => {
    const read = readBook(year().book.entries);
    const texts = lossPaths.map((path) => said(read, lossPlace(path)));
    expect(new Set(texts).size).toBe(lossPaths.length);
    for (const text of texts) expect(text).not.toMatch(/evaporat|vapour|fume|air/i);
  });

  test('what can be counted is every vessel, the circuit, and what else holds something', () => {
    const { book, lot, charge } = year();
    const texts = placesToCount(readBook(book.entries)).map((p) => p.place);
    expect(texts.slice(0, 3)).toEqual([`vessel:${book.bottle}`, 'vessel:flask-two', 'vessel:drum-one']);
    expect(texts).toContain('circuit:trap');
    expect(texts).toContain(`sponge:${charge}`);
    expect(texts).not.toContain(`lot:${lot}`);
    expect(texts).not.toContain('loss:retort');
  });
});
