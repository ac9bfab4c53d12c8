import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { runSheet } from '../../app/papers/run-sheet.ts';
import { runChecks } from '../../app/words/run-checks.ts';
import { BookMaker, scaled, stated } from '../core/book-maker.ts';
import { awkward, caughtTogether, frameOf, hostile, manyBalls, refired, sheetOf, textOf, w8 } from './site-of-runs.ts';

const said = (book: BookMaker, charge: string): string => textOf(sheetOf(book, charge).content);

/** The lines from one heading of the paper up to the next of those named. */
const between = (text: string, from: string, to: string): string => {
  const start = text.indexOf(`\n${from}\n`);
  expect(start).toBeGreaterThan(-1);
  const end = text.indexOf(`\n${to}\n`, start);
  expect(end).toBeGreaterThan(start);
  return text.slice(start, end);
};

test('the account of W8 comes to the figures worked by hand', () => {
  // practice.md W8, constructed for this project
  const { book, charge } = w8();
  const figures = between(said(book, charge), 'The run in figures', 'What the figures say');
  expect(figures).toContain('Charge, as weighed at charging\n955.6\n');
  expect(figures).toContain('less sponge left in the retort\n371.8\n');
  expect(figures).toContain('Driven off\n583.8\n');
  expect(figures).toContain('less mercury caught\n571.2\n');
  expect(figures).toContain('Gap\n12.6\n');
  expect(figures).toContain('Gap as a share of the charge\n1.319 %');
  expect(figures).toContain('Sponge ratio (sponge of charge)\n38.91 %');
  expect(figures).toContain('Caught of what was driven off, at most\n97.84 %');
  // 2 % of 955.6 g, the starting band
  expect(figures).toContain('from nothing up to 19.11 g');
});

test('the gap’s uncertainty is that of its own weighings, at k = 2', () => {
  // standard uncertainties as stated: five balls and the sponge 0.1 g each, mercury 0.2 g; U = 2·√(6·0.01 + 0.04) = 0.632 g
  const book = BookMaker.site();
  const balls = ['212.4', '198.7', '205.1', '187.9', '151.5'];
  const lots = book.lots('march', balls);
  const charge = book.add('charge w8', 'charge', {
    retort: book.pot,
    rows: lots.map((lot, i) => ({ take: 'whole' as const, key: String(i + 1), lot, weight: stated(balls[i] ?? '', '0.1') })),
  });
  book.add('firing w8', 'firing', {
    heats: [{ charge, sponge: stated('371.8', '0.1') }],
    mercury: { weight: stated('571.2', '0.2'), vessel: book.bottle, state: 'dry' },
    water: stated('0', '0'),
  });
  expect(said(book, charge)).toContain('12.60 ± 0.63 g');
});

test('each finding says what lies behind it and what to weigh next', () => {
  const { book, charge } = w8();
  const findings = between(said(book, charge), 'What the figures say', 'What went in');
  expect(findings).toContain('A little less came out than went in');
  expect(findings).toContain('Mercury held up in the condenser and its pipe.');
  expect(findings).toContain('look at several runs together');
});

test('who, when and what: the particulars, each lot with its drift, the times of the stages and the opening', () => {
  const { book, charge } = w8();
  const text = said(book, charge);
  expect(text).toContain('Charged\n14 March 2026, 08:40');
  expect(text).toContain('Recorded by\nKeeper');
  expect(text).toContain('march A\n212.4\n212.4\n0.00\nwhole; outside plate, squeezed, of 1 March 2026');
  expect(text).toContain('Finishing heat\n14 March 2026, 12:40 to 13:10');
  expect(text).toContain('At opening\n19.5 °C measured');
  expect(text).toContain('Mercury went to\nWorking bottle');
  const cold = w8({ opening: { stoodHours: 16 } });
  expect(said(cold.book, cold.charge)).toContain('At opening\ntemperature not measured, stood 16 h');
  const silent = w8({ opening: undefined });
  expect(said(silent.book, silent.charge)).toContain('At opening\nnot recorded');
});

