/** How the lines of a closed account are named where they have changed. */
import type { FigureName } from '../core/book/closings.ts';

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
