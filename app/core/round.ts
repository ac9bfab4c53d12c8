/**
 * Rounding for the eye: once, on the decimal itself, by a rule that is named. Never on a double, never in two steps, never to minus zero.
 * Rules: ISO 80000-1:2009, annex B, rule A; uncertainty with two digits: JCGM 100:2008, 7.2.6 (from memory; methods.md 7).
 */
import { absolute, type Decimal, dividedWhole, isZero, type Rule, rounded, toText } from './decimal.ts';

/** The decimal at so many places, as text. */
export const roundedText = (value: Decimal, places: number, rule: Rule = 'half-even'): string =>
  toText(rounded(value, places, rule));

/** The nearest multiple of a step above zero, as text with as many decimals as the step is written with. */
export const steppedText = (value: Decimal, step: Decimal, rule: Rule = 'half-even'): string =>
  toText({ digits: dividedWhole(value, step, rule) * step.digits, places: step.places });

/** At so many places; fewer than none rounds to tens, hundreds and so on. */
const at = (value: Decimal, places: number): Decimal =>
  places >= 0 ? rounded(value, places) : { digits: dividedWhole(value, powerOfTen(-places)) * 10n ** BigInt(-places), places: 0 };

const powerOfTen = (power: number): Decimal => ({ digits: 10n ** BigInt(power), places: 0 });

/** The place that keeps two digits of an uncertainty above zero: 0.0358 has 3, 12.4 none, 1034 minus two. */
function placeOfTwoDigits(u: Decimal): number {
  const places = u.places - (u.digits.toString().length - 2);
  // 0.0996 becomes 0.10, which has its two digits one place earlier
  const kept = at(u, places);
  return kept.digits.toString().length - kept.places > u.digits.toString().length - u.places ? places - 1 : places;
}

/**
 * A value beside its uncertainty: the uncertainty with at most two digits, the value to the same place. An uncertainty of nothing leaves the value as it stands.
 */
export function reported(value: Decimal, u: Decimal): { readonly value: string; readonly u: string } {
  if (isZero(u)) return { value: toText(value), u: '0' };
  const place = placeOfTwoDigits(absolute(u));
  return { value: toText(at(value, place)), u: toText(at(absolute(u), place)) };
}
