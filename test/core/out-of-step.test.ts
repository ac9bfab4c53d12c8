/** Out of step: each kind of thing an auditor would raise is told where it stands, not told where it does not, and opens what it is about. */
import { describe, expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { resultsUnder } from '../../app/core/book/out-of-step/contested.ts';
import { type Asked, concerning, countOutOfStep, type OutOfStep, outOfStepOf } from '../../app/core/book/out-of-step.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import type { Entry } from '../../app/core/entry.ts';
import { uOf } from '../../app/core/measured.ts';
import { outOfStepOpens, outOfStepText } from '../../app/words/out-of-step.ts';
import { generated } from '../../main/host/sample/large.ts';
import { journalOf } from '../../main/host/sample/write.ts';
import { BookMaker, idOf, scaled, stated } from './book-maker.ts';

const at = '2026-06-01T12:00+13:00';
const listed = (book: BookMaker, more: Partial<Asked> = {}): readonly OutOfStep[] =>
  outOfStepOf(readBook(book.entries), { at, lotDays: 90, ...more });
const codes = (book: BookMaker, more: Partial<Asked> = {}): readonly string[] => listed(book, more).map((i) => i.code);
const one = (book: BookMaker, code: string, more: Partial<Asked> = {}): OutOfStep => {
  const found = listed(book, more).filter((i) => i.code === code);
  expect(found.map((i) => i.code)).toEqual([code]);
  return found[0] as OutOfStep;
};
const on = (day: string, clock = '09:00') => ({ happened: `2026-${day}T${clock}+13:00` });

/** A site whose standing covers its work, with one run as asked; every entry written when it happened. */
function site(run: { checks?: boolean; witness?: boolean; sponge?: string; mercury?: string } = {}) {
  const book = BookMaker.site();
  book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('1000', '0.1') });
  const [lot = ''] = book.lots('march', ['400'], book.bench);
  const charge = book.add('charge', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot, weight: scaled('399.9', book.bench) }],
    ...(run.checks ? { checks: [{ check: 'lute-whole', answer: 'yes' as const }] } : {}),
  });
  const firing = book.add('firing', 'firing', {
    heats: [{ charge, sponge: scaled(run.sponge ?? '152', book.bench) }],
    mercury: { weight: scaled(run.mercury ?? '247', book.bench), vessel: book.bottle },
    water: stated('0', '0.01'),
  });
  const last = book.entries.at(-1);
  if (run.witness && last) book.entries[book.entries.length - 1] = { ...last, witness: [book.keeper] };
  return Object.assign(book, { charge, firing, lot });
}

describe('a run', () => {
  test('with no check answered, and one nobody else saw, are told, each by its charge', () => {
    const book = site();
    expect(one(book, 'run-no-checks').opens).toEqual({ entry: book.charge });
    expect(one(book, 'run-no-witness').opens).toEqual({ entry: book.charge });
  });

  test('with checks and a witness is not told', () => {
    expect(codes(site({ checks: true, witness: true })).filter((c) => c.startsWith('run-'))).toEqual([]);
  });

  test('that is not fired yet is not told', () => {
    const book = BookMaker.site();
    const [lot = ''] = book.lots('march', ['400'], book.bench);
    book.add('charge', 'charge', {
      retort: book.pot,
      rows: [{ take: 'whole', key: '1', lot, weight: scaled('400', book.bench) }],
    });
    expect(codes(book).filter((c) => c.startsWith('run-'))).toEqual([]);
  });

  test('is missed an air reading only where the site has a meter and nobody read the air on its days or named it', () => {
    const read = (book: BookMaker, happened: string, run?: string) =>
      book.add(
        'air reading',
        'air-reading',
        { sample: 'area', place: 'bench', from: happened, unit: 'mg/m3', shows: '0.010', ...(run === undefined ? {} : { run }) },
        { happened },
      );
    const withMeter = () => {
      const book = site();
      book.add('meter', 'meter', { label: 'Vapour meter' });
      return book;
    };
    const runDay = site().entries.find((e) => e.kind === 'firing')?.happened ?? '';
    expect(codes(site())).not.toContain('run-no-air-reading');
    expect(codes(withMeter())).toContain('run-no-air-reading');
    const other = withMeter();
    read(other, '2026-01-05T09:00+13:00');
    expect(codes(other)).toContain('run-no-air-reading');
    const same = withMeter();
    read(same, runDay);
    expect(codes(same)).not.toContain('run-no-air-reading');
    const noMeter = site();
    read(noMeter, '2026-01-05T09:00+13:00');
    expect(codes(noMeter)).not.toContain('run-no-air-reading');
    const named = withMeter();
    read(named, '2026-01-05T09:00+13:00', named.entries.find((e) => e.kind === 'charge')?.id);
    expect(codes(named)).not.toContain('run-no-air-reading');
  });
});

