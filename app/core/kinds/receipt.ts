/** Mercury that came into the book: bought, given, or already here when the book began. */
import { id, label, weight } from '../shapes.ts';
import { z } from '../zod.ts';

export const receiptWays = ['bought', 'given', 'already-here', 'moved-in'] as const;

export const receipt = z.strictObject({
  /** The vessel it came in or went into. */
  vessel: id,
  weight,
  way: z.enum(receiptWays),
  from: label.optional(),
  document: label.optional(),
  /** Number of the seal it stands under unopened; without one the vessel is open. */
  seal: label.optional(),
});
