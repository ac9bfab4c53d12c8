/**
 * Where a bar is kept, from then on. An entry of its own, so that it can be shown only to those who may see it and left out of what leaves as a whole:
 * no other entry says where a bar lies. Source: practice.md 1 (17 to 19).
 */
import { id, label, partId } from '../shapes.ts';
import { z } from '../zod.ts';

export const barKept = z.strictObject({
  bar: partId,
  place: label,
  /** Seal or lock number. */
  seal: label.optional(),
  /** Who put it there, besides the writer. */
  present: z.array(id).max(12).optional(),
  note: label.optional(),
});