describe('scales, meters and people', () => {
  test('past their day are told until they are restated or out of use', () => {
    const book = BookMaker.site();
    const meter = book.add('meter', 'meter', { label: 'Vapour meter', calibrated: { on: '2025-05-01', due: '2026-05-01' } });
    const old = book.add('old scale', 'scale', {
      label: 'Old scale',
      maximum: '6 kg',
      d: '1 g',
      certificate: { U: '1 g', at: '2 kg', due: '2026-05-31' },
    });
    expect(one(book, 'meter-due').opens).toEqual({ register: 'meter', id: meter });
    expect(one(book, 'scale-due').opens).toEqual({ register: 'scale', id: old });
    expect(codes(book, { at: '2026-05-31T12:00+13:00' })).not.toContain('scale-due');
    book.add('meter anew', 'meter', { of: meter, label: 'Vapour meter', calibrated: { on: '2026-05-02', due: '2027-05-01' } });
    book.add('old scale out', 'scale', {
      of: old,
      label: 'Old scale',
      maximum: '6 kg',
      d: '1 g',
      certificate: { U: '1 g', at: '2 kg', due: '2026-05-31' },
      out: '2026-05-31',
    });
    expect(codes(book)).not.toContain('meter-due');
    expect(codes(book)).not.toContain('scale-due');
  });

  test('a reading on a scale past its day is told once for its entry, however many readings it holds', () => {
    const book = BookMaker.site();
    const old = book.add('old scale', 'scale', {
      label: 'Old scale',
      maximum: '6 kg',
      d: '1 g',
      certificate: { U: '1 g', at: '2 kg', due: '2026-01-31' },
    });
    book.lots('march', ['400', '300', '200'], old);
    expect(one(book, 'scale-out-of-date').opens).toEqual({ entry: idOf('march') });
  });

  test('a check for a person is told when its day is past, and no longer once it was done', () => {
    const book = BookMaker.site();
    const first = book.add('fit test', 'check-due', {
      what: 'respirator-fit',
      person: book.keeper,
      done: 'yes',
      next: '2026-05-01',
    });
    // neither whose check it is nor its day stands in the list, which everybody may read
    expect(one(book, 'check-overdue')).toMatchObject({
      opens: { entry: first },
      since: '',
      data: { what: 'respirator-fit', of: 'person', due: '' },
    });
    book.add('fit test again', 'check-due', { what: 'respirator-fit', person: book.keeper, done: 'yes', next: '2027-05-01' });
    expect(codes(book)).not.toContain('check-overdue');
  });

  test('an entry in the name of somebody who had left is told', () => {
    const book = BookMaker.site();
    book.add('keeper left', 'person', { of: book.keeper, name: 'Keeper', roles: ['keeper'], left: '2026-03-31' });
    const before = book.add('note before', 'note', { text: 'x' }, { ...on('03-31'), by: book.keeper });
    const after = book.add('note after', 'note', { text: 'x' }, { ...on('04-01'), by: book.keeper });
    expect(one(book, 'writer-left').opens).toEqual({ entry: after });
    expect(before).not.toBe(after);
  });
});

describe('a lot', () => {
  test('is old after the days the site chose, counted from its making, and not before', () => {
    const book = BookMaker.site();
    const [lot = ''] = book.lots('march', ['400'], book.bench);
    const made = book.entries.at(-1)?.happened ?? '';
    expect(made.slice(0, 10)).toBe('2026-03-01');
    expect(codes(book, { lotDays: 92 })).not.toContain('lot-old');
    expect(one(book, 'lot-old', { lotDays: 91 }).data).toMatchObject({ days: 92 });
    expect(one(book, 'lot-old').opens).toEqual({ entry: lot.split('/')[0] });
  });

  test('that was charged is not old', () => expect(codes(site())).not.toContain('lot-old'));
});

