/**
 * What a run comes to with the weights of one more firing, before that firing is kept. The same judgement as the book's (`core/run.ts`), fed with
 * what is typed: the last sponge counts, mercury and water add up. It writes nothing and decides nothing.
 */
import { type Charge, emptySum, joined, lessSum, type Sum } from '../../core/book/charges.ts';
import type { Run } from '../../core/book/runs.ts';
import { decimalFromNumber, times, zero } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import { judgeRun, type RunBands, type RunFigures } from '../../core/run.ts';

/** Weights of a firing; null: not weighed, or not typed yet. */
export interface FiringWeights {
  /** One for each charge fired, in any order. */
  readonly sponges: readonly (Sum | null)[];
  readonly mercury: Sum | null;
  readonly water: Sum | null;
}

/** What was weighed before, and what it is held against. */
export interface Ground {
  readonly charge: Sum;
  /** Mercury and water of earlier firings, and whether all of them had their water weighed. */
  readonly mercury: Sum;
  readonly water: Sum;
  readonly waterKnown: boolean;
  /** Sponges of charges of the group that are not fired this time; null where one of them was never weighed. */
  readonly otherSponges: Sum | null;
  readonly bands: RunBands;
}

export interface Closing {
  readonly sponge: Sum;
  readonly mercury: Sum;
  readonly water: Sum;
  readonly waterKnown: boolean;
  readonly gap: Sum;
  readonly figures: RunFigures;
}

/** The sponge a charge left at its last weighing. */
const lastSponge = (charge: Charge): Sum | null =>
  charge.firings.flatMap((firing) => firing.sponges.get(charge.id) ?? []).at(-1) ?? null;

/**
 * The ground a further firing of these charges stands on; the first run's bands count, as in the book. `runs` are the runs the charges belong to.
 * Null when there is no run.
 */
export function groundOf(runs: readonly Run[], fired: readonly string[]): Ground | null {
  const first = runs[0];
  if (!first) return null;
  const others = runs.flatMap((run) => run.charges.filter((c) => !fired.includes(c.id)).map(lastSponge));
  return {
    charge: runs.reduce<Sum>((s, run) => joined(s, run.charge), emptySum),
    mercury: runs.reduce<Sum>((s, run) => joined(s, run.openings.at(-1)?.mercury ?? emptySum), emptySum),
    water: runs.reduce<Sum>((s, run) => joined(s, run.openings.at(-1)?.water ?? emptySum), emptySum),
    waterKnown: runs.every((run) => run.openings.at(-1)?.waterKnown ?? true),
    otherSponges: others.includes(null) ? null : others.reduce<Sum>((s, o) => (o ? joined(s, o) : s), emptySum),
    bands: first.bands,
  };
}

/** The figures, or null until every sponge and the mercury are in and something was charged. */
export function closingOf(ground: Ground, typed: FiringWeights): Closing | null {
  const sponges = typed.sponges.filter((s) => s !== null);
  if (sponges.length < typed.sponges.length || sponges.length === 0 || !typed.mercury) return null;
  if (ground.charge.grams.digits <= 0n || !ground.otherSponges) return null;
  const sponge = sponges.reduce(joined, ground.otherSponges);
  const mercury = joined(ground.mercury, typed.mercury);
  const water = typed.water ? joined(ground.water, typed.water) : ground.water;
  const waterKnown = ground.waterKnown && typed.water !== null;
  const gap = lessSum(lessSum(lessSum(ground.charge, sponge), water), mercury);
  const u = gap.uKnown ? decimalFromNumber(uOf(gap.net) / 1e6) : undefined;
  const figures = judgeRun(
    {
      charge: ground.charge.grams,
      sponge: sponge.grams,
      mercury: mercury.grams,
      water: water.grams,
      waterKnown,
      condenserChange: zero,
      uGapSquared: u && times(u, u),
    },
    ground.bands,
  );
  return { sponge, mercury, water, waterKnown, gap, figures };
}
