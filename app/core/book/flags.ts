/**
 * Flags: true but awkward facts, and things that need a look. They are kept with what they concern and never stop anything; the words are in
 * app/words/flags.ts. A reservation is a flag that must print first on the statement it touches.
 */

export const flagCodes = [
  'lot-not-found',
  'lot-charged-twice',
  'lot-drift',
  'lot-unwritten',
  'part-over-lot',
  'sponge-over-charge',
  'firing-without-charge',
  'fired-before-charged',
  'charged-before-made',
  'reference-unknown',
  'charge-empty',
  'contested',
  'outside-standing',
  'no-standing',
  'opened-hot',
  'opened-not-measured',
  'mercury-wet',
  'scale-below-minimum',
  'scale-over-maximum',
  'scale-out-of-date',
  'scale-not-named',
  'certificate-missing',
  'u-unknown',
  'over-full',
  'check-no',
  'tare-over-gross',
  'whole-ore-over-mercury',
  'vessel-empty',
  'out-over-in',
  'equal-masses',
  'doses-differ',
  'bars-over-melt',
  'count-unanswered',
  'place-not-found',
  'seal-broken',
  'poured-unweighed',
  'count-differs',
  'scale-check-failed',
  'loss-or-disposal',
  'bar-left-melted',
  'bar-left-twice',
  'bar-over-1000',
  'assay-over-1000',
  'assay-no-proofs',
  'silver-uncorrected',
  'replicates-apart',
  'density-outside',
  'umpire-needed',
  'settled-twice',
  'settlement-differs',
  'silver-umpire-needed',
  'out-turn-twice',
  'authority-not-running',
  'air-idlh',
  'air-no-meter',
  'meter-no-calibration',
  'meter-out-of-date',
  'air-temperature-odd',
  'air-above-saturation',
  'air-counted-once',
] as const;
export type FlagCode = (typeof flagCodes)[number];

/** Flags that print first on a statement. */
export const reservations: ReadonlySet<FlagCode> = new Set([
  'lot-not-found',
  'lot-charged-twice',
  'part-over-lot',
  'sponge-over-charge',
  'contested',
  'outside-standing',
  'no-standing',
  'u-unknown',
  'tare-over-gross',
  'vessel-empty',
  'out-over-in',
  'bars-over-melt',
  'count-unanswered',
  'place-not-found',
  'poured-unweighed',
  'scale-check-failed',
  'loss-or-disposal',
  'bar-left-melted',
  'bar-left-twice',
  'bar-over-1000',
  'assay-over-1000',
  'umpire-needed',
  'settled-twice',
  'settlement-differs',
  'silver-umpire-needed',
  'out-turn-twice',
  'authority-not-running',
  'air-idlh',
]);

export interface Flag {
  readonly code: FlagCode;
  /** The entry it concerns. */
  readonly entry: string;
  /** Values its sentence names. */
  readonly data: Readonly<Record<string, string | number>>;
}

export const flag = (code: FlagCode, entry: string, data: Flag['data'] = {}): Flag => ({ code, entry, data });