describe('weights', () => {
  test('that stand to each other as two ounces are told with the thing they are of', () => {
    const book = BookMaker.site();
    const [lot = ''] = book.lots('march', ['400'], book.bench);
    // 400 × 31.1034768 ÷ 28.349523125 = 438.9
    book.add('charge', 'charge', {
      retort: book.pot,
      rows: [{ take: 'whole', key: '1', lot, weight: scaled('438.9', book.bench) }],
    });
    expect(one(book, 'unit-slip').data).toMatchObject({ of: 'lot', slip: 'ounces', name: 'march A' });
  });

  test('of a count are held against the book', () => {
    const book = BookMaker.site();
    book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('1000', '0.1') });
    book.add('count', 'stock-take', {
      lines: [{ how: 'weighed', place: `vessel:${book.bottle}`, weight: stated('911.5', '0.1') }],
    });
    // 1000 ÷ 911.5 = 1.0971
    expect(one(book, 'unit-slip').data).toMatchObject({ of: 'count', slip: 'ounces' });
    expect(codes(book)).not.toContain('count-gain');
  });

  test('that agree are not told', () => expect(codes(site())).not.toContain('unit-slip'));
});

describe('gains', () => {
  test('of a run are told with how much', () => {
    // 399.9 − 152 − 252 = −4.1 g
    expect(one(site({ mercury: '252' }), 'run-gain').data.ug).toBeCloseTo(4_100_000, -2);
    expect(codes(site())).not.toContain('run-gain');
  });

  test('of a count are told where they lie beyond the errors, and of a period that closes with one', () => {
    const book = BookMaker.site();
    book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('1000', '0.1') });
    const count = (name: string, g: string) =>
      book.add(name, 'stock-take', {
        scope: 'whole',
        lines: [{ how: 'weighed', place: `vessel:${book.bottle}`, weight: stated(g, '0.1') }],
      });
    count('count one', '1000.1');
    expect(codes(book).filter((c) => c.endsWith('-gain'))).toEqual([]);
    const second = count('count two', '1010.1');
    expect(one(book, 'count-gain').opens).toEqual({ entry: second });
    expect(one(book, 'count-gain').data.ug).toBe(10_000_000);
    expect(one(book, 'period-gain').opens).toEqual({ entry: second });
  });
});

describe('the gain of a period', () => {
  test('is what its account misses, below nothing, in every counted period of a book', () => {
    const lines = journalOf(generated(1500, 5)).trimEnd().split('\n');
    const entries = lines.map((line) => JSON.parse(line) as Entry);
    const read = readBook(entries.map((e) => (e.kind === 'stock-take' ? { ...e, body: { ...e.body, scope: 'whole' } } : e)));
    const periods = periodsOf(read);
    expect(periods.length).toBeGreaterThan(1);
    const byAccount = periods.flatMap(({ period, closing }) => {
      const { unaccounted } = accountOf(read, period);
      return -unaccounted.ug > 2 * uOf(unaccounted) && -unaccounted.ug >= 1 ? [[closing.id, Math.round(-unaccounted.ug)]] : [];
    });
    const items = outOfStepOf(read, { at, lotDays: 90 }).filter((i) => i.code === 'period-gain');
    const byList = items.map((i) => [i.opens && 'entry' in i.opens ? i.opens.entry : '', Math.round(Number(i.data.ug))]);
    expect(byList.toReversed()).toEqual(byAccount);
  });
});

