/** Figures of the air that are reckoned: three digits at most, with their unit; ranges and times to a target in words. Rounded once, never reckoned on. */
import { decimalFromNumber } from '../core/decimal.ts';
import type { Range } from '../core/exposure.ts';
import { toDouble } from '../core/ratio.ts';
import { decimalText } from './figures.ts';

/** A number to so many significant digits, never in exponents. */
export function digitsText(value: number, digits = 3): string {
  if (value === 0 || !Number.isFinite(value)) return '0';
  const once = Number(value.toPrecision(digits));
  const places = digits - 1 - Math.floor(Math.log10(Math.abs(once)));
  return decimalText(decimalFromNumber(once), Math.max(0, places));
}

/** "0.0418 mg/m³". */
export const mgM3Text = (mgM3: number): string => `${digitsText(mgM3)}\u00a0mg/m³`;

/** A concentration somebody entered, with no digits added: "0.025 mg/m³". */
export function givenText(mgM3: number): string {
  const exact = decimalFromNumber(Number(mgM3.toPrecision(6)));
  return `${decimalText(exact, Math.max(0, exact.places))}\u00a0mg/m³`;
}

/** A concentration with the same in µg/m³ beside it, where a reader may think in either. */
export const bothUnits = (mgM3: number): string =>
  mgM3 < 1 ? `${mgM3Text(mgM3)} (${digitsText(mgM3 * 1000)}\u00a0µg/m³)` : mgM3Text(mgM3);

/** "24 min", "3 h 36 min": rounded up to the whole minute, since the target is not met before. */
export function minutesText(minutes: number): string {
  const whole = Math.ceil(minutes - 1e-9);
  if (whole < 120) return `${whole}\u00a0min`;
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  const shown = `${decimalText(decimalFromNumber(hours), 0)}\u00a0h`;
  return rest === 0 ? shown : `${shown} ${rest}\u00a0min`;
}

/** "0.012 to 0.026 mg/m³", "at least 0.012 mg/m³" where nothing bounds it above; null where there are no readings to say it. */
export function rangeText(range: Range | null): string | null {
  if (range === null) return null;
  const low = digitsText(toDouble(range.low));
  if (range.high === null) return `at least ${low}\u00a0mg/m³, with no upper end`;
  const high = digitsText(toDouble(range.high));
  return low === high ? `${low}\u00a0mg/m³` : `${low} to ${high}\u00a0mg/m³`;
}
