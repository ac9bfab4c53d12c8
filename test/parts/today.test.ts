/** The Today room: what is open, due or out of step is told, what is not is silent, and the next thing to write up follows from it. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import type { Kind } from '../../app/core/kinds/index.ts';
import type { Daybook } from '../../app/daybook/book.svelte.ts';
import type { DraftRow } from '../../app/daybook/drafts.ts';
import { draftPlace } from '../../app/screens/today/drafts.ts';
import { TodayState } from '../../app/screens/today/today.svelte.ts';
import { type Today, todayOf } from '../../app/screens/today/today.ts';
import { sectionKeys } from '../../app/words/today.ts';
import { BookMaker, scaled } from '../core/book-maker.ts';

const now = '2026-03-14T18:00+13:00';
const day = (book: BookMaker, at = now, drafts: readonly DraftRow[] = []): Today => todayOf(readBook(book.entries), at, drafts);
const keys = (today: Today): readonly string[] => today.sections.map((s) => s.key);
const texts = (today: Today, key: string): readonly string[] =>
  (today.sections.find((s) => s.key === key)?.items ?? []).map((i) => i.text.replace(/[\u00a0\u202f]/g, ' '));

/** A site with an inspected retort, one lot charged, and a firing as asked. */
function fired(sponge: string | null, mercury: string | null) {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('march', ['955.6'], book.bench);
  const charge = book.add('charge', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot, weight: scaled('955.4', book.bench) }],
  });
  const firing = book.add('firing', 'firing', {
    heats: [{ charge, ...(sponge === null ? {} : { sponge: scaled(sponge, book.bench) }) }],
    ...(mercury === null ? {} : { mercury: { weight: scaled(mercury, book.bench), vessel: book.bottle } }),
    water: scaled('0', book.bench),
  });
  return { book, charge, firing };
}

