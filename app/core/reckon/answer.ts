/**
 * What a reckoning hands back: numbers, or in the place of a number the reason why there is none. Core gives the reason as a code;
 * `app/words/reasons.ts` says it. Zero, NaN and infinity never stand for "cannot be computed".
 */
import { type Decimal, toNumber } from '../decimal.ts';
import { type Ratio, toDouble } from '../ratio.ts';

/** Why a figure cannot be had. */
export const reasonCodes = [
  'beyond-number',
  'certificate-divisor',
  'caught-above-one',
  'group-test-failed',
  'lighter-in-water',
  'no-air-supply',
  'no-charge-driven-off',
  'no-limit-on-readings',
  'no-ore',
  'no-proofs',
  'no-readings',
  'no-tolerance',
  'no-umpire',
  'no-uncertainty',
  'no-volume-uncertainty',
  'nothing-melted',
  'one-result',
  'outside-the-two-metals',
  'over-nothing',
] as const;
export type ReasonCode = (typeof reasonCodes)[number];

/** Stands in the place of a number. */
export interface NotComputable {
  readonly not_computable: ReasonCode;
}

export const notComputable = (reason: ReasonCode): NotComputable => ({ not_computable: reason });

/** The number, or the reason where it is null. */
export const orReason = <T>(value: T | null, reason: ReasonCode): T | NotComputable => value ?? notComputable(reason);

/** A decimal as the double nearest to it. */
export const num = (value: Decimal): number => toNumber(value);

/** A ratio as the double nearest to it, or the reason where it is null. */
export const ratioOr = (value: Ratio | null, reason: ReasonCode): number | NotComputable =>
  value === null ? notComputable(reason) : toDouble(value);

/** The output with any number that passes what a double can hold replaced by its reason. */
export function finiteOnly(output: unknown): unknown {
  if (typeof output === 'number') return Number.isFinite(output) ? output : notComputable('beyond-number');
  if (Array.isArray(output)) return output.map(finiteOnly);
  if (output === null || typeof output !== 'object') return output;
  return Object.fromEntries(Object.entries(output).map(([key, value]) => [key, finiteOnly(value)]));
}
