/** The month of practice.md W7 as entries of a book: from flask to bar and back to the count. */
import { circuitPlace, vesselPlace } from '../../app/core/book/places.ts';
import { BookMaker } from '../core/book-maker.ts';
import data from './data/mill-return.json' with { type: 'json' };

const ozt = (n: string) => ({ how: 'stated' as const, mass: `${n} ozt`, u: '0.01 ozt' });
const at = (day: number, hour = 9) => ({
  happened: `2026-03-${String(day).padStart(2, '0')}T${String(hour).padStart(2, '0')}:00+13:00`,
});

export function millReturn(): BookMaker & { bottle: string; vessels: string[] } {
  const book = BookMaker.site();
  const vessel = (name: string) => book.add(name, 'vessel', { label: name, use: 'flask', mercury: 'mixed' }, at(1, 8));
  const vessels = [vessel('flask one'), vessel('flask two')];
  const [one = '', two = ''] = vessels;
  const here = (name: string, into: string, n: string, seal?: string) =>
    book.add(
      name,
      'receipt',
      { vessel: into, weight: ozt(n), way: 'already-here', ...(seal === undefined ? {} : { seal }) },
      at(1),
    );
  here('opening one', one, data.opening.flasks[0] ?? '', 'S1');
  here('opening two', two, data.opening.flasks[1] ?? '', 'S2');
  here('opening bottle', book.bottle, data.opening.bottle);
  const count = (name: string, more: object[], plates: string, mortar: string, day: number) =>
    book.add(
      name,
      'stock-take',
      {
        lines: [
          ...(more as []),
          { how: 'estimated', place: circuitPlace('plates'), estimate: { mass: `${plates} ozt`, method: 'area', sharedU: 0.1 } },
          { how: 'estimated', place: circuitPlace('mortar'), estimate: { mass: `${mortar} ozt`, method: 'sand', sharedU: 0.2 } },
        ],
      },
      at(day, 10),
    );
  count('opening count', [], data.opening.plates, data.opening.mortar, 1);
  book.add('battery five', 'battery', { label: 'Battery', stamps: 10 }, at(1, 8));
  book.add(
    'crushed',
    'crushing',
    {
      battery: 'battery-five',
      feed: 'concentrate',
      mercuryFed: 'mortar',
      ore: { mass: `${data.oreLongTons} long-ton`, u: 0.05 },
    },
    at(2),
  );
  book.add('fed mortar', 'issue', { vessel: book.bottle, to: 'mortar', weight: ozt(data.fed.mortar) }, at(3));
  book.add('fed plates', 'issue', { vessel: book.bottle, to: 'plates', weight: ozt(data.fed.plates) }, at(4));
  book.add('drawn off', 'issue', { vessel: two, to: 'vessel', into: book.bottle, weight: ozt(data.drawn) }, at(2, 8));
  const cleaning = book.add(
    'cleaning',
    'cleaning',
    {
      added: { weight: ozt(data.cleaning.added), vessel: book.bottle },
      made: [
        { key: '1', label: 'plates', weight: ozt(data.cleaning.plates), state: 'squeezed', source: 'outside-plate' },
        { key: '2', label: 'battery', weight: ozt(data.cleaning.battery), state: 'squeezed', source: 'mortar' },
      ],
      strained: { weight: ozt(data.cleaning.strained), vessel: book.bottle },
    },
    at(26),
  );
  const charge = book.add(
    'charge',
    'charge',
    {
      retort: book.pot,
      rows: ['1', '2'].map((key) => ({
        take: 'whole' as const,
        key,
        lot: `${cleaning}/${key}`,
        weight: ozt(key === '1' ? data.cleaning.plates : data.cleaning.battery),
      })),
    },
    at(27),
  );
  book.add(
    'firing',
    'firing',
    {
      heats: [{ charge, sponge: ozt(data.sponge) }],
      mercury: { weight: ozt(data.condensed), vessel: book.bottle, state: 'dry' },
      water: { how: 'stated', mass: '0 ozt', u: '0 ozt' },
    },
    at(28),
  );
  book.add('melt it', 'melt', { sponges: [{ charge }], bars: [{ key: '1', label: 'Bar 1', weight: ozt(data.bar) }] }, at(29));
  count(
    'closing count',
    [
      { how: 'sealed', place: vesselPlace(one), seal: 'S1' },
      { how: 'weighed', place: vesselPlace(two), weight: ozt(data.closing.partFlask) },
      { how: 'weighed', place: vesselPlace(book.bottle), weight: ozt(data.closing.bottle) },
    ],
    data.closing.plates,
    data.closing.mortar,
    31,
  );
  return Object.assign(book, { vessels });
}
