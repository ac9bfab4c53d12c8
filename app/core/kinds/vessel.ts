/** A flask, bottle or jar that holds mercury, or a dish that is weighed with what is in it. */
import { day, id, label, weight } from '../shapes.ts';
import { z } from '../zod.ts';

export const vesselUses = ['flask', 'bottle', 'jar', 'receiver', 'dish', 'drum', 'other'] as const;
export const mercuryClasses = ['new', 'strained', 'retorted', 'mixed', 'unknown'] as const;
export type MercuryClass = (typeof mercuryClasses)[number];

export const vessel = z.strictObject({
  of: id.optional(),
  label,
  use: z.enum(vesselUses),
  /** Empty, as weighed. */
  tare: weight.optional(),
  /** What sort of mercury it holds. */
  mercury: z.enum(mercuryClasses).optional(),
  seal: label.optional(),
  place: label.optional(),
  note: label.optional(),
  out: day.optional(),
});
