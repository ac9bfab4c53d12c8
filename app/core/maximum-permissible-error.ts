/**
 * What a scale without a certificate may be off by: twice the error allowed at first verification, taken as rectangular. It marks a weighing
 * "unverified"; it is not a certificate. OIML R 76-1:2006, table 6, and 3.5.2 for scales in service (methods.md 3.2).
 */

export const accuracyClasses = ['I', 'II', 'III', 'IIII'] as const;
export type AccuracyClass = (typeof accuracyClasses)[number];

/** Loads in verification intervals up to which 0.5 and 1.0 intervals are allowed. */
const steps: Readonly<Record<AccuracyClass, readonly [half: number, one: number]>> = {
  I: [50_000, 200_000],
  II: [5_000, 20_000],
  III: [500, 2_000],
  IIII: [50, 200],
};

/** Error allowed at first verification, in grams, of a scale of this class with verification interval `eG` under `loadG`. */
export function allowedG(accuracy: AccuracyClass, eG: number, loadG: number): number {
  const intervals = loadG / eG;
  const [half, one] = steps[accuracy];
  return eG * (intervals <= half ? 0.5 : intervals <= one ? 1 : 1.5);
}

/** Standard uncertainty in grams of a load on a scale in service that has no certificate: 2 · allowed / √3. */
export const uncertifiedG = (accuracy: AccuracyClass, eG: number, loadG: number): number =>
  (2 * allowedG(accuracy, eG, loadG)) / Math.sqrt(3);
