/**
 * The out-turn of what was sent to a refiner or buyer: their weights, fineness, deductions and charges as they stated them. It stands beside what the
 * site weighed and assayed; neither overwrites the other. Source: practice.md 1 (16 to 19).
 */
import { decimalText, id, label, mass, weight } from '../shapes.ts';
import { z } from '../zod.ts';

/** One metal as they found it: parts per thousand of their weight after melting (before, where nothing was melted), or fine metal, or both. */
const found = z.strictObject({
  permille: decimalText.optional(),
  fine: mass.optional(),
  /** Standard uncertainty of the fine metal, where they stated one. */
  fineU: mass.optional(),
  /** Fine metal they pay for, after deductions. */
  credited: mass.optional(),
});

export const outTurn = z.strictObject({
  /** The transfers it answers. */
  transfers: z.array(id).min(1).max(20),
  party: label.optional(),
  /** As they received it, and what was left after they melted it. */
  received: weight.optional(),
  melted: weight.optional(),
  gold: found.optional(),
  silver: found.optional(),
  /** What they kept back, in metal. */
  deductions: z
    .array(z.strictObject({ what: label, metal: z.enum(['gold', 'silver']), mass }))
    .max(20)
    .optional(),
  /** What they charged, in money: the amount as stated and its currency. */
  charges: z
    .array(z.strictObject({ what: label, amount: decimalText, currency: label }))
    .max(20)
    .optional(),
  document: label.optional(),
  note: label.optional(),
});
