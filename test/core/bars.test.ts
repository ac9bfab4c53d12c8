/** Bars of a book: which assay speaks, what became of them, what cannot be and is named; and that melting together and apart loses no fine metal. */
import { describe, expect, test } from 'vitest';
import { barsOf, fineOf } from '../../app/core/book/bars.ts';
import { readBook } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import { draftFrom } from '../../app/core/kinds/index.ts';
import { uOf } from '../../app/core/measured.ts';
import { compareRatio, toDouble } from '../../app/core/ratio.ts';
import { flagText } from '../../app/words/flags.ts';
import { BookMaker, stated } from './book-maker.ts';

type Made = ReturnType<typeof BookMaker.site>;

/** Old metal poured into bars of these grams; answers their ids. */
function poured(book: Made, name: string, grams: readonly string[]): string[] {
  const melt = book.add(name, 'melt', {
    sponges: [],
    added: [{ key: 'old', label: 'old metal', weight: stated('5000', '0.1') }],
    bars: grams.map((g, i) => ({ key: String(i + 1), label: `${name} ${i + 1}`, weight: stated(g, '0.05') })),
  });
  return grams.map((_, i) => `${melt}/${i + 1}`);
}

const certified = (book: Made, name: string, bar: string, gold: string, silver = '100') =>
  book.add(name, 'assay', {
    subject: 'bar',
    bar,
    method: 'outside',
    result: { unit: 'permille', gold, silver, goldU: '0.3', silverU: '0.6', k: 2 },
    laboratory: name,
  });

const read = (book: Made) => {
  const all = readBook(book.entries);
  return { book: all, bars: barsOf(all) };
};
const codes = (book: Made, id: string) => (readBook(book.entries).flags.get(id) ?? []).map((f) => f.code);

describe('which assay speaks for a bar', () => {
  test('a certificate goes before the site’s own, and two of a kind before one another by their mean', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    book.add('own', 'assay', {
      subject: 'bar',
      bar,
      method: 'fire-assay',
      replicates: [{ sample: '250 mg', cornet: '200 mg' }],
      proofs: [{ taken: '200 mg', found: '200 mg' }],
    });
    expect(toDouble(read(book).bars.all.get(bar)?.gold?.permille ?? { n: 0n, d: 1n })).toBe(800);
    certified(book, 'first laboratory', bar, '801.0');
    certified(book, 'second laboratory', bar, '802.0');
    const gold = read(book).bars.all.get(bar)?.gold;
    expect(toDouble(gold?.permille ?? { n: 0n, d: 1n })).toBe(801.5);
    // U 0.3 at k 2 is u 0.15 each; of the mean of two 0.15/√2
    expect(uOf({ ug: 0, parts: gold?.parts ?? new Map() })).toBeCloseTo(0.15 / Math.SQRT2, 12);
    expect(gold?.assays).toHaveLength(2);
  });

  test('a fire assay without proofs stands uncorrected, its uncertainty unknown, and is flagged', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    const assay = book.add('own', 'assay', {
      subject: 'bar',
      bar,
      method: 'fire-assay',
      replicates: [
        { sample: '250 mg', cornet: '200.0 mg' },
        { sample: '250 mg', cornet: '200.3 mg' },
      ],
      limit: '1.0',
      balanceU: '0.01 mg',
    });
    expect(read(book).bars.all.get(bar)?.gold).toMatchObject({ class: 'unproofed', uKnown: false });
    expect(codes(book, assay)).toEqual(expect.arrayContaining(['assay-no-proofs', 'replicates-apart']));
  });

  test('silver by difference without the loss of proofs is kept as it reads and flagged; with it, it is not', () => {
    const flagged = (proof: object) => {
      const book = BookMaker.site();
      const [bar = ''] = poured(book, 'melt one', ['500']);
      const assay = book.add('own', 'assay', {
        subject: 'bar',
        bar,
        method: 'fire-assay',
        replicates: [{ sample: '250 mg', cornet: '200 mg', bead: '225 mg' }],
        proofs: [{ taken: '200 mg', found: '200 mg', ...proof }],
      });
      const silver = read(book).bars.all.get(bar)?.silver?.permille;
      return [codes(book, assay), silver && toDouble(silver)];
    };
    expect(flagged({})).toEqual([['silver-uncorrected'], 100]);
    expect(flagged({ silverLoss: '2.5 mg' })).toEqual([[], 110]);
  });

  test('replicates exactly at the limit are within it', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    const assay = book.add('own', 'assay', {
      subject: 'bar',
      bar,
      method: 'fire-assay',
      replicates: [
        { sample: '250 mg', cornet: '200.00 mg' },
        { sample: '250 mg', cornet: '200.125 mg' },
      ],
      limit: '0.5',
    });
    expect(codes(book, assay)).not.toContain('replicates-apart');
  });

  test('gold and silver over 1000 are kept, the base is negative, and it is named', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    const assay = certified(book, 'a laboratory', bar, '950', '60');
    const { bars } = read(book);
    expect(toDouble(bars.all.get(bar)?.base ?? { n: 0n, d: 1n })).toBe(-10);
    expect(codes(book, assay)).toContain('assay-over-1000');
    for (const flag of bars.flags) expect(flagText(flag)).toMatch(/\.$/);
  });

  test('gold of one assay and silver of another over 1000 are named too', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    book.add('gold only', 'assay', {
      subject: 'bar',
      bar,
      method: 'outside',
      result: { unit: 'permille', gold: '950' },
    });
    const titrated = book.add('silver only', 'assay', {
      subject: 'bar',
      bar,
      method: 'titration',
      titrations: [{ sample: '2500.4 mg', volumeMl: '23.17', normality: '0.1002' }],
    });
    expect(codes(book, titrated)).toEqual(['bar-over-1000']);
  });
});

