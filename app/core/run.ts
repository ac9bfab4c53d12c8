/**
 * One retort run judged twice: does it close (charge − sponge − water − mercury), and is the sponge what this source usually leaves. Only both
 * together tell a leak from under-firing. Everything is compared as exact decimals; nothing is clipped, and a gap is never called vapour.
 * Source: practice.md 2.10 and 3 (the bands are starting values, to be set by the site).
 */
import { compare, type Decimal, decimalFromText, minus, plus, times, zero } from './decimal.ts';
import { quotient } from './ratio.ts';

/** What a retort charge is made of. Only amalgam leaves a sponge whose ratio says something. */
export const runKinds = ['amalgam', 'mercury', 'residues'] as const;
export type RunKind = (typeof runKinds)[number];

/** What a run's numbers show, in the order they are told. */
export const runFindings = [
  'closes',
  'within-band',
  'short-of-mercury',
  'more-out-than-in',
  'heavy-sponge',
  'light-sponge',
  'water-not-known',
] as const;
export type FindingCode = (typeof runFindings)[number];

/** Totals of a charge up to one opening of the retort, in exact grams. */
export interface RunTotals {
  readonly charge: Decimal;
  /** The sponge at this opening. */
  readonly sponge: Decimal;
  /** Mercury caught so far. */
  readonly mercury: Decimal;
  /** Water weighed so far. */
  readonly water: Decimal;
  /** Whether every firing so far had its water weighed, or was said to have none. */
  readonly waterKnown: boolean;
  /** What the condenser holds now less what it held before. */
  readonly condenserChange: Decimal;
  /** Squared standard uncertainty of the gap in grams squared; left out: not known. */
  readonly uGapSquared?: Decimal | undefined;
}

/** What a run is held against. Bands are shares of the charge. */
export interface RunBands {
  readonly kind: RunKind;
  /** Sponge ratio this source has left before; left out: none is known. */
  readonly usualRatio?: Decimal | undefined;
  readonly ratioBand: Decimal;
  readonly lossBand: Decimal;
  /** A loss in grams that is always allowed for, whatever the charge. */
  readonly lossAllowance?: Decimal | undefined;
}

const exact = (text: string): Decimal => decimalFromText(text) ?? zero;

/** Bands where the site has set none (practice.md 3: suggested starting values). */
export const startingRatioBand = exact('0.04');
export const startingLossBand = exact('0.02');
/** Sponge ratios that need no remark where the source has no history (practice.md 2.3). */
export const unremarkableRatio = { from: exact('0.25'), to: exact('0.50') };

/** What one opening of the retort comes to; a ratio is null where its divisor is not above zero. */
export interface RunFigures {
  readonly drivenOff: Decimal;
  readonly gap: Decimal;
  readonly gapOfCharge: number | null;
  readonly spongeRatio: number | null;
  /** Mercury caught of what was driven off and was not water: counts what the sponge still holds as gold. */
  readonly caughtUpper: number | null;
  /** The largest gap that needs no remark, in grams. */
  readonly band: Decimal;
  readonly findings: readonly FindingCode[];
}

const share = (part: Decimal, whole: Decimal): number | null => (whole.digits > 0n ? quotient(part, whole) : null);

function closing(gap: Decimal, band: Decimal, uGapSquared: Decimal | undefined): FindingCode {
  if (uGapSquared && compare(times(gap, gap), times(exact('4'), uGapSquared)) <= 0) return 'closes';
  if (gap.digits < 0n) return 'more-out-than-in';
  return compare(gap, band) > 0 ? 'short-of-mercury' : 'within-band';
}

/** The ratio's distance from the usual is compared without dividing: sponge against (usual ± band) · charge. */
function spongeFinding(totals: RunTotals, bands: RunBands): FindingCode | null {
  if (bands.kind !== 'amalgam') return null;
  const { usualRatio, ratioBand } = bands;
  const to = usualRatio ? plus(usualRatio, ratioBand) : unremarkableRatio.to;
  const from = usualRatio ? minus(usualRatio, ratioBand) : unremarkableRatio.from;
  if (compare(totals.sponge, times(to, totals.charge)) > 0) return 'heavy-sponge';
  return compare(totals.sponge, times(from, totals.charge)) < 0 ? 'light-sponge' : null;
}

/** Figures and findings of a charge at one opening. The charge must be above zero and no lighter than the sponge; the caller sees to it. */
export function judgeRun(totals: RunTotals, bands: RunBands): RunFigures {
  const { charge, sponge, mercury, water } = totals;
  const drivenOff = minus(charge, sponge);
  const gap = minus(minus(minus(drivenOff, water), mercury), totals.condenserChange);
  const byShare = times(bands.lossBand, charge);
  const band = bands.lossAllowance && compare(bands.lossAllowance, byShare) > 0 ? bands.lossAllowance : byShare;
  const aboutSponge = spongeFinding(totals, bands);
  return {
    drivenOff,
    gap,
    gapOfCharge: share(gap, charge),
    spongeRatio: share(sponge, charge),
    caughtUpper: share(mercury, minus(drivenOff, water)),
    band,
    findings: [
      closing(gap, band, totals.uGapSquared),
      ...(aboutSponge ? [aboutSponge] : []),
      ...(totals.waterKnown ? [] : (['water-not-known'] as const)),
    ],
  };
}

/**
 * Mercury caught of everything that left the charge up to the bar: counts all that was lost in melting as mercury. Only for a bar made from this
 * charge alone: above 1, or over a divisor not above zero, it says nothing and is null.
 */
export function caughtLower(run: {
  readonly charge: Decimal;
  readonly mercury: Decimal;
  readonly water: Decimal;
  readonly bar: Decimal;
  readonly prills: Decimal;
}): number | null {
  const left = minus(minus(minus(run.charge, run.bar), run.prills), run.water);
  return compare(run.mercury, left) > 0 ? null : share(run.mercury, left);
}
