/** Prills and slag of melts: stock until a pot takes them, once. And the shrinkage between its bounds. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { leftOverOf } from '../../app/core/book/melt-stock.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import { decimalFromText, toText, zero } from '../../app/core/decimal.ts';
import { type Body, draftFrom } from '../../app/core/kinds/index.ts';
import { meltBounds, meltFigures } from '../../app/core/melt.ts';
import { BookMaker, stated } from './book-maker.ts';

const old = (grams: string) => ({ key: 'a1', label: 'old metal', weight: stated(grams, '0.1') });
function site() {
  const book = BookMaker.site();
  const first = book.add('first melt', 'melt', {
    sponges: [],
    added: [old('100')],
    bars: [{ key: 'b1', label: 'W 1', weight: stated('96', '0.1') }],
    prills: stated('1.5', '0.1'),
    slag: stated('20', '0.1'),
  });
  const bare = book.add('bare melt', 'melt', {
    sponges: [],
    added: [old('50')],
    bars: [{ key: 'b1', label: 'W 2', weight: stated('49', '0.1') }],
    prills: stated('0', '0.1'),
  });
  return { book, first, bare };
}
const prillsOf = (melt: string, grams = '1.5') => ({ key: 'p1', label: 'prills', weight: stated(grams, '0.1'), prills: melt });

function refused(book: BookMaker, body: Partial<Body<'melt'>>): readonly string[] {
  const got = draftFrom({
    id: 'the-new-entry',
    happened: '2026-04-05T09:00+13:00',
    by: null,
    kind: 'melt',
    body: { sponges: [], bars: [], ...body },
  });
  if (!got.ok) return ['shape'];
  return checkDraft(readBook(book.entries), got.value, '2026-04-06T09:00+13:00').map((p) => `${p.code} ${p.field}`);
}

describe('prills and slag', () => {
  test('are in stock until a melt takes them; what weighed nothing never was', () => {
    const { book, first } = site();
    const stock = (what: 'prills' | 'slag') => leftOverOf(readBook(book.entries), what).map(({ melt }) => melt.id);
    expect([stock('prills'), stock('slag')]).toEqual([[first], [first]]);
    book.add('again', 'melt', { sponges: [], added: [prillsOf(first)], slags: [{ melt: first }], bars: [] });
    expect([stock('prills'), stock('slag')]).toEqual([[], []]);
  });

  test('go into a pot once, and only those that a melt wrote down', () => {
    const { book, first, bare } = site();
    expect(refused(book, { added: [prillsOf(first)] })).toEqual([]);
    expect(refused(book, { slags: [{ melt: first }] })).toEqual([]);
    expect(refused(book, { added: [prillsOf(first), { ...prillsOf(first), key: 'p2' }] })).toEqual([
      'prills-melted body.added[1].prills',
    ]);
    expect(refused(book, { slags: [{ melt: bare }] })).toEqual(['no-slag body.slags[0].melt']);
    book.add('again', 'melt', { sponges: [], added: [prillsOf(first)], slags: [{ melt: first }], bars: [] });
    expect(refused(book, { added: [prillsOf(first)], slags: [{ melt: first }] })).toEqual([
      'prills-melted body.added[0].prills',
      'slag-melted body.slags[0].melt',
    ]);
    expect(refused(book, { added: [prillsOf('no-such-melt')] })).toContain('unknown-id body.added[0].prills');
  });

  test('old slag is no metal: a bar heavier than the metal that went in with it is not marked', () => {
    const { book, first } = site();
    const heavy = (name: string, slags: Body<'melt'>['slags']) =>
      book.add(name, 'melt', {
        sponges: [],
        added: [old('10')],
        ...(slags ? { slags } : {}),
        bars: [{ key: 'b1', label: name, weight: stated('11', '0.1') }],
      });
    const [without, withSlag] = [heavy('without slag', undefined), heavy('with slag', [{ melt: first }])];
    const { flags } = readBook(book.entries);
    expect((flags.get(without) ?? []).map((f) => f.code)).toContain('bars-over-melt');
    expect((flags.get(withSlag) ?? []).map((f) => f.code)).not.toContain('bars-over-melt');
  });
});

describe('the shrinkage of a melt', () => {
  const d = (text: string) => decimalFromText(text) ?? zero;
  const bounds = (sponge: string, bar: string, prills?: string) => {
    const weighed = prills === undefined ? undefined : d(prills);
    const got = meltBounds(meltFigures({ sponge: [d(sponge)], bars: [d(bar)], prills: weighed }), weighed);
    return got && [toText(got.leastInSlag), toText(got.most)];
  };

  test('could each be all mercury, all dirt or all slag; the prills are the least that was in the slag', () => {
    expect(bounds('365', '350')).toEqual(['0', '15']);
    expect(bounds('365', '350', '3.1')).toEqual(['3.1', '15']);
  });

  test('has no bounds where nothing shrank, and prills over all that shrank say nothing', () => {
    expect(bounds('365', '365')).toBeNull();
    expect(bounds('365', '366')).toBeNull();
    expect(bounds('365', '364', '3')).toEqual(['0', '1']);
  });
});
