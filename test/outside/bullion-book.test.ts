/** Bars of a book against worked examples whose sources the data names: fineness with its uncertainty, silver, density, fine metal, joined bars. */
import { expect, test } from 'vitest';
import { assayFigures } from '../../app/core/assay.ts';
import { assayU } from '../../app/core/assay-u.ts';
import { type Bar, barsOf } from '../../app/core/book/bars.ts';
import { readBook } from '../../app/core/book/book.ts';
import { decimalFromText, zero } from '../../app/core/decimal.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { uOf } from '../../app/core/measured.ts';
import { type Ratio, toDouble } from '../../app/core/ratio.ts';
import { BookMaker, stated } from '../core/book-maker.ts';
import { marks, printed } from './cases.ts';
import data from './data/bullion-book.json' with { type: 'json' };

const gramsInOunce = 31.1034768;
const gramsInGrain = 0.06479891;

/** Meets the printed figure to half of its last place. */
function meets(value: number, text: string): void {
  const { value: wanted, half } = printed(text);
  expect(Math.abs(value - wanted), `${value} against ${text}`).toBeLessThanOrEqual(half);
}
const number = (r: Ratio | null | undefined): number => (r ? toDouble(r) : Number.NaN);

/** One bar of old metal with the assays given. */
function bar(weight: Body<'melt'>['bars'][number]['weight'], ...assays: Record<string, unknown>[]): Bar {
  const book = BookMaker.site();
  const melt = book.add('melt one', 'melt', {
    sponges: [],
    added: [{ key: '9', label: 'old metal', weight: stated('2000', '0.1') }],
    bars: [{ key: '1', label: 'Bar 1', weight }],
  });
  for (const [i, assay] of assays.entries())
    book.add(`assay ${i}`, 'assay', { subject: 'bar', bar: `${melt}/1`, ...assay } as Body<'assay'>);
  const found = barsOf(readBook(book.entries)).all.get(`${melt}/1`);
  if (!found) throw new Error('the bar is there');
  return found;
}

const { proofed } = data;
const fire = {
  method: 'fire-assay',
  replicates: proofed.replicates,
  proofs: proofed.proofs,
  balanceU: proofed.balanceU,
  repeatability: proofed.repeatability,
  proofScatter: proofed.proofScatter,
};
const stands = stated(proofed.bar.grams, proofed.bar.u);

test('every example says who printed it and how it came here', () => {
  for (const source of Object.values(data)) {
    for (const field of ['author', 'title', 'edition', 'page'] as const) expect(source[field]).toMatch(/\S/);
    expect(marks).toContain(source.mark);
  }
});

test('duplicates beside two proofs: fineness, each term of its uncertainty, and fine gold (WE-18)', () => {
  const one = bar(stands, fire);
  meets(number(one.gold?.permille), proofed.goldPermille);
  meets(uOf({ ug: 0, parts: one.gold?.parts ?? new Map() }), proofed.u);
  meets(number(one.fineGold?.grams), proofed.fineGold);
  meets(uOf(one.fineGold?.net ?? { ug: 0, parts: new Map() }) / 1e6, proofed.fineU);
  meets(number(one.assays[0]?.fire?.surcharge), proofed.surcharge);
  expect([one.gold?.class, one.gold?.uKnown, one.gold?.samplingKnown]).toEqual(['proofed', true, false]);
  const mg = (text: string) => decimalFromText(text.replace(' mg', '')) ?? zero;
  const samples = proofed.replicates.map((r) => ({ sample: mg(r.sample), cornet: mg(r.cornet) }));
  const proofs = proofed.proofs.map((p) => ({ taken: mg(p.taken), found: mg(p.found) }));
  const u = assayU(samples, proofs, assayFigures(samples, proofs), { balanceU: 0.01, repeatability: 0.15, proofScatter: 0.12 });
  const terms = new Map(u.terms);
  meets(terms.get('cornet') ?? 0, proofed.cornetU);
  // printed at the nominal fineness: the exact derivative at the fineness found differs in the seventh place
  expect(((terms.get('sample') ?? 0) * 885.0) / Number(proofed.goldPermille)).toBeCloseTo(Number(proofed.sampleU), 7);
  meets(terms.get('delta') ?? 0, proofed.deltaU);
});

test('sampling is a term of its own, and where it is large it rules (WE-18)', () => {
  const one = bar(stands, { ...fire, sampling: { method: 'drill', u: proofed.samplingU } });
  meets(uOf(one.fineGold?.net ?? { ug: 0, parts: new Map() }) / 1e6, proofed.fineUWithSampling);
  expect([...(one.gold?.parts ?? [])].filter(([source]) => source.startsWith('sampling:')).map(([, u]) => u)).toEqual([0.8]);
});

