/**
 * Gold by weighing in air and in water: only an indication, never a basis for settlement, because it assumes one second metal, no change of
 * volume on alloying and no voids. Source: methods.md 5.5.
 */
import { type Decimal, minus } from './decimal.ts';
import { asRatio, compareRatio, minusRatio, over, plusRatio, type Ratio, ratioFromText, timesRatio } from './ratio.ts';

/** Grams per cubic centimetre. */
export const goldDensity = ratioFromText('19.32');
export const otherMetals = { silver: ratioFromText('10.49'), copper: ratioFromText('8.96') } as const;
export type OtherMetal = keyof typeof otherMetals;

export const densityFindings = ['denser-than-gold', 'lighter-than-other'] as const;
export type DensityFinding = (typeof densityFindings)[number];

/** Null where the weighings or the two metals allow no figure. */
export interface DensityFigures {
  readonly density: Ratio | null;
  readonly gold: Ratio | null;
  readonly findings: readonly DensityFinding[];
}

const one = ratioFromText('1');
const thousand = ratioFromText('1000');

/** rho = air · (rho_water − rho_air) / (air − water) + rho_air, grams per cubic centimetre; null when water is not below air. */
export function densityOf(weighed: {
  readonly air: Decimal;
  readonly water: Decimal;
  readonly waterDensity: Decimal;
  readonly airDensity: Decimal;
}): Ratio | null {
  const lift = asRatio(minus(weighed.waterDensity, weighed.airDensity));
  const body = over(timesRatio(asRatio(weighed.air), lift), asRatio(minus(weighed.air, weighed.water)));
  return body && plusRatio(body, asRatio(weighed.airDensity));
}

/** Parts of gold per thousand by mass in a mixture of gold and one other metal that has this density: volumes add. */
export function goldFromDensity(density: Ratio | null, other: OtherMetal): DensityFigures {
  if (density === null) return { density, gold: null, findings: [] };
  const otherDensity = otherMetals[other];
  if (compareRatio(density, goldDensity) > 0) return { density, gold: null, findings: ['denser-than-gold'] };
  if (compareRatio(density, otherDensity) < 0) return { density, gold: null, findings: ['lighter-than-other'] };
  // (1/other − 1/density) / (1/other − 1/gold), both above or at zero here
  const inverse = (value: Ratio) => over(one, value) ?? one;
  const above = minusRatio(inverse(otherDensity), inverse(density));
  const gold = over(timesRatio(thousand, above), minusRatio(inverse(otherDensity), inverse(goldDensity)));
  return { density, gold, findings: [] };
}
