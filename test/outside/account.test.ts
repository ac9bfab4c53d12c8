/** Accounts of others and worked examples, by the values that books are made of: each names its source. */
import { expect, test } from 'vitest';
import { accountOf, perTonne } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { doubtsOf } from '../../app/core/book/doubts.ts';
import { stocksAt } from '../../app/core/book/movements/gathering.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import { circuitPlace, vesselPlace } from '../../app/core/book/places.ts';
import { sequenceTest } from '../../app/core/book/sequence.ts';
import { massFromText } from '../../app/core/mass.ts';
import { type Measured, measured, scaled, total, uOf } from '../../app/core/measured.ts';
import { BookMaker } from '../core/book-maker.ts';
import { marks, printed } from './cases.ts';
import data from './data/account.json' with { type: 'json' };

const ug = (text: string): number => {
  const got = massFromText(text, '');
  if (!got.ok) throw new Error(text);
  return got.value.ug;
};

/** Meets the printed figure to half of its last place. */
function meets(value: number, text: string): void {
  const { value: wanted, half } = printed(text);
  expect(Math.abs(value - wanted), `${value} against ${text}`).toBeLessThanOrEqual(half);
}

test('every example says who printed it, where, and how it came here', () => {
  for (const [name, { source }] of Object.entries(data)) {
    for (const field of ['author', 'title', 'edition', 'page'] as const) expect(source[field], name).toMatch(/\S/);
    expect(marks, name).toContain(source.mark);
    if (source.mark === 'read') expect((source as { where?: string }).where, name).toMatch(/\S/);
  }
});

test('the ounces of a test of 1893 add up as printed, and its silver has a part nobody accounts for (WE-3)', () => {
  const { head, tailings, goldRecovery, silverByDifference, printedSilverSaving } = data.mineTest;
  // each mass is read to the whole microgram
  for (const { gold, silver, sum } of [head, tailings]) expect(Math.abs(ug(gold) + ug(silver) - ug(sum))).toBeLessThanOrEqual(1);
  meets(((ug(head.gold) - ug(tailings.gold)) / ug(head.gold)) * 100, goldRecovery);
  const silver = ((ug(head.silver) - ug(tailings.silver)) / ug(head.silver)) * 100;
  meets(silver, silverByDifference);
  expect(silver).toBeGreaterThan(Number(printedSilverSaving) + 3);
});

test('of the mercury released at Gympie the share said to have gone to the air (WE-7)', () => {
  const { released, toAir, sharePercent } = data.releasedToAir;
  meets((ug(toAir) / ug(released)) * 100, sharePercent);
});

test('ten flasks over one scale are in error together (WE-1)', () => {
  const { flasks, netG, spanU, randomU, u, wrongIfIndependent } = data.tenFlasks;
  const all = Array.from({ length: flasks }, (_, i) =>
    measured(netG, [
      [`flask ${i}`, randomU],
      ['scale:platform', netG * spanU],
    ]),
  );
  const sum = total(all);
  meets(uOf(sum), u);
  const shared = sum.parts.get('scale:platform') ?? 0;
  expect(shared).toBeCloseTo(68.94, 6);
  expect(shared).toBeGreaterThan(3 * Number(wrongIfIndependent));
});

test('one period of grouped errors: the unaccounted, its error, and what makes it (WE-4)', () => {
  const { items, unaccounted, u, wrongIfIndependent, platesU, tailingsU } = data.onePeriod;
  const sum = total(
    items.map(({ sign, g, u: own, source, relative }, i) =>
      scaled(
        measured(g, [
          [`item ${i}`, own],
          [source, g * relative],
        ]),
        sign,
      ),
    ),
  );
  meets(sum.ug, unaccounted);
  meets(uOf(sum), u);
  expect(uOf(sum)).toBeLessThan(Number(wrongIfIndependent) / 3);
  const doubts = doubtsOf(readBook([]), sum);
  const uFrom = (of: string) => Math.sqrt(doubts.find((d) => d.of === of)?.variance ?? Number.NaN);
  meets(uFrom('plates'), platesU);
  meets(uFrom('tailings'), tailingsU);
  expect(doubts.reduce((s, d) => s + d.share, 0)).toBeCloseTo(1, 12);
});

test('six periods none of which shows anything alone raise the alarm in the fifth, by what their values share (WE-5)', () => {
  const { differencesG, inventoryU, throughputU, sharedU, y, page, threshold, signalAt, cumulativeG, cumulativeU } =
    data.sixPeriods;
  const differences = differencesG.map(
    (g, i): Measured =>
      measured(g, [
        [`count ${i}`, inventoryU],
        [`count ${i + 1}`, -inventoryU],
        [`work ${i}`, throughputU],
        ['scale:one', sharedU],
      ]),
  );
  const got = sequenceTest(differences, 0.5, 0.05);
  if (!got) throw new Error('the six can be told apart');
  for (const [i, text] of y.entries()) meets(got.y[i] ?? Number.NaN, text);
  for (const [i, text] of page.entries()) meets(got.page[i] ?? Number.NaN, text);
  expect(Math.abs(got.threshold - Number(threshold))).toBeLessThan(0.003);
  expect(got.signalAt).toBe(signalAt);
  expect(Math.max(...got.z.map(Math.abs))).toBeLessThan(2);
  const cumulative = total(differences);
  expect(cumulative.ug).toBe(cumulativeG);
  meets(uOf(cumulative), cumulativeU);
});

