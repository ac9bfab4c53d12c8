/** What the site chose for its account by a moment, else what the program begins with: false alarm, mercury left in sponge, days of a lot in store. */
import type { Current } from './current.ts';
import { lastSaid } from './site-says.ts';

/** A share as it is taken: its middle and its standard uncertainty. */
export interface Share {
  readonly middle: number;
  readonly u: number;
}

/** Mercury left in a well-fired sponge: 1 to 1.5 parts in a hundred (practice.md 2.6), taken as rectangular. */
const startingResidual: Share = { middle: 0.0125, u: 0.0025 / Math.sqrt(3) };
/** Days a lot may lie before it is told, where the site chose none (common practice, no source). */
export const startingLotDays = 90;

/** The false alarm where the site chose none: one in twenty (common practice, no source). */
export const startingAlarm = 0.05;

/** Mercury left in sponge as a share of it, in force at that moment. */
export const residualAt = (current: Current, at: string): Share =>
  lastSaid(current, 'site-figures', at)?.body.residualShare ?? startingResidual;

/** After how many days in store a lot is told at that moment. */
export const lotDaysAt = (current: Current, at: string): number =>
  lastSaid(current, 'site-figures', at)?.body.lotDays?.value ?? startingLotDays;

/** The false alarm the site chose by that moment; null where it chose none. */
export const falseAlarmAt = (current: Current, at: string): number | null =>
  lastSaid(current, 'site-figures', at)?.body.falseAlarm?.value ?? null;
