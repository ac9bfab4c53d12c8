/**
 * Fire assay of bullion by cupellation with proofs: the additive correction ISO 11426:2014 clause 8 uses (from memory; methods.md 5.2), silver by
 * difference with the proofs' cupellation loss (5.3). Nothing above 1000 is set back, and without proofs nothing is corrected in silence.
 */
import { compare, type Decimal, minus } from './decimal.ts';
import { asRatio, compareRatio, mean, minusRatio, over, plusRatio, type Ratio, ratioFromText, timesRatio } from './ratio.ts';

/** Milligrams, exact. */
export interface AssaySample {
  readonly sample: Decimal;
  /** Gold left after parting. */
  readonly cornet: Decimal;
  /** Gold and silver left after cupellation. */
  readonly bead?: Decimal | undefined;
}
export interface Proof {
  readonly taken: Decimal;
  readonly found: Decimal;
  readonly silverLoss?: Decimal | undefined;
}

export const assayFindings = ['no-proofs', 'no-silver-loss', 'over-1000'] as const;
export type AssayFinding = (typeof assayFindings)[number];

/** Parts per thousand; null where there is nothing to divide by. Silver and base stand only when a sample has a bead. */
export interface AssayFigures {
  /** Mean of taken less found, milligrams: added to each cornet. Null without proofs. */
  readonly delta: Ratio | null;
  readonly gold: readonly (Ratio | null)[];
  readonly goldMean: Ratio | null;
  readonly range: Ratio | null;
  readonly uncorrectedMean: Ratio | null;
  readonly surcharge: Ratio | null;
  readonly silver?: Ratio | null | undefined;
  readonly base?: Ratio | null | undefined;
  readonly findings: readonly AssayFinding[];
}

const thousand = ratioFromText('1000');
const minusThousand = ratioFromText('-1000');
const none = ratioFromText('0');

const permilleOf = (metal: Ratio, sample: Decimal): Ratio | null => over(timesRatio(thousand, metal), asRatio(sample));

/** The mean of all, null as soon as one is. */
const meanOfAll = (values: readonly (Ratio | null)[]): Ratio | null =>
  values.some((v) => v === null) ? null : mean(values.filter((v) => v !== null));

function rangeOf(values: readonly (Ratio | null)[]): Ratio | null {
  const all = values.filter((v) => v !== null).toSorted(compareRatio);
  const [least, most] = [all[0], all.at(-1)];
  return least && most && all.length === values.length ? minusRatio(most, least) : null;
}

/** Whether a cornet weighs more than the sample it came from: no assay can do that. */
export const cornetOverSample = ({ sample, cornet }: AssaySample): boolean => compare(cornet, sample) > 0;

/** Figures of one assay. */
export function assayFigures(samples: readonly AssaySample[], proofs: readonly Proof[]): AssayFigures {
  const delta = mean(proofs.map((proof) => asRatio(minus(proof.taken, proof.found))));
  const meanTaken = mean(proofs.map((proof) => asRatio(proof.taken)));
  const gold = samples.map(({ sample, cornet }) => permilleOf(plusRatio(asRatio(cornet), delta ?? none), sample));
  const goldMean = meanOfAll(gold);

  const beads = samples.filter((s) => s.bead !== undefined);
  const losses = proofs.flatMap((proof) => (proof.silverLoss === undefined ? [] : [asRatio(proof.silverLoss)]));
  const loss = mean(losses);
  const both = meanOfAll(
    beads.map(({ bead, sample }) => permilleOf(plusRatio(bead ? asRatio(bead) : none, loss ?? none), sample)),
  );
  const silver = both && goldMean ? minusRatio(both, goldMean) : null;

  const above = (value: Ratio | null) => value !== null && compareRatio(value, thousand) > 0;
  const findings: AssayFinding[] = [];
  if (delta === null) findings.push('no-proofs');
  if (beads.length > 0 && loss === null) findings.push('no-silver-loss');
  if (gold.some(above) || above(both)) findings.push('over-1000');
  return {
    delta,
    gold,
    goldMean,
    range: rangeOf(gold),
    uncorrectedMean: meanOfAll(samples.map(({ sample, cornet }) => permilleOf(asRatio(cornet), sample))),
    surcharge: delta && meanTaken ? over(timesRatio(minusThousand, delta), meanTaken) : null,
    ...(beads.length > 0 && {
      silver,
      base: silver && goldMean ? minusRatio(minusRatio(thousand, goldMean), silver) : null,
    }),
    findings,
  };
}
