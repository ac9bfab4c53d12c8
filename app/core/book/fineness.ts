/**
 * Which of a bar's assays speaks for it, and the fine metal that follows: a certificate before the site's own, a fire assay with proofs before one
 * without, a bar's parts before a density. Nothing is rounded on the way. Source: methods.md 5.1.
 */
import type { Decimal } from '../decimal.ts';
import { type Measured, measured, scaled, total } from '../measured.ts';
import { asRatio, mean, type Ratio, ratioFromText, timesRatio, toDouble } from '../ratio.ts';
import type { AssayClass, AssayRead, Fineness } from './assays.ts';

/** `by-parts`: from the bars that were melted together, weighed in by mass. */
export type FinenessClass = AssayClass | 'by-parts';

export interface BarFineness extends Fineness {
  readonly class: FinenessClass;
  /** The assays it rests on; none for a bar that is known by its parts. */
  readonly assays: readonly string[];
  /** No basis for a settlement: a density, or parts that rest on one. */
  readonly indicative: boolean;
}

/** Fine metal: exact grams, and whole micrograms' worth with its contributions. */
export interface FineMetal {
  readonly grams: Ratio;
  readonly net: Measured;
  readonly uKnown: boolean;
}

const order: Readonly<Record<'gold' | 'silver', readonly FinenessClass[]>> = {
  gold: ['certificate', 'proofed', 'unproofed', 'by-parts', 'indicative'],
  silver: ['certificate', 'titration', 'proofed', 'unproofed', 'by-parts'],
};

/** The mean of equals, their shared sources added as they must. */
function meanOf(all: readonly Fineness[]): Fineness | null {
  const permille = mean(all.map((f) => f.permille));
  if (!permille) return null;
  const parts = total(all.map((f) => scaled({ ug: 0, parts: f.parts }, 1 / all.length))).parts;
  return {
    permille,
    parts,
    uKnown: all.every((f) => f.uKnown),
    samplingKnown: all.every((f) => f.samplingKnown),
  };
}

/** The fineness of one metal of a bar; null where nothing says it. */
export function finenessFrom(
  metal: 'gold' | 'silver',
  assays: readonly AssayRead[],
  byParts: BarFineness | null,
): BarFineness | null {
  for (const wanted of order[metal]) {
    if (wanted === 'by-parts') {
      if (byParts) return byParts;
      continue;
    }
    const best = assays.filter((a) => a.class === wanted && a[metal] !== null);
    const found = meanOf(best.flatMap((a) => a[metal] ?? []));
    if (found) return { ...found, class: wanted, assays: best.map((a) => a.id), indicative: wanted === 'indicative' };
  }
  return null;
}

const thousandth = ratioFromText('0.001');

/** u² = (f/1000)² u(G)² + (G/1000)² u(f)², by source, so that what two bars share adds as it must. */
export function fineMetal(grams: Decimal, net: Measured, uKnown: boolean, f: Fineness): FineMetal {
  const share = toDouble(f.permille) / 1000;
  return {
    grams: timesRatio(timesRatio(asRatio(grams), f.permille), thousandth),
    net: total([scaled(net, share), measured(0, scaled({ ug: 0, parts: f.parts }, net.ug / 1000).parts)]),
    uKnown: uKnown && f.uKnown,
  };
}
