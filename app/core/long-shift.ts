/**
 * Limits for shifts longer than eight hours, by the two ways that are named in the trade: Brief and Scala's, and 8/h. Neither ever raises a limit, and which
 * of them a rule wants is the rule's affair. The reduced limit is held against the mean over the whole shift. Source: safety.md 3.1, item 2.
 */
import type { Ratio } from './ratio.ts';

export const longShiftWays = ['brief-scala', 'eight-over-h'] as const;
export type LongShiftWay = (typeof longShiftWays)[number];

/** The factor for a day of so many minutes: 1 up to eight hours, nothing at 24. Exact. */
export function longShiftFactor(way: LongShiftWay, shiftMinutes: number): Ratio {
  if (shiftMinutes <= 480) return { n: 1n, d: 1n };
  const ms = BigInt(Math.round(shiftMinutes * 60_000));
  const hour = 3_600_000n;
  // (8/h), and for Brief and Scala times (24 − h)/16
  return way === 'eight-over-h' ? { n: 8n * hour, d: ms } : { n: 8n * hour * (24n * hour - ms), d: ms * 16n * hour };
}