test('a check answered no stands out, and one nobody answered is not recorded, never no', () => {
  const { book, charge } = w8();
  const checks = between(said(book, charge), 'Checks before, during and after', 'Condenser and pipe of this retort');
  expect(checks).toContain('Spill kit, catch tray with water and labelled bottles ready, waste route known\nNO\ntray on loan');
  expect(checks).toContain('Pipe proved clear from end to end, outlet open\nyes');
  for (const { asks } of [...runChecks.during, ...runChecks.after]) expect(checks).toMatch(new RegExp(`Not recorded: .*${asks}`));
  expect(checks.match(/\bNO\b/g)).toHaveLength(1);
});

test('a re-fire belongs to its run: the last sponge counts, mercury adds up, and each opening is shown', () => {
  const { book, charge } = refired();
  const text = said(book, charge);
  // 799.6 − 305 − (415 + 73) = 6.6 g, 0.825 % of 799.6 g
  expect(text).toContain('Gap\n6.60\n');
  expect(text).toContain('0.825 %');
  const openings = between(text, 'As it stood at each opening', 'What the figures say');
  expect(openings).toContain('1: 3 April 2026, 09:00\n380.00\n415.00\n0\n4.60\n0.575 %\n47.52 %\n98.90 %');
  expect(openings).toContain('2: 5 April 2026, 09:00\n305.00\n488.00\n0\n6.60\n0.825 %\n38.14 %\n98.67 %');
  expect(text).toContain('Firing 2 of 2, a re-fire');
  expect(text).toContain('april A\n800\n799.60\n−0.40\n');
});

test('charges caught together have one gap, and no figure of mercury each (cases 10)', () => {
  // cases.md 10, constructed
  const { book, charges } = caughtTogether();
  const texts = charges.map((charge) => said(book, charge));
  const [text = ''] = texts;
  expect(texts.every((other) => other === text)).toBe(true);
  expect(text).toContain('Charge, as weighed at charging\n1\u202f007.7\n');
  expect(text).toContain('Gap\n8.4\n');
  expect(text).toContain('0.834 %');
  const each = between(text, 'Charge by charge', 'What the figures say');
  expect(each).toContain('310.0\n118.9\n38.35 %');
  expect(each).not.toMatch(/191\.|612|mercury, g/i);
  // 310.0 − 118.9, 295.5 − 112.0, 402.2 − 156.1: what each would have given had it lost nothing
  for (const invented of ['191.1', '183.5', '246.1', '204.1']) expect(text).not.toContain(invented);
});

test('a run that is not closed says first what it waits for, and reckons nothing', () => {
  const { book, charge } = manyBalls(3);
  const text = said(book, charge);
  expect(between(text, 'Reservations', 'The run in figures')).toContain('This run is not closed: it still waits for a firing.');
  expect(text).not.toContain('\nGap\n');
  expect(text).not.toContain('Driven off');
  const half = w8({ mercury: undefined });
  const said2 = said(half.book, half.charge);
  expect(said2).toContain('it still waits for the mercury’s weight');
  expect(said2).toContain('Sponge weighed so far\n371.8\n');
  expect(said2).not.toContain('\nGap\n');
});

test('a corrected reading stands beside the new one with who, when and why; a struck firing stays readable', () => {
  const { book, charge } = awkward();
  const text = said(book, charge);
  const changed = between(text, 'Corrections, strikes and notes', 'Readings');
  expect(changed).toContain(
    'Correction of the firing of 2 June 2026, 15:00\nKeeper, written 3 June 2026, 08:10\nWhy: Two figures were swapped.',
  );
  expect(changed).toContain('heat 1, sponge, gross\n213.00 g\n231.00 g');
  expect(changed).toContain('when it happened\n2 June 2026, 15:20\n2 June 2026, 15:00');
  expect(changed).toContain('Struck: the firing of 2 June 2026, 15:10\nKeeper, written 3 June 2026, 08:00\nWhy: Written twice.');
  expect(changed).toContain('heat 1, sponge, gross\n2\u202f310.00 g');
  expect(changed).toContain(`nobody named, written 3 June 2026, 08:20\n${hostile.markup}`);
  const { book: clean, charge: own } = w8();
  expect(said(clean, own)).toContain('No entry of this run was corrected or struck.');
});

