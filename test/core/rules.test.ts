import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import type { Draft } from '../../app/core/entry.ts';
import { draftFrom } from '../../app/core/kinds/index.ts';
import { problemText } from '../../app/words/problems.ts';
import { BookMaker, stated } from './book-maker.ts';

const now = '2026-03-20T12:00+13:00';

/** Reads and checks a draft as the window and the host do; answers code and field of each problem. */
function refused(book: BookMaker, draft: Record<string, unknown>): string[] {
  const got = draftFrom({ id: 'the-new-entry', happened: '2026-03-14T09:00+13:00', by: null, ...draft });
  const problems = got.ok ? checkDraft(readBook(book.entries), got.value as Draft, now) : got.problems;
  for (const p of problems) expect(problemText(p), p.code).toMatch(/\.$|:.+\.$/);
  return problems.map((p) => `${p.code} ${p.field}`);
}

const site = () => BookMaker.site();
const cleanUp = (weight: unknown, more = {}) => ({
  kind: 'clean-up',
  body: { type: 'routine', lots: [{ key: '1', label: 'A', weight }], ...more },
});

test('a bare ounce, a comma, an exponent, a sign and a missing unit are refused by name', () => {
  const mass = (text: unknown) => refused(site(), cleanUp({ how: 'stated', mass: text }))[0]?.split(' ')[0];
  expect(['5 oz', '5,5 g', '1e400 g', '-3 g', '12', '5 stone', 7].map(mass)).toEqual([
    'mass-bare-ounce',
    'mass-comma',
    'mass-exponent',
    'mass-sign',
    'mass-no-unit',
    'mass-unit',
    'wrong-type',
  ]);
});

test('the problem names the field all the way down', () => {
  expect(refused(site(), cleanUp({ how: 'stated', mass: '5 oz' }))).toEqual(['mass-bare-ounce body.lots[0].weight.mass']);
});

test('a field nobody knows is refused rather than lost', () => {
  expect(refused(site(), { ...cleanUp(stated('5')), weather: 'fine' })).toEqual(['unknown-field weather']);
  expect(refused(site(), cleanUp(stated('5'), { weather: 'fine' }))).toEqual(['unknown-field body.weather']);
});

test('a day that has not come is refused', () => {
  expect(refused(site(), { ...cleanUp(stated('5')), happened: '2062-03-14T09:00+13:00' })).toEqual(['in-the-future happened']);
});

test('a day that is in no calendar is refused', () => {
  expect(refused(site(), { ...cleanUp(stated('5')), happened: '2026-02-30T09:00+13:00' })).toEqual(['not-a-moment happened']);
});

test('a lot that was used up cannot be charged again, but its own charge can be corrected', () => {
  const book = site();
  const [lot = ''] = book.lots('used', ['100']);
  const body = { retort: book.pot, rows: [{ take: 'whole' as const, key: '1', lot, weight: stated('100', '0.1') }] };
  const first = book.add('charge used', 'charge', body);
  expect(refused(book, { kind: 'charge', body })).toEqual(['lot-used-up body.rows[0].lot']);
  const corrected = { ...body, rows: [{ ...body.rows[0], weight: stated('99.8', '0.1') }] };
  expect(refused(book, { kind: 'correction', body: { corrects: first, body: corrected, why: 'misread' } })).toEqual([]);
});

test('a correction is held to the rules of what it corrects, field by field', () => {
  const book = site();
  const [lot = ''] = book.lots('held', ['100']);
  const charge = book.add('charge held', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot, weight: stated('100', '0.1') }],
  });
  const wrong = { retort: book.pot, rows: [{ take: 'whole', key: '1', lot, weight: { how: 'stated', mass: '100 oz' } }] };
  expect(refused(book, { kind: 'correction', body: { corrects: charge, body: wrong, why: 'misread' } })).toEqual([
    'mass-bare-ounce body.body.rows[0].weight.mass',
  ]);
});

test('an id nobody knows is refused wherever it stands', () => {
  const book = site();
  const gone = 'not-in-this-book';
  expect(
    refused(book, {
      kind: 'charge',
      by: gone,
      body: { retort: gone, rows: [{ take: 'whole', key: '1', lot: `${gone}/1`, weight: stated('1') }] },
    }),
  ).toEqual(['unknown-id by', 'unknown-id body.retort', 'unknown-id body.rows[0].lot']);
});

test('times that run backwards are refused', () => {
  const book = site();
  const body = { retort: book.pot, heats: [{}], lit: '2026-03-14T11:00+13:00', opened: '2026-03-14T09:00+13:00' };
  expect(refused(book, { kind: 'firing', body })).toEqual(['times-reversed body.opened']);
});

test('times are compared as moments, so a change of offset at night is no reversal', () => {
  const book = site();
  const body = { retort: book.pot, heats: [{}], lit: '2026-03-14T02:30+13:00', opened: '2026-03-14T02:10+12:00' };
  expect(refused(book, { kind: 'firing', body })).toEqual([]);
});

test('two answers of a standing that contradict each other are refused', () => {
  const body = { held: [{ what: 'none' }, { what: 'stock' }], done: [{ what: 'nothing' }] };
  expect(refused(site(), { kind: 'standing', body })).toEqual(['standing-contradicts body.held']);
  expect(
    refused(site(), {
      kind: 'standing',
      body: {
        held: [
          { what: 'none', place: 'mill' },
          { what: 'stock', place: 'store' },
        ],
        done: [{ what: 'nothing' }],
      },
    }),
  ).toEqual([]);
});

test('an authority is asked for where it is claimed, and not taken where it is not', () => {
  expect(refused(site(), { kind: 'standing', body: { held: [{ what: 'stock' }], done: [{ what: 'authority' }] } })).toEqual([
    'authority-missing body.done[0]',
  ]);
});

test('a name stands in a register once', () => {
  expect(refused(site(), { kind: 'person', body: { name: 'Keeper', roles: ['keeper'] } })).toEqual(['name-taken body.name']);
});

test('a strike of a strike is refused, and so is a second strike', () => {
  const book = site();
  const note = book.add('a note', 'note', { text: 'written by mistake' });
  const strike = book.add('a strike', 'strike', { strikes: note, why: 'wrong book' });
  expect(refused(book, { kind: 'strike', body: { strikes: strike, why: 'again' } })).toEqual(['strike-of-strike body.strikes']);
  expect(refused(book, { kind: 'strike', body: { strikes: note, why: 'again' } })).toEqual(['already-struck body.strikes']);
});

test('every problem of a draft is told at once', () => {
  const lots = [
    { key: '1', label: 'A', weight: { how: 'stated', mass: '5 oz' } },
    { key: '1', label: ' ', weight: { how: 'stated', mass: '-1 g' } },
  ];
  expect(refused(site(), { kind: 'clean-up', body: { type: 'sometimes', lots } }).map((p) => p.split(' ')[1])).toEqual([
    'body.type',
    'body.lots[0].weight.mass',
    'body.lots[1].label',
    'body.lots[1].weight.mass',
  ]);
});
