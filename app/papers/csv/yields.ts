/**
 * Yields as one table: a row for each clean-up, parcel and campaign. Grams to the microgram, rates unrounded with their standard uncertainty. An empty cell is
 * not known or not computable, never nothing; `why` says which.
 */
import type { Book } from '../../core/book/book.ts';
import { campaigns } from '../../core/book/campaigns.ts';
import { dwtPerLongTon, type Rate } from '../../core/book/ore-through.ts';
import { parcelYields } from '../../core/book/parcel-yields.ts';
import { cleanUpYields } from '../../core/book/yields.ts';
import { csvText } from './cells.ts';
import type { Table } from './entries.ts';

export const yieldsHeader = [
  'of',
  'entry',
  'label',
  'ore_t',
  'bullion_g',
  'fine_gold_g',
  'gross_g_t',
  'gross_u_g_t',
  'gross_dwt_long_ton',
  'fine_g_t',
  'fine_u_g_t',
  'fine_dwt_long_ton',
  'shared',
  'out_turn',
  'why',
] as const;

const over = (ug: number | null | undefined, by: number): string => (ug === null || ug === undefined ? '' : String(ug / by));
const rate = (r: Rate | null): string[] =>
  r ? [String(r.gPerTonne), r.u === null ? '' : String(r.u), String(dwtPerLongTon(r.gPerTonne))] : ['', '', ''];
const yes = (is: boolean): string => (is ? 'yes' : 'no');

/** Clean-ups, then parcels, then campaigns, each in order. */
export function yieldsTable(book: Book): Table {
  const rows = [
    ...cleanUpYields(book).map((y) => [
      'clean-up',
      y.cleanUp,
      '',
      over(y.oreUg, 1e12),
      over(y.barUg, 1e6),
      over(y.fineUg, 1e6),
      ...rate(y.grossRate),
      ...rate(y.fineRate),
      yes(y.shared),
      yes(y.outTurn),
      y.why ?? '',
    ]),
    ...parcelYields(book).map((p) => [
      'parcel',
      p.parcel,
      p.label,
      over(p.ore?.mass.ug, 1e12),
      over(p.gross?.ug, 1e6),
      over(p.fine?.ug, 1e6),
      ...rate(p.grossRate),
      ...rate(p.fineRate),
      yes(p.allocated),
      yes(p.outTurn),
      p.why ?? '',
    ]),
    ...campaigns(book).map((c) => [
      'campaign',
      c.endedBy ?? '',
      '',
      over(c.oreUg, 1e12),
      over(c.grossUg, 1e6),
      over(c.fineUg, 1e6),
      ...rate(c.grossRate),
      ...rate(c.fineRate),
      '',
      '',
      c.why ?? '',
    ]),
  ];
  return { name: 'yields', rows: rows.length, text: csvText(yieldsHeader, rows) };
}