test('a struck correction is shown as struck, with what it had said', () => {
  const { book, charge } = w8();
  const body = structuredClone(book.entries.find(({ id }) => id === charge)?.body ?? {});
  const correction = book.add('correction one', 'correction', {
    corrects: charge,
    body: { ...body, fill: 0.3 },
    why: 'Misread.',
  });
  book.add('strike one', 'strike', { strikes: correction, why: 'It was right before.' });
  const text = said(book, charge);
  expect(text).toContain('Struck: a correction of the charge of 14 March 2026, 08:40');
  expect(text).toContain('Why: It was right before.');
  expect(text).toContain('filled\n0.3');
  expect(text).toContain('Filled\n50 %');
});

test('reservations come before every figure, each once', () => {
  const { book, charge } = awkward();
  const text = said(book, charge);
  const reserved = between(text, 'Reservations', 'The run in figures');
  expect(reserved).toContain('How sure the gap is cannot be said');
  expect(reserved).toContain('1 lot that belonged here was not found: 187.9 g by the label');
  expect(reserved.match(/“June D” was not found/g)).toHaveLength(1);
  expect(text.indexOf('Reservations')).toBeLessThan(text.indexOf('591.88'));
  const { book: clean, charge: own } = w8();
  expect(between(said(clean, own), 'Reservations', 'The run in figures')).toContain('None on the record.');
});

test('entries the program does not understand, and corrections adrift, are reservations', () => {
  const { book, charge } = w8();
  const first = book.entries[0];
  if (!first) throw new Error('the book has entries');
  book.entries.push({ ...first, id: 'from-later', n: 900, kind: 'smelting', body: {} });
  book.add('adrift', 'strike', { strikes: 'gone-elsewhere', why: 'x' });
  const reserved = between(said(book, charge), 'Reservations', 'The run in figures');
  expect(reserved).toContain('1 entry of a kind this program does not know (smelting)');
  expect(reserved).toContain('1 correction or strike names an entry that is not in the book here');
});

test('a run that an entry of an unknown kind speaks of is not printed without it', () => {
  const { book, charge } = w8();
  const first = book.entries[0];
  if (!first) throw new Error('the book has entries');
  book.entries.push({ ...first, id: 'from-later', n: 900, kind: 'smelting', body: { of: [{ sponge: charge }] } });
  expect(runSheet(readBook(book.entries), charge, frameOf(book))).toEqual({
    ok: false,
    problems: [{ code: 'paper-not-understood', field: 'id', data: { kind: 'smelting', entry: 'from-later' } }],
  });
});

test('the standing stands at the head in words, or that none was stated', () => {
  const { book, charge } = w8();
  expect(said(book, charge)).toContain('Held\nmercury may be in plates, floors or traps\nDone\nclearing legacy mercury\n');
  book.add(
    'standing two',
    'standing',
    {
      held: [{ what: 'stock', place: 'Store' }],
      done: [
        {
          what: 'authority',
          since: '2026-02-01',
          authority: { name: 'Example office', number: 'E-7', expiry: 'none stated', covers: 'retorting of old amalgam' },
        },
      ],
    },
    { happened: '2026-03-10T08:00+13:00' },
  );
  const text = said(book, charge);
  expect(text).toContain('Held\na stock of mercury (Store)\n');
  expect(text).toContain(
    'use under an authority: Example office, number E-7, no last day stated, covering retorting of old amalgam, since 1 February 2026',
  );
  const silent = new BookMaker();
  const pot = silent.add('pot retort', 'retort', { label: 'Pot retort' });
  const [lot = ''] = silent.lots('march', ['100']);
  const own = silent.add('charge x', 'charge', { retort: pot, rows: [{ take: 'whole', key: '1', lot, weight: scaled('100') }] });
  expect(said(silent, own)).toContain('No standing stated');
});

