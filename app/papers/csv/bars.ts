/**
 * Every bar as a table: exact grams, parts per thousand and fine grams to twelve places with their standard uncertainties, the class of assay they rest
 * on, the settled figure beside them. An empty cell is not known, never nothing. It tells no place.
 */
import { barsOf } from '../../core/book/bars.ts';
import type { Book } from '../../core/book/book.ts';
import type { BarFineness, FineMetal } from '../../core/book/fineness.ts';
import { settlementsOf } from '../../core/book/settlements.ts';
import { divided, toText } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import type { Ratio } from '../../core/ratio.ts';
import { dayOf } from '../../core/time.ts';
import { csvText } from './cells.ts';
import type { Table } from './entries.ts';

export const barsHeader = [
  'bar',
  'label',
  'poured',
  'grams',
  'u_g',
  'gold_permille',
  'gold_u_permille',
  'gold_class',
  'silver_permille',
  'silver_u_permille',
  'silver_class',
  'base_permille',
  'fine_gold_g',
  'fine_gold_u_g',
  'fine_silver_g',
  'fine_silver_u_g',
  'settled_permille',
  'fate',
] as const;

const places = 12;

const figure = (r: Ratio | null | undefined): string =>
  r ? toText(divided({ digits: r.n, places: 0 }, { digits: r.d, places: 0 }, places)) : '';

const fineness = (f: BarFineness | null): string[] => [
  figure(f?.permille),
  f?.uKnown ? String(uOf({ ug: 0, parts: f.parts })) : '',
  f?.class ?? '',
];

const metal = (f: FineMetal | null): string[] => [figure(f?.grams), f?.uKnown ? String(uOf(f.net) / 1e6) : ''];

/** Bars in the order they were poured. */
export function barsTable(book: Book): Table {
  const settled = new Map(settlementsOf(book).all.flatMap((s) => (s.counts ? [[s.bar, s.settled] as const] : [])));
  const rows = [...barsOf(book).all.values()].map((bar) => [
    bar.id,
    bar.label,
    dayOf(bar.melt.happened),
    toText(bar.weighed.grams),
    bar.weighed.uKnown ? String(uOf(bar.weighed.net) / 1e6) : '',
    ...fineness(bar.gold),
    ...fineness(bar.silver),
    figure(bar.base),
    ...metal(bar.fineGold),
    ...metal(bar.fineSilver),
    figure(settled.get(bar.id)),
    bar.fate,
  ]);
  return { name: 'bars', rows: rows.length, text: csvText(barsHeader, rows) };
}