describe('what became of a bar', () => {
  const leave = (book: Made, name: string, bar: string, way: 'out' | 'in', day: string) =>
    book.add(
      name,
      'transfer',
      { way, what: 'bar', party: 'a buyer', bar, document: 'D 1' },
      { happened: `2026-04-${day}T09:00+13:00` },
    );
  const melted = (book: Made, name: string, bar: string, day: string) =>
    book.add(
      name,
      'melt',
      {
        sponges: [],
        added: [{ key: 'a', label: 'the bar', weight: stated('500', '0.05'), bar }],
        bars: [{ key: '1', label: name, weight: stated('499', '0.05') }],
      },
      { happened: `2026-04-${day}T09:00+13:00` },
    );

  test('it is here until it leaves, and here again when it comes back', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    const fate = () => read(book).bars.all.get(bar)?.fate;
    expect(fate()).toBe('here');
    leave(book, 'sold', bar, 'out', '02');
    expect(fate()).toBe('left');
    leave(book, 'back', bar, 'in', '03');
    expect(fate()).toBe('here');
    const melt = melted(book, 'again', bar, '04');
    expect(fate()).toBe('melted');
    expect(codes(book, melt)).not.toContain('bar-left-melted');
  });

  test('a bar that had left and is melted is kept and flagged; so is one handed over twice', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    leave(book, 'sold', bar, 'out', '02');
    const twice = leave(book, 'sold again', bar, 'out', '03');
    const melt = melted(book, 'again', bar, '04');
    expect(codes(book, twice)).toContain('bar-left-twice');
    expect(codes(book, melt)).toContain('bar-left-melted');
  });

  test('a bar cannot be melted twice, or be one nobody poured', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    melted(book, 'again', bar, '04');
    const refused = (id: string) => {
      const got = draftFrom({
        id: 'the-new-entry',
        happened: '2026-04-05T09:00+13:00',
        by: null,
        kind: 'melt',
        body: { sponges: [], added: [{ key: 'a', label: 'x', weight: stated('1', '0.1'), bar: id }], bars: [] },
      });
      return got.ok ? checkDraft(readBook(book.entries), got.value, '2026-04-06T09:00+13:00').map((p) => p.code) : ['shape'];
    };
    expect(refused(bar)).toEqual(['bar-melted']);
    expect(refused('melt-one/7')).toEqual(['unknown-id']);
  });

  test('a ring of melts, which corrections can make, ends: nobody knows such a bar by its parts', () => {
    const book = BookMaker.site();
    const ring = (name: string, from: string) => ({
      sponges: [],
      added: [{ key: 'a', label: 'x', weight: stated('500', '0.05'), bar: from }],
      bars: [{ key: '1', label: name, weight: stated('500', '0.05') }],
    });
    book.add('ring one', 'melt', ring('one', 'ring-two/1'));
    book.add('ring two', 'melt', ring('two', 'ring-one/1'));
    const { bars } = read(book);
    expect([...bars.all.values()].map((b) => b.gold)).toEqual([null, null]);
  });
});