describe('an empty book', () => {
  test('gets first steps in order, each with its reason and its form, and begins with the person who writes', () => {
    const today = day(new BookMaker());
    expect(keys(today)).toEqual(['first-steps']);
    const [steps] = today.sections;
    expect(steps?.items.map((i) => i.key)).toEqual([
      'person',
      'standing',
      'scale',
      'vessel',
      'retort',
      'plate',
      'meter',
      'limit',
    ]);
    expect(steps?.items.every((i) => (i.more ?? '') !== '' && /^#\/(?:site|air\/limits)/.test(i.href ?? ''))).toBe(true);
    expect(today.next).toEqual({ text: 'Enter a person', href: '#/site/person/new' });
  });

  test('keeps the steps that are done in sight, marked, and goes on to the next', () => {
    const book = new BookMaker();
    book.add('standing', 'standing', { held: [{ what: 'none' }], done: [{ what: 'nothing' }] });
    const today = day(book);
    expect(today.sections[0]?.items.map((i) => i.mark?.text)).toEqual([undefined, 'done', ...Array(6).fill(undefined)]);
    expect(today.next.href).toBe('#/site/person/new');
  });

  test('leaves a step for later where it was skipped, tells it still, and takes it up again', () => {
    const book = new BookMaker();
    const whole = readBook(book.entries);
    const left = todayOf(whole, now, [], undefined, new Set(['person']));
    expect(left.next.text).toBe('State the standing');
    expect(left.sections[0]?.items.map(({ mark, skip }) => [mark?.text, skip]).slice(0, 2)).toEqual([
      ['left for later', 'skipped'],
      [undefined, 'offered'],
    ]);
    expect(todayOf(whole, now, []).next.text).toBe('Enter a person');
    const all = new Set(left.sections[0]?.items.map(({ key }) => key));
    // with every step left, the standing is asked as it always is
    expect(todayOf(whole, now, [], undefined, all).next.text).toBe('State the standing');
  });

  test('a stock that the standing states and no entry has brought in is a step of its own, until it is written up', () => {
    const book = BookMaker.site();
    book.add('stated anew', 'standing', { held: [{ what: 'stock' }], done: [{ what: 'clearing' }] });
    const before = day(book);
    expect(keys(before)[0]).toBe('first-steps');
    expect(before.next).toEqual({ text: 'Write up the mercury that is already here', href: '#/retort/new/receipt' });
    book.add('stock', 'receipt', { way: 'already-here', vessel: book.bottle, weight: scaled('500.0', book.bench) });
    expect(keys(day(book))).not.toContain('first-steps');
  });

  test('a full register ends the steps, and a missing standing is then told by itself', () => {
    const book = BookMaker.site();
    book.add('strike standing', 'strike', { strikes: 'standing', why: 'not ours' });
    const today = day(book);
    expect(keys(today)[0]).toBe('standing');
    expect(today.next.href).toBe('#/site/standing');
  });
});

describe('a book in order', () => {
  test('tells nothing, and says what to write next', () => {
    const today = day(BookMaker.site());
    expect(keys(today)).toEqual([]);
    expect(today.next).toEqual({ text: 'Write up a clean-up', href: '#/retort/new/clean-up' });
  });
});

describe('work under way', () => {
  test('lots in the safe are told with their labels, their sum and their age', () => {
    const book = BookMaker.site();
    book.lots('march', ['955.60', '12.4'], book.bench);
    const today = day(book);
    expect(texts(today, 'safe')).toEqual(['2 lots (march A, march B), 968.00 g']);
    expect(today.sections.find((s) => s.key === 'safe')?.items[0]?.more).toMatch(/Clean-up of 1 March 2026, for 13 days/);
    expect(today.next.text).toBe('Charge the 2 lots from the safe');
  });

  test('a charge not fired comes with its weight and leads to its run', () => {
    const book = BookMaker.site();
    const [lot = ''] = book.lots('march', ['955.6'], book.bench);
    const charge = book.add('charge', 'charge', {
      retort: book.pot,
      rows: [{ take: 'whole', key: '1', lot, weight: scaled('955.4', book.bench) }],
    });
    const today = day(book);
    expect(texts(today, 'to-fire')).toEqual(['Charge of 1 March 2026, Pot retort: 955.4 g charged']);
    expect(keys(today)).not.toContain('safe');
    expect(today.next.href).toBe(`#/retort/${charge}`);
  });

  test('a run that waits for mercury says so and is the next thing to weigh', () => {
    const { book, charge } = fired('370.5', null);
    const today = day(book);
    expect(texts(today, 'awaiting')).toEqual(['Charge of 1 March 2026, Pot retort: the mercury not weighed']);
    expect(today.next).toEqual({ text: 'Weigh the mercury: Charge of 1 March 2026, Pot retort', href: `#/retort/${charge}` });
  });

  test('a run that is short of mercury is told with its gap and in words; one that closes is not', () => {
    // 955.4 − 370.5 − 484.9 leaves 100.0 g
    const short = day(fired('370.5', '484.9').book);
    expect(texts(short, 'not-closed')[0]).toMatch(
      /^Charge of 1 March 2026, Pot retort: gap 100\.0\d* ± .* g of 955\.4 g charged$/,
    );
    expect(short.sections.find((s) => s.key === 'not-closed')?.items[0]?.more).toMatch(/Mercury is missing/);
    expect(keys(day(fired('370.5', '584.9').book))).not.toContain('not-closed');
  });

  test('a run of long ago is left to the daybook', () => {
    expect(keys(day(fired('370.5', '484.9').book, '2026-12-01T09:00+13:00'))).not.toContain('not-closed');
  });

  test('a firing without a charge is an open end; struck, it is none', () => {
    const book = BookMaker.site();
    const loose = book.add('loose', 'firing', { heats: [{}], retort: book.pot, opening: { measuredC: 20 } });
    expect(texts(day(book), 'loose-firings')).toHaveLength(1);
    book.add('strike1', 'strike', { strikes: loose, why: 'never happened' });
    expect(keys(day(book))).not.toContain('loose-firings');
  });
});

describe('things to look at', () => {
  test('reservations come first, one line for one thing, and none of a struck entry', () => {
    const book = BookMaker.site();
    const plain = book.scale('old scale', '0.1 g', null);
    const [a = '', b = ''] = book.lots('march', ['955.6', '12.4'], plain);
    const charge = book.add('charge', 'charge', {
      retort: book.pot,
      rows: [
        { take: 'whole', key: '1', lot: a, weight: scaled('955.4', plain) },
        { take: 'not-found', key: '2', lot: b },
      ],
    });
    const flags = day(book).sections.find((s) => s.key === 'flags')?.items ?? [];
    expect(flags[0]).toMatchObject({ mark: { text: 'reservation' }, href: `#/daybook/${charge}` });
    expect(flags[0]?.more).toMatch(/“march B” was not found/);
    // two lots on one uncertified scale: one line for the clean-up, one for the charge
    expect(flags.filter((f) => f.more?.includes('no certificate'))).toHaveLength(2);
    book.add('strike1', 'strike', { strikes: charge, why: 'wrong site' });
    expect(JSON.stringify(day(book).sections)).not.toContain('was not found');
  });

  test('old ones stay with their entries', () => {
    const book = BookMaker.site();
    const plain = book.scale('old scale', '0.1 g', null);
    book.lots('march', ['955.6'], plain);
    expect(keys(day(book))).toContain('flags');
    expect(keys(day(book, '2026-06-01T09:00+13:00'))).not.toContain('flags');
  });
});

describe('things due', () => {
  test('a calibration is told from thirty days before its day, and as past after it', () => {
    const book = BookMaker.site();
    const at = (text: string) => {
      const section = day(book, `${text}T09:00+13:00`).sections.find((s) => s.key === 'due');
      return section?.items.map((i) => `${i.text} (${i.mark?.text})`) ?? [];
    };
    expect(at('2026-12-10')).toEqual([]);
    expect(at('2026-12-11')).toEqual(['Calibration of bench scale: 10 January 2027 (in 30 days)']);
    expect(at('2027-01-10')).toEqual(['Calibration of bench scale: 10 January 2027 (due today)']);
    expect(at('2027-01-12')).toEqual(['Calibration of bench scale: 10 January 2027 (past by 2 days)']);
  });

  test('a scale out of use falls due no more; a retort inspection and an authority do', () => {
    const book = BookMaker.site();
    book.add('bench out', 'scale', { of: book.bench, label: 'bench scale', maximum: '60 kg', d: '0.01 g', out: '2026-12-01' });
    book.add('pot inspected', 'retort', {
      of: book.pot,
      label: 'Pot retort',
      inspected: { on: '2026-01-05', due: '2027-01-05' },
    });
    book.add('standing two', 'standing', {
      held: [{ what: 'stock' }],
      done: [{ what: 'authority', authority: { name: 'Mines office', number: '7', expiry: '2027-01-02', covers: 'plates' } }],
    });
    expect(texts(day(book, '2027-01-03T09:00+13:00'), 'due')).toEqual([
      'Authority “Mines office” ends: 2 January 2027',
      'Inspection of Pot retort: 5 January 2027',
    ]);
  });
});

describe('drafts and strangers', () => {
  test('a draft is named by what it is about and leads back to its form', () => {
    const { book, charge, firing } = fired('370.5', null);
    const read = readBook(book.entries);
    const place = (form: string) => draftPlace(read, { form, touched: now, content: null });
    expect(place('standing').href).toBe('#/site/standing');
    expect(place('scale').href).toBe('#/site/scale');
    expect(place(`vessel/${book.bottle}`)).toMatchObject({
      name: 'Vessel: Working bottle',
      href: `#/site/vessel/${book.bottle}`,
    });
    expect(place('clean-up').href).toBe('#/retort/new/clean-up');
    expect(place(`firing/${charge}`)).toMatchObject({
      name: 'Firing: Charge of 1 March 2026, Pot retort',
      href: `#/retort/${charge}`,
    });
    expect(place(`later/${firing}`).href).toBe(`#/retort/${charge}`);
    expect(place('note').href).toBe('#/daybook/note');
    expect(place('check-list/scaling')).toMatchObject({
      name: 'Check list of the site: Scaling a plate',
      href: '#/site/asks/scaling',
    });
    expect(place('stop-rules').href).toBe('#/site/stop-rules');
    expect(place(`correction/${charge}`).href).toBe(`#/daybook/${charge}/correct`);
    expect(place(`strike/${charge}`).href).toBe(`#/daybook/${charge}/strike`);
    expect(place(`note/${charge}`).href).toBe(`#/daybook/${charge}/note`);
    expect(place('from-a-later-version')).toEqual({ name: 'Form “from-a-later-version”', href: undefined, touched: now });
  });

  test('entries of kinds not understood are counted and found in the daybook', () => {
    const book = BookMaker.site();
    book.add('later kind', 'dreaming' as Kind, {} as never);
    const today = day(book);
    expect(texts(today, 'not-understood')[0]).toMatch(/^1 entry of a kind this program does not know/);
    expect(today.sections.at(-1)?.items[0]?.href).toBe('#/daybook/find/kind=unknown');
  });

  test('the state reads drafts, newest first, and a broken store takes nothing away from the page', async () => {
    const rows: DraftRow[] = [
      { form: 'scale', touched: '2026-03-01T09:00+13:00', content: null },
      { form: 'note', touched: '2026-03-02T09:00+13:00', content: null },
    ];
    const book = BookMaker.site();
    const daybook = (drafts: () => Promise<readonly DraftRow[]>) =>
      ({
        book: readBook(book.entries),
        entries: book.entries,
        clock: { now: () => now },
        store: { drafts, setting: async () => undefined },
      }) as unknown as Daybook;
    const state = new TodayState(daybook(async () => rows));
    await state.look();
    expect(state.page.sections.map((s) => [s.key, s.items.map((i) => i.key)])).toEqual([['drafts', ['note', 'scale']]]);
    const broken = new TodayState(daybook(() => Promise.reject(new Error('no store'))));
    await broken.look();
    expect(broken.page.sections).toEqual([]);
    expect(broken.lastWritten).toBe(book.entries.at(-1)?.written);
  });
});

test('sections stand in the order a keeper needs them', () => {
  const { book } = fired('370.5', '484.9');
  book.lots('april', ['10'], book.bench);
  book.add('loose', 'firing', { heats: [{}], retort: book.pot });
  const found = keys(day(book, now, [{ form: 'note', touched: now, content: null }]));
  expect(found).toEqual(['safe', 'not-closed', 'loose-firings', 'drafts']);
  expect(found).toEqual(sectionKeys.filter((key) => found.includes(key)));
});
