/**
 * Gold assays as old English books report them: 24 carats are fine gold, a carat is 4 grains and a grain 4 quarters, told as better or worse than standard,
 * which is 22 carats. Read exactly, never rounded. Sources: methods.md 4 (the carat grade), WE-24; practice.md 2.1.
 */
import { compareRatio, minusRatio, nought, plusRatio, type Ratio, timesRatio } from './ratio.ts';

export interface OldAssay {
  /** Against standard; left out: the carats are the fineness itself. */
  readonly side?: 'better' | 'worse' | undefined;
  readonly carats: number;
  /** Carat-grains, below 4. */
  readonly grains: Ratio;
  /** Quarters of a grain, below 4. */
  readonly quarters: number;
}

const fineCarats: Ratio = { n: 24n, d: 1n };
const standardCarats: Ratio = { n: 22n, d: 1n };

/** Carats of fine gold in 24; null where the report would be finer than fine gold or less than nothing. */
export function caratsOf({ side, carats, grains, quarters }: OldAssay): Ratio | null {
  const told = plusRatio(
    { n: BigInt(carats), d: 1n },
    plusRatio(timesRatio(grains, { n: 1n, d: 4n }), { n: BigInt(quarters), d: 16n }),
  );
  const found =
    side === undefined ? told : side === 'better' ? plusRatio(standardCarats, told) : minusRatio(standardCarats, told);
  return compareRatio(found, nought) < 0 || compareRatio(found, fineCarats) > 0 ? null : found;
}

/** Parts per thousand: carat = 24 f / 1000 (methods.md 5.1). */
export const permilleOfCarats = (carats: Ratio): Ratio => timesRatio(carats, { n: 1000n, d: 24n });

/** Weight of standard gold that holds the same fine gold: 22 carats in 24. */
export const standardOf = (fine: Ratio): Ratio => timesRatio(fine, { n: 12n, d: 11n });