describe('melting together and apart', () => {
  // a small generator of its own, so that a failure can be run again
  const numbers = (seed: number) => {
    let state = seed;
    return (below: number) => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return state % below;
    };
  };

  test.each(Array.from({ length: 25 }, (_, i) => i + 1))('keeps fine gold and silver exactly, and their errors (%i)', (seed) => {
    const next = numbers(seed * 7919);
    const book = BookMaker.site();
    const masses = Array.from({ length: 2 + next(4) }, () => 1000 + next(400000));
    const text = (hundredths: number) => (hundredths / 100).toFixed(2);
    const bars = poured(book, 'melt one', masses.map(text));
    for (const [i, bar] of bars.entries())
      certified(book, `laboratory ${i}`, bar, (700 + next(2500) / 10).toFixed(1), (next(400) / 10).toFixed(1));
    const whole = masses.reduce((s, m) => s + m, 0);
    const cut = 1 + next(whole - 1);
    const into = [cut, whole - cut];
    const second = book.add('second melt', 'melt', {
      sponges: [],
      added: bars.map((bar, i) => ({ key: `b${i}`, label: 'bar', weight: stated(text(masses[i] ?? 0), '0.05'), bar })),
      bars: into.map((m, i) => ({ key: String(i + 1), label: `Split ${i}`, weight: stated(text(m), '0.05') })),
    });
    const { all } = read(book).bars;
    const of = (ids: readonly string[]) => ids.flatMap((id) => all.get(id) ?? []);
    for (const metal of ['fineGold', 'fineSilver'] as const) {
      const before = fineOf(of(bars), metal);
      const after = fineOf(of([`${second}/1`, `${second}/2`]), metal);
      if (!before || !after) throw new Error('both are known');
      expect(compareRatio(before.grams, after.grams)).toBe(0);
      expect(after.net.ug).toBeCloseTo(before.net.ug, 2);
      // what the laboratories' errors add is the same before and after; weighings in differ, so only those sources are compared
      for (const [source, u] of before.net.parts)
        if (source.startsWith('assay:')) expect(after.net.parts.get(source)).toBeCloseTo(u, 3);
    }
  });

  test('metal that nobody assayed leaves the bar unknown, never as fine as the rest', () => {
    const book = BookMaker.site();
    const [bar = ''] = poured(book, 'melt one', ['500']);
    certified(book, 'a laboratory', bar, '900');
    const second = book.add('second melt', 'melt', {
      sponges: [],
      added: [
        { key: 'a', label: 'bar', weight: stated('500', '0.05'), bar },
        { key: 'b', label: 'prills', weight: stated('5', '0.05') },
      ],
      bars: [{ key: '1', label: 'Mixed', weight: stated('504', '0.05') }],
    });
    expect(read(book).bars.all.get(`${second}/1`)).toMatchObject({ gold: null, fineGold: null, base: null });
  });
});