describe('clock and record', () => {
  test('a clock set back between two lines of a desk is told at the later line; two desks are never held against each other', () => {
    const book = BookMaker.site();
    book.add('first note', 'note', { text: 'x' }, { ...on('04-02'), written: '2026-04-02T09:00+13:00' });
    const back = book.add('second note', 'note', { text: 'x' }, { ...on('04-01'), written: '2026-04-01T09:00+13:00' });
    book.add('other desk', 'note', { text: 'x' }, { ...on('01-01'), written: '2026-01-01T09:00+13:00', desk: 'desk-two' });
    expect(one(book, 'clock-back').opens).toEqual({ entry: back });
  });

  test('what happened after it was written is told, by the day alone where only the day is known', () => {
    const book = BookMaker.site();
    const later = book.add('later note', 'note', { text: 'x' }, { ...on('04-02', '10:00'), written: '2026-04-02T09:00+13:00' });
    book.add('day note', 'note', { text: 'x' }, { ...on('04-03', '23:00'), written: '2026-04-03T09:00+13:00' });
    const last = book.entries.at(-1) as Entry;
    book.entries[book.entries.length - 1] = { ...last, timing: 'day' };
    expect(one(book, 'happened-later').opens).toEqual({ entry: later });
  });

  test('what the host says of the files is told, and what it says of the window is not', () => {
    const book = BookMaker.site();
    const notices = [
      { code: 'fork', desk: 'desk-two', line: 7 },
      { code: 'elsewhere-open', detail: '1 here' },
    ];
    const item = one(book, 'notice', { notices });
    expect([item.group, item.opens]).toEqual(['record', null]);
    expect(outOfStepText(readBook(book.entries), item)).toMatch(
      /^Two different lines carry the same number \(desk desk-two, line 7\)/,
    );
  });

  test('one id on two lines that differ is told', () => {
    const book = BookMaker.site();
    book.add('note one', 'note', { text: 'x' });
    const first = book.entries.at(-1) as Entry;
    book.entries.push({ ...first, desk: 'desk-two', n: 1, hash: 'e'.repeat(64) });
    expect(one(book, 'same-id').opens).toEqual({ entry: first.id });
  });
});

describe('the standing', () => {
  test('that was never stated, has lapsed, or denies a stock is told', () => {
    const bare = new BookMaker();
    bare.add('note', 'note', { text: 'x' });
    expect(codes(bare)).toContain('standing-none');
    const under = new BookMaker();
    const authority = { name: 'Regional office', number: 'H 1', expiry: '2026-05-31', covers: 'demonstrations' };
    const standing = under.add('standing', 'standing', { held: [{ what: 'none' }], done: [{ what: 'authority', authority }] });
    expect(one(under, 'authority-expired').opens).toEqual({ entry: standing });
    expect(codes(under, { at: '2026-05-31T12:00+13:00' })).toEqual([]);
    const bottle = under.add('bottle', 'vessel', { label: 'Bottle', use: 'bottle' });
    under.add('stock', 'receipt', { vessel: bottle, way: 'already-here', weight: stated('5', '0.1') });
    expect(one(under, 'standing-holds-none').data.ug).toBe(5_000_000);
  });

  test('that an entry runs against is told at the entry', () => {
    const book = new BookMaker();
    book.add('standing', 'standing', { held: [{ what: 'stock' }], done: [{ what: 'nothing' }] });
    const bottle = book.add('bottle', 'vessel', { label: 'Bottle', use: 'bottle' });
    const bought = book.add('bought', 'receipt', { vessel: bottle, way: 'bought', weight: stated('5', '0.1') });
    expect(one(book, 'outside-standing').opens).toEqual({ entry: bought });
  });
});

describe('an entry written late', () => {
  test('is told from the minute after a week', () => {
    const book = BookMaker.site();
    book.add('in time', 'note', { text: 'x' }, { ...on('04-01'), written: '2026-04-08T09:00+13:00' });
    const late = book.add('late one', 'note', { text: 'x' }, { ...on('04-01'), written: '2026-04-08T09:01+13:00' });
    expect(one(book, 'written-late').opens).toEqual({ entry: late });
  });

  test('counts its days as a calendar does', () => {
    const book = BookMaker.site();
    book.add('late one', 'note', { text: 'x' }, { ...on('04-01'), written: '2026-04-26T00:10+13:00' });
    expect(one(book, 'written-late').data.days).toBe(25);
  });

  test('is not told once it was struck', () => {
    const book = BookMaker.site();
    const late = book.add('late one', 'note', { text: 'x' }, { ...on('04-01'), written: '2026-05-08T09:01+13:00' });
    book.add('strike', 'strike', { strikes: late, why: 'twice' });
    expect(codes(book)).not.toContain('written-late');
  });
});

