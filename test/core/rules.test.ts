import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import type { Draft } from '../../app/core/entry.ts';
import { type Body, draftFrom } from '../../app/core/kinds/index.ts';
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

test('a note of the fire that has not come, and an aim that runs from hot to cold, are refused', () => {
  const book = site();
  const body = {
    retort: book.pot,
    heats: [{}],
    noted: [{ at: '2026-03-14T09:10+13:00', temperatureC: 360, water: 'on' }, { at: '2062-03-14T09:10+13:00' }],
    aimedC: { from: 450, to: 350 },
  };
  expect(refused(book, { kind: 'firing', body })).toEqual(['in-the-future body.noted[1].at', 'aim-reversed body.aimedC.to']);
});

test('a ball scraped from a plate that is in no register is refused', () => {
  const book = site();
  const plate = book.add('plate one', 'plate', { label: 'Plate one' });
  const lots = [
    { key: '1', label: 'A', weight: stated('5'), plates: [plate] },
    { key: '2', label: 'B', weight: stated('5'), plates: [plate, 'plate-nobody-knows'] },
  ];
  expect(refused(book, { kind: 'clean-up', body: { type: 'routine', lots } })).toEqual(['unknown-id body.lots[1].plates[1]']);
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

describe('a weight whose tare is heavier than its gross', () => {
  const book = site();
  /** The bench scale reads to 0.01 g: two readings of it scatter by 0.0071 g, twice that is 0.0142 g. */
  const weighed = (gross: string, more = {}) => ({ how: 'scale', scale: book.bench, gross, tare: '412.15 g', ...more });
  const told = 'net-below-nothing body.lots[0].weight.gross';

  test('is refused by name, with both figures', () => {
    expect(refused(book, cleanUp(weighed('12.40 g')))).toEqual([told]);
    expect(refused(book, cleanUp(weighed('12.40 g', { scale: undefined })))).toEqual([told]);
    expect(problemText({ code: 'net-below-nothing', field: '', data: { gross: '12.40 g', tare: '412.15 g' } })).toMatch(
      /12\.40 g.+412\.15 g/,
    );
  });

  test('is kept where the scale cannot tell it from nothing, and where nothing at all is left', () => {
    expect(refused(book, cleanUp(weighed('412.15 g')))).toEqual([]);
    expect(refused(book, cleanUp(weighed('412.14 g')))).toEqual([]);
    expect(refused(book, cleanUp(weighed('412.13 g')))).toEqual([told]);
    expect(refused(book, cleanUp(weighed('412.14 g', { scale: undefined })))).toEqual([told]);
  });

  test('is kept as it stands where it is copied from an older book, and flagged', () => {
    const transcribed = { book: 'Mill book 1907', page: '12' };
    expect(refused(book, { ...cleanUp(weighed('12.40 g')), transcribed })).toEqual([]);
    const copied = site();
    const body = cleanUp(weighed('12.40 g')).body as Body<'clean-up'>;
    const id = copied.add('copied', 'clean-up', body);
    expect(
      readBook(copied.entries)
        .flags.get(id)
        ?.map((f) => f.code),
    ).toContain('tare-over-gross');
  });

  test('is refused in a correction too, unless what it corrects was copied', () => {
    const own = site();
    const id = own.add('own', 'clean-up', cleanUp(weighed('512.15 g')).body as Body<'clean-up'>);
    const correction = { kind: 'correction', body: { corrects: id, body: cleanUp(weighed('12.40 g')).body, why: 'misread' } };
    expect(refused(own, correction)).toEqual(['net-below-nothing body.body.lots[0].weight.gross']);
    const last = own.entries.pop();
    if (last) own.entries.push({ ...last, transcribed: { book: 'Mill book 1907' } });
    expect(refused(own, correction)).toEqual([]);
  });
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
