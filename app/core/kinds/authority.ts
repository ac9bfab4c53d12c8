/** A licence, permit or consent as the site enters it. The program reads no law: it only counts the days to its expiry. */
import { day, id, label } from '../shapes.ts';
import { z } from '../zod.ts';

export const goldActs = ['possess', 'melt', 'sell'] as const;

export const authority = z.strictObject({
  of: id.optional(),
  name: label,
  number: label,
  body: label,
  covers: label,
  /** What it lets the site do with gold, as the site reads it. */
  gold: z.array(z.enum(goldActs)).min(1).max(3).optional(),
  from: day.optional(),
  expiry: z.union([day, z.literal('none stated')]),
  out: day.optional(),
});