test('what is missing, a part, an unwritten lot and a cake are each told for what they are', () => {
  const { book, charge } = awkward();
  const text = said(book, charge);
  expect(text).toContain('NOT FOUND; looked: safe, bench and floor');
  expect(text).toContain(`a part; the rest is “${hostile.long} b”, 98.6 g, weighed`);
  expect(text).toContain('its clean-up is not written up yet');
  expect(text).toContain('Cake of May: earlier cake\n31.50');
  expect(text).toContain('Gap, mercury and water together: cannot be told apart\n');
  expect(text).toContain('less water weighed\nnot weighed\n');
});

test('the condenser’s book is shown as it stood with this run, and the runs since it was brushed out together (cases 2)', () => {
  // cases.md 2, constructed: gaps of 8.5 and −7.0 g; judged together 1.5 g short
  const book = BookMaker.site();
  book.add('brushed', 'retort', {
    of: book.pot,
    label: 'Pot retort',
    brushed: { on: '2026-02-01', got: stated('9', '0.1'), vessel: book.bottle },
  });
  const lots = book.lots('may', ['400', '380']);
  const charges = lots.map((lot, i) => {
    const charge = book.add(`charge ${i}`, 'charge', {
      retort: book.pot,
      rows: [{ take: 'whole', key: '1', lot, weight: stated(i === 0 ? '400' : '380', '0.1') }],
    });
    book.add(`firing ${i}`, 'firing', {
      heats: [{ charge, sponge: stated(i === 0 ? '150' : '142', '0.1') }],
      mercury: { weight: stated(i === 0 ? '241.5' : '245', '0.2'), vessel: book.bottle },
      water: stated('0', '0'),
      opened: `2026-03-0${2 + i}T09:00+13:00`,
    });
    return charge;
  });
  const [first = '', second = ''] = charges.map((charge) =>
    between(said(book, charge), 'Condenser and pipe of this retort', 'Remarks'),
  );
  expect(first).toContain('On its book after this run\n8.50');
  expect(first).toContain('One run since it was brushed out on 1 February 2026, this one included; gaps together +8.50 g.');
  expect(second).toContain('On its book before this run\n8.50\nThis run’s gap\n−7.00\nOn its book after this run\n1.50');
  expect(second).toContain('2 runs since it was brushed out on 1 February 2026, this one included; gaps together +1.50 g.');
});

test('every weight opens to its reading: gross, tare, scale and calibration', () => {
  const { book, charge } = w8();
  const readings = between(said(book, charge), 'Readings', 'Recorded by');
  expect(readings).toContain('Mercury\ngross 983.4 g, tare 412.2 g, tare of Working bottle\n1\n571.2\n');
  expect(readings).toContain('march E, label\ngross 151.5 g\n1\n151.5\n');
  expect(readings).toContain(
    'tenth scale\n0.1 g\ncertificate: U 0.2 g (k = 2) at 2000 g, of 10 January 2026, due 10 January 2027',
  );
});

test('the sheet calls nothing safe, approved, compliant or authorised', () => {
  const papers = [w8(), refired(), awkward(), manyBalls(2)].map(({ book, charge }) => said(book, charge));
  for (const text of papers) expect(text).not.toMatch(/\b(safe(?!, bench)|safely|approved|compliant|authori[sz]ed)\b/i);
});

test('a charge nobody knows is a problem that names it', () => {
  const { book } = w8();
  const got = runSheet(readBook(book.entries), 'no-such-charge', frameOf(book));
  expect(got).toEqual({ ok: false, problems: [{ code: 'paper-no-such-run', field: 'id', data: { id: 'no-such-charge' } }] });
});
