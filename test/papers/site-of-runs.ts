/** Books for the papers' tests: constructed sites with runs, and the frame and text of a paper printed from them. */
import type { Content } from 'pdfmake/interfaces';
import { readBook } from '../../app/core/book/book.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { type CoveredDesk, type Definition, type Frame, newestOf } from '../../app/papers/paper.ts';
import { runSheet } from '../../app/papers/run-sheet.ts';
import { BookMaker, scaled, stated } from '../core/book-maker.ts';

export type Site = ReturnType<typeof BookMaker.site>;

/** Filler end marks that are easy to find again. */
export const desksOf = (book: BookMaker): CoveredDesk[] =>
  [...new Set(book.entries.map(({ desk }) => desk))].map((desk, i) => ({
    desk,
    entries: book.entries.filter((entry) => entry.desk === desk).length,
    endMark: '0123456789abcdef'.repeat(4).slice(i) + '0123456789abcdef'.repeat(4).slice(0, i),
  }));

export const frameOf = (book: BookMaker): Frame => ({
  site: 'Example battery',
  desks: desksOf(book),
  newest: newestOf(book.entries),
  version: '9.9.9',
  canPrint: () => true,
});

/** The paper of a run; throws where it has a problem. */
export function sheetOf(book: BookMaker, charge: string): Definition {
  const made = runSheet(readBook(book.entries), charge, frameOf(book));
  if (!made.ok) throw new Error(made.problems.map(({ code }) => code).join(', '));
  return made.value;
}

function textsIn(content: unknown, found: string[]): string[] {
  if (typeof content === 'string') found.push(content);
  else if (Array.isArray(content)) for (const item of content) textsIn(item, found);
  else if (typeof content === 'object' && content !== null)
    for (const [key, value] of Object.entries(content))
      if (key === 'text' || typeof value === 'object') textsIn(key === 'text' || Array.isArray(value) ? value : [value], found);
  return found;
}

/** Whatever a paper says, in order, one text to a line; figure spaces that only align are left out. */
export const textOf = (content: Content | Definition['content']): string =>
  textsIn(content, [])
    .join('\n')
    .replaceAll(/[\u2007]/g, '')
    .replaceAll('\u00a0', ' ');

export const weighed = (g: string, scale: string) => scaled(g, scale);

/** practice.md W8, constructed: five balls, one firing, on a bench scale of 0.1 g. */
export function w8(more: Partial<Body<'firing'>> = {}, chargeMore: Partial<Body<'charge'>> = {}): { book: Site; charge: string } {
  const book = BookMaker.site();
  const scale = book.scale('tenth scale', '0.1 g', '0.2 g');
  const balls = ['212.4', '198.7', '205.1', '187.9', '151.5'];
  const lots = book.lots('march', balls, scale);
  const charge = book.add(
    'charge w8',
    'charge',
    {
      retort: book.pot,
      rows: lots.map((lot, i) => ({
        take: 'whole' as const,
        key: String(i + 1),
        lot,
        weight: scaled(balls[i] ?? '', scale),
      })),
      fill: 0.5,
      lute: 'clay with wood ash',
      pipeClear: 'yes',
      waterOn: 'yes',
      checks: [{ check: 'spill-kit', answer: 'no', note: 'tray on loan' }],
      ...chargeMore,
    },
    { happened: '2026-03-14T08:40+13:00', by: book.keeper },
  );
  book.add(
    'firing w8',
    'firing',
    {
      heats: [{ charge, sponge: scaled('371.8', scale), colour: 'yellow' }],
      lit: '2026-03-14T09:20+13:00',
      firstMercury: '2026-03-14T10:05+13:00',
      lastMercury: '2026-03-14T12:40+13:00',
      finishFrom: '2026-03-14T12:40+13:00',
      finishTo: '2026-03-14T13:10+13:00',
      opened: '2026-03-15T08:10+13:00',
      opening: { measuredC: 19.5 },
      mercury: {
        weight: { how: 'scale', scale, gross: '983.4 g', tare: '412.2 g', vessel: book.bottle },
        vessel: book.bottle,
        state: 'dry',
      },
      water: stated('0', '0'),
      ...more,
    },
    { happened: '2026-03-15T08:10+13:00', by: book.keeper },
  );
  return { book, charge };
}

/** A charge fired twice: 800 g, sponge 380 then 305 g, mercury 415 then 73 g. Constructed. */
export function refired(): { book: Site; charge: string } {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('april', ['800'], book.bench);
  const charge = book.add(
    'charge april',
    'charge',
    { retort: book.pot, rows: [{ take: 'whole', key: '1', lot, weight: scaled('799.60', book.bench) }] },
    { happened: '2026-04-02T08:00+13:00', by: book.keeper },
  );
  for (const [name, day, sponge, mercury] of [
    ['first', '03', '380.00', '415.00'],
    ['second', '05', '305.00', '73.00'],
  ] as const)
    book.add(
      `firing ${name}`,
      'firing',
      {
        heats: [{ charge, sponge: scaled(sponge, book.bench), colour: name === 'first' ? 'grey' : 'yellow' }],
        opened: `2026-04-${day}T09:00+13:00`,
        opening: { stoodHours: 16 },
        mercury: { weight: scaled(mercury, book.bench), vessel: book.bottle, state: 'dry' },
        water: stated('0', '0'),
      },
      { happened: `2026-04-${day}T09:00+13:00`, by: book.keeper },
    );
  return { book, charge };
}

