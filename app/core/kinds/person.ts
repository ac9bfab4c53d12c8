/** A person of the site, named by what they do. Without medical data of any sort: the record has no field for it. */
import { day, id, label } from '../shapes.ts';
import { z } from '../zod.ts';

export const roles = ['keeper', 'safety-officer', 'assayer', 'helper', 'reader'] as const;
export type Role = (typeof roles)[number];

export const person = z.strictObject({
  /** Restates the person first entered under this id, from this entry's time on. */
  of: id.optional(),
  name: label,
  roles: z.array(z.enum(roles)).min(1).max(5),
  note: label.optional(),
  /** The last day with the site. */
  left: day.optional(),
});