test('silver is by difference with the loss of the proofs, base what is left; a direct titration goes before it (WE-19)', () => {
  const { bead, beadSample, silverLoss, silver, base, titration, titrated } = data.silver;
  // the cornet of the bead's sample at the fineness of WE-18, so that gold stays what it is there
  const cornet = `${(0.885023989865 * 250.1 + 0.075).toFixed(6)} mg`;
  const withBead = {
    ...fire,
    replicates: [{ sample: beadSample, cornet, bead }],
    proofs: proofed.proofs.map((p) => ({ ...p, silverLoss })),
  };
  const one = bar(stands, withBead);
  meets(number(one.gold?.permille), proofed.goldPermille);
  expect(number(one.silver?.permille)).toBeCloseTo(Number(silver), 4);
  expect(number(one.base)).toBeCloseTo(Number(base), 4);
  const both = bar(stands, withBead, { method: 'titration', titrations: [titration] });
  meets(number(both.silver?.permille), titrated);
  expect([both.silver?.class, both.gold?.class]).toEqual(['titration', 'proofed']);
});

test('a density gives an indication, with no uncertainty and behind every assay (WE-27)', () => {
  const { air, water, waterDensity, density, goldPermille } = data.density;
  const weighed = { method: 'density', air, water, waterDensity, other: 'silver' };
  const one = bar(stands, weighed);
  meets(number(one.gold?.permille), goldPermille);
  meets(number(one.assays[0]?.density?.density), density);
  expect([one.gold?.class, one.gold?.indicative, one.fineGold?.uKnown, one.silver]).toEqual(['indicative', true, false, null]);
  expect(bar(stands, weighed, fire).gold?.class).toBe('proofed');
});

test('401.125 oz at 995.8 hold 399.440275 oz, unrounded (WE-21)', () => {
  const { bar: mass, goldPermille, fineOz } = data.goodDelivery;
  const one = bar({ how: 'stated', mass }, { method: 'outside', result: { unit: 'permille', gold: goldPermille } });
  expect(number(one.fineGold?.grams) / gramsInOunce).toBeCloseTo(Number(fineOz), 9);
  expect(one.gold?.class).toBe('certificate');
});

/** Bars of certificates melted together into bars of those masses. */
function joined(bars: readonly { mass: string; gold: string; silver?: string }[], into: readonly string[]) {
  const book = BookMaker.site();
  const first = book.add('first melt', 'melt', {
    sponges: [],
    added: [{ key: 'x', label: 'old metal', weight: { how: 'stated', mass: '100 kg' } }],
    bars: bars.map(({ mass }, i) => ({
      key: String(i + 1),
      label: `Bar ${i + 1}`,
      weight: { how: 'stated' as const, mass, u: '0.01 g' },
    })),
  });
  for (const [i, { gold, silver }] of bars.entries())
    book.add(`certificate ${i}`, 'assay', {
      subject: 'bar',
      bar: `${first}/${i + 1}`,
      method: 'outside',
      result: { unit: 'permille', gold, ...(silver === undefined ? {} : { silver }), goldU: '0.2', silverU: '0.5' },
    });
  const second = book.add('second melt', 'melt', {
    sponges: [],
    added: bars.map(({ mass }, i) => ({
      key: `b${i}`,
      label: `Bar ${i + 1}`,
      weight: { how: 'stated' as const, mass, u: '0.01 g' },
      bar: `${first}/${i + 1}`,
    })),
    bars: into.map((mass, i) => ({ key: String(i + 1), label: `Joined ${i + 1}`, weight: { how: 'stated', mass, u: '0.01 g' } })),
  });
  const read = barsOf(readBook(book.entries));
  return into.map((_, i) => read.all.get(`${second}/${i + 1}`) as Bar);
}

test('joined bars weigh in by mass: not the plain mean (W12)', () => {
  const { bars, mass, gold, silver, plainMean } = data.joined;
  const [one] = joined(bars, [mass]);
  meets(number(one?.gold?.permille), gold);
  meets(number(one?.silver?.permille), silver);
  expect(Math.abs(number(one?.gold?.permille) - Number(plainMean))).toBeGreaterThan(10);
  expect(one?.gold?.class).toBe('by-parts');
});

test('a bar melted again that lost base and no gold is finer by its loss (W3)', () => {
  const { first, firstGold, fineGold, second, secondGold } = data.baseAmalgam;
  const [one] = joined([{ mass: first, gold: firstGold }], [second]);
  meets(number(one?.fineGold?.grams) / gramsInGrain, fineGold);
  expect(number(one?.gold?.permille)).toBeCloseTo(Number(secondGold), 0);
});