/** cases.md 10, constructed: three charges into one receiver. */
export function caughtTogether(): { book: Site; charges: string[] } {
  const book = BookMaker.site();
  const grams = ['310.0', '295.5', '402.2'];
  const sponges = ['118.9', '112.0', '156.1'];
  const lots = book.lots('may', grams, book.bench);
  const charges = lots.map((lot, i) =>
    book.add(`charge may ${i + 1}`, 'charge', {
      retort: book.pot,
      rows: [{ take: 'whole', key: '1', lot, weight: scaled(grams[i] ?? '', book.bench) }],
    }),
  );
  book.add('firing may', 'firing', {
    heats: charges.map((charge, i) => ({ charge, sponge: scaled(sponges[i] ?? '', book.bench) })),
    opened: '2026-05-04T09:00+13:00',
    mercury: { weight: scaled('612.3', book.bench), vessel: book.bottle, state: 'dry' },
    water: stated('0', '0'),
  });
  return { book, charges };
}

/** Text that would do harm where text is taken for anything else. */
export const hostile = {
  markup: '<b>bold</b><script>alert(1)</script> {"text":"x","link":"https://example.invalid"} [a](b) **c**',
  postscript: ') Tj ET /URI (https://example.invalid) \\050 %%EOF endobj',
  long: 'W'.repeat(120),
  foreign: '水銀 שלום 😀 ā',
} as const;

/** A run with everything awkward in it: a part, a lost ball, an unwritten lot, other things, hostile names, corrections and strikes. */
export function awkward(): { book: Site; charge: string } {
  const book = BookMaker.site();
  const helper = book.add('helper', 'person', { name: hostile.markup.slice(0, 110), roles: ['helper'] });
  const bare = book.scale(hostile.long, '0.1 g', null);
  const id = book.add(
    'clean-up june',
    'clean-up',
    {
      type: 'general',
      lots: [
        { key: '1', label: hostile.markup, weight: scaled('212.4', bare), source: 'mortar', state: 'squeezed', seal: 'S-104' },
        { key: '2', label: hostile.long, weight: scaled('198.7', book.bench), source: 'inside-plate' },
        { key: '3', label: hostile.foreign, weight: { how: 'scale', scale: book.bench, gross: '6 ozt 12 dwt' } },
        { key: '4', label: 'June D', weight: scaled('187.9', book.bench), state: 'drained' },
      ],
    },
    { happened: '2026-06-01T16:00+12:00', by: helper },
  );
  const charge = book.add(
    'charge june',
    'charge',
    {
      retort: book.pot,
      rows: [
        { take: 'whole', key: '1', lot: `${id}/1`, weight: scaled('205.1', bare) },
        { take: 'part', key: '2', lot: `${id}/2`, weight: scaled('100.0', book.bench), rest: scaled('98.6', book.bench) },
        { take: 'whole', key: '3', lot: `${id}/3`, weight: { how: 'scale', scale: book.bench, gross: '205.28 g' } },
        { take: 'not-found', key: '4', lot: `${id}/4`, looked: 'safe, bench and floor' },
        { take: 'unwritten', key: '5', label: hostile.postscript, weight: stated('50') },
      ],
      others: [{ key: 'c', what: 'cake', label: 'Cake of May', weight: scaled('31.50', book.bench) }],
      fill: 0.8,
      pipeClear: 'no',
      checks: [
        { check: 'place', answer: 'yes' },
        { check: 'our own: gate locked', answer: 'na', note: hostile.long },
      ],
      note: hostile.postscript,
    },
    { happened: '2026-06-02T08:00+12:00', by: helper },
  );
  const fire = (name: string, sponge: string, at: string) =>
    book.add(
      name,
      'firing',
      {
        heats: [{ charge, sponge: scaled(sponge, book.bench), colour: 'black' }],
        lit: '2026-06-02T09:00+12:00',
        opened: '2026-06-02T15:00+12:00',
        opening: { measuredC: 61 },
        mercury: { weight: scaled('330.00', book.bench), vessel: book.bottle, state: 'wet' },
        lute: hostile.long,
        checks: [{ check: 'air-read', answer: 'no' }],
      },
      { happened: at, by: helper },
    );
  const wrong = fire('firing wrong', '2310.00', '2026-06-02T15:10+12:00');
  book.add(
    'strike wrong',
    'strike',
    { strikes: wrong, why: 'Written twice.' },
    { happened: '2026-06-03T08:00+12:00', by: book.keeper },
  );
  const right = fire('firing june', '213.00', '2026-06-02T15:20+12:00');
  const body = structuredClone(book.entries.at(-1)?.body ?? {}) as Body<'firing'>;
  book.add(
    'correction june',
    'correction',
    {
      corrects: right,
      body: { ...body, heats: [{ charge, sponge: scaled('231.00', book.bench), colour: 'black' }] },
      happened: '2026-06-02T15:00+12:00',
      why: `Two figures were swapped. ${'Read off the sheet again with the keeper. '.repeat(12)}`,
    },
    { happened: '2026-06-03T08:10+12:00', by: book.keeper },
  );
  book.add('note june', 'note', { text: hostile.markup, about: charge }, { happened: '2026-06-03T08:20+12:00', by: null });
  return { book, charge };
}

/** One charge of many balls, enough for several pages. */
export function manyBalls(count: number): { book: Site; charge: string } {
  const book = BookMaker.site();
  const grams = Array.from({ length: count }, (_, i) => `${100 + i}.5`);
  const lots = book.lots('july', grams, book.bench);
  const charge = book.add('charge july', 'charge', {
    retort: book.pot,
    rows: lots.map((lot, i) => ({ take: 'whole' as const, key: String(i + 1), lot, weight: scaled(grams[i] ?? '', book.bench) })),
  });
  return { book, charge };
}
