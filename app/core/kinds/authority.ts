/** A licence, permit or consent as the site enters it. The program reads no law: it only counts the days to its expiry. */
import { day, id, label } from '../shapes.ts';
import { z } from '../zod.ts';

export const authority = z.strictObject({
  of: id.optional(),
  name: label,
  number: label,
  body: label,
  covers: label,
  from: day.optional(),
  expiry: z.union([day, z.literal('none stated')]),
  out: day.optional(),
});
