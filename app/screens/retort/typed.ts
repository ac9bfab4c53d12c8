/**
 * What stands in weighing fields, worked out while it is typed and before anything is kept. The reckoning is the book's own, so that the page never
 * shows another figure than the one the book will have. Nothing is written here.
 */

import { emptySum, joined, type Sum } from '../../core/book/charges.ts';
import type { Registers } from '../../core/book/registers.ts';
import { type Weighed, weighedFrom } from '../../core/book/weights.ts';
import { toText } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import { read } from '../../core/read.ts';
import { weight } from '../../core/shapes.ts';
import { massAsRead } from '../../words/daybook-weights.ts';
import { massFigure, massText, massUnit, withoutNoughts, withU } from '../../words/figures.ts';
import { marked } from '../../words/notation.ts';
import { noWeighing, type WeighingEntry, weightOf } from '../shared/weighing-entry.ts';

/** A typed weight as the book would read it; null while it is blank or cannot be read. `path` keeps its scatter apart from that of other fields. */
export function typedWeight(entry: WeighingEntry, path: string, at: string, registers: Registers): Weighed | null {
  const typed = weightOf(entry);
  if (typed === undefined) return null;
  const got = read(weight, JSON.parse(JSON.stringify(typed)));
  return got.ok ? weighedFrom(got.value, { entry: 'typed', path, at }, registers) : null;
}

/** A row of a list that is weighed on one scale, unless the row says otherwise. */
export interface RowWeight {
  /** The readings; only the amount and its unit are asked while `own` is false. */
  weight: WeighingEntry;
  /** Weighed another way than the list: another scale, a tare, somebody else's figure. */
  own: boolean;
}

export const noRowWeight = (): RowWeight => ({ weight: noWeighing(), own: false });

/** The row's readings with the list's scale put in. */
export const rowWeighing = (row: RowWeight, scale: string): WeighingEntry =>
  row.own ? row.weight : { ...row.weight, how: 'scale', scale, tareHow: 'none' };

/** The sum of what could be read. */
export const sumOf = (weights: readonly (Weighed | null)[]): Sum =>
  weights.reduce<Sum>((s, w) => (w ? joined(s, w) : s), emptySum);

/** "955.6 g": an exact sum of readings, to the places they were read to, ungrouped decimals kept. */
export const exactGrams = (sum: Pick<Sum, 'grams'>): string => withoutNoughts(massText(sum.grams, decimalsOf(sum)));

/** "955.6": the same without its unit, for a column headed in grams. */
export const exactFigure = (sum: Pick<Sum, 'grams'>): string => withoutNoughts(massFigure(sum.grams, decimalsOf(sum)));

/** Decimals that say something: of a weight in ounces the exact grams run to ten places, and a tenth of a milligram is beyond any scale here. */
const decimalsOf = ({ grams }: Pick<Sum, 'grams'>): number => Math.min(4, (toText(grams).split('.')[1] ?? '').length);

/** "5 ozt (155.52 g)": a reading in another unit than grams as it was read, with its grams behind it; in grams, as `exactGrams` has it. */
export function asReadText(weighed: Weighed): string {
  const { as } = weighed;
  const read = as.how === 'stated' ? as.mass : as.how === 'volume' ? as.volume : as.tare === undefined ? as.gross : '';
  if (read === '') return exactGrams(weighed);
  if (/^\S+ g$/.test(read)) return massUnit() === 'g' ? exactGrams(weighed) : massAsRead(read);
  // worked out in the unit it was read in, it would only be said twice
  if (massUnit() === 'ozt' && /^\S+ ozt$/.test(read)) return massAsRead(read);
  return `${marked(read)} (${massText(weighed.grams, 2)})`;
}

/** Value ± expanded uncertainty, or the value as read where the uncertainty is not known. */
export const sumText = (sum: Sum, sign = false): string =>
  sum.uKnown ? withU(sum.grams, uOf(sum.net) / 1e6, sign) : massText(sum.grams, decimalsOf(sum), sign);
