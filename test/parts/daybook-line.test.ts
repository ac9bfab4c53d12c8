/** Every kind of entry is read out in one sentence, with names resolved and weights as they were read. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { kinds } from '../../app/core/kinds/index.ts';
import { entryLine, hasLine } from '../../app/words/daybook-line.ts';
import { weightAsRead } from '../../app/words/daybook-weights.ts';
import { kindNames } from '../../app/words/labels.ts';
import { BookMaker, idOf, scaled, stated } from '../core/book-maker.ts';

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, ' ');

/** The sentence of one entry of a book. */
function lineOf(book: BookMaker, id: string): string {
  const read = readBook(book.entries);
  const reading = read.current.byId.get(id);
  if (!reading) throw new Error(`${id} is not in the book`);
  return plain(entryLine(read, reading));
}

describe('a sentence for every kind', () => {
  test('no kind is without one', () => {
    expect(Object.keys(kinds).filter((kind) => !hasLine(kind))).toEqual([]);
    expect(Object.keys(kindNames).sort()).toEqual(Object.keys(kinds).sort());
    expect(hasLine('furnace')).toBe(false);
  });

  test('registers say what the thing is', () => {
    const book = BookMaker.site();
    expect(lineOf(book, book.keeper)).toBe('Keeper: keeper of the battery');
    expect(lineOf(book, book.bench)).toBe('bench scale: weighs up to 60 kg, reads to 0.01 g; certificate due 10 January 2027');
    expect(lineOf(book, book.pot)).toBe('Pot retort: 2 kg of amalgam to the brim');
    expect(lineOf(book, book.bottle)).toBe('Working bottle: bottle, mercury mixed');
    const again = book.add('bottle again', 'vessel', {
      of: book.bottle,
      label: 'Working bottle',
      use: 'bottle',
      tare: scaled('250.0'),
    });
    expect(lineOf(book, again)).toBe('Working bottle restated: bottle; empty 250.0 g');
  });

  test('the standing tells both lists with their places', () => {
    const book = new BookMaker();
    const id = book.add('standing', 'standing', {
      held: [{ what: 'in-place', place: 'floor' }],
      done: [
        { what: 'clearing', place: 'floor' },
        { what: 'authority', authority: { name: 'Mines office', number: '7/26', expiry: 'none stated', covers: 'plates' } },
      ],
    });
    expect(lineOf(book, id)).toBe(
      'Held: perhaps some in plates, floors or traps (floor); done: clearing legacy mercury (floor) and use under an authority (Mines office 7/26)',
    );
  });

  test('a receipt keeps the digits and the unit it was read in', () => {
    const book = BookMaker.site();
    const id = book.add('receipt', 'receipt', {
      vessel: book.bottle,
      weight: { how: 'scale', gross: '5004.50 g' },
      way: 'bought',
      from: 'the dealer',
      seal: 'S 12',
    });
    expect(lineOf(book, id)).toBe('5 004.50 g of mercury into Working bottle, bought, from the dealer; under seal S 12');
  });

  test('a clean-up adds its lots exactly and names where they came from', () => {
    const book = BookMaker.site();
    const [lot = ''] = book.lots('march', ['955.60', '12.4'], book.bench);
    expect(lineOf(book, lot.split('/')[0] ?? '')).toBe(
      'Routine clean-up: 2 lots (march A, march B), 968.00 g, from outside plates',
    );
  });

  test('a charge tells what went in and what was not found', () => {
    const book = BookMaker.site();
    const [a = '', b = ''] = book.lots('march', ['955.6', '12.4'], book.bench);
    const id = book.add('charge', 'charge', {
      retort: book.pot,
      rows: [
        { take: 'whole', key: '1', lot: a, weight: scaled('955.4', book.bench) },
        { take: 'not-found', key: '2', lot: b },
      ],
      others: [{ key: '3', what: 'cake', label: 'February', weight: scaled('20.1', book.bench) }],
    });
    expect(lineOf(book, id)).toBe(
      'Pot retort charged with 1 lot and an earlier cake “February”, 975.5 g at charging; not found: “march B”',
    );
  });

  test('a firing tells sponge and mercury, and what was not weighed as not weighed', () => {
    const book = BookMaker.site();
    const [a = ''] = book.lots('march', ['955.6'], book.bench);
    const charge = book.add('charge', 'charge', {
      retort: book.pot,
      rows: [{ take: 'whole', key: '1', lot: a, weight: scaled('955.4', book.bench) }],
    });
    const id = book.add('firing', 'firing', {
      heats: [{ charge, sponge: { how: 'scale', scale: book.bench, gross: '620.50 g', tare: '250.0 g' } }],
      mercury: { weight: { how: 'scale', scale: book.bench, gross: '580.2 g' }, vessel: book.bottle },
    });
    expect(lineOf(book, id)).toBe('Pot retort fired; sponge 370.50 g; mercury 580.2 g into Working bottle');
    const loose = book.add('loose', 'firing', { heats: [{}], retort: book.pot });
    expect(lineOf(book, loose)).toBe('Pot retort fired, its charge not written up yet; sponge not weighed; mercury not weighed');
  });

  test('a note, a correction and a strike name what they are about', () => {
    const book = BookMaker.site();
    const note = book.add('note about', 'note', { text: 'The bottle was moved.', about: book.bottle });
    const fix = book.add('correction', 'correction', {
      corrects: note,
      body: { text: 'The bottle was moved to the safe.', about: book.bottle },
      why: 'Where was left out.',
    });
    const strike = book.add('strike1', 'strike', { strikes: note, why: 'Written twice.' });
    expect(lineOf(book, note)).toBe('On Vessel of 1 March 2026, Working bottle: The bottle was moved to the safe.');
    expect(lineOf(book, fix)).toBe('Note of 1 March 2026 corrected: Where was left out.');
    expect(lineOf(book, strike)).toBe('Note of 1 March 2026 struck: Written twice.');
  });

  test('a name that is not in the book is said to be missing, never shown as a number', () => {
    const book = BookMaker.site();
    const id = book.add('receipt', 'receipt', { vessel: 'nowhere-1', weight: stated('3'), way: 'given' });
    expect(lineOf(book, id)).toBe('3 g of mercury into something that is not in the book here, given');
  });

  test('what looks like markup or a formula stays the text it is', () => {
    const book = new BookMaker();
    const id = book.add('person', 'person', { name: '<img src=x onerror=alert(1)> =1+1', roles: ['helper'] });
    expect(lineOf(book, id)).toBe('<img src=x onerror=alert(1)> =1+1: helper');
    expect(idOf('person')).toBe(id);
  });
});

describe('a weight as it was read', () => {
  test('shows every way of coming by it', () => {
    expect(plain(weightAsRead({ how: 'scale', gross: '18 ozt 18 dwt 6 gr' }))).toBe('18 ozt 18 dwt 6 gr');
    expect(plain(weightAsRead({ how: 'scale', gross: '1204.50 g', tare: '250.0 g' }))).toBe('1 204.50 g less tare 250.0 g');
    expect(plain(weightAsRead({ how: 'volume', volume: '186.0 ml', temperatureC: -3 }))).toBe('186.0 ml at −3 °C');
    expect(plain(weightAsRead({ how: 'stated', mass: '34.5 kg', by: 'the seller' }))).toBe('34.5 kg as stated by the seller');
  });
});
