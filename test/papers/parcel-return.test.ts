/** The parcel return, read back from its definition: WE-33 as a parcel, and what an allocated one must say. */
import { expect, test } from 'vitest';
import { yieldsTable } from '../../app/papers/csv/yields.ts';
import { parcelReturn } from '../../app/papers/parcel-return.ts';
import { BookMaker } from '../core/book-maker.ts';
import { frameOf } from './site-of-runs.ts';
import { bookOf, said, stated } from './year.ts';

/** 312.0 t at a head of 9.10 and tails of 2.15 g/t gave a bar of 2318.4 g at 885.2 (methods.md, WE-33, constructed for this project). */
function we33(other?: string) {
  const book = BookMaker.site();
  const battery = book.add('battery', 'battery', { label: 'Battery' });
  const parcel = book.add('parcel', 'parcel', { label: 'North reef', owner: 'An owner' });
  const crush = (name: string, mass: string, of: string) =>
    book.add(name, 'crushing', { battery, feed: 'whole-ore', mercuryFed: 'none', ore: { mass, u: 0.02 }, parcel: of });
  crush('crushed', '312.0 t', parcel);
  if (other !== undefined) crush('others', other, book.add('parcel two', 'parcel', { label: 'South reef' }));
  const lot = book.add('april', 'clean-up', { type: 'routine', lots: [{ key: '1', label: 'A', weight: stated('6000', '1') }] });
  const charge = book.add('charge', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot: `${lot}/1`, weight: stated('6000', '1') }],
  });
  book.add('firing', 'firing', {
    heats: [{ charge, sponge: stated('2360', '1') }],
    mercury: { weight: stated('3600', '1'), vessel: book.bottle },
  });
  const melt = book.add('melt', 'melt', {
    sponges: [{ charge }],
    bars: [{ key: '1', label: 'Bar 1', weight: stated('2318.4', '0.1') }],
  });
  const certified = { method: 'outside' as const, laboratory: 'a laboratory' };
  book.add('bar assay', 'assay', {
    subject: 'bar',
    bar: `${melt}/1`,
    ...certified,
    result: { unit: 'permille', gold: '885.2', goldU: '0.2' },
  });
  book.add('head of it', 'assay', { subject: 'ore', parcel, ...certified, result: { unit: 'g-t', gold: '9.10' } });
  book.add('tail of it', 'assay', { subject: 'tailings', parcel, ...certified, result: { unit: 'g-t', gold: '2.15' } });
  return { book, parcel, text: () => said(parcelReturn(bookOf(book), parcel, frameOf(book))) };
}

test('bullion and fine gold, both labelled, stand with the three recoveries and the gold not accounted for (WE-33)', () => {
  const text = we33().text();
  for (const figure of ['2318.40', '2052.25', '72.3 %', '76.4 %', '75.4 %', '8.73 g per tonne', '116.15'])
    expect(text.replaceAll(/[\u202f\u00a0](?=\d{3})/g, '')).toContain(figure);
  expect(text).toContain('Bullion, gross');
  expect(text).toContain('Gold, fine');
  expect(text).toContain('of this parcel alone');
  expect(text).not.toContain('shared by mass of ore');
});

test('gold shared with another parcel is marked allocated, with the rule', () => {
  const text = we33('312.0 t').text();
  expect(text).toContain('allocated');
  expect(text).toContain('shared by mass of ore');
  expect(text.replaceAll(/[\u202f\u00a0](?=\d{3})/g, '')).toContain('1159.20');
});

test('each person has one line to sign, whatever they wrote and however often', () => {
  const { book, parcel } = we33();
  const battery = book.add('second battery', 'battery', { label: 'Second battery' });
  const crushed = { battery, feed: 'whole-ore', mercuryFed: 'none', ore: { mass: '1 t', u: 0.02 }, parcel } as const;
  for (let i = 0; i < 30; i += 1) book.add(`crushed ${i}`, 'crushing', crushed, { by: i < 18 ? book.keeper : null });
  const text = said(parcelReturn(bookOf(book), parcel, frameOf(book)));
  const behind = text.slice(text.indexOf('Signature and day'));
  expect(behind.match(/Keeper/g)).toHaveLength(1);
  expect(behind.match(/nobody named/g)).toHaveLength(1);
  expect(behind).toContain('the crushing, 18 times, ');
  expect(behind).toContain('the crushing, 13 times, ');
});

test('a parcel with nothing crushed says so in words, and one that is not here is refused', () => {
  const { book } = we33();
  const empty = book.add('parcel three', 'parcel', { label: 'East reef' });
  expect(said(parcelReturn(bookOf(book), empty, frameOf(book)))).toContain('Not computable: nothing was crushed of it');
  const none = parcelReturn(bookOf(book), 'nobody-here', frameOf(book));
  expect(none.ok ? [] : none.problems.map((p) => p.code)).toEqual(['paper-no-such']);
});

test('the table of yields has a row for each clean-up, parcel and campaign, and nothing in the place of what is not computable', () => {
  const { book } = we33();
  book.add('parcel three', 'parcel', { label: 'East reef' });
  const { text, rows } = yieldsTable(bookOf(book));
  const lines = text
    .trimEnd()
    .split(/\r?\n/)
    .map((l) => l.split(','));
  expect(rows).toBe(lines.length - 1);
  expect(lines.slice(1).map((l) => l[0])).toEqual(['clean-up', 'parcel', 'parcel', 'campaign']);
  const at = (name: string) => lines[0]?.indexOf(name) ?? -1;
  expect(Number(lines[2]?.[at('fine_g_t')])).toBeCloseTo(2052.24768 / 312, 9);
  expect([lines[3]?.[at('gross_g_t')], lines[3]?.[at('why')]]).toEqual(['', 'nothing-crushed']);
});