describe('two corrections of one entry', () => {
  const contested = () => {
    const book = site();
    const body = (g: string) => ({
      retort: book.pot,
      rows: [{ take: 'whole', key: '1', lot: book.lot, weight: scaled(g, book.bench) }],
    });
    const first = book.add('correction one', 'correction', { corrects: book.charge, body: body('401.5'), why: 'misread' });
    const second = book.add(
      'correction two',
      'correction',
      { corrects: book.charge, body: body('399.0'), why: 'misread' },
      { desk: 'desk-two' },
    );
    return { book, first, second };
  };

  test('are told, with the charge, its gap and the account under each', () => {
    const { book, first, second } = contested();
    expect(one(book, 'contested').opens).toEqual({ entry: book.charge });
    const results = resultsUnder(readBook(book.entries), book.charge);
    expect(results.map((r) => [r.correction, r.counts, r.charge?.ug, r.gap?.ug])).toEqual([
      [first, false, 401_500_000, 2_500_000],
      [second, true, 399_000_000, 0],
    ]);
    // what the retort does not give back is what the account misses: 2.5 g under the one, nothing under the other
    expect(results.map((r) => Math.round(r.unaccounted.ug / 1000))).toEqual([2500, 0]);
  });

  test('are not told where one corrects the other', () => {
    const { book, first } = contested();
    const last = book.entries.at(-1) as Entry;
    book.entries[book.entries.length - 1] = { ...last, body: { ...last.body, corrects: first } };
    expect(codes(book)).not.toContain('contested');
    expect(resultsUnder(readBook(book.entries), book.charge)).toEqual([]);
  });
});

describe('the list', () => {
  test('is as long as the number that Today shows, asked again of the same book at another moment as well', () => {
    const book = site({ mercury: '252' });
    book.lots('in the safe', ['400'], book.bench);
    const read = readBook(book.entries);
    const notices = [{ code: 'fork', desk: 'desk-one', line: 3 }];
    const askings: Asked[] = [
      { at: '2026-04-01T12:00+13:00', lotDays: 1000 },
      { at: '2027-06-01T12:00+13:00', lotDays: 1, notices },
      { at: '2027-06-01T12:00+13:00', lotDays: 1000 },
      { at: '2026-04-01T12:00+13:00', lotDays: 1000 },
    ];
    const lengths = askings.map((asked) => outOfStepOf(read, asked).length);
    expect(askings.map((asked) => countOutOfStep(read, asked))).toEqual(lengths);
    expect(lengths).toEqual(askings.map((asked) => outOfStepOf(readBook(book.entries), asked).length));
    expect(lengths[1]).toBeGreaterThan(lengths[2] ?? 0);
    expect(lengths[2]).toBeGreaterThan(lengths[0] ?? 0);
  });

  test('has a sentence and a name for everything in it', () => {
    const book = site({ mercury: '252' });
    const read = readBook(book.entries);
    const items = outOfStepOf(read, { at: '2027-06-01T12:00+13:00', lotDays: 1 });
    expect(items.length).toBeGreaterThan(3);
    for (const item of items) {
      expect(outOfStepText(read, item)).toMatch(/^.{15,}\.$/s);
      if (item.opens) expect(outOfStepOpens(read, item)).not.toBe('');
    }
  });

  test('of a period holds what began in it and what still stood, and nothing from after it', () => {
    const book = BookMaker.site();
    book.lots('march', ['400'], book.bench);
    const items = listed(book);
    expect(items.map((i) => i.code)).toContain('lot-old');
    const codesIn = (from: string | null, to: string | null) => concerning(items, { from, to }).map((i) => i.code);
    expect(codesIn('2026-04-01', '2026-05-31')).toContain('lot-old');
    expect(codesIn(null, '2026-02-28')).not.toContain('lot-old');
    const late = site();
    const read = concerning(listed(late), { from: '2026-04-01', to: null });
    expect(read.map((i) => i.code)).not.toContain('run-no-checks');
  });
});
