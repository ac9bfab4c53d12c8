/** Yields as rows: the uncertainty beside each, the value to its place, pennyweights by the exact factor, and words where there is no figure. */
import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { campaignLines, parcelLines, yieldsCsv } from '../../app/screens/bullion/yields.ts';
import { BookMaker, stated } from '../core/book-maker.ts';

/** 75 t of one parcel gave a bar of 75 g, u 0.75 g, at 900; a second parcel was never crushed. */
function site(u: number | undefined) {
  const book = BookMaker.site();
  const battery = book.add('battery', 'battery', { label: 'Battery' });
  const parcel = book.add('parcel', 'parcel', { label: 'North reef', owner: 'An owner' });
  book.add('parcel two', 'parcel', { label: 'South reef' });
  const ore = { mass: '75 t', ...(u === undefined ? {} : { u }) };
  book.add('crushed', 'crushing', { battery, feed: 'whole-ore', mercuryFed: 'none', ore, parcel });
  const lot = book.add('up', 'clean-up', { type: 'routine', ore, lots: [{ key: '1', label: 'A', weight: stated('200', '0') }] });
  const charge = book.add('charge', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot: `${lot}/1`, weight: stated('200', '0') }],
  });
  book.add('fired', 'firing', {
    heats: [{ charge, sponge: stated('76', '0') }],
    mercury: { weight: stated('120', '1'), vessel: book.bottle },
  });
  const melt = book.add('melt', 'melt', {
    sponges: [{ charge }],
    bars: [{ key: '1', label: 'Bar 1', weight: stated('75', '0.75') }],
  });
  book.add('assay', 'assay', {
    subject: 'bar',
    bar: `${melt}/1`,
    method: 'outside',
    result: { unit: 'permille', gold: '900', goldU: '1', k: 2 },
  });
  return readBook(book.entries);
}

test('a yield stands to the place its uncertainty gives, gross and fine each with its own, and 75 g/t is 49 dwt per long ton', () => {
  const read = site(0);
  const [north, south] = parcelLines(read);
  expect(north).toMatchObject({
    name: 'North reef, An owner',
    gross: '75.00',
    grossYield: '1.000',
    grossU: '0.020',
    grossDwt: '0.653',
    how: '',
  });
  expect(north).toMatchObject({ fine: '67.50', fineYield: '0.900', fineU: '0.018', fineDwt: '0.588' });
  expect(south).toMatchObject({ name: 'South reef', grossYield: '', grossU: '', grossDwt: '' });
  expect(south?.why).toBe('not computable: no ore is written down for it');
});

test('ore without an uncertainty leaves the yield and takes its ± U, and the copy has both columns', () => {
  const [campaign] = campaignLines(site(undefined));
  expect(campaign).toMatchObject({ grossYield: '1.000', grossU: '', fineYield: '0.900', fineU: '' });
  const [head, row] = yieldsCsv(campaignLines(site(0)))
    .split('\n')
    .map((line) => line.split('","'));
  expect(head?.filter((name) => name.startsWith('± U'))).toHaveLength(2);
  expect(row?.[head?.indexOf('± U (k = 2) of Gross, g/t') ?? -1]).toBe('0.020');
});
