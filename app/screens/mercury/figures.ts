/** A measured amount as a table shows it: value and expanded uncertainty (k = 2) in grams, rounded once to the same place. */
import { decimalFromNumber } from '../../core/decimal.ts';
import { type Measured, uOf } from '../../core/measured.ts';
import type { WorkingLine } from '../../parts/working-line.ts';
import { decimalText, gramsOf, placesFor } from '../../words/figures.ts';

export interface Figure {
  /** Grams, without the unit. */
  readonly value: string;
  /** Expanded uncertainty in grams; empty where none is known. */
  readonly U: string;
}

/** Under a tenth of a microgram nothing is left but what adding leaves over. */
const dust = 0.1;

/** Whether there is nothing to tell of an amount. */
export const isNothing = (value: Measured): boolean => Math.abs(value.ug) < dust && uOf(value) < dust;

export function figureOf(value: Measured): Figure {
  const UG = (2 * uOf(value)) / 1e6;
  if (!(UG > 2e-7)) return { value: decimalText(gramsOf(Math.round(value.ug)), 2), U: '' };
  const places = placesFor(UG);
  return { value: decimalText(gramsOf(Math.round(value.ug)), places), U: decimalText(decimalFromNumber(UG), places) };
}

/** "12.60 ± 0.64 g". */
export function figureText(value: Measured): string {
  const { value: grams, U } = figureOf(value);
  return U === '' ? `${grams}\u00a0g` : `${grams} ± ${U}\u00a0g`;
}

/** A row of a table of figures that open to their working. */
export interface FigureRow {
  readonly key: string;
  readonly label: string;
  readonly href?: string | undefined;
  readonly value: string;
  readonly U: string;
  /** How it is known, or a remark. */
  readonly note: string;
  /** Below nothing: told with a word, never clipped. */
  readonly negative?: boolean;
  /** Its working, made when it is opened. */
  readonly lines: () => readonly WorkingLine[];
  /** Under a rule, as the outcome of the rows above. */
  readonly total?: boolean;
}
