/** Find: every word must stand in what is found, however it is written; labels come first; what is not for whoever asks is not looked in. */
import { beforeAll, describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { type Found, find, type Sought } from '../../app/core/book/find.ts';
import { type Findable, type FindNames, foundThings, readFindables } from '../../app/core/book/findable.ts';
import { folded, wordsOf } from '../../app/core/book/fold.ts';
import type { Hidden } from '../../app/core/book/may-see.ts';
import type { Entry } from '../../app/core/entry.ts';
import { BookMaker, scaled } from './book-maker.ts';

const names: FindNames = { kind: (kind) => `(${kind})`, role: (role) => `role of ${role}`, day: (day) => `day ${day}` };
const everybody: Sought = { words: '', what: '', kind: '', from: '', to: '' };
const nothing = () => false;
const all = () => true;

const of = (book: BookMaker): readonly Findable[] => readFindables(readBook(book.entries), names);
const ask = (
  items: readonly Findable[],
  words: string,
  more: Partial<Sought> = {},
  sees: (what: Hidden) => boolean = nothing,
): Found => find(items, { ...everybody, words, ...more }, sees, 100);
const hits = (found: Found): readonly string[] => found.groups.flatMap((g) => g.hits.map((h) => `${g.what} ${h.id}`));

/** A site with two lots, a bar, papers, and what is not for everybody. */
function mine() {
  const book = BookMaker.site();
  book.lots('Ball', ['955.6', '12.4'], book.bench);
  const melt = book.add('pour', 'melt', {
    sponges: [],
    added: [{ key: '1', label: 'old scrap', weight: scaled('100') }],
    bars: [{ key: '1', label: 'B 7', weight: scaled('98') }],
  });
  book.add('delivery', 'receipt', {
    way: 'bought',
    vessel: book.bottle,
    weight: scaled('500', book.bench),
    document: 'Lieferschein Nº 88, Müller',
  });
  return { book, bar: `${melt}/1` };
}

describe('how words are compared', () => {
  test('case, accents, ligatures, dashes, quotes and spaces of a keyboard make no difference', () => {
    expect(folded('Crème BRÛLÉE')).toBe('creme brulee');
    expect(folded('STRASSE')).toBe(folded('Straße'));
    expect(folded('Łódź Øre Æ')).toBe('lodz ore ae');
    expect(folded('C–14 “old”\u00a0\u202fNo')).toBe('c-14 "old" no');
    expect(folded('ΟΔΟΣ')).toBe(folded('οδος'));
    expect(folded('e\u0301')).toBe(folded('\u00e9'));
    expect(folded('１２ ﬁne')).toBe('12 fine');
  });

  test('a word said twice counts once, and marks of no width are no word', () => {
    expect(wordsOf('  Ball ball \u200b\u00ad BALL 2 ')).toEqual(['ball', '2']);
    expect(wordsOf('\u200b\u0301 \u2060')).toEqual([]);
  });
});

describe('what is found', () => {
  const { book, bar } = mine();
  const items = of(book);

  test('a lot by its label comes before the clean-up that tells of it', () => {
    expect(hits(ask(items, 'ball a'))).toEqual(['lot ball00/1', 'entry ball00']);
  });

  test('every word must match, in any order', () => {
    expect(hits(ask(items, 'a BALL'))[0]).toBe('lot ball00/1');
    expect(ask(items, 'ball nowhere').total).toBe(0);
  });

  test('bars, scales, vessels, retorts and people are found by what they are called, a person by role too', () => {
    expect(hits(ask(items, 'b 7'))[0]).toBe(`bar ${bar}`);
    expect(hits(ask(items, 'working bottle'))[0]).toBe(`vessel ${book.bottle}`);
    expect(hits(ask(items, 'bench'))[0]).toBe(`scale ${book.bench}`);
    expect(hits(ask(items, 'pot'))[0]).toBe(`retort ${book.pot}`);
    expect(hits(ask(items, 'role of keeper', { what: 'person' }))).toEqual([`person ${book.keeper}`]);
  });

  test('an entry is found by what the ids in it are called, by its kind and by its day', () => {
    expect(hits(ask(items, 'bench (clean-up)'))).toEqual(['entry ball00']);
    expect(hits(ask(items, '2026-03-01 (melt)', { what: 'entry' }))).toEqual(['entry pour00']);
  });

  test('a paper is found without its accents, before the entry that names it', () => {
    expect(hits(ask(items, 'lieferschein muller'))).toEqual(['document delivery', 'entry delivery']);
  });

  test('forms, older books and files kept beside an entry are found by name', () => {
    const { book: other } = mine();
    const last = other.entries.at(-1) as Entry;
    other.entries[other.entries.length - 1] = {
      ...last,
      form: { number: 'C-14', page: '2' },
      transcribed: { book: 'Battery book 3', page: '17' },
      evidence: [{ file: `${'ab12'.repeat(16)}.png`, shows: 'Display of the scale' }],
    };
    const them = of(other);
    expect(hits(ask(them, 'c-14'))).toEqual(['document delivery', 'entry delivery']);
    expect(hits(ask(them, 'battery book 17'))[0]).toBe('document delivery');
    expect(hits(ask(them, 'display scale'))[0]).toBe('evidence delivery');
    expect(hits(ask(them, 'ab12ab12ab'))).toEqual(['evidence delivery']);
    expect(ask(them, 'ab12ab1').total).toBe(0);
  });

  test('called just so comes first, then what begins so, then the rest, the newest first', () => {
    const many = new BookMaker();
    many.add('one', 'vessel', { label: 'Big flask 2', use: 'flask', mercury: 'mixed' });
    many.add('two', 'vessel', { label: 'Flask 2', use: 'flask', mercury: 'mixed' });
    many.add('three', 'vessel', { label: 'Flask 21', use: 'flask', mercury: 'mixed' });
    many.add('four', 'vessel', { label: 'Bottle', use: 'flask', mercury: 'mixed', note: 'flask 2 was poured in' });
    const found = ask(of(many), 'flask 2', { what: 'vessel' });
    expect(found.groups[0]?.hits.map((h) => h.label)).toEqual(['Flask 2', 'Flask 21', 'Big flask 2', 'Bottle']);
  });

  test('a single letter stands alone and figures begin a number; what is called so comes first, its sort of thing too, then words in order', () => {
    const many = new BookMaker();
    const vessel = (name: string, label: string, note?: string) =>
      many.add(name, 'vessel', { label, use: 'flask', mercury: 'mixed', ...(note === undefined ? {} : { note }) });
    vessel('loose', 'Ewer', 'twelve of 12 flasks, rack B');
    vessel('ordered', 'Jar', 'stood in rack B beside flask 12');
    vessel('phrase', 'Jug', 'came with B 12');
    vessel('inside', 'Tub', 'bought 3120 of it');
    vessel('named', 'Rack B 12');
    many.add('poured', 'melt', {
      sponges: [],
      added: [{ key: '1', label: 'old scrap', weight: scaled('100') }],
      bars: [{ key: '1', label: 'B 12', weight: scaled('98') }],
    });
    const found = ask(of(many), 'b 12');
    expect(found.groups[0]?.what).toBe('bar');
    const flasks = found.groups.find((g) => g.what === 'vessel');
    expect(flasks?.hits.map((h) => h.label)).toEqual(['Rack B 12', 'Jug', 'Jar', 'Ewer']);
    vessel('just', 'B 12');
    expect(
      ask(of(many), 'b 12')
        .groups.slice(0, 2)
        .map((g) => g.what),
    ).toEqual(['bar', 'vessel']);
  });

  test('an entry is found first by its whole id', () => {
    expect(hits(ask(items, 'delivery'))[0]).toBe('entry delivery');
  });

  test('a corrected entry is found by what it said first and by what it says now', () => {
    const { book: other } = mine();
    other.add('said', 'note', { text: 'the left valve' });
    other.add('better', 'correction', { corrects: 'said00', body: { text: 'the right valve' }, why: 'wrong side' });
    const them = of(other);
    expect(hits(ask(them, 'left valve'))).toEqual(['entry said00']);
    expect(hits(ask(them, 'right valve'))).toEqual(['entry better', 'entry said00']);
  });

  test('a lot of a struck clean-up is no lot; the struck entry itself is still found', () => {
    const { book: other } = mine();
    other.add('strike', 'strike', { strikes: 'ball00', why: 'twice' });
    expect(hits(ask(of(other), 'ball a'))).toEqual(['entry ball00']);
  });

  test('sorts, kinds and days narrow it; days are counted with both ends', () => {
    expect(hits(ask(items, 'ball', { what: 'lot' }))).toEqual(['lot ball00/1', 'lot ball00/2']);
    expect(hits(ask(items, '', { what: 'entry', kind: 'melt' }))).toEqual(['entry pour00']);
    expect(ask(items, 'ball', { from: '2026-03-01', to: '2026-03-01' }).total).toBe(3);
    expect(ask(items, 'ball', { from: '2026-03-02' }).total).toBe(0);
    expect(ask(items, 'ball', { to: '2026-02-28' }).total).toBe(0);
  });

  test('sorts stand in reading order, and more than is asked for is counted and not handed out', () => {
    const found = find(items, everybody, all, 1);
    expect(found.groups.map((g) => g.what)).toEqual(foundThings.filter((w) => found.groups.some((g) => g.what === w)));
    expect(found.groups.every((g) => g.hits.length === 1)).toBe(true);
    expect(found.groups.find((g) => g.what === 'lot')?.total).toBe(2);
    expect(found.total).toBe(items.length);
    expect(found.lookedIn).toBe(items.length);
  });
});

describe('what is not for everybody', () => {
  const { book, bar } = mine();
  const worker = book.add('worker', 'person', { name: 'Retort hand', roles: ['helper'] });
  book.add('kept', 'bar-kept', { bar, place: 'behind the third brick' });
  book.add('breath', 'air-reading', {
    sample: 'personal',
    person: worker,
    place: 'retort house, zinnober',
    from: '2026-03-01T08:00+13:00',
    unit: 'mg/m3',
    shows: '0.02',
  });
  book.add('doctor', 'check-due', { what: 'health-surveillance', person: worker, done: 'yes', next: '2026-09-09' });
  book.add('plain', 'note', { text: 'a note for all' });
  book.add('moved', 'correction', { corrects: 'plain0', body: { text: 'still for all' }, why: 'x' });
  book.add('moved-bar', 'correction', { corrects: 'kept00', body: { bar, place: 'under the fourth stair' }, why: 'x' });
  const items = of(book);
  const keeper = (what: Hidden) => what === 'bar-place';
  const officer = (what: Hidden) => what === 'personal-air';

  test('the place of a bar is found by those who may see it and by nobody else, corrections included', () => {
    for (const words of ['third brick', 'fourth stair']) {
      expect(ask(items, words).total).toBe(0);
      expect(ask(items, words, {}, officer).total).toBe(0);
      expect(ask(items, words, {}, keeper).total).toBeGreaterThan(0);
    }
  });

  test('what a person breathed and the day of a check are found by the safety officer alone', () => {
    for (const words of ['zinnober', '2026-09-09']) {
      expect(ask(items, words).total).toBe(0);
      expect(ask(items, words, {}, keeper).total).toBe(0);
      expect(ask(items, words, {}, officer).total).toBe(1);
    }
  });

  test('that something is kept back is told; how much of it would have been found is not', () => {
    const [hit, miss] = [ask(items, 'zinnober'), ask(items, 'zinnobar')];
    expect(hit).toEqual(miss);
    expect(hit.withheld).toEqual(['bar-place', 'personal-air']);
    expect(ask(items, 'zinnober', {}, all).withheld).toEqual([]);
    expect(ask(of(mine().book), 'ball').withheld).toEqual([]);
  });

  test('a correction that makes an entry tell such a thing hides the entry as well', () => {
    const { book: other } = mine();
    const area = { sample: 'area', place: 'the gallery', from: '2026-03-01T08:00+13:00', unit: 'mg/m3', shows: '0.02' } as const;
    other.add('reading', 'air-reading', area);
    other.add('at-hand', 'correction', {
      corrects: 'reading',
      body: { ...area, sample: 'personal', person: other.keeper, place: 'at the collar of the hand' },
      why: 'worn, not stood',
    });
    other.add('once-more', 'correction', {
      corrects: 'at-hand',
      body: { ...area, sample: 'personal', person: other.keeper, place: 'at the collar of the second hand' },
      why: 'wrong hand',
    });
    expect(ask(of(other), 'collar').total).toBe(0);
    expect(ask(of(other), 'collar', {}, officer).total).toBe(3);
  });
});

describe('hostile input', () => {
  const items = of(mine().book);
  const hostile = [
    '.*',
    '(((((((((((((((((((((',
    '\\',
    '%',
    '<script>alert(1)</script>',
    '__proto__ constructor toString',
    '\u202e\u0000\ud800',
    '🜚🜐',
    'a'.repeat(100_000),
    Array.from({ length: 20_000 }, (_, i) => `w${i}`).join(' '),
    '\u0301'.repeat(50_000),
  ];
  test('is looked for as it stands, quickly, and matches nothing by accident', () => {
    for (const words of hostile.slice(0, -1)) expect(ask(items, words).total, words.slice(0, 40)).toBe(0);
    // nothing but accents is no word: everything is shown, as for an empty question
    expect(ask(items, hostile.at(-1) ?? '').total).toBe(items.length);
  });

  test('a label of brackets and accents without a letter is found by itself', () => {
    const book = new BookMaker();
    book.add('odd', 'vessel', { label: '[.*] (½) é', use: 'flask', mercury: 'mixed' });
    const items = of(book);
    for (const words of ['[.*]', '(½)', 'E']) expect(ask(items, words, { what: 'vessel' }).total).toBe(1);
  });

  test('an entry of a kind not understood here is found by what stands in it', () => {
    const book = new BookMaker();
    book.add('new', 'note', { text: 'x' });
    book.entries[0] = {
      ...(book.entries[0] as Entry),
      kind: 'later-kind',
      body: { __proto__: null, deep: [{ er: 'quicksilver' }] },
    };
    expect(hits(ask(of(book), 'quicksilver'))).toEqual(['entry new000']);
  });
});

describe('a book of 20,000 entries', () => {
  let items: readonly Findable[] = [];
  let madeMs = 0;
  beforeAll(() => {
    const book = BookMaker.site();
    for (let i = 0; i < 10_000; i++) {
      const at = { happened: `${2000 + (i % 26)}-0${1 + (i % 9)}-1${i % 10}T08:00+00:00`, by: book.keeper };
      book.add(`note ${i} of many`, 'note', { text: `Remark ${i}: the crème stamp ran from the fifth hour, plates dull.` }, at);
      book.add(
        `clean-up ${i} of many`,
        'clean-up',
        { type: 'routine', lots: [{ key: '1', label: `Ball ${i}`, weight: scaled('12.5', book.bench) }] },
        at,
      );
    }
    const read = readBook(book.entries);
    const began = performance.now();
    items = readFindables(read, names);
    madeMs = performance.now() - began;
  }, 60_000);

  test('is made ready once in seconds at most, and each question after that is answered while one types', () => {
    expect(items.length).toBeGreaterThan(30_000);
    expect(madeMs).toBeLessThan(5000);
    for (const words of ['ball 9999', 'creme remark', 'no such word', 'e', 'keeper bench 2004']) {
      const began = performance.now();
      ask(items, words);
      expect(performance.now() - began, words).toBeLessThan(500);
    }
  });

  test('the lot that is called just so comes first among thousands', () => {
    expect(ask(items, 'Ball 7').groups[0]?.hits[0]?.label).toBe('Ball 7');
    expect(ask(items, 'Ball 9999').total).toBe(2);
  });
});
