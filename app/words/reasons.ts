/**
 * Why a figure cannot be computed, in words. Core hands back codes; `spoken` puts the sentence in their place, for the terminal, the papers and
 * the window alike.
 */
import type { ReasonCode } from '../core/reckon/answer.ts';

export const reasonTexts: Readonly<Record<ReasonCode, string>> = {
  'beyond-number': 'the result is larger than a number here can hold: check the inputs',
  'certificate-divisor': 'the certificate’s load and coverage factor must be above zero',
  'caught-above-one':
    'the bar leaves no more room than the mercury already fills: it did not come from this charge alone, or a weight is wrong',
  'group-test-failed':
    'the readings contradict each other more than their uncertainties allow: find and weigh again the suspect one first',
  'lighter-in-water': 'the weight in water is not below the weight in air, so there is no density',
  'no-air-supply': 'without any air supplied there is no steady state',
  'no-charge-driven-off': 'nothing but water was driven off, so there is nothing to take a share of',
  'no-limit-on-readings': 'at least one reading, or time without a reading, has no upper end',
  'no-ore': 'no ore above zero was given, so there is no yield per ton',
  'no-proofs': 'no proofs were run beside the samples',
  'no-readings': 'there are no readings',
  'no-tolerance': 'no tolerance was given',
  'no-umpire': 'the parties are further apart than the limit and no umpire’s figure was given',
  'no-uncertainty': 'the uncertainty is zero, so nothing can be held against it',
  'no-volume-uncertainty': 'neither the volume’s nor the temperature’s uncertainty was given',
  'nothing-melted': 'nothing went into the melt, so there is nothing to take a share of',
  'one-result': 'one result alone has no range',
  'outside-the-two-metals': 'the density lies outside the two metals, so no mixture of them has it',
  'over-nothing': 'it would be divided by something that is not above zero',
};

const isReason = (value: unknown): value is { not_computable: ReasonCode } =>
  typeof value === 'object' &&
  value !== null &&
  'not_computable' in value &&
  typeof value.not_computable === 'string' &&
  Object.hasOwn(reasonTexts, value.not_computable);

/** A copy of the output with every reason code replaced by its sentence, at any depth. Takes a reckoning's whole result as well. */
export function spoken<T>(output: T): T {
  if (isReason(output)) return { not_computable: reasonTexts[output.not_computable] } as T;
  if (Array.isArray(output)) return output.map(spoken) as T;
  if (output === null || typeof output !== 'object') return output;
  return Object.fromEntries(Object.entries(output).map(([key, value]) => [key, spoken(value)])) as T;
}
