/** Old examples of the trade, each from the source its data names: what plates took up, a partial clean-up, a tally of doses, scale, a cleaning. */
import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { goldInStrained } from '../../app/core/book/gold.ts';
import { massFromText, troyText } from '../../app/core/mass.ts';
import { reckon } from '../../app/core/reckon/index.ts';
import { BookMaker, stated } from '../core/book-maker.ts';
import data from './data/trade.json' with { type: 'json' };

const grams = (text: string): number => {
  const got = massFromText(text, '');
  if (!got.ok) throw new Error(text);
  return got.value.ug / 1e6;
};

const reckoned = (topic: string, input: unknown): Record<string, unknown> => {
  const got = reckon(topic, input);
  if (!got.ok) throw new Error(JSON.stringify(got.problems));
  return got.value;
};

test('gold taken up by a plate, counted in grains, reads as ounces and pennyweights (practice W1)', () => {
  const { feet, grainsPerSquareInch, grains, printed } = data.plateCuring;
  const squareInches = (feet[0] ?? 0) * (feet[1] ?? 0) * 144;
  for (const [i, rate] of grainsPerSquareInch.entries()) {
    expect(squareInches * rate).toBe(grains[i]);
    const mass = massFromText(`${grains[i]} gr`, '');
    expect(mass.ok && troyText(mass.value.grams)).toBe(printed[i]);
  }
});

test('gold of the plates alone is a fraction of the crushing and is not its yield (practice W4)', () => {
  const { amalgamOz, goldOz, longTons, dwtPerLongTon } = data.partialCleanUp;
  const run = reckoned('run', {
    kind: 'amalgam',
    charge: [`${amalgamOz} ozt`],
    firings: [{ sponge: `${goldOz} ozt`, mercury: '65 ozt' }],
  });
  expect(run.sponge_ratio).toBe(0.35);
  const got = reckoned('yield', { bar: `${goldOz} ozt`, gold_permille: 1000, ore: `${longTons} long-ton` });
  expect((got.gross_dwt_long_ton as number).toFixed(2)).toBe(dwtPerLongTon);
});

test('a tally of doses is held against the weight, and a fluid ounce taken for a troy ounce is asked about (practice W5)', () => {
  const { mortars, hours, phials, byTroyOunce, byFluidOunce } = data.doseTally;
  expect(mortars * hours).toBe(phials);
  const flagged = (weight: string) => {
    const book = BookMaker.site();
    book.add('stock', 'receipt', {
      vessel: book.bottle,
      weight: { how: 'stated', mass: '40 kg', u: '1 g' },
      way: 'already-here',
    });
    const id = book.add('a shift', 'issue', {
      vessel: book.bottle,
      to: 'mortar',
      weight: { how: 'stated', mass: weight, u: '1 g' },
      doses: { count: phials, each: '2 ozt' },
    });
    return (readBook(book.entries).flags.get(id) ?? []).map((f) => f.code);
  };
  expect(flagged(byTroyOunce)).not.toContain('doses-differ');
  expect(flagged(byFluidOunce)).toContain('doses-differ');
});

test('gold scaled off the plates, by area (practice W6)', () => {
  const { fineOz, squareFeet, gramsPerSquareMetre, ozPerSquareFoot } = data.scaleGold;
  expect(grams(`${fineOz} ozt`) / (squareFeet * 0.09290304)).toBeCloseTo(gramsPerSquareMetre, 5);
  expect(Number(fineOz) / squareFeet).toBeCloseTo(ozPerSquareFoot, 7);
});

test('a cleaning closes to its handling loss, and its strained mercury carries gold as a range (practice W11)', () => {
  const { dirty, mercury, skimmings, squeezed, strained, outG, handlingG, goldAt } = data.cleaningClosure;
  expect(Number(skimmings) + Number(squeezed) + Number(strained)).toBe(outG);
  const book = BookMaker.site();
  const jar = book.add('jar', 'vessel', { label: 'Jar', use: 'jar', mercury: 'strained' });
  book.add('stock', 'receipt', { vessel: book.bottle, weight: stated('2000', '0'), way: 'already-here' });
  book.add('cleaning', 'cleaning', {
    dirty: { weight: stated(dirty, '0.1'), from: 'plates' },
    added: { weight: stated(mercury, '0.1'), vessel: book.bottle },
    made: [{ key: '1', label: 'clean', weight: stated(squeezed, '0.1') }],
    strained: { weight: stated(strained, '0.1'), vessel: jar },
    skimmings: { weight: stated(skimmings, '0.1') },
  });
  const got = readBook(book.entries);
  expect(got.movements.bounds.map((b) => b.highUg / 1e6)).toEqual([handlingG]);
  for (const [share, gold] of Object.entries(goldAt)) expect(Number(strained) * Number(share)).toBeCloseTo(gold, 2);
  expect(Object.keys(goldAt)).toContain(String(goldInStrained.from));
  expect(Object.keys(goldAt)).toContain(String(goldInStrained.to));
});

test('the value of a bar is worked out to the end and rounded once; the printed one comes of rounding the price first (methods WE-23)', () => {
  const { gold, silver } = data.valueOfBars;
  const held = (bar: string, permille: number) => reckoned('yield', { bar, gold_permille: permille }).fine_gold_g as number;
  const unit = (of: string) => reckoned('mass', { mass: `1 ${of}`, to: ['g'] }).g as number;
  const fineOz = held(`${gold.ounces} ${gold.unit}`, gold.permille) / unit(gold.unit);
  expect((fineOz * Number(gold.price)).toFixed(6)).toBe(gold.once);
  // their way: the price of an ounce so fine, rounded to cents, times the ounces, rounded again
  expect(reckoned('round', { text: '18.25596', places: 2 }).text).toBe(gold.priceTimesFineness);
  expect(reckoned('round', { text: String(Number(gold.priceTimesFineness) * Number(gold.ounces)), places: 2 }).text).toBe(
    gold.printed,
  );
  expect(((fineOz * unit('oz-av') * 4800) / 232.2 / unit('ozt')).toFixed(6)).toBe(gold.byMint);
  const finePounds = held(silver.mass, silver.permille) / unit('lb');
  expect((finePounds * Number(silver.price)).toFixed(6)).toBe(silver.once);
  expect(Number(silver.printed)).not.toBeCloseTo(Number(silver.once), 1);
});

test('a mixture has the density that makes it this mixture again; rounding its volumes on the way moves it by half a per cent (methods WE-25)', () => {
  const { gold, silver, part, printed, volumes, once } = data.mixedDensity;
  const density = 1 / (Number(part) / Number(gold) + (1 - Number(part)) / Number(silver));
  expect(density.toFixed(6)).toBe(once);
  expect((1 / volumes.reduce((s, v) => s + Number(v), 0)).toFixed(3)).toBe(printed);
  // weighed in a liquid of density 1 without air, a gram of it loses 1 / density
  const reading = (rho: string) =>
    reckoned('density', { air_g: 1, water_g: 1 - 1 / Number(rho), water_density: 1, air_density: 0, other: 'silver' })
      .gold_permille as number;
  // the program's own constants, 19.32 and 10.49, are two parts in a thousand from theirs
  expect(Math.abs(reading(once) - 750)).toBeLessThan(2);
  expect(Math.abs(reading(printed) - 750)).toBeGreaterThan(4);
});

test('every example says who printed it, where, and how it came here', () => {
  for (const source of Object.values(data))
    for (const field of ['author', 'title', 'edition', 'page', 'mark'] as const) expect(source[field]).toMatch(/\S/);
});
