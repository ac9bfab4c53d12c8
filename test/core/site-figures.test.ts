/** The figures a site chose for its account: which of them stands at a moment, what it changes, and what is refused. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { stocksAt } from '../../app/core/book/movements/gathering.ts';
import { outOfStepOf } from '../../app/core/book/out-of-step.ts';
import { spongePlace } from '../../app/core/book/places.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import { falseAlarmAt, lotDaysAt, residualAt } from '../../app/core/book/site-figures.ts';

import { type Body, draftFrom } from '../../app/core/kinds/index.ts';
import { uOf } from '../../app/core/measured.ts';
import { problemTexts } from '../../app/words/problems.ts';
import { BookMaker, stated } from './book-maker.ts';

const march = (day: string) => `2026-03-${day}T09:00+13:00`;
const why = 'five assays of sponge';

type Site = ReturnType<typeof BookMaker.site>;

function fired(book: Site, name: string, day: string): { charge: string; lot: string } {
  const [lot = ''] = book.lots(name, ['1000']);
  const charge = book.add(
    `charge ${name}`,
    'charge',
    { retort: book.pot, rows: [{ take: 'whole', key: '1', lot, weight: stated('1000', '0.1') }] },
    { happened: march(day) },
  );
  book.add(
    `firing ${name}`,
    'firing',
    {
      heats: [{ charge, sponge: stated('330', '0.1') }],
      mercury: { weight: stated('660', '0.2'), vessel: book.bottle, state: 'dry' },
      water: stated('0', '0'),
    },
    { happened: march(day) },
  );
  return { charge, lot };
}

const sponge = (book: Site, charge: string) => stocksAt(readBook(book.entries).movements.all, null).get(spongePlace(charge));

function refused(body: unknown): string[] {
  const book = BookMaker.site();
  const got = draftFrom({ id: 'asked-about', kind: 'site-figures', body, happened: march('09'), by: null });
  const found = got.ok ? checkDraft(readBook(book.entries), got.value, '2026-03-09T10:00+13:00') : got.problems;
  return found.map((p) => {
    expect(Object.hasOwn(problemTexts, p.code), p.code).toBe(true);
    return `${p.field} ${p.code}`;
  });
}

describe('mercury left in sponge', () => {
  test('is the share in force when the run was fired: runs before it keep the program’s, runs after a later one have that', () => {
    const book = BookMaker.site();
    const before = fired(book, 'before', '10');
    book.add('set', 'site-figures', { residualShare: { middle: 0.02, u: 0.003, why } }, { happened: march('12') });
    const after = fired(book, 'after', '14');
    book.add('set anew', 'site-figures', { residualShare: { middle: 0.03, u: 0.001, why } }, { happened: march('16') });
    const last = fired(book, 'last', '18');
    const grams = [before, after, last].map(({ charge }) => (sponge(book, charge)?.ug ?? 0) / 1e6);
    // 330 g of sponge at 1.25, 2 and 3 parts in a hundred
    expect(grams.map((g) => g.toFixed(3))).toEqual(['4.125', '6.600', '9.900']);
    const { movements } = readBook(book.entries);
    expect((movements.lotMercuries.get(after.lot)?.mercury.ug ?? 0) / 1e6).toBeCloseTo(1000 - (330 - 6.6), 6);
  });

  test('brings its own uncertainty with it', () => {
    const book = BookMaker.site();
    book.add('set', 'site-figures', { residualShare: { middle: 0.02, u: 0.003, why } }, { happened: march('05') });
    const { charge } = fired(book, 'one', '10');
    const left = readBook(book.entries).movements.runMercuries.get(charge)?.inSponge;
    // 330 g × 0.003, and the 0.1 g of the sponge's own weighing × 0.02
    expect(left ? uOf(left) / 1e6 : 0).toBeCloseTo(Math.hypot(0.99, 0.002), 6);
  });
});

describe('a list of figures', () => {
  test('stands as a whole until the next, and leaves to the program what it does not name', () => {
    const book = BookMaker.site();
    const start = readBook(book.entries).current;
    expect([falseAlarmAt(start, march('06')), lotDaysAt(start, march('06')), residualAt(start, march('06')).middle]).toEqual([
      null,
      90,
      0.0125,
    ]);
    const both = { falseAlarm: { value: 0.01, why }, lotDays: { value: 30, why } };
    book.add('set', 'site-figures', both, { happened: march('05') });
    book.add('set anew', 'site-figures', { lotDays: { value: 45, why } }, { happened: march('08') });
    const { current } = readBook(book.entries);
    expect(['04', '06', '09'].map((day) => falseAlarmAt(current, march(day)))).toEqual([null, 0.01, null]);
    expect(['04', '06', '09'].map((day) => lotDaysAt(current, march(day)))).toEqual([90, 30, 45]);
  });

  test('says after how many days in store a lot is out of step', () => {
    const book = BookMaker.site();
    book.lots('march', ['400'], book.bench);
    const old = (at: string) => outOfStepOf(readBook(book.entries), { at }).filter(({ code }) => code === 'lot-old').length;
    // made on the first of March: twenty days
    expect(old(march('21'))).toBe(0);
    book.add('set', 'site-figures', { lotDays: { value: 19, why } }, { happened: march('05') });
    expect([old(march('20')), old(march('21'))]).toEqual([0, 1]);
  });

  test('names at least one figure, each in its range and with its reason', () => {
    const share = (middle: number, u: number) => ({ residualShare: { middle, u, why } });
    expect(refused({ note: 'nothing' })).toEqual(['body no-figure']);
    expect(refused(share(1.1, 0.1))).toEqual(['body.residualShare.middle too-large']);
    expect(refused(share(-0.1, 0.1))).toEqual(['body.residualShare.middle too-small']);
    expect(refused(share(0.1, -0.1))).toEqual(['body.residualShare.u too-small']);
    for (const value of [0, -3, 1.5, 36_501])
      expect(refused({ lotDays: { value, why } })).toEqual(['body.lotDays.value days-not-whole']);
    for (const value of [0, 1, -0.1])
      expect(refused({ falseAlarm: { value, why } })).toEqual(['body.falseAlarm.value alarm-not-offered']);
    expect(refused({ lotDays: { value: 30 } })).toEqual(['body.lotDays.why missing']);
    expect(refused({ lotDays: { value: 30, why }, ...share(0, 0) } satisfies Body<'site-figures'>)).toEqual([]);
  });
});
