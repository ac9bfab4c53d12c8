/**
 * Bars and what they hold: fine metal, yield per ton, joined bars, the old mint value. Fineness is parts per thousand and is never rounded on
 * the way. Sources: practice.md 2.1; methods.md 4, 5.1 and 5.7 (22-carat standard gold at 3 pounds 17 shillings 10½ pence the ounce).
 */
import { type Decimal, decimalFromText, minus, sum, times, zero } from './decimal.ts';
import { gramsPer } from './mass.ts';
import { asRatio, over, type Ratio, ratioFromText, timesRatio } from './ratio.ts';

const exact = (text: string): Decimal => decimalFromText(text) ?? zero;
const thousand = exact('1000');

/** Fine metal in exact grams: gross · permille / 1000. */
export const fine = (gross: Decimal, permille: Decimal): Decimal => times(times(gross, permille), exact('0.001'));

/** What is neither gold nor silver, parts per thousand; negative when the two add up to more than the whole. */
export const basePermille = (gold: Decimal, silver: Decimal): Decimal => minus(minus(thousand, gold), silver);

/** Grams per tonne of ore (both given in grams); null when there is no ore above zero. */
export const perTonne = (metal: Decimal, ore: Decimal): Ratio | null =>
  over(timesRatio(asRatio(metal), ratioFromText('1000000')), asRatio(ore));

/** One pennyweight per long ton is 75/49 grams per tonne, exactly. */
export const dwtPerLongTon = (gramsPerTonne: Ratio): Ratio => timesRatio(gramsPerTonne, { n: 49n, d: 75n });

export interface Bar {
  readonly mass: Decimal;
  readonly gold: Decimal;
  /** Left out: not assayed. */
  readonly silver?: Decimal | undefined;
}

/** Bars taken as one lot; fineness is null when the bars weigh nothing, silver absent unless every bar has one. */
export interface JoinedBars {
  readonly mass: Decimal;
  readonly gold: Ratio | null;
  readonly silver?: Ratio | null | undefined;
  readonly fineGold: Decimal;
  /** Troy ounces fine, and of 22-carat standard gold; pounds sterling at the mint price. */
  readonly fineOunces: Ratio;
  readonly standardOunces: Ratio;
  readonly mintPounds: Ratio;
}

const poundsPerStandardOunce = ratioFromText('3.89375');

/** The bars weighed in by mass. */
export function joined(bars: readonly Bar[]): JoinedBars {
  const mass = sum(bars.map((bar) => bar.mass));
  const weighted = (of: (bar: Bar) => Decimal) => over(asRatio(sum(bars.map((bar) => times(bar.mass, of(bar))))), asRatio(mass));
  const fineGold = sum(bars.map((bar) => fine(bar.mass, bar.gold)));
  const fineOunces = over(asRatio(fineGold), asRatio(gramsPer.ozt)) ?? { n: 0n, d: 1n };
  const standardOunces = timesRatio(fineOunces, { n: 12n, d: 11n });
  const allSilver = bars.length > 0 && bars.every((bar) => bar.silver !== undefined);
  return {
    mass,
    gold: weighted((bar) => bar.gold),
    ...(allSilver && { silver: weighted((bar) => bar.silver ?? zero) }),
    fineGold,
    fineOunces,
    standardOunces,
    mintPounds: timesRatio(standardOunces, poundsPerStandardOunce),
  };
}
