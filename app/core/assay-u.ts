/**
 * How sure a fire assay's mean is: the weighing of cornets, of samples and of proofs, the scatter of one determination and of one proof, each a
 * term of its own so that none is counted twice. What the site does not know is left out and said to be missing. Source: methods.md 5.2, WE-18.
 */
import type { AssayFigures, AssaySample, Proof } from './assay.ts';
import { toNumber } from './decimal.ts';
import { toDouble } from './ratio.ts';

/** Standard uncertainties the site states: of one weighing (in the unit of the samples), of one determination and one proof (parts per thousand). */
export interface AssayKnown {
  readonly balanceU?: number | undefined;
  readonly repeatability?: number | undefined;
  readonly proofScatter?: number | undefined;
}

export const assayTerms = ['cornet', 'sample', 'delta', 'repeatability', 'proofs'] as const;
export type AssayTerm = (typeof assayTerms)[number];

/** Contributions to the mean of gold in parts per thousand at one standard uncertainty; `known` is false where a term is missing. */
export interface AssayU {
  readonly terms: readonly (readonly [AssayTerm, number])[];
  readonly known: boolean;
}

/** Sample standard deviation; null for fewer than two values. */
export function deviation(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const middle = values.reduce((s, v) => s + v, 0) / values.length;
  return Math.sqrt(values.reduce((s, v) => s + (v - middle) ** 2, 0) / (values.length - 1));
}

const rootSum = (values: readonly number[]): number => Math.sqrt(values.reduce((s, v) => s + v * v, 0));

/** Terms of the mean. Where no scatter of one determination is stated, the replicates' own stands in, if there are at least two. */
export function assayU(
  samples: readonly AssaySample[],
  proofs: readonly Proof[],
  figures: AssayFigures,
  { balanceU, repeatability, proofScatter }: AssayKnown,
): AssayU {
  const n = samples.length;
  const inverse = samples.map(({ sample }) => 1 / toNumber(sample));
  const gold = figures.gold.map((g) => (g === null ? 0 : toDouble(g)));
  const terms: [AssayTerm, number][] = [];
  if (balanceU !== undefined) {
    terms.push(['cornet', ((1000 * balanceU) / n) * rootSum(inverse)]);
    terms.push(['sample', (balanceU / n) * rootSum(inverse.map((x, i) => x * (gold[i] ?? 0)))]);
    if (proofs.length > 0) {
      const deltaU = (balanceU * Math.SQRT2) / Math.sqrt(proofs.length);
      terms.push(['delta', (1000 * deltaU * inverse.reduce((s, x) => s + x, 0)) / n]);
    }
  }
  const scatter = repeatability ?? deviation(gold);
  if (scatter !== null) terms.push(['repeatability', scatter / Math.sqrt(n)]);
  const ofProofs =
    proofScatter ?? deviation(proofs.map(({ taken, found }) => (1000 * (toNumber(taken) - toNumber(found))) / toNumber(taken)));
  if (ofProofs !== null && proofs.length > 0) terms.push(['proofs', ofProofs / Math.sqrt(proofs.length)]);
  return { terms, known: balanceU !== undefined && scatter !== null && proofs.length > 0 && ofProofs !== null };
}
