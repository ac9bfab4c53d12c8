/**
 * Recovery of gold three ways, which agree only where the gold closes: against the assay head, by head and tail, and against the head that product
 * and tailings add up to. Each is named; what none of them explains is unaccounted gold, with its sign. Source: methods.md 6, WE-33.
 */
import { minusRatio, over, plusRatio, type Ratio, ratioFromText, timesRatio } from './ratio.ts';

/** Ore and fine product in grams; head and tails in grams per tonne. */
export interface GoldBalance {
  readonly ore: Ratio;
  readonly product: Ratio;
  readonly head?: Ratio | undefined;
  readonly tails?: Ratio | undefined;
}

/** Shares of one, grams per tonne, grams. Null where what it needs was not given, or there is nothing to divide by. */
export interface Recoveries {
  readonly byHead: Ratio | null;
  readonly byHeadAndTail: Ratio | null;
  readonly byCalculatedHead: Ratio | null;
  readonly calculatedHead: Ratio | null;
  /** Gold in the head less gold in product and tailings. */
  readonly unaccounted: Ratio | null;
}

const one = ratioFromText('1');
const millionth = ratioFromText('0.000001');

export function recoveries({ ore, product, head, tails }: GoldBalance): Recoveries {
  const tonnes = timesRatio(ore, millionth);
  const headGold = head && timesRatio(tonnes, head);
  const tailGold = tails && timesRatio(tonnes, tails);
  const both = tailGold && plusRatio(product, tailGold);
  const left = head && tails ? over(tails, head) : null;
  return {
    byHead: headGold ? over(product, headGold) : null,
    byHeadAndTail: left && minusRatio(one, left),
    byCalculatedHead: both ? over(product, both) : null,
    calculatedHead: both ? over(both, tonnes) : null,
    unaccounted: headGold && both ? minusRatio(headGold, both) : null,
  };
}
