/**
 * One melt: what went into the pot, what came out as bars and samples, and what shrank. How the shrinkage splits into mercury, dirt and metal
 * in the slag cannot be known from these weighings, and nothing here pretends to. Source: practice.md 2.10.
 */
import { compare, type Decimal, minus, sum, zero } from './decimal.ts';
import { quotient } from './ratio.ts';

/** Masses of one melt in exact grams. */
export interface MeltMasses {
  readonly sponge: readonly Decimal[];
  /** Old prills, old sponge, any metal that was not this sponge. */
  readonly added?: readonly Decimal[] | undefined;
  readonly bars: readonly Decimal[];
  readonly samples?: readonly Decimal[] | undefined;
  /** Metal picked from the slag afterwards. */
  readonly prills?: Decimal | undefined;
}

export const meltFindings = ['bars-over-charge'] as const;
export type MeltFinding = (typeof meltFindings)[number];

/** Exact grams; a share is null where nothing went in. */
export interface MeltFigures {
  readonly into: Decimal;
  readonly shrinkage: Decimal;
  readonly shrinkageOfIn: number | null;
  /** Shrinkage less the prills got back. */
  readonly net: Decimal;
  readonly netOfIn: number | null;
  readonly findings: readonly MeltFinding[];
}

export function meltFigures(melt: MeltMasses): MeltFigures {
  const into = sum([...melt.sponge, ...(melt.added ?? [])]);
  const out = sum([...melt.bars, ...(melt.samples ?? [])]);
  const shrinkage = minus(into, out);
  const net = minus(shrinkage, melt.prills ?? zero);
  const share = (part: Decimal) => (into.digits > 0n ? quotient(part, into) : null);
  return {
    into,
    shrinkage,
    shrinkageOfIn: share(shrinkage),
    net,
    netOfIn: share(net),
    findings: compare(out, into) > 0 ? ['bars-over-charge'] : [],
  };
}

/** Shrinkage between bounds, exact grams: each of the three could be all of it, and the metal in the slag is at least the prills that came back. */
export interface MeltBounds {
  readonly most: Decimal;
  readonly leastInSlag: Decimal;
}

/** Null where nothing shrank: then there is nothing to bound. */
export function meltBounds({ shrinkage }: MeltFigures, prills: Decimal | undefined): MeltBounds | null {
  if (compare(shrinkage, zero) <= 0) return null;
  // prills that weigh more than all that shrank were not of this melt, or are no metal only: they say nothing
  const told = prills !== undefined && prills.digits > 0n && compare(prills, shrinkage) < 0;
  return { most: shrinkage, leastInSlag: told ? prills : zero };
}
