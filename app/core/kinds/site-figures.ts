/**
 * Figures a site chose for its mercury account, each with who or what says so: the false alarm of the test of a sequence, the mercury left in sponge,
 * and after how many days a lot in store is told. The last list written stands, as one whole; a figure left out is the program's own.
 */
import { rule } from '../read.ts';
import { label, share } from '../shapes.ts';
import { z } from '../zod.ts';

const wholeDays = z.number().refine(...rule((n: number) => Number.isInteger(n) && n >= 1 && n <= 36_500, 'days-not-whole'));
/** As with a closing: above nothing and below one. */
const alarm = z.number().refine(...rule((n: number) => n > 0 && n < 1, 'alarm-not-offered'));

export const siteFigures = z.strictObject({
  /** The false alarm accepted of Page's test over periods in a row. */
  falseAlarm: z.strictObject({ value: alarm, why: label }).optional(),
  /** Mercury left in a well-fired sponge, as a share of the sponge, with its standard uncertainty. */
  residualShare: z.strictObject({ middle: share, u: share, why: label }).optional(),
  /** A lot in store for more days than this is told under Out of step. */
  lotDays: z.strictObject({ value: wholeDays, why: label }).optional(),
  note: label.optional(),
});
