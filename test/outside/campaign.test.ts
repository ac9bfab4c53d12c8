/** Recoveries and a campaign against worked examples whose sources the data names. */
import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { campaigns, restated } from '../../app/core/book/campaigns.ts';
import { cleanUpYields } from '../../app/core/book/yields.ts';
import { type Ratio, ratioFromText, timesRatio, toDouble } from '../../app/core/ratio.ts';
import { recoveries } from '../../app/core/recovery.ts';
import { BookMaker, stated } from '../core/book-maker.ts';
import { printed } from './cases.ts';
import data from './data/bullion-book.json' with { type: 'json' };

function meets(value: number | null | undefined, text: string | undefined): void {
  const { value: wanted, half } = printed(text ?? '');
  expect(Math.abs((value ?? Number.NaN) - wanted), `${value} against ${text}`).toBeLessThanOrEqual(half);
}
const number = (r: Ratio | null): number => (r ? toDouble(r) : Number.NaN);

test('recovery three ways, each by its name, and the gold none of them explains (WE-33)', () => {
  const { tonnes, head, tails, product, ...wanted } = data.recovery;
  const ore = timesRatio(ratioFromText(tonnes), ratioFromText('1000000'));
  const got = recoveries({ ore, product: ratioFromText(product), head: ratioFromText(head), tails: ratioFromText(tails) });
  for (const name of ['byHead', 'byHeadAndTail', 'byCalculatedHead', 'calculatedHead', 'unaccounted'] as const)
    meets(number(got[name]), wanted[name]);
  const bare = recoveries({ ore, product: ratioFromText(product) });
  expect(Object.values(bare)).toEqual([null, null, null, null, null]);
  const nothing = recoveries({ ore: ratioFromText('0'), product: ratioFromText('1'), head: ratioFromText('9') });
  expect(nothing.byHead).toBeNull();
});

const { campaign } = data;

/** The campaign, with every bar certified, or all but the one named. */
function written(unassayed?: string, ore: readonly (string | undefined)[] = campaign.ore, whole?: string) {
  const book = BookMaker.site();
  const battery = book.add('battery', 'battery', { label: 'Battery one' });
  const plate = book.add('plate', 'plate', { label: 'Plate one', battery });
  const pour = (name: string, lot: string, grams: string, day: string) => {
    const at = (clock: string) => ({ happened: `2026-04-${day}T${clock}+13:00` });
    const rows = [{ take: 'whole' as const, key: '1', lot, weight: stated('300', '0.1') }];
    const charge = book.add(`charge ${name}`, 'charge', { retort: book.pot, rows }, at('10:00'));
    book.add(
      `firing ${name}`,
      'firing',
      { heats: [{ charge, sponge: stated('120', '0.1') }], mercury: { weight: stated('170', '0.1'), vessel: book.bottle } },
      at('11:00'),
    );
    const bars = [{ key: '1', label: `Bar ${name}`, weight: stated(grams, '0.1') }];
    const melt = book.add(`melt ${name}`, 'melt', { sponges: [{ charge }], bars }, at('12:00'));
    const result = { unit: 'permille' as const, gold: campaign.fineness };
    if (name !== unassayed)
      book.add(`assay ${name}`, 'assay', { subject: 'bar', bar: `${melt}/1`, method: 'outside', result }, at('13:00'));
  };
  const lots = (label: string) => [{ key: '1', label, weight: stated('300', '0.1') }];
  for (const [i, grams] of campaign.routine.entries()) {
    const day = String(i + 1).padStart(2, '0');
    const mass = ore[i];
    const made = book.add(
      `month ${i}`,
      'clean-up',
      { type: 'routine', ...(mass === undefined ? {} : { ore: { mass: `${mass} t` } }), lots: lots(`month ${i}`) },
      { happened: `2026-04-${day}T09:00+13:00` },
    );
    pour(`month ${i}`, `${made}/1`, grams, day);
  }
  const scaled = book.add(
    'scaling',
    'plate-work',
    { plate, what: 'scaled', made: lots('scale') },
    { happened: '2026-04-08T09:00+13:00' },
  );
  pour('scale', `${scaled}/1`, campaign.scale, '08');
  const general = book.add(
    'general',
    'clean-up',
    { type: 'general', ...(whole === undefined ? {} : { ore: { mass: whole } }), lots: lots('mortar and pan') },
    { happened: '2026-04-09T09:00+13:00' },
  );
  pour('general', `${general}/1`, campaign.mortarAndPan, '09');
  return { read: readBook(book.entries), general, scaled };
}

test('late gold belongs to the campaign and to no month (W10)', () => {
  const { read, general, scaled } = written();
  const [one, ...more] = campaigns(read);
  expect(more).toEqual([]);
  expect([one?.endedBy, one?.late, one?.why]).toEqual([general, [scaled, general], null]);
  for (const [i, wanted] of campaign.yields.entries()) meets(one?.routine[i]?.gPerTonne, wanted);
  meets((one?.grossUg ?? 0) / 1e6, campaign.gross);
  meets(one?.gPerTonne, campaign.grossYield);
  meets((one?.fineUg ?? 0) / 1e6, campaign.fine);
  meets(one?.fineGPerTonne, campaign.fineYield);
  meets(one?.routineShare, campaign.routineShare);
  // the months themselves are not restated by it
  for (const [i, wanted] of campaign.yields.entries()) meets(cleanUpYields(read)[i]?.gPerTonne, wanted);
});

test('a general clean-up that states the ore of the whole has no yield of its own: only the campaign has (W10)', () => {
  const read = written(undefined, undefined, '123.7 t').read;
  const rows = cleanUpYields(read);
  expect(rows.map((y) => y.why)).toEqual([null, null, null, 'of-the-campaign']);
  // its gold over the whole campaign's ore is no yield of anything
  expect([rows[3]?.gPerTonne, rows[3]?.grossRate, rows[3]?.fineRate]).toEqual([null, null, null]);
  meets(campaigns(read)[0]?.gPerTonne, campaign.grossYield);
});

test('months restated when asked take the late gold by ore, beside what was first stated, and it re-sums (W10)', () => {
  const [one] = campaigns(written().read);
  const months = one ? restated(one) : [];
  for (const [i, wanted] of campaign.restated.entries()) {
    meets(months[i]?.restated, wanted);
    meets(months[i]?.first, campaign.yields[i]);
  }
  expect(months.reduce((s, m) => s + m.lateUg, 0)).toBe(one?.lateUg);
});

test('one bar without an assay leaves the fine yield unknown and the gross as it is', () => {
  const [one] = campaigns(written('month 1').read);
  meets(one?.gPerTonne, campaign.grossYield);
  expect([one?.fineUg, one?.fineGPerTonne]).toEqual([null, null]);
});

test('a month that does not say what it crushed leaves the campaign without a yield, in words; nothing crushed is told apart', () => {
  const [one] = campaigns(written(undefined, ['41.0', undefined, '44.2']).read);
  expect([one?.gPerTonne, one?.why]).toEqual([null, 'ore-missing']);
  const [none] = campaigns(written(undefined, [undefined, undefined, undefined]).read);
  expect([none?.gPerTonne, none?.fineGPerTonne, none?.why]).toEqual([null, null, 'nothing-crushed']);
});
