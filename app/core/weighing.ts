/**
 * One weighing: the net, what is uncertain about it, and whether it is too small for its scale. The scatter of the readings belongs to this
 * weighing alone; the span error of the scale's certificate is shared by everything weighed between two calibrations and must never be
 * added up as if it were scatter. Components: JCGM 100:2008, F.2.2.1 and 4.3; linearity as Eurachem/CITAC, Quantifying Uncertainty in
 * Analytical Measurement, appendix A1; minimum weight: United States Pharmacopeia, chapter 41 (methods.md 3).
 */
import { compare, type Decimal, decimalFromText, minus, plus, times, toNumber, zero } from './decimal.ts';
import { type Measured, measured } from './measured.ts';
import { quotient } from './ratio.ts';

/** What is known of a scale, all in grams. */
export interface ScaleData {
  /** Division it reads to. */
  readonly d: Decimal;
  /** Standard deviation of repeated readings. */
  readonly s?: Decimal | undefined;
  /** Expanded uncertainty on the certificate, its coverage factor (2 when left out) and the load it was found at. */
  readonly certificateU?: Decimal | undefined;
  readonly certificateK?: Decimal | undefined;
  readonly certificateAt?: Decimal | undefined;
  /** Largest departure from a straight line, ± this. */
  readonly linearity?: Decimal | undefined;
}

export interface Weighing {
  readonly gross: Decimal;
  /** Left out: one reading on a zeroed scale. "0 g" is a second reading. */
  readonly tare?: Decimal | undefined;
  readonly scale: ScaleData;
}

const exact = (text: string): Decimal => decimalFromText(text) ?? zero;
const floorShare = exact('0.41');
const two = exact('2');

/** Repeatability that counts: never below 0.41 of the division, which stands in where none was found. */
export function repeatability(scale: ScaleData): Decimal {
  const floor = times(floorShare, scale.d);
  return scale.s && compare(scale.s, floor) > 0 ? scale.s : floor;
}

/** Gross less tare, exact; negative when the tare is the heavier. */
export const netOf = (weighing: Weighing): Decimal => minus(weighing.gross, weighing.tare ?? zero);

/**
 * Standard uncertainty in grams that belongs to this weighing alone: repeatability, division, linearity. Two readings when there is a tare:
 * s√2, d/√6, a√2/√3; otherwise s, d/√12, a/√3.
 */
export function scatterG(weighing: Weighing): number {
  const readings = weighing.tare === undefined ? 1 : 2;
  const s = toNumber(repeatability(weighing.scale));
  const d = toNumber(weighing.scale.d);
  const a = toNumber(weighing.scale.linearity ?? zero);
  return Math.sqrt(readings * (s * s + (d * d) / 12 + (a * a) / 3));
}

/**
 * Standard uncertainty in grams of the net from the certificate, as an error of span: U/k at its load, in proportion to the net, with the
 * net's sign. Zero without a certificate; null when the load or the coverage factor is not above zero.
 */
export function spanG(weighing: Weighing): number | null {
  const { certificateU, certificateK = two, certificateAt } = weighing.scale;
  if (certificateU === undefined) return 0;
  const divisor = times(certificateK, certificateAt ?? zero);
  if (certificateK.digits <= 0n || divisor.digits <= 0n) return null;
  return quotient(times(certificateU, netOf(weighing)), divisor);
}

/** Combined standard uncertainty in grams (k = 1); null when the span error cannot be computed. */
export function uOfWeighingG(weighing: Weighing): number | null {
  const span = spanG(weighing);
  return span === null ? null : Math.hypot(scatterG(weighing), span);
}

/** Twice the repeatability that counts: divided by the tolerance it is the smallest net the scale can weigh. */
const twiceRepeatability = (scale: ScaleData): Decimal => plus(repeatability(scale), repeatability(scale));

/** Smallest net in grams the scale can weigh within a relative tolerance; null when the tolerance is not above zero. */
export const minimumG = (scale: ScaleData, tolerance: Decimal): number | null =>
  tolerance.digits > 0n ? quotient(twiceRepeatability(scale), tolerance) : null;

/** Whether the net is under the scale's minimum, compared as decimals; null when the tolerance is not above zero. */
export const belowMinimum = (weighing: Weighing, tolerance: Decimal): boolean | null =>
  tolerance.digits > 0n ? compare(times(netOf(weighing), tolerance), twiceRepeatability(weighing.scale)) < 0 : null;

/**
 * The weighing as a value for the balance, in micrograms: its scatter under a source of its own, its span error under the source of the
 * scale's calibration epoch, so that it cancels between what went in and what came out over the same scale. Null as in `spanG`.
 */
export function weighed(weighing: Weighing, sources: { readonly scatter: string; readonly epoch: string }): Measured | null {
  const span = spanG(weighing);
  if (span === null) return null;
  return measured(toNumber(times(netOf(weighing), exact('1000000'))), [
    [sources.scatter, scatterG(weighing) * 1e6],
    [sources.epoch, span * 1e6],
  ]);
}
