/**
 * Recovery from three assays: what part of the metal in the feed went into the concentrate, by the two-product formula, with its uncertainty to first
 * order. It needs no weights, so it must never stand in for a balance of weighed masses. Source: Wills' Mineral Processing Technology, chapter 3 (from
 * memory); propagation: JCGM 100:2008, 5.1.2.
 */
import { bad, good, problem, type Result } from './result.ts';

/** An assay as a share of mass, with its standard uncertainty in the same unit. Any unit will do if all three are in it. */
export interface Assay {
  readonly value: number;
  readonly u: number;
}

export interface TwoProduct {
  /** The recovered share of the metal, from 0 to 1. */
  readonly recovery: number;
  /** Its standard uncertainty, a share too; the three assays taken as independent. */
  readonly u: number;
  /** What each assay adds, signed: sensitivity times its uncertainty. */
  readonly contributions: { readonly feed: number; readonly concentrate: number; readonly tail: number };
  /** Feed over concentrate, by mass. */
  readonly ratioOfConcentration: number;
  /** Assay of the concentrate over that of the feed. */
  readonly enrichment: number;
}

/** The formula for feed f, concentrate c and tail t with c > f > t ≥ 0; other assays are `two-product-order`, for they tell of no separation. */
export function twoProduct(feed: Assay, concentrate: Assay, tail: Assay): Result<TwoProduct> {
  const [f, c, t] = [feed.value, concentrate.value, tail.value];
  if (!(c > f && f > t && t >= 0)) return bad(problem('two-product-order', ''));
  const contributions = {
    feed: ((c * t) / (f * f * (c - t))) * feed.u,
    concentrate: (-(f - t) * t * concentrate.u) / (f * (c - t) ** 2),
    tail: (-c * (c - f) * tail.u) / (f * (c - t) ** 2),
  };
  return good({
    recovery: (c * (f - t)) / (f * (c - t)),
    u: Math.hypot(contributions.feed, contributions.concentrate, contributions.tail),
    contributions,
    ratioOfConcentration: (c - t) / (f - t),
    enrichment: c / f,
  });
}
