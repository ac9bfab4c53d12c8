/** The rule for cells that a spreadsheet would run (`core/formula.ts`), for what leaves the program as text. */
import { formula } from '../core/formula.ts';

export { formula };

/** A cell that no spreadsheet runs: what would begin a formula is made text by an apostrophe before it. */
export const asText = (cell: string): string => (formula.test(cell) ? `'${cell}` : cell);
