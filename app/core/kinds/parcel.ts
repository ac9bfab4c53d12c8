/** A parcel of ore or concentrate crushed for one owner, who wants a return of their own. */
import { id, label, positive, someMass } from '../shapes.ts';
import { z } from '../zod.ts';

export const parcel = z.strictObject({
  of: id.optional(),
  label,
  owner: label.optional(),
  /** What came in, with its standard uncertainty as a share. */
  ore: z.strictObject({ mass: someMass, u: positive.max(1).optional() }).optional(),
  note: label.optional(),
});