/** The quarter of W9 as entries: what was issued for cleaning comes back with the strained, so both lie inside. */
function quarter(sweepings: 'loss' | 'disposal' | undefined) {
  const q = data.quarter;
  const book = BookMaker.site();
  const at = (month: number, day: number) => ({ happened: `2026-0${month}-${String(day).padStart(2, '0')}T09:00+13:00` });
  const flask = book.add('flask', 'vessel', { label: 'Flask', use: 'flask', mercury: 'new' }, at(3, 30));
  const drum = book.add('drum one', 'vessel', { label: 'Drum', use: 'drum' }, at(3, 30));
  const weight = (mass: string) => ({ how: 'stated' as const, mass, u: '1 g' });
  book.add(
    'flask here',
    'receipt',
    { vessel: flask, weight: weight(q.opening.flask), way: 'already-here', seal: 'S 1' },
    at(3, 30),
  );
  const count = (name: string, bottle: string, circuit: string, month: number, day: number) =>
    book.add(
      name,
      'stock-take',
      {
        scope: 'whole',
        lines: [
          { how: 'sealed', place: vesselPlace(flask), seal: 'S 1' },
          { how: 'weighed', place: vesselPlace(book.bottle), weight: weight(bottle) },
          { how: 'estimated', place: circuitPlace('plates'), estimate: { mass: circuit, method: 'by area', ownU: 0.05 } },
          { how: 'estimated', place: circuitPlace('mortar'), estimate: { mass: '0 kg', method: 'by area' } },
        ],
      },
      at(month, day),
    );
  count('opening count', q.opening.bottle, q.opening.circuit, 3, 31);
  const battery = book.add('battery', 'battery', { label: 'Battery', stamps: 5 }, at(4, 1));
  book.add(
    'crushed',
    'crushing',
    { battery, feed: 'concentrate', mercuryFed: 'mortar', ore: { mass: `${q.oreT} t`, u: 0.01 } },
    at(4, 2),
  );
  const issue = (name: string, to: 'plates' | 'mortar', mass: string) =>
    book.add(name, 'issue', { vessel: book.bottle, to, weight: weight(mass) }, at(4, 3));
  issue('to plates', 'plates', q.issued.plates);
  issue('to mortar', 'mortar', q.issued.mortar);
  issue('for cleaning', 'plates', q.issued.cleaning);
  book.add('strained', 'return', { vessel: book.bottle, from: 'plates', weight: weight(q.returned.strained) }, at(5, 1));
  book.add('from the retort', 'return', { vessel: book.bottle, from: 'plates', weight: weight(q.returned.retort) }, at(5, 2));
  book.add(
    'spilled',
    'spill',
    {
      where: 'bench',
      lost: weight(q.spill.lost),
      vessel: book.bottle,
      recovered: { weight: weight(q.spill.recovered), vessel: book.bottle },
      insideIssue: 'no',
    },
    at(5, 5),
  );
  book.add(
    'sweepings',
    'transfer',
    {
      way: 'out',
      what: 'waste',
      party: 'Refiner',
      weight: weight(q.sweepings),
      share: { value: 1, u: 0.05 },
      ...(sweepings === undefined ? {} : { counts: sweepings }),
    },
    at(5, 20),
  );
  const before = readBook(book.entries);
  count('closing count', q.closing.bottle, q.closing.circuit, 6, 30);
  return { before, book: readBook(book.entries), bottle: book.bottle, flask, drum };
}

test('a quarter loses 0.388 kg, and 0.356 kg where its sweepings were a disposal: what went to and fro inside stands in no sum (practice W9)', () => {
  const { lossG, lossIfDisposalG, perTonne: wanted, bottleByBookG, naiveG, spill } = data.quarter;
  const lostBy = (sweepings: 'loss' | 'disposal' | undefined) => {
    const { book } = quarter(sweepings);
    const [, period] = periodsOf(book);
    const account = accountOf(book, period?.period ?? { from: null, to: null });
    return { account, lost: total([account.unaccounted, account.released]) };
  };
  const { account, lost } = lostBy('loss');
  expect(lost.ug / 1e6).toBeCloseTo(lossG, 6);
  meets(perTonne(lost, account.ore)?.g ?? Number.NaN, wanted);
  expect(account.released.ug).toBe(ug(spill.lost) - ug(spill.recovered));
  expect(lostBy('disposal').lost.ug / 1e6).toBeCloseTo(lossIfDisposalG, 6);
  // never issued less returned
  expect(Math.abs(lost.ug / 1e6 - naiveG)).toBeGreaterThan(50);
  const asked = lostBy(undefined).account;
  expect(asked.reservations.map((r) => r.code)).toContain('loss-or-disposal');
  expect(asked.paths.find((p) => p.path === 'sent-away')).toMatchObject({ lowUg: 0, highUg: 32_000_000 });
  const { before, bottle } = quarter('loss');
  expect((stocksAt(before.movements.all, null).get(vesselPlace(bottle))?.ug ?? 0) / 1e6).toBeCloseTo(bottleByBookG, 6);
});
