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
