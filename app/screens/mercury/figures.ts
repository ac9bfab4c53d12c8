/** A measured amount as a table shows it: value and expanded uncertainty (k = 2) in the unit of masses, rounded once to the same place. */
import { type Measured, uOf } from '../../core/measured.ts';
import type { WorkingLine } from '../../parts/working-line.ts';
import { gramsOf, massUnit, massWithU } from '../../words/figures.ts';

export interface Figure {
  /** Without its unit. */
  readonly value: string;
  /** Expanded uncertainty; empty where none is known. */
  readonly U: string;
}

/** Under a tenth of a microgram nothing is left but what adding leaves over. */
const dust = 0.1;

/** Whether there is nothing to tell of an amount. */
export const isNothing = (value: Measured): boolean => Math.abs(value.ug) < dust && uOf(value) < dust;

export function figureOf(value: Measured): Figure {
  const UG = (2 * uOf(value)) / 1e6;
  return massWithU(gramsOf(Math.round(value.ug)), UG > 2e-7 ? UG : 0);
}

/** "12.60 ± 0.64 g". */
export function figureText(value: Measured): string {
  const { value: grams, U } = figureOf(value);
  return `${grams}${U === '' ? '' : ` ± ${U}`}\u00a0${massUnit()}`;
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
