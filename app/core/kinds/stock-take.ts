/**
 * A count of what is there: every sealed flask by its seal, every working vessel weighed, the circuit by a named estimating method. A line that
 * cannot be answered says why, and then stands as a reservation. A count of the whole answers every place that the book asks about at its moment.
 */
import { label, weight } from '../shapes.ts';
import { z } from '../zod.ts';
import { estimate } from './plate-work.ts';

/** A seal that stood on the book was found broken, changed or gone. */
const sealBroken = z.enum(['yes', 'no']).optional();

const line = z.discriminatedUnion('how', [
  z.strictObject({ how: z.literal('sealed'), place: label, seal: label }),
  /** `newSeal`: what it was shut under after weighing. */
  z.strictObject({ how: z.literal('weighed'), place: label, weight, sealBroken, newSeal: label.optional() }),
  z.strictObject({ how: z.literal('estimated'), place: label, estimate }),
  /** There as the book has it, read by its label and not touched: for lots, charges and sponges, whose mercury no scale shows. */
  z.strictObject({ how: z.literal('seen'), place: label }),
  /** Looked into and nothing seen: counted as nothing, with no uncertainty, for the eye gives none. */
  z.strictObject({ how: z.literal('empty'), place: label }),
  z.strictObject({ how: z.literal('unanswered'), place: label, why: label, sealBroken }),
  z.strictObject({ how: z.literal('not-found'), place: label, note: label.optional() }),
]);
export type CountLine = z.infer<typeof line>;
export type CountWay = CountLine['how'];

/** What a count covers: a whole one can begin or end a period of the account. Left out, as in older lines: a part. */
export const countScopes = ['whole', 'part'] as const;

export const stockTake = z.strictObject({
  scope: z.enum(countScopes).optional(),
  lines: z.array(line).min(1).max(1000),
  note: label.optional(),
});
