/** Figures of this room as they are shown: exact shares rounded once, an uncertainty to two digits and the value to its place (k = 2). */
import type { Fineness } from '../../core/book/assays.ts';
import type { FineMetal } from '../../core/book/fineness.ts';
import type { Weighed } from '../../core/book/weights.ts';
import { decimalFromNumber, divided, zero } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import { asRatio, type Ratio } from '../../core/ratio.ts';
import { decimalText, massRatioFigure, massRatioWithU, placesFor } from '../../words/figures.ts';

/** An exact share as text, rounded once. */
export const ratioText = ({ n, d }: Ratio, places: number, sign = false): string =>
  decimalText(divided({ digits: n, places: 0 }, { digits: d, places: 0 }, places), places, sign);

/** A value and its expanded uncertainty, as two texts for two columns; the second is empty where none is known. */
export interface Shown {
  readonly value: string;
  readonly U: string;
}

/** Places where no uncertainty says better. */
const usual = 2;
export const nothingShown: Shown = { value: '', U: '' };

/** `u`: one standard uncertainty in the unit of the value; null where it is not known. */
export function shownWith(value: Ratio, u: number | null): Shown {
  const U = u === null ? 0 : 2 * u;
  const places = U > 0 ? placesFor(U) : usual;
  return { value: ratioText(value, places), U: u === null ? '' : decimalText(decimalFromNumber(U), places) };
}

/** The root of the sum of squares of the contributions, in their unit. */
export const uOfParts = (parts: ReadonlyMap<string, number>): number => uOf({ ug: 0, parts });

/** Parts per thousand. */
export const shownFineness = (f: Fineness | null): Shown =>
  f ? shownWith(f.permille, f.uKnown ? uOfParts(f.parts) : null) : nothingShown;

/** Grams given exactly, and their standard uncertainty in grams, in the unit masses are shown in. */
export function shownGrams(grams: Ratio, u: number | null): Shown {
  if (u === null || !(u > 0)) return { value: massRatioFigure(grams, usual), U: u === null ? '' : decimalText(zero, usual) };
  return massRatioWithU(grams, 2 * u);
}

/** Grams of fine metal. */
export const shownFine = (fine: FineMetal | null): Shown =>
  fine ? shownGrams(fine.grams, fine.uKnown ? uOf(fine.net) / 1e6 : null) : nothingShown;

/** Grams as weighed. */
export const shownMass = (w: Pick<Weighed, 'grams' | 'net' | 'uKnown'>): Shown =>
  shownGrams(asRatio(w.grams), w.uKnown ? uOf(w.net) / 1e6 : null);

/** "885.02 ± 0.29". */
export const joinedText = ({ value, U }: Shown, unit = ''): string =>
  value === '' ? '' : `${value}${U === '' ? '' : ` ± ${U}`}${unit === '' ? '' : `\u00a0${unit}`}`;
