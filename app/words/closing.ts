/** How the lines of a closed account are named where they have changed. */

import type { FigureName } from '../core/book/closings.ts';
import type { NoUsual } from '../core/book/usual.ts';

export const figureNames: Readonly<Record<FigureName, string>> = {
  opening_g: 'opening stock',
  receipts_g: 'received',
  found_g: 'found',
  removals_g: 'handed over',
  released_g: 'spilled',
  closing_g: 'closing stock',
  unaccounted_g: 'not accounted for',
  u_g: 'its uncertainty',
};

export const closingLines = {
  differs: (name: FigureName, by: string) => `${figureNames[name]} by ${by}`,
  noCount: 'a stock-take it lies between is not among them',
  more: (n: number) => `and ${n} more`,
} as const;

/** Why no usual rate stands on a statement. */
export const closingReasons: Readonly<Record<NoUsual['why'], string>> = {
  'no-start': 'the period begins with the book, so no period lies before it',
  'too-few-periods': 'fewer than two periods between counts lie before it, and one alone has no scatter',
  'nothing-to-count-by': 'neither ore nor runs nor months of earlier periods are there to count by',
};
